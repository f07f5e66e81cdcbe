// A file that is there is added to: what its owner wrote stays byte for byte, and nothing of it is asked again.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { fileText } from '../../src/new-show/file-so-far.ts';
import { type NewShow, startNewShow } from '../../src/new-show/new-show.ts';
import { draftOfShow } from '../../src/setlist/draft-of-show.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';
import { BEGINNING, pressed } from './lamplit.ts';

/** Full of comments of its writer's own. */
const text = readFileSync(join(import.meta.dirname, '../../shows/first.yaml'), 'utf8');

function read(bytes: string): Show {
	const { show, problems } = readShow(() => Buffer.from(bytes), 'first.yaml');
	if (show === null) throw new Error(`${JSON.stringify(problems)}\n${bytes}`);
	return show;
}

const before = read(text);

function adding(): NewShow {
	return startNewShow({ ...BEGINNING, adding: { text, draft: draftOfShow(before) } }, null);
}

/** Every line of the file in its order, others perhaps between. */
function holdsEveryLine(after: string): boolean {
	const lines = after.split('\n');
	let at = 0;
	return text.split('\n').every((line) => {
		at = lines.indexOf(line, at) + 1;
		return at > 0;
	});
}

const type = (name: string): readonly string[] =>
	[...name].map((letter) => (letter === ' ' ? 'space' : letter));

const INSTRUMENT = [...type('Whimbrel'), 'enter', 'enter', 'enter'];
const SONG = [...type('New Tide 3:33'), 'enter'];

test('an instrument and a song stand behind the others, and all else as it stood', () => {
	const state = pressed(
		['enter', ...INSTRUMENT, 'enter', ...SONG, 'enter', '4', 'enter'],
		adding(),
	);
	expect(state.making.place).toEqual({ ask: 'write' });
	const after = fileText(state.making) ?? '';
	expect(holdsEveryLine(after)).toBe(true);
	const show = read(after);
	expect(show.instruments.slice(0, -1)).toEqual(before.instruments);
	expect(show.songs.slice(0, -1)).toEqual(before.songs);
	expect(show.set.slice(0, -1)).toEqual(before.set);
	expect(show.instruments.at(-1)).toMatchObject({
		name: 'Whimbrel',
		tuning: { name: 'E standard' },
	});
	expect(show.songs.at(-1)).toMatchObject({ title: 'New Tide', lengthSeconds: 213 });
	expect(show.songs.at(-1)?.parts.ash).toMatchObject({ instrument: 'whimbrel' });
});

test('nothing added is nothing written', () => {
	const state = pressed(['enter', 'enter', 'enter'], adding());
	expect(state.making.place).toEqual({ ask: 'write' });
	expect(fileText(state.making)).toBe(text);
});

test('the slot that is offered is one that nothing in the file has', () => {
	const { making } = pressed(['enter'], adding());
	expect(before.instruments.map(({ slot }) => slot)).not.toContain(making.slot);
});

test('a song that the file has is put into the list again, not made anew', () => {
	const { making } = pressed(['enter', 'enter', ...type('Harbour'), 'enter'], adding());
	expect(making.draft.songs).toHaveLength(before.songs.length);
	expect(making.draft.set).toHaveLength(before.set.length + 1);
});

const key = fc.oneof(
	{ weight: 4, arbitrary: fc.constant('enter') },
	{
		weight: 3,
		arbitrary: fc.constantFrom(...'123456789abcsu=-0', 'up', 'down', 'tab', 'backspace'),
	},
	{ weight: 1, arbitrary: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }) },
);

test('any keys: every line stays, and the file can be read', { timeout: 120_000 }, () => {
	fc.assert(
		fc.property(fc.array(key, { maxLength: 50 }), (keys) => {
			const after = fileText(pressed(['enter', ...keys], adding()).making) ?? '';
			expect(holdsEveryLine(after)).toBe(true);
			read(after);
		}),
		{ numRuns: 150 },
	);
});
