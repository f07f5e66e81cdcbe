// What is read when a key can do nothing: things by the names that people use, never by their ids.

import { expect, test } from 'vitest';
import type { Refusal } from '../../src/session/refusal.ts';
import { refusalWords } from '../../src/words/refusals.ts';
import { showFrom } from '../plan/show-from.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
packs: [{id: P1, channel: "11"}]
boards: {bo: [{id: drive, name: Drive}]}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, pack: P1}
songs: [{id: one, title: Lantern}]
set: [one]
`);

test.each<[string, Refusal]>([
	['Lantern is on now. d ends it.', { code: 'on-now', song: 'one' }],
	['Lantern was played. p adds it again.', { code: 'played', song: 'one' }],
	['Lantern is already dropped.', { code: 'dropped-already', song: 'one' }],
	['Lantern is already there.', { code: 'there-already', song: 'one' }],
	['No song before this one.', { code: 'no-song-beside', side: 'before', isOn: true }],
	['No song after this one. d ends it.', { code: 'no-song-beside', side: 'after', isOn: true }],
	['No song after this one.', { code: 'no-song-beside', side: 'after', isOn: false }],
	["Bo's Drive is already marked stuck. r 0 clears it.", pedal('stuck-already')],
	["Bo's Drive is not marked stuck.", pedal('not-stuck')],
	['Pack P1 is already suspect. w - clears it.', { code: 'suspect-already', pack: 'P1' }],
	['Ash has no pack on.', { code: 'no-pack-on', player: 'ash' }],
	['Ash already has 1 Amber.', { code: 'has-already', player: 'ash', instrument: 'A1' }],
	["Ash's hands are already empty.", { code: 'has-already', player: 'ash', instrument: null }],
	['Ash has 1 Amber.', { code: 'in-hands', player: 'ash', instrument: 'A1' }],
	[
		'Ash has 1 Amber: not to be marked ready. c logs its tuning or capo.',
		{ code: 'worked-in-hands', player: 'ash', instrument: 'A1' },
	],
	[
		'1 Amber has a string down: not ready as it stands.',
		{ code: 'not-ready-as-it-stands', instrument: 'A1' },
	],
	['1 Amber is out tonight. r brings it back.', { code: 'out', instrument: 'A1' }],
])('%s', (sentence, refusal) => {
	expect(refusalWords(show, refusal)).toBe(sentence);
});

function pedal(code: 'stuck-already' | 'not-stuck'): Refusal {
	return { code, player: 'bo', pedal: 'drive' };
}
