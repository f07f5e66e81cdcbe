// What the technician names for a player in one song tonight: it counts there before what the song says, and
// nowhere else.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { TonightPart } from '../../src/journal/entry.ts';
import { namedTonight } from '../../src/keys/named-tonight.ts';
import { applyAll } from '../../src/session/apply.ts';
import { cellAt } from '../../src/session/cells.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { findInstrument, findSongItem } from '../../src/session/find.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { tuningCalled } from '../../src/tuning/tuning.ts';
import { loadShow } from '../scenarios/load-show.ts';

// Harbour: Ash A1, Bo B1, Cleo C1. Lantern: Ash A4 (drop D). Gravel: Ash A1.
const session = openSession(loadShow(join(import.meta.dirname, '../scenarios/shows/opening.yaml')));
const named = (item: string, part: TonightPart | null): Command => ({
	do: 'name-tonight',
	item,
	player: 'ash',
	part,
});
const after = (now: Session, command: Command): Session => {
	const decision = decide(now, command, 1000);
	if (!decision.ok) throw new Error(decision.why.code);
	return applyAll(now, decision.entries);
};
const cell = (now: Session, key: string, player = 'ash') => {
	const item = findSongItem(now, key);
	return item === null ? null : cellAt(now, { item, point: 0, player }).part;
};
const part = (now: Session, id: string, key: string, player = 'ash') => {
	const instrument = findInstrument(now, id);
	const item = findSongItem(now, key);
	if (instrument === null || item === null) throw new Error('no such thing in the show');
	return namedTonight(now, instrument, { item, player });
};

test('it counts in that song before what the song says, and in no other', () => {
	const now = after(session, named('2', part(session, 'S1', '2')));
	expect(cell(now, '2')).toMatchObject({ kind: 'named', instrument: 'S1' });
	expect(cell(now, '1')).toEqual(cell(session, '1'));
	expect(cell(now, '3')).toEqual(cell(session, '3'));
	expect(cell(now, '2', 'bo')).toEqual(cell(session, '2', 'bo'));
});

test('null gives the song its own word back', () => {
	const now = after(session, named('2', { kind: 'none' }));
	expect(cell(now, '2')).toEqual({ kind: 'none' });
	expect(cell(after(now, named('2', null)), '2')).toEqual(cell(session, '2'));
});

test('what is so already, what is on and what was played is refused', () => {
	expect(decide(session, named('2', null), 0)).toMatchObject({ ok: false });
	const on = after(session, { do: 'step', handOvers: [] });
	expect(decide(on, named('1', { kind: 'none' }), 0)).toMatchObject({ ok: false });
	expect(decide(on, named('9', { kind: 'none' }), 0)).toMatchObject({ ok: false });
});

test('it is in the tuning and capo that sound like the cell with the least work', () => {
	// Drop D on one in E standard: one string, 60 s. No capo gets there with less.
	expect(part(session, 'S1', '2')).toMatchObject({ tuning: { name: 'drop D' }, capo: 0 });
	// E standard on one a half-step down: capo 1 and a touch-up, 55 s, against 90 s for all strings.
	expect(part(session, 'A2', '3')).toMatchObject({ tuning: { name: 'half-step down' }, capo: 1 });
});

test('where it cannot sound like it, it is as it stands', () => {
	// A floating bridge is not re-pitched, and E standard is no drop D at any fret.
	expect(part(session, 'A3', '2')).toMatchObject({ tuning: { name: 'E standard' }, capo: 0 });
	const capo = after(session, {
		do: 'correct-instrument',
		instrument: 'A3',
		tuning: tuningCalled('E standard', 'electric-6'),
		capo: 2,
	});
	expect(part(capo, 'A3', '2')).toMatchObject({ capo: 2 });
	// A five-string bass for the four strings of a bass.
	expect(part(session, 'C2', '1', 'cleo')).toMatchObject({ tuning: { name: 'B standard' } });
});

test('named again, it goes by the song, not by what was named before', () => {
	const now = after(session, named('2', part(session, 'A3', '2')));
	expect(part(now, 'S1', '2')).toMatchObject({ tuning: { name: 'drop D' } });
});
