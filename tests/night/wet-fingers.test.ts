// Wet fingers: in every prompt, every neighbour of the key that was meant. A slip does nothing, says
// why, or records one step that is shown and that one `u` takes back whole; it never ends the night.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { pressedNight } from './pressed-night.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

// The rows of a US keyboard as they lie, each key a little to the right of the one above (ANSI INCITS 154).
const ROWS = ['`1234567890-=', ' qwertyuiop[]\\', " asdfghjkl;'", ' zxcvbnm,./'];

function neighbours(key: string): readonly string[] {
	if (key === 'enter') return ["'", ']', '\\', 'backspace'];
	if (key === 'esc') return ['`', '1', 'tab', 'f1'];
	if (key === 'space') return ['c', 'v', 'b', 'n', 'm'];
	const row = ROWS.findIndex((keys) => keys.includes(key));
	const at = ROWS[row]?.indexOf(key) ?? -1;
	const beside = [
		ROWS[row]?.[at - 1],
		ROWS[row]?.[at + 1],
		ROWS[row - 1]?.[at],
		ROWS[row - 1]?.[at + 1],
		ROWS[row + 1]?.[at - 1],
		ROWS[row + 1]?.[at],
	];
	return beside.filter((one): one is string => one !== undefined && one !== ' ');
}

/** Ways through the prompts: what is pressed, the last key being the one that slips. */
const MEANT: readonly (readonly string[])[] = [
	['space'],
	['d'],
	['u'],
	['z'],
	['i'],
	['b', '1'],
	['b', '1', 'enter'],
	['b', '1', '0'],
	['b', '1', 's'],
	['t', '4'],
	['t', 'enter'],
	['x', '2'],
	['x', 's', 'a'],
	['x', 'x', 'a'],
	['f', '4'],
	['f', '4', 'enter'],
	['c', '4'],
	['c', '4', '3'],
	['r', '4'],
	['s', '4'],
	['w', 'a'],
	['w', 'a', '2'],
	['w', 'a', '-'],
	['o', 'b'],
	['o', 'b', '1'],
	['a', 'enter'],
	['e', '3'],
	['e', '3', 'enter'],
	['j', 'k'],
	['j', 'k', 'enter'],
	['m', 'x', 'enter'],
	['q'],
	['l', 'esc'],
	[',', 'enter'],
	['tab', 'tab', 'g'],
	['tab', 'tab', 'k'],
	['tab', 'tab', 'k', 'enter'],
	['tab', 'tab', 'h'],
	['tab', 'tab', 'p', 'g', 'enter'],
];

function nightAt() {
	const { night, press } = pressedNight(show);
	press('t', '0', 'space', 'i');
	return { night, press };
}

test.each(MEANT.map((keys) => [keys.join(' '), keys] as const))('%s', (_, keys) => {
	const meant = keys.at(-1) ?? '';
	for (const slip of neighbours(meant)) {
		const { night, press } = nightAt();
		for (const key of keys.slice(0, -1)) press(key);
		const before = night.session();
		const count = night.records().length;
		press(slip);
		const what = `${keys.join(' ')}, slipped to ${slip}`;
		expect(night.wantsToLeave(), what).toBe(false);
		const recorded = night.records().slice(count);
		expect(recorded.length, what).toBeLessThanOrEqual(1);
		const [record] = recorded;
		if (record === undefined) {
			expect(night.session(), what).toBe(before);
			continue;
		}
		// What a slip to `u` or `y` took back or put back, the other of the two sets right.
		const first = record.e[0]?.k;
		const screen = screenText(
			drawScreen(night.screen(), { columns: 80, rows: 24 }, { isAscii: false }),
		);
		if (first !== 'taken-back' && first !== 'put-back') {
			expect(screen, what).toMatch(/^LAST .* u undo( |$)/m);
		}
		press('esc');
		press('esc');
		press(first === 'taken-back' ? 'y' : 'u');
		expect(night.session(), what).toEqual(before);
	}
});
