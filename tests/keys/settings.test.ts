// Keys that a user chooses, and the settings view: clashes are named, nothing kept makes an action
// unreachable, and a change holds at once.

import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ACTIONS, actionOf } from '../../src/keys/actions.ts';
import { usableKeys, whyNotKey } from '../../src/keys/key-choices.ts';
import { settingRows } from '../../src/keys/settings.ts';
import { actionName } from '../../src/words/actions.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';
import { showFrom } from '../showfile/show-files.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

describe('a chosen key', () => {
	test('that another action has is refused, and that action named', () => {
		expect(whyNotKey('memo', 'b', {})).toBe(
			'b is the key for string break. Choose another, or change that one first.',
		);
		expect(whyNotKey('memo', ';', { break: ';' })).toContain('string break');
		expect(whyNotKey('memo', 'b', { break: ';' })).toBeNull();
		expect(whyNotKey('memo', ';', {})).toBeNull();
	});
	test.each(['space', 'enter', '1', '?', 'tab', ' ', 'é', ''])('can never be %j', (key) => {
		expect(whyNotKey('memo', key, {})).toMatch(/^Choose a letter/);
	});
	test('what feet and thumbs press always stays', () => {
		expect(whyNotKey('step', ';', {})).toMatch(/always stays the same/);
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
		expect(usableKeys({ memo: 'b', break: ';' })).toEqual({
			keys: { break: ';', memo: 'b' },
			problems: [],
		});
		const { keys, problems } = usableKeys({ memo: 'b', incident: 'b', 'of-old': 'k' });
		expect(keys).toEqual({});
		expect(problems).toHaveLength(2);
		expect(problems[0]).toMatch(
			/^The key saved for memo can't be used\. b is the key for .* It has/,
		);
	});
});

describe('the settings view', () => {
	const start = '00:00 space\n00:05 ,\n';
	const rows = settingRows({ preferences: { colours: 'dark', keys: {}, times: {} }, show });
	const rowOf = (id: string) => rows.findIndex(({ name }) => name === actionName(id));
	const downTo = (id: string) => Array.from({ length: rowOf(id) }, () => 'down').join(' ');

	test('goes round the colours', () => {
		const { screen } = playShow(show, `${start}00:06 enter !screen\n00:08 enter !screen`);
		expect([...screen.matchAll(/colours +(\w+) +enter/g)].map(([, look]) => look)).toEqual([
			'amber',
			'grey',
		]);
		expect(screen).toContain('The colours are amber now.');
	});
	test('changes a key at once, in footer and hints too', () => {
		const { states, screen } = playShow(
			show,
			`${start}00:06 ${downTo('break')} enter ; !screen\n00:30 esc !screen\n00:31 ; 1\n00:33 enter`,
		);
		expect(screen).toMatch(/; break/);
		expect(screen).toContain('; is the key for string break now.');
		expect(states.at(-1)?.players.ash.holds).toBe('S1');
	});
	test('says which action has the key already, and asks on', () => {
		const { screen } = playShow(show, `${start}00:06 ${downTo('break')} enter t !screen b !screen`);
		expect(screen).toContain('t is the key for ready.');
		expect(screen).toContain('b is the key for string break now.');
	});
});

describe('own times in the settings view', () => {
	const own = showFrom(`format: rackside/1
players: [{id: ash}]
times: {all: {walk: 8s}}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, times: {wipe: 5s}}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: E standard}
songs: [{id: one, hands: {ash: A1}}, {id: two, hands: {ash: {instrument: A2, capo: 2}}}]
set: [one, two]
`);
	const rows = settingRows({ preferences: { colours: 'dark', keys: {}, times: {} }, show: own });
	const downTo = (name: string) =>
		Array.from({ length: rows.findIndex((one) => one.name === name) }, () => 'down').join(' ');
	const view = (keys: string) => playShow(own, `00:00 space\n00:05 ,\n00:06 ${keys} !screen`);

	test('say what they are and where that comes from', () => {
		const { screen } = view('down');
		expect(screen).toMatch(/capo +0:10 +built in/);
		expect(screen).toMatch(/walk, each way +0:10 +show file 0:08/);
		expect(screen).toMatch(/wipe +0:15 +show file 0:05, some/);
	});

	test('are typed as in a show file, and count from then on, in this night too', () => {
		const { screen, states } = view(`${downTo('capo')} enter "1m5s" enter`);
		expect(screen).toMatch(/> capo +1:05 +yours, built in 0:10/);
		expect(screen).toContain('Capo: 1:05, from now on and in every show read later.');
		expect(states.at(-1).todo[0]).toMatchObject({ instrument: 'A2', seconds: 45 + 65 });
	});

	test('outlast a stop of the program, and are taken back like any step', () => {
		const { screen, states } = playShow(
			own,
			`00:00 space\n00:05 ,\n00:06 ${downTo('capo')} enter "20" enter
00:20 !kill\n00:21 !state\n00:22 u !state , ${downTo('capo')} enter !screen "20" enter !state`,
		);
		expect(states.map(({ todo }) => todo[0].seconds)).toEqual([65, 55, 65, 65]);
		expect(screen).toMatch(/> capo +0:20 +tonight 0:10/);
		expect(screen).toMatch(
			/^ +Tonight uses 0:10 until you change it here or reload the show file with v\.$/m,
		);
	});

	test('are in the log', () => {
		const { screen } = view(`${downTo('capo')} enter "20" enter esc tab tab tab`);
		expect(screen).toContain('own time, capo: 0:20');
	});

	test('go back to the built-in one', () => {
		const { screen, states } = view(`${downTo('capo')} enter "20" enter enter !screen delete`);
		expect(screen).toMatch(/capo, now 0:20 yours:/);
		expect(screen).toMatch(/delete back to the built-in 0:10/);
		expect(screen).toContain('Capo: 0:10 as built in, from now on');
		expect(states.at(-1).todo[0].seconds).toBe(55);
	});

	test.each([
		['"4x" enter', '4x is not a time in whole seconds such as 45s, 4m30s or 1:30.'],
		['enter', 'Nothing is not a time'],
		['"-5" enter', '-5 is not a time'],
		['"30h" enter', '30h is not a time'],
	])('typed wrong are refused in words: %s', (keys, words) => {
		const { screen, states } = view(`${downTo('capo')} enter ${keys}`);
		expect(screen).toContain(words);
		expect(states.at(-1).todo[0].seconds).toBe(55);
	});

	test('of which the show file has its own say so while they are typed', () => {
		const { screen } = view(`${downTo('walk, each way')} enter`);
		expect(screen).toContain('The show file says 0:08, and comes first tonight.');
	});
});
