// A night in which far more was noted than in any show, for what must not grow with it.

import type { Entry } from '../../src/journal/entry.ts';
import { recordBeside } from '../../src/journal/new-record.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { CLUB_NIGHT } from './looked-at-nights.ts';
import { nightOf } from './script-night.ts';

/** A show under way for three hours in which so many steps are noted: hand-overs, ready marks, breaks and memos. */
export function busyNight(count: number) {
	const { show, records } = nightOf(CLUB_NIGHT, '00:00 space\n');
	const first = records.at(-1)!;
	const ids = show.instruments.map(({ id }) => id);
	const more = Array.from({ length: count }, (_, place): JournalRecord<Entry> => {
		const at = first.t + place * 1080;
		const instrument = ids[(place * 7) % ids.length]!;
		const player = ['ash', 'bo'][place % 2]!;
		const entries: readonly Entry[] = [
			{ k: 'handed-over', at, player, instrument, by: 'exchange' } as Entry,
			{ k: 'made-ready', at, instrument: ids[(place * 5 + 1) % ids.length]! } as Entry,
			{ k: 'memo-written', at, words: `the lamp is out ${place}` },
		];
		return recordBeside({
			...{ s: first.s + place + 1, w: 'test', at: { wallMs: at, upMs: at } },
			e: [entries[place % 3]!],
		});
	});
	return { show, records: [...records, ...more] };
}
