// What could be played in place of each instrument: none where somebody will miss one, and entries of
// `instead` that cannot be as they say.

import { KINDS } from '../tuning/kind.ts';
import type { Finding } from './finding.ts';
import { mayHave, staysInTune } from './fitting-holdings.ts';
import type { Instead, Instrument, Player, Show } from './show.ts';
import type { SetPoint } from './walk-set.ts';

/** Entries that cannot be, in the order of the file, then what is played and has no backup. */
export function checkBackups(show: Show, points: readonly SetPoint[]): Finding[] {
	const entries = show.instruments.flatMap((one) =>
		(one.instead ?? []).flatMap((entry) => cannotBe(show, one, entry)),
	);
	return [...entries, ...show.players.flatMap((player) => noBackup(show, points, player))];
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

function noBackup(show: Show, points: readonly SetPoint[], player: Player): Finding[] {
	const played = points.flatMap(({ hands }) => hands.get(player.id)?.instrument ?? []);
	const about = { code: 'no-stand-in', severity: 'note', player: player.id } as const;
	const byFile = [...new Set(played)].flatMap((one): Finding[] => {
		if (one.instead === undefined || one.instead.length > 0) return [];
		return [{ ...about, instrument: one.id, of: one.id, kind: null }];
	});
	const byKind = [...new Set(played.map(({ kind }) => kind))].flatMap((kind): Finding[] => {
		const used = new Set(played.filter((one) => one.kind === kind));
		const others = show.instruments.filter((one) => one.kind === kind && mayHave(player, one));
		const [only] = used;
		// Two instruments of a kind stand in for one another.
		if (only === undefined || used.size > 1 || only.instead !== undefined) return [];
		if (others.some((one) => !used.has(one))) return [];
		return [{ ...about, of: only.id, kind }];
	});
	return [...byFile, ...byKind];
}
