// A second window on a night: it shows what the first does, step for step, and no key in it changes anything.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { followNight } from '../../src/disk/follow-night.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import type { FollowedLook } from '../../src/journal/followed-night.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { ACTIONS } from '../../src/keys/actions.ts';
import { followedNight } from '../../src/night/follow-night.ts';
import { openNight } from '../../src/night/night.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import { ONLY_FOLLOWS } from '../../src/words/follow.ts';
import { scratchFolder } from '../disk/scratch-folder.ts';
import { nightName, sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from '../scenarios/load-show.ts';

const START_MS = 1_000_000_000_000;
const show = loadShow(join(import.meta.dirname, '../../shows/festival.yaml'));
const small = { columns: 80, rows: 24 };

/** A night, and a window that follows it on the same machine, or on another one. */
function twoWindows(other = { apartMs: 0, bootId: 'boot' }) {
	let upMs = 50_000;
	const clock = { wallMs: () => START_MS + upMs, upMs: () => upMs, bootId: 'boot' };
	const journal = memoryJournal(sampleHeader());
	const night = { show, clock, plannedZeroMs: START_MS, dayOffsetMinutes: 0, isRehearsal: false };
	let live = openNight({ ...night, journal });
	let isChanged = true;
	let gone: FollowedLook | null = null;
	const read = () =>
		({ kind: 'read', file: 'a.journal', elsewhere: null, wipedHome: null, findings: [] }) as const;
	const found = () => {
		const records = [...journal.records()];
		return { ...read(), journal: memoryJournal(sampleHeader(), { records, checkpoint: null }) };
	};
	const second = followedNight({
		...night,
		clock: {
			wallMs: () => clock.wallMs() + other.apartMs,
			// A machine that was started later.
			upMs: () => upMs - (other.apartMs === 0 ? 0 : 20_000),
			bootId: other.bootId,
		},
		first: found(),
		files: () => {
			if (!isChanged) return null;
			isChanged = false;
			return gone ?? found();
		},
		findings: [],
	});
	return {
		live: () => live,
		found,
		second,
		journal,
		pass: (ms: number) => {
			upMs += ms;
		},
		press: (...keys: readonly string[]) => {
			for (const key of keys) {
				upMs += 1000;
				live.press(key);
				isChanged = true;
				second.look();
			}
		},
		/** The first window dies, and the night is taken up again in a new one. */
		resume: () => {
			live = openNight({ ...night, journal });
			isChanged = true;
			second.look();
		},
		take: (what: FollowedLook | null) => {
			gone = what;
			isChanged = true;
			second.look();
		},
	};
}

const drawn = (night: { readonly screen: ReturnType<typeof twoWindows>['second']['screen'] }) =>
	screenText(drawScreen(night.screen(), small, { isAscii: false })).split('\n');

describe('what the other window shows', () => {
	test('the same session, clock and plan after every key, through a kill too', () => {
		const keys = fc.array(
			fc.constantFrom(
				...[
					'space',
					'enter',
					't',
					'0',
					'1',
					'2',
					'5',
					'b',
					'esc',
					'd',
					'u',
					'y',
					'x',
					'right',
					'KILL',
				],
			),
			{ maxLength: 30 },
		);
		fc.assert(
			fc.property(keys, (pressed) => {
				const { live, second, press, resume } = twoWindows();
				for (const key of pressed) {
					if (key === 'KILL') resume();
					else press(key);
					expect(second.session()).toEqual(live().session());
					expect(second.plan()).toEqual(live().plan());
					expect(second.screen().nowMs).toBe(live().nowMs());
				}
			}),
			{ numRuns: Number(process.env.PROPERTY_RUNS ?? 15) },
		);
	});

	test('the stage view is the same but for its lowest rows', () => {
		const { live, second, press, pass } = twoWindows();
		press('t', '0', 'space', 'space');
		second.press('tab');
		pass(1000);
		second.press('tab');
		expect(second.screen().view).toBe('stage');
		const still = (rows: readonly string[]) =>
			rows.slice(0, -3).map((row) => row.replace(/ +u undo$/, ''));
		expect(still(drawn(second))).toEqual(still(drawn(live())));
	});

	test('a break and its backups, which are answered in the other window', () => {
		const { live, second, press } = twoWindows();
		press('t', '0', 'space', 'b', '1');
		// From afar the card says it, and nothing lies over that.
		expect(second.screen().prompt).toBeNull();
		expect(drawn(second).slice(4, 10).join('')).toMatch(/██████/);
		second.press('tab');
		expect(second.screen().prompt?.title).toBe(live().screen().prompt?.title);
		second.press('enter');
		expect(second.screen().message).toBe(ONLY_FOLLOWS);
		second.press('esc');
		expect(second.screen().prompt).toBeNull();
		expect(live().screen().prompt).not.toBeNull();
		press('0');
		second.press('b');
		expect(second.screen().message).toBe(ONLY_FOLLOWS);
	});

	test.each([
		['whose clock is ahead', 90_000],
		['whose clock is behind', -90_000],
	])('on a machine %s: from the next step on its clock is that of the first', (_, apartMs) => {
		const { live, second, press, pass, resume } = twoWindows({
			apartMs,
			bootId: 'another machine',
		});
		press('space');
		expect(Math.abs(second.screen().nowMs - live().nowMs())).toBeLessThan(1000);
		pass(600_000);
		expect(Math.abs(second.screen().nowMs - live().nowMs())).toBeLessThan(1000);
		resume();
		press('d');
		expect(Math.abs(second.screen().nowMs - live().nowMs())).toBeLessThan(1000);
	});
});

test('a long night is read from its files as the program that keeps it has it, its log too', () => {
	const folder = scratchFolder();
	const path = join(folder, `${nightName}.journal`);
	const journal = memoryJournal(sampleHeader());
	let upMs = 50_000;
	const clock = { wallMs: () => START_MS + upMs, upMs: () => upMs, bootId: 'boot' };
	const night = { show, clock, plannedZeroMs: START_MS, dayOffsetMinutes: 0, isRehearsal: false };
	const live = openNight({ ...night, journal });
	writeFileSync(path, journal.bytes());
	const files = followNight({ disk: realDisk, folders: [folder] }, nightName);
	const first = files();
	if (first?.kind !== 'read') throw new Error('nothing was read');
	const second = followedNight({ ...night, first, files, findings: [] });
	const keys = ['space', 'i', 'backspace', 'i', 'u', 'i', 'y'];
	for (let count = 0; count < 330; count += 1) {
		upMs += 1000;
		live.press(keys[count % keys.length] as string);
		if (count % 15 !== 14) continue;
		writeFileSync(path, journal.bytes());
		second.look();
		expect(second.session()).toEqual(live.session());
	}
	// So that states were kept whole on the way, from which is gone on.
	expect(journal.records().length).toBeGreaterThan(250);
	expect([...second.screen().log]).toEqual([...live.screen().log]);
});

describe('where its files are', () => {
	test('taken away: what was last read stays, and the row says since when', () => {
		const { second, press, take } = twoWindows();
		press('t', '0', 'space');
		const before = second.session();
		take({ kind: 'gone', folder: '/nights', trouble: null });
		expect(second.session()).toBe(before);
		expect(drawn(second).join('\n')).toMatch(
			/^STORAGE +Files gone; this is how it stood at \d\d:\d\d:\d\d\. +! all$/m,
		);
		take(null);
		expect(drawn(second).join('\n')).not.toMatch(/STORAGE/);
	});

	test('damaged: called so, and what is damaged before its end is said beside it', () => {
		const { second, press, take, found } = twoWindows();
		press('t', '0', 'space');
		take({ kind: 'damaged', folder: '/nights', trouble: null });
		expect(drawn(second).join('\n')).toMatch(
			/^STORAGE +Files damaged; this is how it stood at \d\d:\d\d:\d\d\. +! all$/m,
		);
		const missing = {
			code: 'records-missing',
			isWarning: true,
			count: 2,
			isHealed: false,
		} as const;
		for (const _ of ['once', 'and again']) {
			take({ ...found(), findings: [missing] });
			expect(drawn(second).join('\n')).toMatch(/^STORAGE +2 records of this night cannot be read/m);
		}
		expect(second.screen().findings).toHaveLength(1);
	});

	test('a show that was closed is over here too, and the window stays', () => {
		const { live, second, press } = twoWindows();
		press('t', '0', 'space', 'd', 'q');
		const { prompt } = live().screen();
		const close = prompt?.choices.find(({ words }) => /close/.test(words));
		press(close?.key ?? 'missing');
		expect(live().wantsToLeave()).toBe(true);
		expect(second.wantsToLeave()).toBe(false);
		expect(drawn(second).join('\n')).toMatch(/STORAGE +The show is closed: nothing more comes\./);
	});
});

describe('its keys', () => {
	const looking = ['view', 'live', 'help', 'warnings', 'pick-up', 'pick-down', 'dark', 'leave'];

	test.each(ACTIONS.filter(({ id }) => !looking.includes(id)))(
		'$id only says why not',
		({ id, keys }) => {
			const { second, press, journal } = twoWindows();
			press('t', '0', 'space');
			const count = journal.records().length;
			for (const key of keys) second.press(key);
			expect(journal.records()).toHaveLength(count);
			// To search the log is no change, but has its place in the log view alone.
			if (id !== 'narrow') expect(second.screen().message).toBe(ONLY_FOLLOWS);
			expect(second.screen().prompt).toBeNull();
		},
	);

	test('tab goes through all views, esc back to the one from afar, and q leaves at once', () => {
		const { second, pass } = twoWindows();
		const views = Array.from({ length: 6 }, () => {
			second.press('tab');
			pass(1000);
			return second.screen().view;
		});
		expect(views).toEqual(['rig', 'stage', 'rack', 'list', 'log', 'far']);
		second.press('!');
		expect(second.screen().view).toBe('warnings');
		second.press('esc');
		expect(second.screen().view).toBe('far');
		second.press('q');
		expect(second.wantsToLeave()).toBe(true);
	});

	test('dark, and back', () => {
		const { second, pass } = twoWindows();
		second.press('z');
		expect(drawn(second).join('').trim()).toBe('z');
		pass(1000);
		second.press('z');
		expect(drawn(second).join('')).toMatch(/[█▀▄]/);
	});

	test('in the rack view enter opens the page of an instrument', () => {
		const { second, pass } = twoWindows();
		for (const key of ['tab', 'tab', 'tab', 'enter']) {
			second.press(key);
			pass(1000);
		}
		expect(second.screen().prompt?.title).toMatch(/Amber/);
	});
});
