// Keys that a user chooses, and the settings view: clashes are named, nothing kept makes an action
// unreachable, and a change holds at once.

import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ACTIONS, actionOf } from '../../src/keys/actions.ts';
import { CHOOSABLE_ACTIONS, usableKeys, whyNotKey } from '../../src/keys/key-choices.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

describe('a chosen key', () => {
	test('that another action has is refused, and that action named', () => {
		expect(whyNotKey('memo', 'b', {})).toBe(
			'b is the key for string break already; choose another, or change that one first.',
		);
		expect(whyNotKey('memo', 'n', { break: 'n' })).toContain('string break');
		expect(whyNotKey('memo', 'b', { break: 'n' })).toBeNull();
		expect(whyNotKey('memo', 'n', {})).toBeNull();
	});
	test.each(['space', 'enter', '1', '?', 'tab', ' ', 'é', ''])('can never be %j', (key) => {
		expect(whyNotKey('memo', key, {})).toMatch(/can be chosen/);
	});
	test('what feet and thumbs press always stays', () => {
		expect(whyNotKey('step', 'n', {})).toMatch(/always stays the same/);
	});

	test('whatever was kept, every action has a key, and no key two', () => {
		const ids = [...ACTIONS.map(({ id }) => id), 'no-such-action'];
		const kept = fc.dictionary(
			fc.constantFrom(...ids),
			fc.oneof(fc.constantFrom(...'abdeijmtuxzn,;'), fc.string({ maxLength: 2 })),
		);
		fc.assert(
			fc.property(kept, (chosen) => {
				const { keys } = usableKeys(chosen);
				for (const { id, keys: usual } of ACTIONS) {
					expect(actionOf(keys[id] ?? usual[0] ?? '', keys)?.id).toBe(id);
				}
			}),
		);
	});
	test('one that cannot be used is told in a sentence', () => {
		expect(usableKeys({ memo: 'b', break: 'n' })).toEqual({
			keys: { break: 'n', memo: 'b' },
			problems: [],
		});
		const { keys, problems } = usableKeys({ memo: 'b', incident: 'b', 'of-old': 'k' });
		expect(keys).toEqual({});
		expect(problems).toHaveLength(2);
		expect(problems[0]).toMatch(
			/^The key kept for memo cannot be used: b is the key for .* It has/,
		);
	});
});

describe('the settings view', () => {
	const start = '00:00 space\n00:05 ,\n';
	const rowOf = (id: string) => 1 + CHOOSABLE_ACTIONS.findIndex((one) => one.id === id);
	const downTo = (id: string) => Array.from({ length: rowOf(id) }, () => 'down').join(' ');

	test('goes round the looks', () => {
		const { screen } = playShow(show, `${start}00:06 enter !screen\n00:08 enter !screen`);
		expect([...screen.matchAll(/looks +(\w+) +enter/g)].map(([, look]) => look)).toEqual([
			'amber',
			'grey',
		]);
		expect(screen).toContain('The looks are amber now.');
	});
	test('changes a key at once, in footer and hints too', () => {
		const { states, screen } = playShow(
			show,
			`${start}00:06 ${downTo('break')} enter n !screen\n00:30 esc !screen\n00:31 n 1\n00:33 enter`,
		);
		expect(screen).toMatch(/n break/);
		expect(screen).toContain('n is the key for string break now.');
		expect(states.at(-1)?.players.ash.holds).toBe('S1');
	});
	test('says which action has the key already, and asks on', () => {
		const { screen } = playShow(show, `${start}00:06 ${downTo('break')} enter t !screen b !screen`);
		expect(screen).toContain('t is the key for ready already');
		expect(screen).toContain('b is the key for string break now.');
	});
});
