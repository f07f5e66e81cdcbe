// What was measured at the bench outlives whatever happens to its file, and is one for all shows.

import {
	appendFileSync,
	cpSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	statSync,
	writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runCommand } from '../cli/run-command.ts';

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

/** The one file of gear in this data folder. */
function gearFile(data: string): string {
	const gear = join(folder, data, 'gear');
	const [name = '', ...others] = readdirSync(gear).filter((one) => one.endsWith('.journal'));
	expect(others).toEqual([]);
	return join(gear, name);
}

test('measured in one show, known in another, in a file for its owner alone', async () => {
	expect((await setup('shared', 'one.yaml', 'A1', '--record', 'relief 0.25')).code).toBe(0);
	expect((await setup('shared', 'two.yaml', 'A1')).page.measured).toEqual({ relief: 0.25 });
	const file = statSync(gearFile('shared'));
	expect(file.mode & 0o777).toBe(0o600);
	expect(statSync(join(folder, 'shared', 'gear')).mode & 0o777).toBe(0o700);
});

test('a torn last line costs nothing but itself, and the next goes on after it', async () => {
	await setup('torn', 'one.yaml', 'A1', '--record', 'relief 0.25');
	const path = gearFile('torn');
	const whole = readFileSync(path);
	const last = whole.subarray(whole.lastIndexOf(0x0a, whole.length - 2) + 1);
	appendFileSync(path, last.subarray(0, last.length / 2));
	expect((await setup('torn', 'one.yaml', 'A1')).page.measured).toEqual({ relief: 0.25 });
	const kept = await setup('torn', 'one.yaml', 'A1', '--record', 'action 2');
	expect(kept.code).toBe(1);
	expect(kept.err).toContain('was cut off in the middle of a write');
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
	expect(err).toMatch(/^What was measured was not kept: .+\n$/);
});

const GUITAR = 'kind: electric-6, tuning: E standard, scale: 25.5 in, setup: {relief: 0.2}';

/** A show in a folder of its own, whose only instrument is described so. */
function showIn(name: string, instrument: string): string {
	mkdirSync(join(folder, name), { recursive: true });
	const file = join(folder, name, 'show.yaml');
	writeFileSync(file, show('Elsewhere').replace(/\{id: A1, .*\}\]/, `{id: A1, ${instrument}}]`));
	return file;
}

test('of another file with the same id it is asked once, and the answer stands', async () => {
	const [here, there, third] = ['here', 'there', 'third'].map((name) => showIn(name, GUITAR));
	await setup('asked', here ?? '', 'A1', '--record', 'relief 0.25');
	const first = await setup('asked', there ?? '', 'A1');
	expect(first.page.measured).toEqual({});
	expect(first.page.findings).toEqual([
		`The A1 of the show files in ${join(folder, 'here')} was measured on 2026-06-12. If it is this A1, say --same yes, else --same no.`,
	]);
	expect((await setup('asked', there ?? '', 'A1', '--same', 'perhaps')).code).toBe(2);
	const yes = await setup('asked', there ?? '', 'A1', '--same', 'yes');
	expect(yes.page).toMatchObject({ measured: { relief: 0.25 }, findings: [] });
	expect((await setup('asked', there ?? '', 'A1')).page.measured).toEqual({ relief: 0.25 });
	await setup('asked', third ?? '', 'A1', '--same', 'no');
	const no = await setup('asked', third ?? '', 'A1');
	expect(no.page).toMatchObject({ measured: {}, findings: [] });
});

test('a name of its own in the show file is the same instrument in every folder', async () => {
	const files = ['one', 'other'].map((name) => showIn(`named-${name}`, `gear: amber, ${GUITAR}`));
	await setup('named', files[0] ?? '', 'A1', '--record', 'relief 0.25');
	expect((await setup('named', files[1] ?? '', 'A1')).page.measured).toEqual({ relief: 0.25 });
});

test('what has another scale or other strings is not taken for it, and two by one name are told', async () => {
	const bass = 'kind: bass-4, tuning: E standard, scale: 34 in';
	await setup('kinds', showIn('guitars', GUITAR), 'A1', '--record', 'relief 0.25');
	expect((await setup('kinds', showIn('basses', bass), 'A1')).page.findings).toEqual([]);
	await setup(
		'kinds',
		showIn('by-name', `gear: amber, ${GUITAR}`),
		'A1',
		'--record',
		'relief 0.3',
		'--same',
		'no',
	);
	const { page } = await setup('kinds', showIn('by-name-too', `gear: amber, ${bass}`), 'A1');
	expect(page.findings[0]).toContain('was measured as another instrument (electric-6, 6 strings');
});

test('what two laptops measured is known together', async () => {
	const file = showIn('union', GUITAR);
	await setup('laptop', file, 'A1', '--record', 'relief 0.25');
	await setup('other-laptop', file, 'A1', '--record', 'action 2');
	cpSync(join(folder, 'other-laptop', 'gear'), join(folder, 'laptop', 'gear'), { recursive: true });
	expect((await setup('laptop', file, 'A1')).page.measured).toEqual({
		relief: 0.25,
		actionLast: [2],
	});
});

test('what the first version kept, by the id alone, is asked about and then known', async () => {
	const data = join(folder, 'first-version', 'gear');
	mkdirSync(data, { recursive: true });
	cpSync('tests/journals/gear-v1.journal', join(data, 'gear.journal'));
	const file = showIn('since', GUITAR);
	const { page } = await setup('first-version', file, 'A1');
	expect(page).toMatchObject({ measured: {} });
	expect(page.findings[0]).toMatch(/^An A1 of some show file was measured on 2026-11-30\. /);
	const known = await setup('first-version', file, 'A1', '--same', 'yes');
	expect(known.page.measured).toEqual({ relief: 0.25, actionLast: [1.8, 1.5] });
});
