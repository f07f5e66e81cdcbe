// `check` and the exit code of `plan`, as they are typed: every risk once, the worst first, each with its line
// and column and with what mends it.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runCommand } from './run-command.ts';

const SHOW = `format: rackside/1
show: {start: "20:00", curfew: "20:10"}
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A2, name: Anchor, slot: "2", kind: electric-6, tuning: drop D}
  - {id: A3, name: Aspen, slot: "3", kind: electric-6, tuning: E standard}
  - {id: U1, name: Hull, slot: "4", kind: upright-4, tuning: E standard}
songs:
  - id: one
    title: One
    length: "4:00"
    hands: {ash: A1, bo: U1}
    ends: segue
  - id: two
    title: Two
    length: "4:00"
    hands:
      ash: A2
      bo: {needs: {kind: mandolin-8, sounds: GDAE}}
  - id: three
    title: Three
    length: "4:00"
    hands: {ash: A1, bo: A3}
set:
  - one
  - two
  - {song: three, gap: 20s}
`;

const folder = mkdtempSync(join(tmpdir(), 'rackside-check-'));
beforeAll(() => writeFileSync(join(folder, 'show.yaml'), SHOW));
afterAll(() => rmSync(folder, { recursive: true }));
const run = (...argv: readonly string[]) =>
	runCommand({ cwd: folder, data: join(folder, 'data') }, ...argv);

describe('check', () => {
	test('says each risk once, the worst and the soonest first, where it is and what mends it', async () => {
		const { code, out } = await run('check', 'show.yaml');
		expect(code).toBe(1);
		const lines = out.trimEnd().split('\n');
		expect(lines).toEqual([
			'show.yaml:20:11: In Two, Bo needs a mandolin sounding GDAE, but nothing on the rack can be that. Bring one that can be this, or name another part.',
			expect.stringMatching(
				/^show\.yaml:27:5: Two follows with no gap, but Ash gets 2 Anchor\. Give the song before it another end and 0:15 of gap, or let them keep/,
			),
			expect.stringMatching(
				/^show\.yaml:28:5: Before Three, hand-overs take 0:30 and the gap is 0:20/,
			),
			expect.stringMatching(/^show\.yaml:2:32: The set ends at about 20:12, .* Start sooner/),
			expect.stringMatching(
				/^show\.yaml:8:5: No backup for 4 Hull in One: there is no other bass\. Bring a backup/,
			),
			'5 to look at.',
		]);
	});

	test('says of a gap with a backup in it what the plan makes of it', async () => {
		// Ash keeps the backup of two songs before, so that Bo's is the one hand-over; nobody gets two things.
		const text = `format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A3, name: Aspen, slot: "1", kind: electric-6, tuning: E standard, bridge: floating}
  - {id: A4, name: Anchor, slot: "2", kind: electric-6, tuning: drop D, for: [ash]}
  - {id: S1, name: Spare, slot: "3", kind: electric-6, tuning: E standard, spare: true}
  - {id: B1, name: Birch, slot: "4", kind: electric-6, tuning: E standard, for: [bo]}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A3, tuning: drop D}, bo: B1}}
  - {id: two, title: Two, length: "4:00", hands: {ash: A4, bo: A4}}
set: [one, {song: two, gap: GAP}]
`;
		const said = async (gap: string) => {
			writeFileSync(join(folder, 'backup.yaml'), text.replace('GAP', gap));
			const { out } = await run('check', 'backup.yaml');
			const plan = JSON.parse((await run('plan', 'backup.yaml', '--json')).out);
			const given = plan.slots.filter(
				(one: { song: string; handOver: boolean }) => one.song === 'two' && one.handOver,
			);
			return { gaps: out.split('\n').filter((line) => line.includes('Before Two')), given };
		};
		for (const [gap, words] of [
			['15s', 'hand-over 0:15, gap 0:15, nothing left'],
			['9s', '0:06 short'],
		] as const) {
			const { gaps, given } = await said(gap);
			expect(given).toHaveLength(1);
			expect(gaps).toHaveLength(1);
			expect(gaps[0]).toContain(words);
		}
	});

	test('says once that no gap is given, and how to give it, as the plan does; all of them as data', async () => {
		const text = `format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: A2, name: Anchor, slot: "2", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: B1, name: Birch, slot: "3", kind: electric-6, tuning: E standard, for: [bo]}
  - {id: B2, name: Briar, slot: "4", kind: electric-6, tuning: E standard, for: [bo]}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: A1, bo: B1}}
  - {id: two, title: Two, length: "4:00", hands: {ash: A2, bo: B2}}
  - {id: three, title: Three, length: "4:00", hands: {ash: A1, bo: B2}}
set: [one, two, three]
`;
		const told = async (set: string) => {
			writeFileSync(join(folder, 'gaps.yaml'), text.replace('[one, two, three]', set));
			const gapLines = (out: string) =>
				out.split('\n').filter((line) => /No gap is given|: Before | {2}Before /.test(line));
			const { findings, warnings } = JSON.parse((await run('check', 'gaps.yaml', '--json')).out);
			return {
				check: gapLines((await run('check', 'gaps.yaml')).out),
				plan: gapLines((await run('plan', 'gaps.yaml')).out),
				codes: [...findings, ...warnings].map(({ code }: { code: string }) => code),
			};
		};
		const none = await told('[one, two, three]');
		expect(none.check).toEqual([
			expect.stringMatching(
				/^gaps\.yaml:\d+:\d+: No gap is given, so 0:15 is assumed between songs\. Hand-overs fill it or need more before Two \(0:30\) and Three \(0:15\)\. Write the real gaps into the set: \{song: two, gap: 30s\}\.$/,
			),
		]);
		expect(none.plan).toHaveLength(1);
		expect(none.codes).toEqual(expect.arrayContaining(['no-gap', 'gap-too-short', 'tight-gap']));
		// A gap that somebody gave, though the same, is their own.
		const given = await told('[one, {song: two, gap: 15s}, three]');
		expect(given.check).toHaveLength(2);
		expect(given.plan).toHaveLength(2);
		expect(given.codes).not.toContain('no-gap');
	});

	test('gives the same as one document, each with its place', async () => {
		const { out } = await run('check', 'show.yaml', '--json');
		const { findings, warnings } = JSON.parse(out);
		const all = [...findings, ...warnings];
		expect(all.map(({ code }: { code: string }) => code)).toEqual([
			'needs-unmet',
			'segue-hand-over',
			'gap-too-short',
			'past-curfew',
			'no-stand-in',
		]);
		for (const { where } of all) expect(where).toMatchObject({ file: 'show.yaml' });
	});
});

describe('plan', () => {
	test('ends with 1 where not everything fits, and with 0 where it does', async () => {
		expect((await run('plan', 'show.yaml')).code).toBe(1);
		expect((await run('plan', 'show.yaml', '--json')).code).toBe(1);
		expect((await run('plan', 'show.yaml', '--sheet')).code).toBe(1);
		expect((await run('plan', 'show.yaml', '--why', 'one')).code).toBe(0);
		expect((await run('plan', join(import.meta.dirname, '../../shows/club.yaml'))).code).toBe(0);
	});

	test('and `tuning` count the same seconds, the capo too', async () => {
		const folk = join(import.meta.dirname, '../../shows/folk.yaml');
		const { work } = JSON.parse((await run('plan', folk, '--json')).out);
		const capo = work.find(
			(one: { instrument: string; capo: number }) => one.instrument === 'G1' && one.capo === 2,
		);
		const tuning = JSON.parse((await run('tuning', folk, 'G1', '--capo', '2', '--json')).out);
		// Touch-up and capo, 45 and 10 s: common practice.
		expect([capo.seconds, tuning.seconds]).toEqual([55, 55]);
	});
});

test('`strings` says nothing of a stock that the show does not list', async () => {
	const folk = join(import.meta.dirname, '../../shows/folk.yaml');
	const { out } = await run('strings', folk, 'G1');
	expect(out).not.toContain('none in stock');
	expect(out).toContain('List stock or gauges in the show file');
	const club = join(import.meta.dirname, '../../shows/club.yaml');
	expect((await run('strings', club, 'A1')).out).not.toContain('List stock');
});

test('the notes of a show are on its run sheet', async () => {
	writeFileSync(
		join(folder, 'noted.yaml'),
		SHOW.replace('curfew: "20:10"', 'notes: load-in by the side door'),
	);
	expect((await run('plan', 'noted.yaml', '--sheet')).out).toContain('load-in by the side door');
});
