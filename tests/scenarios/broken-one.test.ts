// A string goes a minute before the end of a song, and the next two want that very instrument: what is said
// at once, what one key records, and what the report says. Seconds of work are common practice, no source.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { reportMarkdown } from '../../src/report/report-markdown.ts';
import { loadShow } from './load-show.ts';
import { play, playShow, type State } from './play.ts';
import { reportOf } from './report-of.ts';

/** Into the third song, each of them three minutes with 15 s between. */
const third =
	'-01:00 !ready\n00:00 space\n03:00 space\n03:15 space\n06:15 space\n06:30 space\n08:00 t 7\n';
const broken = `${third}08:30 b 1\n08:40 enter\n`;
const aboutA1 = ({ todo }: State): State[] => todo.filter((one: State) => one.instrument === 'A1');
const firstRows = (screen: string) => screen.split('\n').slice(0, 4).join('\n');

describe('at once', () => {
	const { states, screen } = play('broken', `${broken}08:42 !state !screen\n`);
	const [state] = states;
	test('the player keeps the backup for the next song, with the capo that it wants', () => {
		expect(state.players.ash).toMatchObject({
			holds: 'S1',
			stays: { song: 'four', instrument: 'S1', tuning: 'E standard', capo: 2, for: 'A1' },
		});
	});
	test('the tall row says so as the act, and never speaks of the broken one as coming', () => {
		expect(firstRows(screen)).toMatch(/^ASH +in +0:48 S Spare for 4 Four +KEEPS S, CAPO ON 2$/m);
		expect(firstRows(screen)).toContain('backup for 1 Amber');
		expect(screen).not.toMatch(/^ASH .*1 Amber for/m);
		expect(screen).toContain('enter keeps S, capo on 2');
	});
	test('the restring is wanted by the ninth song, its touch-up while that is fresh', () => {
		// Nine begins 34:00, its hand-over 15 s before. New strings are to be checked again after 5 min
		// unless the file says otherwise, so the touch-up comes not before 29:00.
		expect(aboutA1(state)).toMatchObject([
			{ job: 'restring', song: 'nine', seconds: 225, wanted: '00:33:00' },
			{ job: 'touch-up', song: 'nine', seconds: 45, wanted: '00:33:45' },
		]);
	});
});

describe('in the gap', () => {
	const { states, screen } = play(
		'broken',
		`${broken}09:30 space\n09:32 !state\n09:35 enter !state !screen\n09:45 space !state\n12:45 space\n12:46 !state !screen\n13:00 space !state\n`,
	);
	const [gap, recorded, four, gapAfter, five] = states;
	test('enter records the capo, and the row stays until the song starts', () => {
		expect(gap.instruments.S1.capo).toBe(0);
		expect(recorded.instruments.S1.capo).toBe(2);
		expect(recorded.players.ash.stays).toMatchObject({ song: 'four', capo: 2, for: 'A1' });
		expect(firstRows(screen)).toMatch(/^ASH .*S Spare for 4 Four +KEEPS S$/m);
		expect(four.players.ash).toMatchObject({ holds: 'S1', since: '00:08:40' });
	});
	test('work that is wanted sooner comes before the restring', () => {
		const jobs = gapAfter.todo.map((one: State) => [one.instrument, one.job]);
		const restring = jobs.findIndex(([id, job]: string[]) => id === 'A1' && job === 'restring');
		const sooner = jobs.findIndex(([id]: string[]) => id === 'A2');
		expect(sooner).toBeGreaterThanOrEqual(0);
		expect(sooner).toBeLessThan(restring);
	});
	test('for the fifth song the capo comes off, and its start records that with the hand-over', () => {
		expect(gapAfter.players.ash.stays).toMatchObject({ song: 'five', capo: 0, for: 'A1' });
		expect(screen).toContain('enter handed, keeps S, capo off');
		expect(five.instruments.S1.capo).toBe(0);
		expect(five.players).toMatchObject({ ash: { holds: 'S1' }, bo: { holds: 'B3' } });
		expect(five.instruments.A1.place).toBe('bench');
	});
});

describe('the report', () => {
	const played = '09:30 space\n09:45 space\n12:45 space\n13:00 space\n16:00 space\n';
	test.each([
		['with space alone', played],
		['with enter in the gap', played.replace('09:45', '09:35 enter\n09:45')],
	])('names both songs and what the backup was for: %s', (_, keys) => {
		const page = reportMarkdown(reportOf('broken', `${broken}${keys}`));
		const section = page.slice(page.indexOf('## Played on a backup')).split('\n## ')[0];
		expect(section).toMatch(
			/song 4 Four: Ash played S Spare in E standard, capo 2 for 3:00, backup for 1 Amber/,
		);
		expect(section).toMatch(
			/song 5 Five: Ash played S Spare in E standard for 3:00, backup for 1 Amber/,
		);
		expect(page).toContain('Ash keeps S Spare for Four, capo 2, backup for 1 Amber');
		expect(page).not.toContain('Played on something else');
	});
	test('calls what happens between two songs one of the next', () => {
		const report = reportOf('broken', `${third}09:30 space\n09:35 b s\n09:37 0\n09:45 space\n`);
		expect(report.incidents).toMatchObject([{ position: null, song: null, before: 'Four' }]);
		const page = reportMarkdown(report);
		expect(page).toMatch(/^- 12:09: before Four, string break, S Spare/m);
		const three = report.songs.find(({ song }) => song === 'three');
		expect(three?.happened.map(({ words }) => words).join('\n')).not.toContain('string break');
	});
});

test('nothing to hand says NO BACKUP, with the reason', () => {
	// All that Ash may have is out tonight.
	const out = ['s', '2', '3', '4', '1']
		.map((slot, at) => `08:${40 + 3 * at} f ${slot} enter\n`)
		.join('');
	const { states, screen } = play('broken', `${third}${out}08:58 !state !screen\n`);
	expect(states[0].warnings.map((one: State) => one.code)).toContain('missing');
	expect(screen).toMatch(/^ASH .*for 4 Four.*NO BACKUP/m);
	expect(screen).toContain('1 Amber is out tonight');
	expect(screen).not.toContain('NOTHING');
});

test('a restring is said by itself under its peg: the tuning beside it would be read as the strings', () => {
	const { screen } = playShow(
		loadShow(join(import.meta.dirname, '../../shows/club.yaml')),
		'-01:00 !ready\n00:00 space\n00:30 b\n00:32 2\n00:36 !screen',
	);
	const rows = screen.split('\n');
	expect(rows.find((row) => row.startsWith('TO DO'))).toContain('RESTRING, Eb std');
	const pegs = rows.slice(
		0,
		rows.findIndex((row) => row.startsWith('TO DO')),
	);
	const under = pegs.filter((row) => row.includes('RESTRING'));
	expect(under.map((row) => row.slice(13, 26).trim())).toEqual(['RESTRING']);
});
