// A night that is much longer than any show, for what must not grow with it.

import { createNightFile } from '../../src/disk/create-night-file.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { newRecord } from '../../src/journal/new-record.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { openPast } from '../../src/night/night-past.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import { extend, openTimeline, sessionOf } from '../../src/session/timeline.ts';
import type { Show } from '../../src/showfile/show.ts';

/** A night that goes on and on: stepped through, marked ready, and begun again from its first song. */
export function longNight(show: Show, entries: number): readonly JournalRecord<Entry>[] {
	const records: JournalRecord<Entry>[] = [];
	let timeline = openTimeline(openSession(show));
	let count = 0;
	for (let atMs = 1_000_000; count < entries; atMs += 30_000) {
		const session = sessionOf(timeline);
		const instrument = show.instruments[records.length % show.instruments.length]?.id ?? '';
		const first = show.songs[0]?.id ?? '';
		const asked = [
			decide(session, { do: 'step', handOvers: [] }, atMs),
			decide(session, { do: 'make-ready', instrument, due: null }, atMs),
			decide(session, { do: 'choose-next', song: first }, atMs),
			decide(session, { do: 'write-memo', words: 'on and on' }, atMs),
		];
		const decision =
			session.phase.value === 'over' ? asked[2] : asked[records.length % 3 === 1 ? 1 : 0];
		const made = decision?.ok ? decision.entries : asked[3]?.ok ? asked[3].entries : [];
		const record = newRecord({
			...{ s: records.length + 1, w: 'bench', e: made },
			at: { wallMs: atMs, upMs: atMs },
			after: records.at(-1) ?? null,
		});
		records.push(record);
		timeline = extend(timeline, record);
		count += made.length;
	}
	return records;
}

/** Writes such a night into a folder of nights, as if the program had been killed at its end. */
export async function keepLongNight(
	folder: string,
	{ show, path, entries }: { readonly show: Show; readonly path: string; readonly entries: number },
): Promise<void> {
	const { journal } = await createNightFile(
		{
			disk: realDisk,
			folders: [folder],
			wait: (ms) => new Promise((done) => setTimeout(done, ms)),
			writer: 'bench',
			upMs: 0,
		},
		{
			id: `long-night-of-${entries}`,
			wallMs: Date.now(),
			subject: {
				boot: '',
				title: show.title,
				showPath: path,
				showHash: '',
				show,
				isRehearsal: false,
			},
		},
	);
	const past = openPast(openSession(show), journal);
	for (const { e, t, m } of longNight(show, entries)) {
		past.take(journal.append(e, { wallMs: t, upMs: m }) as JournalRecord<Entry>);
	}
	await journal.close();
}
