// What was measured at the bench outlives whatever happens to its file, and is one for all shows.

import {
	appendFileSync,
	mkdtempSync,
	readFileSync,
	rmSync,
	statSync,
	writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runCommand } from './run-command.ts';

const folder = mkdtempSync(join(tmpdir(), 'rackside-gear-'));
afterAll(() => rmSync(folder, { recursive: true }));

const show = (title: string) => `
format: rackside/1
show: {title: ${title}}
players: [{id: ash}]
instruments: [{id: A1, kind: electric-6, tuning: E standard, scale: 25.5 in, setup: {relief: 0.2}}]
songs: [{id: one, length: "3:00", hands: {ash: {instrument: A1}}}]
set: [one]
`;
writeFileSync(join(folder, 'one.yaml'), show('One'));
writeFileSync(join(folder, 'two.yaml'), show('Two'));

async function setup(data: string, ...args: string[]) {
	const place = { cwd: folder, data: join(folder, data), wallMs: Date.UTC(2026, 5, 12) };
	const { code, out, err } = await runCommand(place, 'setup', ...args, '--json');
	return { code, err, page: out === '' ? null : JSON.parse(out) };
}

test('measured in one show, known in another, in a file for its owner alone', async () => {
	expect((await setup('shared', 'one.yaml', 'A1', '--record', 'relief 0.25')).code).toBe(0);
	expect((await setup('shared', 'two.yaml', 'A1')).page.measured).toEqual({ relief: 0.25 });
	const file = statSync(join(folder, 'shared', 'gear', 'gear.journal'));
	expect(file.mode & 0o777).toBe(0o600);
	expect(statSync(join(folder, 'shared', 'gear')).mode & 0o777).toBe(0o700);
});

test('a torn last line costs nothing but itself, and the next goes on after it', async () => {
	await setup('torn', 'one.yaml', 'A1', '--record', 'relief 0.25');
	const path = join(folder, 'torn', 'gear', 'gear.journal');
	const whole = readFileSync(path);
	const last = whole.subarray(whole.lastIndexOf(0x0a, whole.length - 2) + 1);
	appendFileSync(path, last.subarray(0, last.length / 2));
	expect((await setup('torn', 'one.yaml', 'A1')).page.measured).toEqual({ relief: 0.25 });
	const kept = await setup('torn', 'one.yaml', 'A1', '--record', 'action 2');
	expect(kept).toMatchObject({ code: 0, err: '' });
	expect((await setup('torn', 'one.yaml', 'A1')).page.measured).toEqual({
		relief: 0.25,
		actionLast: [2],
	});
});

test('intonation is kept alone, and used the next time', async () => {
	await setup('cents', 'one.yaml', 'A1', '--at12', '0 0 0 0 0 5', '--record', 'intonation');
	const { page } = await setup('cents', 'one.yaml', 'A1');
	expect(page.saddle.at(-1)).toEqual({ string: 1, cents: 5, moveMm: 1.8788, towards: 'bridge' });
});

test('where nothing can be kept it ends with 3 and says why', async () => {
	writeFileSync(join(folder, 'file'), '');
	const { code, err, page } = await setup('file', 'one.yaml', 'A1', '--record', 'relief 0.25');
	expect({ code, page }).toEqual({ code: 3, page: null });
	expect(err).toMatch(/^Not kept: .+\n$/);
});
