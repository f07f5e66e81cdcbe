// Entries of `instead` that cannot be as they say. Whether anything could be played in place of an instrument
// is the plan's to say.

import { KINDS } from '../tuning/kind.ts';
import type { Finding } from './finding.ts';
import { staysInTune } from './fitting-holdings.ts';
import type { Instead, Instrument, Show } from './show.ts';

/** Entries that cannot be, in the order of the file. */
export function checkBackups(show: Show): Finding[] {
	return show.instruments.flatMap((one) =>
		(one.instead ?? []).flatMap((entry) => cannotBe(show, one, entry)),
	);
}

function cannotBe(show: Show, named: Instrument, { instrument, tuning, capo }: Instead): Finding[] {
	const it = show.instruments.find(({ id }) => id === instrument);
	if (it === undefined || tuning === null) return [];
	const about = { severity: 'risk', instrument: named.id, entry: it.id } as const;
	const findings: Finding[] = [];
	if (!staysInTune(it, tuning)) {
		const stays = it.tuning.name;
		findings.push({ code: 'floating-retune', ...about, tuning: tuning.name, stays });
	}
	if (capo > 0 && !KINDS[it.kind].canTakeCapo) {
		findings.push({ code: 'capo-on-bass', ...about, capo, kind: it.kind });
	}
	return findings;
}
