// The nights that an earlier version kept, opened as a user's are: each alone in a data folder of its own.

import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { MachineClock } from '../../src/base/machine-clock.ts';
import { beginNight } from '../../src/cli/live/begin-night.ts';
import { nightOnDisk } from '../../src/cli/nights/night-on-disk.ts';
import type { Entry } from '../../src/journal/entry.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { openNight } from '../../src/night/night.ts';
import { plannedZero } from '../../src/night/planned-zero.ts';

export const JOURNALS = join(import.meta.dirname, '../journals');
const AWAY_MS = 600_000;

export type Named = { readonly [field: string]: unknown };

export type Facts = {
	readonly night: string;
	/** How `report` ended. */
	readonly code: number;
	/** Every kind of entry that there was then. */
	readonly kinds: readonly string[];
	/** How many there are of each. */
	readonly entries: Readonly<Record<string, number>>;
	readonly records: number;
	/** The report's data; instruments by name alone, memos in their own words. */
	readonly report: Named & {
		readonly handOvers: readonly Named[];
		readonly incidents: readonly Named[];
		readonly memos: readonly (Named & { readonly words: string })[];
	};
	/** The state as scripts read it, at the night's last record. */
	readonly state: Named;
	/** What each instrument is tuned to. */
	readonly pitches: Readonly<Record<string, readonly string[]>>;
};

export function factsOf(name: string): Facts {
	return JSON.parse(readFileSync(join(JOURNALS, `${name}.facts.json`), 'utf8'));
}

/** A data folder that holds this night and no other. */
export function dataWith(name: string): string {
	const data = mkdtempSync(join(tmpdir(), 'rackside-frozen-'));
	onTestFinished(() => rmSync(data, { recursive: true }));
	mkdirSync(join(data, 'nights'));
	const file = `${factsOf(name).night}.journal`;
	copyFileSync(join(JOURNALS, `${name}.journal`), join(data, 'nights', file));
	return data;
}

export function keptOf(data: string, night: string): readonly JournalRecord<Entry>[] {
	return nightOnDisk([join(data, 'nights')], night).records;
}

export const kindsOf = (records: readonly JournalRecord<Entry>[]): readonly string[] =>
	records.flatMap(({ e }) => e.map(({ k }) => k));

const silent = (): void => {};

/** The machine ten minutes after the night's last record, started anew since. */
export function soonAfter(data: string, night: string) {
	const lastMs = Math.max(...keptOf(data, night).map(({ t }) => t));
	let upMs = 60_000;
	return {
		clock: { wallMs: () => lastMs + AWAY_MS + upMs, upMs: () => upMs, bootId: 'another' },
		pass: (ms: number) => {
			upMs += ms;
		},
	};
}

/** What the live screen begins with when it is asked for the show; its file is long gone. */
export function begin(data: string, clock: MachineClock) {
	return beginNight(
		{
			file: '/home/lou/tour/club.yaml',
			folders: [join(data, 'nights')],
			request: { words: [], options: {} },
			isRehearsal: false,
			isAnew: false,
			clock,
			release: silent,
		},
		{
			write: silent,
			complain: silent,
			env: {},
			cwd: data,
			isInputTerminal: false,
			isOutputTerminal: false,
			wallMs: clock.wallMs,
		},
	);
}

/** The night left open, taken up again, and how to press a key a second in it. */
export async function takenUp(data: string, name = '2026-11-club-open') {
	const { clock, pass } = soonAfter(data, factsOf(name).night);
	const begun = await begin(data, clock);
	if (!('journal' in begun)) throw new Error(JSON.stringify(begun));
	const night = openNight({
		show: begun.show,
		journal: begun.journal,
		clock,
		plannedZeroMs: plannedZero(begun.show, begun.startedAtMs, 0),
		dayOffsetMinutes: 0,
		isRehearsal: false,
	});
	const press = (...keys: readonly string[]): void => {
		for (const key of keys) {
			pass(1000);
			night.press(key);
			night.tick();
		}
	};
	return { night, press, begun };
}
