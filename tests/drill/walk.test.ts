// The first walk, by the keys that it names and by others: it goes by what the night has come to.

import { describe, expect, test } from 'vitest';
import { type LedNight, ledNight } from '../../src/drill/led-night.ts';
import { openTrial } from '../../src/drill/trial-night.ts';
import { WALK_BEGINS_MS, walk } from '../../src/drill/walk.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { rowText, rowWidth } from '../../src/screen/row.ts';
import { exampleShow, handClock } from './example-shows.ts';
import { pressesOf } from './presses-of.ts';

const CUT = /…/;

function begin(file = 'club.yaml') {
	const { handMs, pass } = handClock();
	const trial = openTrial(
		{ show: exampleShow(file), handMs },
		{ records: [], atMs: WALK_BEGINS_MS },
	);
	const led = ledNight(walk(trial), handMs);
	const press = (...keys: readonly string[]) => {
		for (const key of keys) {
			pass(800);
			led.press(key);
		}
	};
	return { trial, led, press, pass };
}

const bandOf = (led: LedNight) => led.screen().band ?? { label: '', words: '', under: '' };
const rowsOf = (led: LedNight, columns = 80, rows = 24) =>
	drawScreen(led.screen(), { columns, rows }, { isAscii: false });

/** The keys that the band names. */
const named = (led: LedNight) =>
	bandOf(led).under === 'enter: go on' ? [] : pressesOf(bandOf(led).under.split('  ').slice(1));

describe('the first walk', () => {
	test('goes through eight moments by the keys that it names, each done by them and not before', () => {
		const { trial, led, press } = begin();
		const asked: string[] = [];
		for (let moment = 1; moment <= 8; moment += 1) {
			const { label, words } = bandOf(led);
			expect(label).toBe(`${moment}/8`);
			asked.push(words);
			expect(rowsOf(led).slice(0, 2).map(rowText).join()).not.toMatch(CUT);
			press(...named(led));
			if (moment === 8) break;
			expect(bandOf(led).words).not.toBe(words);
			expect(bandOf(led).under).toBe('enter: go on');
			expect(rowsOf(led).slice(0, 2).map(rowText).join()).not.toMatch(CUT);
			press('enter');
		}
		expect(asked).toEqual([
			'Everything is ready and the band walks on: start Harbour.',
			'1 Amber is back on the rack and you just tuned it: mark it ready.',
			'Ash breaks a string on 4 Anchor: report it, hand the first backup.',
			'Look up: Ash has 2 Ember, not 1 Amber. Log what is in hands.',
			'The singer calls Salt Marsh next: jump to it.',
			'They change their minds, Salt Marsh is not next after all: undo it.',
			'Blackout: make the screen dark, and the same key brings it back.',
			'The last song is over: close the show, and read its report.',
		]);
		expect(led.wantsToLeave()).toBe(true);
		expect(trial.night.session().phase.value).toBe('packed');
		expect(trial.night.session().incidents).toHaveLength(1);
	});

	test('any other way to the same thing is as good, and other keys do what they do', () => {
		const { trial, led, press } = begin();
		press('tab');
		expect(led.screen().view).toBe('rack');
		expect(bandOf(led).label).toBe('1/8');
		press('esc', 'pagedown', 'enter');
		expect(bandOf(led).label).toBe('2/8');
		// The first of the to-do list, where the slot is named.
		press('t', 'enter');
		expect(bandOf(led).under).toBe('enter: go on');
		press('enter', 'b', '4', 's');
		expect(trial.night.session().players.ash?.holds).toBe('S1');
		expect(bandOf(led).under).toBe('enter: go on');
	});

	test('a question that is open gets its enter', () => {
		const { trial, led, press } = begin();
		press('space', 'm', 'h', 'i', 'enter');
		expect(bandOf(led).label).toBe('1/8');
		expect(trial.night.records().at(-1)?.e[0]).toMatchObject({ k: 'memo-written', words: 'hi' });
		press('enter');
		expect(bandOf(led).label).toBe('2/8');
	});

	test('esc twice leaves, and not where it closes something', () => {
		const { led, press, pass } = begin();
		press('tab', 'tab', 'm', 'esc', 'esc');
		expect(led.screen().prompt).toBeNull();
		expect(led.screen().view).toBe('stage');
		expect(led.wantsToLeave()).toBe(false);
		press('esc');
		expect(led.wantsToLeave()).toBe(false);
		pass(3000);
		press('esc');
		expect(led.wantsToLeave()).toBe(false);
		press('esc');
		expect(led.wantsToLeave()).toBe(true);
	});

	test('the band stands above the whole screen, which keeps its places at 80 by 24', () => {
		const { led, press } = begin();
		press('space');
		const rows = rowsOf(led).map(rowText);
		expect(rows).toHaveLength(24);
		const places = ['TO DO', 'SONG', 'CUE', 'BO BOARD', 'WATCH', 'CURFEW', 'LAST', 'REHEARSAL'];
		for (const place of places) expect(rows.join('\n')).toContain(place);
		for (const [columns, height] of [
			[80, 24],
			[120, 40],
			[200, 60],
			[40, 11],
			[20, 4],
			[1, 1],
		] as const) {
			const drawn = rowsOf(led, columns, height);
			expect(drawn).toHaveLength(height);
			expect(Math.max(...drawn.map(rowWidth))).toBeLessThanOrEqual(columns);
		}
	});

	test('in the dark nothing of it shines', () => {
		const { led, press } = begin();
		press('z');
		expect(rowsOf(led).map(rowText).join('').trim()).toBe('z');
	});

	test('whoever leaves the way can still go it to its end', () => {
		const { led, press } = begin();
		press('space');
		// The night goes on without the walk, to the end of the show.
		for (let left = 0; left < 40; left += 1) press('d', 'space');
		expect(bandOf(led).under).toBe('enter: go on');
		press('enter');
		for (let moment = 2; moment < 8; moment += 1) {
			expect(bandOf(led).label).toBe(`${moment}/8`);
			press(...named(led));
			expect(bandOf(led).under).toBe('enter: go on');
			press('enter');
		}
		expect(bandOf(led).label).toBe('8/8');
		press(...named(led));
		expect(led.wantsToLeave()).toBe(true);
	});
});
