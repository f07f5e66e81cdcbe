// `rackside fault` as a user runs it: next test, chances that add up to 1, answers that cannot be read.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { scratchFolder } from '../disk/scratch-folder.ts';
import { runCommand } from './run-command.ts';

const FAULTY = fileURLToPath(new URL('../rig/faulty.yaml', import.meta.url));
const PLACE = { cwd: '/', data: '/nowhere' };

const ask = async (...more: string[]) => {
	const { code, out, err } = await runCommand(PLACE, 'fault', FAULTY, 'bo', '--json', ...more);
	return { code, err, told: out === '' ? null : JSON.parse(out) };
};

test('the next test, and every part with its chance', async () => {
	const { code, told } = await ask('--symptom', 'silent');
	expect(code).toBe(0);
	expect(told.next).toMatchObject({ test: expect.any(String), seconds: expect.any(Number) });
	expect(told.next.why).toMatch(/^helps in \d+ of \d+ cases, \d+ s$/);
	expect(told.causes.map(({ part }: { part: string }) => part).toSorted()).toEqual(
		['B3', 'boost', 'cab1', 'cab2', 'delay', 'drive', 'head', 'lead'].toSorted(),
	);
	const sum = told.causes.reduce((total: number, one: { chance: number }) => total + one.chance, 0);
	expect(sum).toBeCloseTo(1, 9);
});

test('sound with the board taken out leaves its three pedals, alike: 5 s, and 5 s more in two of three cases', async () => {
	const { told } = await ask('--symptom', 'silent', '--answers', 'bypass-board=sound');
	const left = told.causes.filter(({ chance }: { chance: number }) => chance > 0);
	expect(left.map(({ part }: { part: string }) => part).toSorted()).toEqual([
		'boost',
		'delay',
		'drive',
	]);
	expect(told.next.test).toMatch(/^bypass-/);
	expect(told.expectedSeconds).toBeCloseTo(5 + (2 / 3) * 5, 9);
});

test('a cause that is found, and answers that contradict each other', async () => {
	expect((await ask('--answers', 'swap-lead=sound')).told).toMatchObject({
		next: null,
		found: 'lead',
	});
	const { code, told } = await ask('--answers', 'swap-lead=sound, bypass-drive=sound');
	expect(code).toBe(1);
	expect(told.contradictory).toBe(true);
});

test('while a song is on, the shortest way to sound', async () => {
	const { told } = await ask('--symptom', 'silent', '--in-song');
	// One cord past cord and board has 57 % in 20 s, more a second than the cord alone with 36 % in 15 s.
	expect(told.next.test).toBe('straight');
});

test.each([
	[['--symptom', 'hums'], 'Did you mean hum?'],
	[['--answers', 'swap-lead'], 'bypass-board=sound'],
	[['--answers', 'swap-leed=same'], 'Did you mean swap-lead?'],
	[['--instrument', 'Z9'], 'no such instrument'],
])('%j is answered with what would do', async (more, words) => {
	const { code, err } = await ask(...more);
	expect(code).toBe(2);
	expect(err).toContain(words);
});

test('an empty battery is doubted on the board it is in, not where another player has a pedal of the same id', async () => {
	const folder = scratchFolder();
	const pedal = (used: number) =>
		`[{id: drive, name: Drive, power: {battery: 500 mAh, ma: 50, hours-used: ${used}}}]`;
	const shareOfDrive = async (ash: number, bo: number) => {
		writeFileSync(
			join(folder, 'two.yaml'),
			`format: rackside/1
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
boards: {ash: ${pedal(ash)}, bo: ${pedal(bo)}}
instruments: [{id: B1, name: Birch, slot: "1", kind: electric-6, tuning: E standard, for: [bo]}]
songs: [{id: one, title: One, length: "4:00", hands: {bo: {instrument: B1}}}]
set: [one]
`,
		);
		const { out, err } = await runCommand(
			{ cwd: folder, data: join(folder, 'data') },
			...['fault', 'two.yaml', 'bo', '--symptom', 'silent', '--json'],
		);
		expect(err).toBe('');
		const causes: { part: string; chance: number }[] = JSON.parse(out).causes;
		return causes.find(({ part }) => part === 'drive')?.chance;
	};
	// 500 mAh at 50 mA are 10 hours (arithmetic).
	const fresh = await shareOfDrive(0, 0);
	expect(await shareOfDrive(10, 0)).toBe(fresh);
	expect(await shareOfDrive(0, 10)).toBeGreaterThan(fresh ?? 1);
});
