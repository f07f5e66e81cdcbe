// Given this history of boards and packs, when that is asked, then these entries; and what they come to.

import { expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { apply, applyAll } from '../../src/session/apply.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import type { Decision } from '../../src/session/decision.ts';
import { openSession } from '../../src/session/open-session.ts';
import { readAgain } from '../../src/session/read-again.ts';
import type { Session } from '../../src/session/session.ts';
import { showFrom } from '../plan/show-from.ts';

const text = (pedals: string) => `
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
packs: [{id: P1, channel: "11"}, {id: P2, channel: "12"}]
boards: {bo: ${pedals}}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, pack: P1}
  - {id: A4, name: Anchor, slot: "4", kind: electric-6, tuning: drop D, pack: P1}
  - {id: A5, name: Ember, slot: "5", kind: electric-6, tuning: drop D, pack: P2}
songs:
  - {id: one, title: One, board: {bo: {drive: on}}, cues: [{at: V2, bo: {boost: on}}]}
set: [one]
`;
const show = showFrom(text('[{id: drive, name: Drive}, {id: boost, name: Boost}]'));

const given = (...entries: readonly Entry[]): Session => applyAll(openSession(show), entries);
const when = (session: Session, command: Command): Decision => decide(session, command, 9);
const entriesOf = (decision: Decision): readonly Entry[] =>
	decision.ok ? decision.entries : expect.unreachable(decision.why.code);

const began: Entry = { k: 'song-began', at: 1, item: '1' };
const cue: Entry = { k: 'cue-reached', at: 2, index: 1 };
const stuck: Entry = { k: 'pedal-stuck', at: 1, incident: '1', player: 'bo', pedal: 'drive' };
const freed: Entry = { k: 'pedal-freed', at: 3, player: 'bo', pedal: 'drive' };
const handed = (instrument: string): Entry => ({
	k: 'handed-over',
	at: 1,
	by: 'plan',
	player: 'ash',
	instrument,
});
const suspected: Entry = { k: 'pack-suspected', at: 2, player: 'ash', pack: 'P1' };
const memo: Entry = { k: 'memo-written', at: 5, words: 'low' };
const board = ({ boards }: Session) => boards.bo?.context;

test('a pedal marked stuck is an incident, and stays as believed through cues', () => {
	const onNow = given(began, { k: 'incident-noted', at: 1, incident: '1' });
	const asked = { player: 'bo', pedal: 'drive' } as const;
	expect(when(onNow, { do: 'mark-pedal-stuck', ...asked })).toEqual({
		ok: true,
		entries: [{ k: 'pedal-stuck', at: 9, ...asked }],
	});
	const after = given(began, stuck, cue);
	expect(board(after)).toEqual({
		pedals: { drive: { on: true }, boost: { on: true } },
		stuck: ['drive'],
	});
	expect(after.incidents).toMatchObject([
		{ id: '1', kind: 'pedal', player: 'bo', pedal: 'drive', isOpen: false },
	]);
});

test('freed it is believed as it was until the next cue', () => {
	const free = given(began, stuck, cue, freed);
	expect(board(free)).toEqual({
		pedals: { drive: { on: true }, boost: { on: true } },
		stuck: [],
	});
	expect(board(apply(free, cue))?.pedals.drive).toEqual({ on: false });
});

test('who sees a stuck pedal is believed, and it stays stuck', () => {
	const seen = given(began, stuck, {
		k: 'pedal-corrected',
		at: 2,
		player: 'bo',
		pedal: 'drive',
		on: false,
	});
	expect(board(apply(seen, began))).toMatchObject({
		pedals: { drive: { on: false } },
		stuck: ['drive'],
	});
});

test('marked twice, freed unmarked or on no board, it is refused in words', () => {
	const asked = { player: 'bo', pedal: 'drive' } as const;
	expect(when(given(stuck), { do: 'mark-pedal-stuck', ...asked })).toEqual({
		ok: false,
		why: { code: 'stuck-already', player: 'bo', pedal: 'drive' },
	});
	expect(when(given(), { do: 'free-pedal', ...asked })).toEqual({
		ok: false,
		why: { code: 'not-stuck', player: 'bo', pedal: 'drive' },
	});
	for (const name of ['mark-pedal-stuck', 'free-pedal'] as const)
		expect(when(given(), { do: name, player: 'ash', pedal: 'drive' }).ok).toBe(false);
});

test('a show read again keeps what is stuck, but for a pedal that it no longer has', () => {
	const both = showFrom(text('[{id: boost, name: Boost}, {id: drive, name: Drive}]'));
	const other = showFrom(text('[{id: boost, name: Boost}]'));
	expect(board(readAgain(given(began, stuck), both))?.stuck).toEqual(['drive']);
	expect(board(readAgain(given(began, stuck), other))).toMatchObject({ stuck: [] });
});

test('a suspect pack is put on by no hand-over, and what has another changes it', () => {
	const worn = given(handed('A1'));
	expect(worn.players.ash?.pack).toBe('P1');
	const changed = given(
		handed('A1'),
		suspected,
		{ k: 'pack-changed', at: 3, player: 'ash', pack: 'P2' },
		handed('A4'),
	);
	expect(changed.players.ash).toMatchObject({ holds: 'A4', pack: 'P2' });
	expect(given(handed('A1'), suspected, handed('A5')).players.ash?.pack).toBe('P2');
	expect(given(suspected, handed('A1')).players.ash?.pack).toBeNull();
	expect(given(suspected, { k: 'pack-cleared', at: 3, pack: 'P1' }, handed('A1'))).toMatchObject({
		players: { ash: { pack: 'P1' } },
		suspectPacks: [],
	});
});

test('choosing a suspect pack clears it, and so does naming it', () => {
	const session = given(handed('A5'), suspected);
	const chosen = entriesOf(when(session, { do: 'change-pack', player: 'bo', pack: 'P1' }));
	expect(chosen).toEqual([
		{ k: 'pack-cleared', at: 9, pack: 'P1' },
		{ k: 'pack-changed', at: 9, player: 'bo', pack: 'P1' },
	]);
	expect(applyAll(session, chosen)).toMatchObject({
		suspectPacks: [],
		packChange: { player: 'bo', from: null, to: 'P1' },
	});
	expect(entriesOf(when(session, { do: 'clear-pack', pack: 'P1' }))).toEqual([
		{ k: 'pack-cleared', at: 9, pack: 'P1' },
	]);
	expect(when(session, { do: 'clear-pack', pack: 'P2' }).ok).toBe(false);
});

test('suspect twice, or without one on, is refused in words', () => {
	expect(when(given(handed('A1'), suspected), { do: 'suspect-pack', player: 'ash' })).toEqual({
		ok: false,
		why: { code: 'suspect-already', pack: 'P1' },
	});
	expect(when(given(), { do: 'suspect-pack', player: 'ash' })).toEqual({
		ok: false,
		why: { code: 'no-pack-on', player: 'ash' },
	});
});

test('a change of packs stands until anything else is recorded, notes of the program aside', () => {
	const change: Entry = { k: 'pack-changed', at: 3, player: 'ash', pack: 'P2' };
	const changed = given(handed('A1'), change);
	expect(changed.packChange).toEqual({ player: 'ash', from: 'P1', to: 'P2' });
	const note: Entry = { k: 'resumed', at: 4, seconds: 5, boot: '' };
	const told: Entry = { k: 'plan-told', at: 4, hands: [], slots: {} };
	expect(applyAll(changed, [told, note]).packChange).not.toBeNull();
	expect(apply(changed, memo).packChange).toBeNull();
	expect(apply(changed, handed('A1')).packChange).toBeNull();
});

test('ready as it stands is refused while a string is down, and done with the strings that were due', () => {
	const broken = given({ k: 'string-broke', at: 1, incident: '1', instrument: 'A1', player: null });
	expect(when(broken, { do: 'make-ready', instrument: 'A1', due: null })).toEqual({
		ok: false,
		why: { code: 'not-ready-as-it-stands', instrument: 'A1' },
	});
	const tuning = show.instruments[0]?.tuning;
	if (!tuning) throw new Error('the show has instruments');
	const done = entriesOf(
		when(broken, { do: 'make-ready', instrument: 'A1', due: { tuning, capo: 0 } }),
	);
	expect(done).toMatchObject([{ k: 'made-ready', isRestrung: true }]);
	expect(applyAll(broken, done).instruments.A1?.context.stringsDown).toEqual([]);
});
