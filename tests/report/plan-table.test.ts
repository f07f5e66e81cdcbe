// The plan for the eye: never wider than a phone held sideways, and what it says of one night.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { considered } from '../../src/plan/advice/alternatives.ts';
import { slotStandIns } from '../../src/plan/backups/slot-stand-ins.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { readyAtZero } from '../../src/plan/timed-choice/before-doors.ts';
import { planTable } from '../../src/report/plan-table.ts';
import { whyTable } from '../../src/report/why-table.ts';
import type { Show } from '../../src/showfile/show.ts';
import { clubShow } from '../plan/club-gear.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { smallShow, unmeasuredShow } from './small-show.ts';

function table(show: Show): readonly string[] {
	const plan = planBeforeDoors(show);
	const standIns = slotStandIns(readyAtZero(show), { plan, costs: 'handful' });
	return planTable(show, { plan, sentence: 'It works.', standIns }).split('\n');
}

function why(show: Show, song: string): readonly string[] {
	const plan = planBeforeDoors(show);
	return whyTable(show, { song, plan, considered: considered(show, plan, song) }).split('\n');
}

test.each(['club', 'folk', 'festival', 'first'])('%s is at most 80 columns wide', (name) => {
	const show = loadShow(join(import.meta.dirname, '../../shows', `${name}.yaml`));
	for (const line of table(show)) expect(line.length).toBeLessThanOrEqual(80);
	for (const { id } of show.songs) {
		for (const line of why(show, id)) expect(line.length).toBeLessThanOrEqual(80);
	}
});

test('the sentence first, then song by song who gets what, whether it fits, and by when', () => {
	const lines = table(smallShow());
	expect(lines[0]).toBe('It works.');
	const from = lines.findIndex((line) => line.startsWith('  2 Lantern'));
	// Gravel begins 8:15, 15 s after Lantern: A1, back at 4:30, wants 60 s by 8:00.
	expect(lines.slice(from, from + 6)).toEqual([
		expect.stringMatching(/^ {2}2 Lantern +20:04 gap 0:30 {2}one hand-over fits, 0:15 left$/),
		expect.stringMatching(/^ {5}ASH +4 Anchor drop D +ready$/),
		expect.stringMatching(/^ {2}3 =Gravel\|x +20:08 gap 0:15 {2}one hand-over fits, nothing left$/),
		expect.stringMatching(/^ {5}ASH +1 Amber E std +touch-up 1:00, start by 20:07$/),
		expect.stringMatching(/^ {2}4 Tide +20:11 gap 0:15 {2}no hand-over$/),
		expect.stringMatching(/^ {5}ASH +1 Amber E std capo 2 +keeps it, capo on 2$/),
	]);
});

test('times behind a song without a length are about', () => {
	const lines = table(unmeasuredShow());
	for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
	const from = lines.findIndex((line) => line.startsWith('  2 Lantern'));
	expect(lines[from]).toMatch(/^ {2}2 Lantern +20:04 gap 0:30/);
	expect(lines[from + 2]).toMatch(/^ {2}3 =Gravel\|x +about 20:07 gap 0:15/);
	expect(lines[from + 3]).toMatch(/touch-up 1:00, start by about 20:06$/);
	expect(lines.slice(0, from).join(' ')).toContain('before =Gravel|x at about 20:07');
});

test('each piece of work has its line, and a backup says for what', () => {
	const lines = table(
		clubShow(`
show: {recheck-after: 15m}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4, tuning: drop C}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A3, tuning: drop D}}}
set: [one, {interval: 20m}, two, {song: three, gap: 60s}]
`),
	);
	const from = lines.findIndex((line) => line.startsWith('  2 Two'));
	expect(lines.slice(from + 1, from + 3)).toEqual([
		expect.stringMatching(/^ {5}ASH +4 Anvil drop C +retune \d:\d\d, start by \d+:\d\d$/),
		expect.stringMatching(/^ +touch-up 0:45, start by \d+:\d\d$/),
	]);
	// A floating bridge will not go into drop D: drop C goes on, with a capo.
	const three = lines.findIndex((line) => line.startsWith('  3 Three'));
	expect(lines.slice(three + 1, three + 3)).toEqual([
		expect.stringMatching(/^ {5}ASH +4 Anvil drop C capo 2 +keeps it, capo on 2$/),
		expect.stringMatching(/^ +backup for 3 Argent$/),
	]);
});

test('work that is late is short by one figure wherever it stands, and has no latest start', () => {
	const lines = table(
		clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A1, tuning: drop D}, bo: {instrument: B3}}}
set: [one, two]
`),
	);
	const tight = lines.slice(lines.indexOf('Tight places') + 1, lines.indexOf('Tight places') + 3);
	const of = tight.find((line) => line.includes('retune 1 Amber for Two'));
	const short = /, (\d:\d\d) short$/.exec(of ?? '')?.[1];
	expect(of).not.toContain('start by');
	const warnings = lines.slice(lines.indexOf('Warnings'));
	expect(warnings).toContain(`  1 Amber is ${short} short for Two`);
	expect(lines).toContainEqual(expect.stringMatching(new RegExp(` ASH .* ${short} short$`)));
});

test('what does not fit its gap is counted', () => {
	const lines = table(
		clubShow(`
songs:
  - {id: one, title: One, length: "4:00", ends: segue, hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, title: Two, length: "4:00", ends: segue, hands: {ash: {instrument: A4}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B3}}}
set: [one, two, three]
`),
	);
	const [two, three] = ['  2 Two', '  3 Three'].map((begin) =>
		lines.find((line) => line.startsWith(begin)),
	);
	expect(two).toMatch(/one hand-over DOES NOT FIT$/);
	expect(three).toMatch(/2 hand-overs DO NOT FIT: 2 too many$/);
});

describe('why', () => {
	const show = clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A2}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {needs: {kind: electric-6, sounds: E standard, prefer: A1}}}}
set: [one, two]
`);
	test('what was considered stands beside what is planned, with what each costs', () => {
		const lines = why(show, 'two').map((line) => line.split(/ {2,}/));
		const names = lines.find((line) => line.includes('preference'))?.slice(1) ?? [];
		// What is the same with all of them has no column.
		expect(names).not.toContain('missing');
		const cost = (name: string) => {
			const cells = lines.find(([, what]) => what?.includes(name))?.slice(2) ?? [];
			return ['hand-overs', 'preference'].map((one) => cells[names.indexOf(one)]);
		};
		// Aspen goes on with a capo: no hand-over. Not preferred, 10, and a capo, 1.
		expect(lines.find(([first]) => first === 'planned')?.[1]).toBe('2 Aspen Eb std capo 1');
		expect(cost('Aspen')).toEqual(['0', '11']);
		expect(cost('Amber')).toEqual(['1', '0']);
		expect(cost('Argent')).toEqual(['1', '10']);
		// A spare besides: 15.
		expect(cost('Spare')).toEqual(['1', '15']);
	});
	test('a song without a change says that', () => {
		const quiet = clubShow(`
songs: [{id: one, title: One, hands: {ash: {instrument: A1}}}, {id: two, title: Two}]
set: [one, two]
`);
		expect(why(quiet, 'two')[0]).toContain('Two names nothing');
	});
});

test('what strings stand off equal temperament, under the change', () => {
	const lines = table({ ...smallShow(), offsets: [{ player: 'ash', cents: { 3: -3 } }] });
	const from = lines.findIndex((line) => line.includes('4 Anchor drop D'));
	expect(lines[from + 1]).toMatch(/^ {14}string 3 -3 c$/);
});

test.each(['club', 'folk', 'festival', 'first'])('nothing of the plan of %s is cut', (name) => {
	const show = loadShow(join(import.meta.dirname, '../../shows', `${name}.yaml`));
	expect(table(show).filter((line) => line.includes('…'))).toEqual([]);
});
