// What the rows say where something was left open or made wrong: a break that was not answered when its
// song ended, hands left empty, the wrong kind of instrument, work that nobody has marked. Times are our
// own; the seconds of each piece of work are common practice, no source.

import { describe, expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from './play.ts';

const GEAR = `
players: [{id: ash, name: Ash, plays: guitar}, {id: cleo, name: Cleo, plays: bass}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: D, name: Anchor, slot: "2", kind: electric-6, tuning: drop D, for: [ash]}
  - {id: S, name: Spare, slot: s, kind: electric-6, tuning: E standard, spare: true}
  - {id: C, name: Coal, slot: "5", kind: bass-4, tuning: E standard, for: [cleo]}
  - {id: K, name: Clinker, slot: "6", kind: bass-4, tuning: drop D, for: [cleo]}
`;

const show = showFrom(`${GEAR}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A}, cleo: {instrument: C}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: D}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A}, cleo: {instrument: K}}}
set: [one, {song: two, gap: 30s}, {song: three, gap: 30s}]
`);

const rows = (screen: string): readonly string[] =>
	screen.split('\n').map((line) => line.trimEnd());
const row = (screen: string, begin: string): string =>
	rows(screen).find((line) => line.startsWith(begin)) ?? '';

describe('a break put off until its song has ended', () => {
	const { screen } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n03:30 b 5\n03:32 esc\n04:00 space\n04:02 !screen',
	);
	test('the row names what the next song is played on, not a way through the last', () => {
		expect(row(screen, 'CLEO')).toBe('CLEO      now        6 Clinker for 2 Two       RETUNE 0:55');
		expect(screen).not.toContain('PLAY ON');
	});
	const asked = playShow(
		show,
		'-01:00 !ready\n00:00 space\n03:30 b 5\n03:32 esc\n04:00 space\n04:02 b\n04:03 !screen\n04:04 enter\n04:05 !state',
	);
	test('the list of backups has it first, and enter gives it', () => {
		expect(row(asked.screen, '  TAKE')).toMatch(/^ {2}TAKE {2}6 Clinker {2}1:05 E std/);
		expect(asked.states[0].players.cleo.holds).toBe('K');
		expect(asked.states[0].incidents[0]).toMatchObject({ standIn: 'K' });
	});
});

describe('hands left empty in a song that has something for them', () => {
	const { states, screen } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n01:00 x a -\n01:02 !state\n01:02 !screen',
	);
	test('it is said, with what the song wants', () => {
		expect(states[0].warnings[0]).toMatchObject({
			code: 'empty-hands',
			player: 'ash',
			text: "Ash's hands are empty; One wants A",
		});
		expect(row(screen, 'WATCH')).toContain("Ash's hands are empty; One wants 1 Amber");
	});
});

describe('a guitar recorded where the bass is played', () => {
	const { states } = playShow(show, '-01:00 !ready\n00:00 space\n01:00 x x c s\n01:02 !state');
	test('the instrument is wrong, and not its tuning', () => {
		expect(states[0].warnings[0].text).toBe('Cleo has S; One wants C');
	});
});

describe('enter where a guitar was not retuned', () => {
	const again = showFrom(`${GEAR}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A}, cleo: {instrument: C}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: S, tuning: drop D}, cleo: {instrument: K}}}
set: [one, {song: two, gap: 30s}]
`);
	const { screen } = playShow(
		again,
		'-01:00 !ready\n00:00 space\n04:00 space\n04:05 enter\n04:06 !screen',
	);
	test('what it would record as done is named', () => {
		expect(screen).toContain('Ash: S Spare, drop D, no capo, NOT RETUNED');
		expect(screen).not.toContain('Cleo: 6 Clinker, drop D, no capo, NOT');
	});
});

describe('what is to be handed is in the hands of somebody else', () => {
	const { screen } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n01:00 x x c 2\n01:05 !screen --size 100x30',
	);
	test('the row says in whose', () => {
		expect(row(screen, 'ASH')).toContain('CLEO HAS IT, TOUCH UP 1:00');
	});
});

describe('who was to stay on a guitar that somebody else got', () => {
	const { states } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n03:00 x 1\n03:02 x c 1\n03:04 !state\n04:00 space\n04:02 !state',
	);
	test('the plan hands them the next one after all', () => {
		expect(states[0].players.ash).toMatchObject({ holds: null });
		expect(states[1].players.ash.next).toMatchObject({ song: 'two', instrument: 'D' });
	});
});
