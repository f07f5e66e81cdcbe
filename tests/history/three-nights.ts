// Three invented nights of one small show, played through the real keys and kept as files, with their times known
// beforehand.

import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parseScript } from '../../src/cli/rehearsal/parse-script.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { type NightHeader, nightFormat } from '../../src/journal/record.ts';
import { openNight } from '../../src/night/night.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';
import { showRecord } from '../../src/showfile/show-record.ts';

export const SHOW_TEXT = `format: rackside/1
show: {title: Three nights, date: 2026-06-10, start: "20:00"}
players:
  - {id: ash, name: Ash, plays: guitar}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard, scale: 25.5 in,
     strings: [10, 13, 17, 26w, 36w, 46w], strung: {on: 2026-06-09, hours: 11}}
  - {id: A4, name: Anchor, slot: "4", kind: electric-6, for: [ash], tuning: drop D,
     strings: [10, 13, 17, 26w, 36w, 46w]}
  - {id: S1, name: Spare, slot: s, kind: electric-6, tuning: E standard, spare: true}
songs:
  - {id: one, title: One, length: "1:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "1:00", hands: {ash: {instrument: A4}}}
  - {id: three, title: Three, length: "1:00", hands: {ash: {instrument: A1}}}
  - {id: four, title: Four, length: "1:00", hands: {ash: {instrument: A4}}}
stock: [{gauge: "10", count: 1}, {gauge: "17", count: 4}]
set: [one, {song: two, gap: 40s}, {song: three, gap: 18s}, {song: four, gap: 40s}]
`;

/** The show of the nights, or another text as a show. */
export function showOf(text: string = SHOW_TEXT): Show {
	const { show, problems } = readShow(() => new TextEncoder().encode(text), 'three.yaml');
	if (!show) throw new Error(JSON.stringify(problems));
	return show;
}

export type InventedNight = {
	readonly id: string;
	/** UTC, when the first song began. */
	readonly zeroMs: number;
	/** As of `rehearse --script`. */
	readonly script: string;
};

/** Of each gap the seconds from the song's end until the key of the hand-over, and until the next song begins. */
const GAPS = [
	[
		[21, 40],
		[16, 18],
		[22, 50],
	],
	[
		[24, 40],
		[17, 20],
		[19, 45],
	],
	[
		[30, 40],
		[26, 30],
		[20, 40],
	],
] as const;
/** Seconds from the hand-over until the one that came back is marked ready. */
const TOUCH_UPS = [
	[52, 64, 70],
	[58, 66, 61],
	[75, 55, 68],
] as const;
/** Seconds for which each song was on. */
const LENGTHS = [62, 90, 58, 61] as const;

/** Every hand-over, touch-up and gap of the nights, by hand from the tables above. */
export const TRUTH = { gaps: GAPS, touchUps: TOUCH_UPS, lengths: LENGTHS };

/** A script line at so many seconds. */
const at = (seconds: number, keys: string): string =>
	`${String(Math.floor(seconds / 60)).padStart(2, '0')}:${String(seconds % 60).padStart(2, '0')} ${keys}`;

/** The keys of a night; `more`: lines besides, by their second. */
function scriptOf(night: number, more: readonly (readonly [number, string])[]): string {
	const lines: [number, string][] = [[-60, '']];
	let now = 0;
	LENGTHS.forEach((length, song) => {
		lines.push([now, 'space'], [now + length, 'd']);
		const [handed, gap] = GAPS[night]?.[song] ?? [0, 0];
		if (gap > 0) {
			const back = song % 2 === 0 ? '1' : '4';
			lines.push([now + length + handed, 'enter']);
			lines.push([now + length + handed + (TOUCH_UPS[night]?.[song] ?? 0), `t ${back}`]);
		}
		now += length + gap;
	});
	lines.push(...more.map(([second, keys]): [number, string] => [second, keys]));
	const sorted = lines.slice(1).toSorted(([one], [other]) => one - other);
	return ['-01:00 !ready', ...sorted.map(([second, keys]) => at(second, keys))].join('\n');
}

/** On the first night string 1 of Amber breaks in One and Spare is in hands 8 s later; on the third strings 1 and 3. */
export const NIGHTS: readonly InventedNight[] = [
	{
		id: '2026-06-10-200000-three-nights-aaaa',
		zeroMs: Date.UTC(2026, 5, 10, 20),
		script: scriptOf(0, [
			[240, 'b 1'],
			[248, 'enter'],
			[250, 'e 1 enter'],
		]),
	},
	{
		id: '2026-06-11-200000-three-nights-bbbb',
		zeroMs: Date.UTC(2026, 5, 11, 20),
		script: scriptOf(1, []),
	},
	{
		id: '2026-06-12-200000-three-nights-cccc',
		zeroMs: Date.UTC(2026, 5, 12, 20),
		script: scriptOf(2, [
			[20, 'b'],
			[32, 'enter'],
			[35, 'e 3 enter'],
		]),
	},
];

/** The nights as files of a data folder; the show file itself need not be there. */
export function keepNights(
	data: string,
	nights: readonly InventedNight[] = NIGHTS,
	{ show = showOf(), showPath = '/shows/three.yaml' } = {},
): void {
	const folder = join(data, 'nights');
	mkdirSync(folder, { recursive: true, mode: 0o700 });
	for (const night of nights) {
		const path = join(folder, `${night.id}.journal`);
		writeFileSync(path, bytesOf(night, { show, showPath }), { mode: 0o600 });
	}
}

/** What a night's file holds once its script was played. */
export function bytesOf(
	{ id, zeroMs, script }: InventedNight,
	{
		show,
		showPath,
		isRehearsal = false,
	}: { readonly show: Show; readonly showPath: string; readonly isRehearsal?: boolean },
): Buffer {
	const reading = parseScript(script, 'script');
	if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
	const header: NightHeader = {
		...{ k: 'header', format: nightFormat, journal: id, boot: '', title: show.title, showPath },
		...{ showHash: dirname(showPath), show: showRecord(show), isRehearsal, from: 1 },
	};
	const journal = memoryJournal(header);
	let atMs = reading.steps[0]?.atMs ?? 0;
	const night = openNight({
		...{ show, journal, plannedZeroMs: zeroMs, dayOffsetMinutes: 0, isRehearsal: true },
		clock: { wallMs: () => zeroMs + atMs, upMs: () => zeroMs + atMs, bootId: '' },
	});
	for (const step of reading.steps) {
		atMs = step.atMs;
		night.tick();
		if (step.act.do === 'ready') night.submit({ do: 'make-all-ready' }, 'script');
		else if (step.act.do === 'press') night.press(step.act.key);
	}
	night.submit({ do: 'end-show' } as never, 'script');
	return journal.bytes();
}
