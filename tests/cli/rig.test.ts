// `rackside rig` as a user runs it: the fields that scripts rely on, the page, and what it ends with.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { runCommand } from './run-command.ts';

const FAULTY = fileURLToPath(new URL('../rig/faulty.yaml', import.meta.url));
const CLUB = fileURLToPath(new URL('../../shows/club.yaml', import.meta.url));
const PLACE = { cwd: '/', data: '/nowhere' };

test('as data', async () => {
	const { code, out } = await runCommand(PLACE, 'rig', FAULTY, '--json');
	expect(code).toBe(1);
	const { loads, supplies, batteries, corners, tempo } = JSON.parse(out);
	expect(loads).toMatchObject([{ amplifier: 'head', ohms: 4, tapOhms: 16 }]);
	expect(supplies).toMatchObject([{ id: 'S1', output: 'a', usedMa: 115, ratedMa: 100 }]);
	expect(batteries).toMatchObject([
		{ id: 'P1', hoursLeft: 2 },
		{ id: 'boost', hoursLeft: 500 / 120 - 2 },
	]);
	// 1/(2πRC) with 10 kilohms and 600 pF, and with 500 kilohms and 500 pF.
	expect(corners).toMatchObject([
		{ player: 'bo', instrument: 'B3', kind: 'low-pass' },
		{ player: 'bo', instrument: 'F1', kind: 'high-pass' },
	]);
	expect(corners.map(({ hz }: { hz: number }) => hz.toFixed(1))).toEqual(['26525.8', '636.6']);
	// 60000 / 104 for a quarter, three quarters of it for a dotted eighth.
	expect(tempo).toMatchObject([
		{ song: 'one', player: 'bo', pedal: 'delay', control: 'time', ms: (60_000 / 104) * 0.75 },
		{ song: 'two', ms: null },
	]);
});

test('as a page, of at most 80 columns', async () => {
	const { out } = await runCommand(PLACE, 'rig', FAULTY);
	const lines = out.split('\n');
	expect(lines.every((line) => line.length <= 80)).toBe(true);
	expect(lines).toContain('S1 a    115 mA  100 mA  Drive, Delay');
	expect(lines).toContain('One   Bo      Ch1    Drive, Delay dotted eighth 433 ms');
});

test('a show that says little of its rig has a page of what it says, and nothing to look at', async () => {
	const { code, out } = await runCommand(PLACE, 'rig', CLUB);
	expect(code).toBe(0);
	expect(out).not.toMatch(/LOADS|SUPPLIES|LOOK AT/);
	expect(out).toMatch(/Lantern +Bo +solo +Drive, Boost, Delay dotted eighth 433 ms/);
});

test('of two ways to the desk it says that their phase is not known, and what tells', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-rig-'));
	onTestFinished(() => rmSync(folder, { recursive: true }));
	const text = readFileSync(FAULTY, 'utf8').replace(
		'    - {id: head, kind: amp,',
		'    - {id: di, kind: direct-box, name: Box}\n    - {id: head, kind: amp,',
	);
	writeFileSync(join(folder, 'two.yaml'), text);
	const { out } = await runCommand(PLACE, 'rig', join(folder, 'two.yaml'));
	expect(out.replace(/\s+/g, ' ')).toMatch(
		/PHASE Bo: direct box and amp head carry the same sound\. Whether they add or cancel is not known from the file: flip the polarity of one at the desk and keep what sounds fuller\./,
	);
	expect((await runCommand(PLACE, 'rig', FAULTY)).out).not.toContain('PHASE');
});
