// The page of an instrument and what a warmer stage does to the rack, read from the screen after real
// keys; the figures reckoned by hand.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { runCommand } from '../cli/run-command.ts';

const folder = mkdtempSync(join(tmpdir(), 'rackside-page-'));
afterAll(() => rmSync(folder, { recursive: true }));

const SHOW = `
format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - id: A1
    name: Amber
    slot: "1"
    kind: electric-6
    for: [ash]
    tuning: E standard
    scale: 25.5 in
    strings: [10, 13, 17, 26w, 36w, 46w]
    setup: {action: [1.9, 1.6]}
    notes: buzz at the ninth fret
  - {id: D1, name: Dozen, slot: "2", kind: acoustic-12, for: [bo], tuning: E standard}
songs:
  - id: low
    title: Weir
    length: "3:00"
    hands: {ash: {instrument: A1, tuning: drop D}, bo: {instrument: D1, capo: 3}}
  - id: half
    title: Half
    length: "3:00"
    hands: {ash: {instrument: A1, tuning: half-step down}}
  - {id: back, title: Back, length: "3:00", hands: {ash: {instrument: A1}}}
set: [low, half, back]
offsets: [{player: ash, tuning: half-step down, cents: {3: -3}}]
stage: {soundcheck: 18}
`;
writeFileSync(join(folder, 'show.yaml'), SHOW);

/** What stands on the screen after these lines of a script. */
async function screenAfter(...lines: string[]): Promise<string> {
	writeFileSync(join(folder, 'keys.txt'), [...lines, ''].join('\n'));
	const asked = ['show.yaml', '--script', 'keys.txt', '--size', '80x24', '--quiet'];
	const place = { cwd: folder, data: join(folder, 'data') };
	const { code, out, err } = await runCommand(place, 'rehearse', ...asked);
	expect({ code, err }).toEqual({ code: 0, err: '' });
	return out;
}

describe('enter on the rack opens the instrument', () => {
	test('E standard to drop D: target, step, tension, set-up, notes', async () => {
		const page = await screenAfter('-10:00 tab enter', '-09:58 !screen');
		expect(page).toContain('1 Amber: in E standard, no capo; wanted drop D, no capo, for Ash');
		// 440 × 2^(−31/12); plain first string 7850 × π/4 × d² × (2 L f)² = 72.5 N.
		expect(page).toMatch(/6 D2 +73\.42 +0 c down 2 +62 N/);
		expect(page).toMatch(/1 E4 +329\.63 +0 c +73 N/);
		expect(page).toContain('string 6 down to D2: go below, then up to pitch');
		expect(page).toContain('set-up target: action 1.90 mm / 1.60 mm');
		expect(page).toContain('buzz at the ninth fret');
	});

	test('half-step down with the player’s offset, then back up in steps', async () => {
		const page = await screenAfter(
			'-10:00 !ready',
			'-09:59 c 1 "drop D" enter',
			'00:00 space',
			'03:00 space',
			'03:10 tab enter',
			'03:12 !screen',
		);
		// 184.9972 Hz, three cents under.
		expect(page).toMatch(/3 Gb3 +184\.68 +-3 c down 1/);
	});

	test('a twelve-string with capo 3: open targets in pairs, and what sounds', async () => {
		const page = await screenAfter('-10:00 tab down enter', '-09:58 !screen');
		expect(page).toContain('wanted E standard, capo 3, for Bo');
		expect(page).toMatch(/6low E2 +82\.41 +0 c +as G2 +6oct E3 +164\.81 +0 c +as G3/);
	});

	test('it stays open, follows up and down, and esc leaves it', async () => {
		const gone = await screenAfter('-10:00 tab enter', '-09:30 down', '-09:20 !screen');
		expect(gone).toContain('2 Dozen: in E standard');
		const left = await screenAfter('-10:00 tab enter esc', '-09:58 !screen');
		expect(left).not.toContain('1 Amber: in');
	});

	test('space in it steps the show', async () => {
		const page = await screenAfter('-10:00 tab enter', '00:00 space', '00:01 !screen');
		expect(page).not.toContain('1 Amber: in');
		expect(page).toMatch(/SONG +1 of 3/);
	});
});

test('a stage eight degrees warmer: which to touch first, while typing and after', async () => {
	// The slackest string is the plain third, 506 MPa: 600 × log2(1 − 12e-6 × 203.4e3 × 8 / 506) = −34.1.
	const said = '8 °C warmer: touch first 1 Amber (string 3, 11 to 23 c flat).';
	expect(await screenAfter('-10:00 a "26"', '-09:58 !screen')).toContain(said);
	expect(await screenAfter('-10:00 a "26" enter', '-09:57 !screen')).toContain(said);
	const page = await screenAfter('-10:00 a "26" enter', '-09:50 tab enter', '-09:48 !screen');
	expect(page).toContain('stage 8 °C warmer than at soundcheck: string 3, 11 to 23 c flat');
});

test('a temperature that was begun waits, and two digits alike in haste are two', async () => {
	const drawn = await screenAfter('-10:00 a', '-09:59 2*2@100ms', '-09:45 enter', '-09:44 !screen');
	expect(drawn).toContain('4 °C warmer: touch first 1 Amber');
});

describe('how far it can have gone counts from each instrument’s own ready mark', () => {
	// The plain third at 506 MPa: 600 × log2(1 − 12e-6 × 203.4e3 × K / 506), −8.4 for 2 °C, +8.3 for −2.
	const WARM = '-10:00 a "24" enter';

	test('to a stage typed since, and undone with the mark', async () => {
		const page = (...lines: string[]) =>
			screenAfter(
				WARM,
				'-09:50 t 0',
				'-09:40 a "26" enter',
				...lines,
				'-09:20 tab enter',
				'-09:18 !screen',
			);
		expect(await page()).toContain(
			'stage 2 °C warmer than when made ready at 24 °C: string 3, 3 to 6 c flat',
		);
		const undone = await screenAfter(
			WARM,
			'-09:50 t 0',
			'-09:45 u',
			'-09:40 a "26" enter',
			'-09:20 tab enter',
			'-09:18 !screen',
		);
		expect(undone).toContain('stage 8 °C warmer than at soundcheck: string 3, 11 to 23 c flat');
	});

	test('made ready at the temperature that there is, nothing is said', async () => {
		const page = await screenAfter(WARM, '-09:50 t 0', '-09:40 tab enter', '-09:38 !screen');
		expect(page).not.toContain('°C');
	});

	test('a colder stage is sharp', async () => {
		const said = '2 °C colder: touch first 1 Amber (string 3, 3 to 6 c sharp).';
		expect(await screenAfter(WARM, '-09:50 t 0', '-09:40 a "22"', '-09:38 !screen')).toContain(
			said,
		);
	});

	test('the mark survives a stop of the program', async () => {
		const page = await screenAfter(
			WARM,
			'-09:50 t 0',
			'-09:40 a "26" enter',
			'-09:30 !kill',
			'-09:20 tab enter',
			'-09:18 !screen',
		);
		expect(page).toContain('2 °C warmer than when made ready at 24 °C');
	});
});

test('what strings stand off stands with the hand-over and under the work', async () => {
	expect(await screenAfter('-10:00 !screen')).not.toContain('string 3 -3 c');
	const next = await screenAfter('-10:00 t 1', '-09:58 t 2', '00:00 space', '01:00 !screen');
	expect(next).toMatch(/no capo\n.* string 3 -3 c\n/);
	expect(next).toContain('1 Amber: string 3 -3 c; string 5 down to Ab2');
});
