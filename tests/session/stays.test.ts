// Who stays on what they have: given this night, when that is recorded, then so the hands are, and nothing
// else is handed for that song.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { applyAll } from '../../src/session/apply.ts';
import type { Command, HandOver, Staying } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { openFromPoint } from '../../src/session/settled.ts';
import { loadShow } from '../scenarios/load-show.ts';

const show = loadShow(join(import.meta.dirname, '../scenarios/shows/opening.yaml'));
const SECOND = 1000;

const asked = (session: Session, seconds: number, command: Command): Session => {
	const decision = decide(session, command, seconds * SECOND);
	if (!decision.ok) throw new Error(decision.why.code);
	return applyAll(session, decision.entries);
};
const given = (...all: readonly (readonly [number, Command])[]): Session =>
	all.reduce((now, [seconds, command]) => asked(now, seconds, command), openSession(show));

const ash = (instrument: string): HandOver => ({
	player: 'ash',
	instrument,
	tuning: null,
	capo: 0,
});
const step = (handOvers: readonly HandOver[], stays: readonly Staying[] = []): Command => ({
	do: 'step',
	handOvers,
	stays,
});
const stay = (item: string, capo: number): Staying => ({
	item,
	player: 'ash',
	instrument: 'A1',
	capo,
});
const confirm = (...stays: readonly Staying[]): Command => ({
	do: 'hand-over',
	handOvers: [],
	stays,
});
const has = (instrument: string | null, item?: string): Command => ({
	do: 'exchange',
	player: 'ash',
	instrument,
	...(item === undefined ? {} : { item }),
});

/** Harbour (item 1) was played on A1; Lantern (item 2) comes. */
const between = given([0, step([ash('A1')])], [240, step([])]);

describe('recorded between songs', () => {
	const stayed = asked(between, 245, confirm(stay('2', 2)));
	test('the capo is where it was said to go, and nobody got anything', () => {
		expect(stayed.instruments.A1).toMatchObject({ value: 'inHands', context: { capo: 2 } });
		expect(stayed.players.ash).toMatchObject({ holds: 'A1', sinceMs: 0 });
	});
	test('starting the song hands nothing to them, and records it no second time', () => {
		const decision = decide(stayed, step([ash('A4')], [stay('2', 2)]), 255 * SECOND);
		expect(decision).toMatchObject({ ok: true, entries: [{ k: 'song-began', item: '2' }] });
	});
	test('it is refused once it was recorded', () => {
		expect(decide(stayed, confirm(stay('2', 2)), 250 * SECOND)).toMatchObject({ ok: false });
	});
	test('another song called does not go by it', () => {
		const called = asked(stayed, 250, { do: 'choose-next', song: 'gravel' });
		expect(openFromPoint(called, '3', 'ash')).toBe(0);
	});
});

test('starting the song records what was not recorded yet', () => {
	const decision = decide(between, step([], [stay('2', 2)]), 255 * SECOND);
	expect(decision).toMatchObject({
		entries: [{ k: 'song-began' }, { k: 'stayed', item: '2', player: 'ash', capo: 2 }],
	});
	expect(asked(between, 255, step([], [stay('2', 2)])).instruments.A1?.context.capo).toBe(2);
});

test('of what they do not have in hands nothing is recorded', () => {
	const other = asked(between, 242, has('A2'));
	const decision = decide(other, step([], [stay('2', 2)]), 255 * SECOND);
	expect(decision).toMatchObject({ entries: [{ k: 'song-began' }] });
});

describe('said of the coming song while another is on', () => {
	const on = given([0, step([ash('A1')])]);
	test('it holds for that one, and leaves the song on as it was', () => {
		const said = asked(on, 100, has('A1', '2'));
		expect(openFromPoint(said, '2', 'ash')).toBeGreaterThan(0);
		expect(openFromPoint(said, '1', 'ash')).toBe(0);
		const ended = asked(said, 240, step([]));
		expect(ended.settled).toEqual({ item: '2', players: { ash: 0 } });
		const decision = decide(ended, step([ash('A4')]), 255 * SECOND);
		expect(decision).toMatchObject({ entries: [{ k: 'song-began' }] });
	});
	test('it is for that song only', () => {
		const later = given(
			[0, step([ash('A1')])],
			[100, has('A1', '2')],
			[240, step([])],
			[255, step([])],
			[400, step([])],
		);
		expect(openFromPoint(later, '3', 'ash')).toBe(0);
	});
	test('it is said once', () => {
		const said = asked(on, 100, has('A1', '2'));
		expect(decide(said, has('A1', '2'), 110 * SECOND)).toMatchObject({ ok: false });
	});
});

describe('an exchange that names what is in hands', () => {
	test('is no correction of the hand-over just made, which can still be corrected', () => {
		const handed = asked(between, 245, { do: 'hand-over', handOvers: [ash('A4')] });
		const said = asked(handed, 250, has('A4'));
		expect(said.players.ash).toMatchObject({ holds: 'A4', sinceMs: 245 * SECOND });
		const really = asked(said, 260, has('A1'));
		expect(really.players.ash).toMatchObject({ holds: 'A1', sinceMs: 245 * SECOND });
	});
	test('between songs keeps them on it for the next one', () => {
		const said = asked(between, 245, has('A1'));
		const decision = decide(said, step([ash('A4')]), 255 * SECOND);
		expect(decision).toMatchObject({ entries: [{ k: 'song-began' }] });
	});
	test('of empty hands keeps them empty', () => {
		const empty = asked(openSession(show), 0, has(null));
		expect(empty.players.ash).toMatchObject({ holds: null, sinceMs: null });
		expect(decide(empty, step([ash('A1')]), SECOND)).toMatchObject({
			entries: [{ k: 'song-began' }],
		});
	});
});

describe('an exchange as of when it happened', () => {
	const missed = asked(between, 255, step([]));
	const since = (instrument: string, seconds: number): Command => ({
		do: 'exchange',
		player: 'ash',
		instrument,
		sinceMs: seconds * SECOND,
	});
	test('is recorded with that moment', () => {
		const right = asked(missed, 300, since('A4', 255));
		expect(right.players.ash).toMatchObject({ holds: 'A4', sinceMs: 255 * SECOND });
		expect(right.instruments.A1?.context.backAtMs).toBe(255 * SECOND);
	});
	test('is refused where they were given something since', () => {
		const given = asked(missed, 280, has('A2'));
		expect(decide(given, since('A4', 255), 300 * SECOND)).toMatchObject({ ok: false });
	});
});
