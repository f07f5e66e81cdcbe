// The questions as they are drawn: each kind of question at its sizes, held against the drawings beside this file.

import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { drawNewShow } from '../../src/new-show/draw-new-show.ts';
import { keptOf, type NewShow, startNewShow } from '../../src/new-show/new-show.ts';
import { screenText } from '../../src/screen/row.ts';
import { BEGINNING, keysOf, pressed } from './lamplit.ts';

const SIZES = [
	[80, 24],
	[120, 40],
	[200, 60],
] as const;
const SMALL = [
	[60, 16],
	[40, 10],
	[20, 4],
] as const;

const show = keysOf('show');
const players = [...show, ...keysOf('players')];
const rack = [...players, ...keysOf('rack')];
const songs = [...rack, ...keysOf('songs')];
const hands = [...songs, ...keysOf('order')];

const STATES: Readonly<Record<string, NewShow>> = {
	'first-question': pressed([]),
	'a-name-typed': pressed([...players, 'K', 'e', 's', 't']),
	'a-kind': pressed([...players, 'K', 'e', 's', 't', 'enter']),
	'a-tuning': pressed([...players, 'K', 'e', 's', 't', 'enter', 'enter']),
	'whose-it-is': pressed([...players, 'K', 'e', 's', 't', 'enter', 'enter', 'enter']),
	'another-slot': pressed([...players, 'K', 'e', 's', 't', 'tab']),
	'a-song': pressed([...rack, 'T', 'i', 'd', 'e', 'enter', '3', ':', '3', '0', 'enter']),
	'the-order': pressed([...songs, 'down', 'down', 'g', 'up']),
	'who-plays-what': pressed([...hands, 'enter', '2']),
	'a-tuning-in-a-song': pressed([...hands, 'enter', '2', '=']),
	'a-refusal': pressed([...hands, '9']),
	'to-be-written': pressed([...hands, ...keysOf('hands')]),
	'a-draft': startNewShow(BEGINNING, keptOf(pressed(songs))),
};

function drawn(
	state: NewShow,
	[columns, rows]: readonly [number, number],
	isAscii = false,
): string {
	return screenText(
		drawNewShow(state, { columns, rows }, { file: 'lamplit-ferries.yaml', isAscii }),
	);
}

/** The drawing is the demand: it is written only on purpose, by WRITE_SCREENS=1, and then looked at. */
function expectDrawn(name: string, text: string): void {
	const path = fileURLToPath(new URL(`drawn/${name}.txt`, import.meta.url));
	if (process.env.WRITE_SCREENS) writeFileSync(path, `${text}\n`);
	else expect(`${text}\n`).toBe(readFileSync(path, 'utf8'));
}

describe.each(Object.entries(STATES))('%s', (name, state) => {
	test.each(SIZES)('at %i×%i', (columns, rows) => {
		expectDrawn(`${name}-${columns}x${rows}`, drawn(state, [columns, rows]));
	});
});

describe('a window that is too small', () => {
	test.each(SMALL)('at %i×%i says so and asks all the same', (columns, rows) => {
		const text = drawn(pressed([...players, 'K', 'e', 's', 't', 'enter']), [columns, rows]);
		expectDrawn(`small-${columns}x${rows}`, text);
		expect(text).toMatch(/small/);
		expect(text).toMatch(/What is 1 Kest/);
	});
});

test('in letters that any terminal has', () => {
	const text = drawn(pressed([...players, 'Ö']), [80, 24], true);
	expect(text).toMatch(/^[\x20-\x7e\n]*$/);
});

test('the line that the last answer added is in sight at every size', () => {
	for (const area of SIZES) {
		const all = [...players, ...keysOf('rack'), ...keysOf('songs')];
		for (let count = show.length; count < all.length; count += 1) {
			const state = pressed(all.slice(0, count));
			const last = state.making.draft.songs.at(-1)?.id ?? state.making.draft.instruments.at(-1)?.id;
			if (last !== undefined) expect(drawn(state, area)).toContain(last);
		}
	}
});
