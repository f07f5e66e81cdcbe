// Nothing that was measured is lost without a word, whatever happened to the gear journal or its folder.

import {
	chmodSync,
	chownSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	renameSync,
	rmSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runCommand } from '../cli/run-command.ts';
import { makePipe, scratchFolder } from '../disk/scratch-folder.ts';
import { cleanUpAfterEach, startLive } from '../terminal/whole-program.ts';

cleanUpAfterEach();

const SHOW = join(process.cwd(), 'shows/club.yaml');
const isRoot = process.getuid?.() === 0;

/** A data folder in which relief was measured so often, its folder of gear, and the one file in it. */
async function measured(...reliefs: readonly number[]) {
	const data = scratchFolder();
	const command = (...words: string[]) => runCommand({ cwd: data, data }, ...words);
	const setup = (...words: string[]) => command('setup', SHOW, 'A1', ...words);
	for (const relief of reliefs) {
		expect(await setup('--record', `relief ${relief}`)).toMatchObject({ code: 0, err: '' });
	}
	const gear = join(data, 'gear');
	const names = reliefs.length === 0 ? [] : readdirSync(gear);
	const path = join(gear, names.find((name) => name.endsWith('.journal')) ?? '');
	return { data, gear, path, command, setup };
}

function flipped(bytes: Buffer, at: number): Buffer {
	const copy = Buffer.from(bytes);
	copy[at] = (copy[at] ?? 0) ^ 1;
	return copy;
}

/** Where the line begins after so many of them. */
function afterLines(bytes: Buffer, count: number): number {
	let at = 0;
	for (let line = 0; line < count; line += 1) at = bytes.indexOf(0x0a, at) + 1;
	return at;
}

const MISSING = 'something that was measured may be missing: measure it again';

describe('damage is told in one sentence, with the file and what to do', () => {
	test.each<[string, (bytes: Buffer) => Buffer, number | null, string]>([
		['a bit of the last record', (all) => flipped(all, all.length - 60), 0.25, 'is damaged'],
		[
			'a bit of the first record',
			(all) => flipped(all, afterLines(all, 3) - 60),
			0.31,
			'is damaged',
		],
		[
			'the end cut off',
			(all) => all.subarray(0, -40),
			0.25,
			'was cut off in the middle of a write',
		],
		[
			'zeros for the headers',
			(all) => Buffer.from(all).fill(0, 0, afterLines(all, 2)),
			0.31,
			'is damaged',
		],
		['nothing left', () => Buffer.alloc(0), null, 'is damaged'],
		['junk', () => Buffer.alloc(500, 'no journal\n'), null, 'is damaged'],
	])('%s', async (_, spoil, relief, what) => {
		const { path, setup } = await measured(0.25, 0.31);
		writeFileSync(path, spoil(readFileSync(path)));
		const told = await setup();
		expect(told.code).toBe(1);
		expect(told.err).toMatch(/^[^\n]+\n$/);
		expect(told.err).toContain(`${path} ${what}, and ${MISSING}`);
		expect(told.out).not.toContain('night');
		const { code, out } = await setup('--json');
		const page = JSON.parse(out);
		expect({ code, relief: page.measured.relief ?? null }).toEqual({ code: 1, relief });
		expect(page.findings).toContain(told.err.trimEnd());
	});

	test('what was cut off is told until it is removed', async () => {
		const { gear, path, setup } = await measured(0.25, 0.31);
		writeFileSync(path, readFileSync(path).subarray(0, -40));
		const kept = await setup('--record', 'action 2');
		const torn = join(gear, readdirSync(gear).find((name) => name.includes('.torn-')) ?? '');
		expect(kept.code).toBe(1);
		expect(kept.out).toContain('Kept in the gear journal.');
		expect(kept.err).toContain(`${MISSING}, then remove ${torn}, which is what was cut off.`);
		rmSync(torn);
		expect(await setup()).toMatchObject({ code: 0, err: '' });
	});

	test('one of two headers is no loss, and yet told', async () => {
		const { path, setup } = await measured(0.25);
		writeFileSync(path, flipped(readFileSync(path), 60));
		expect(await setup()).toMatchObject({
			code: 1,
			err: `${path} is damaged, but nothing that was measured is missing: keep a copy of it.\n`,
		});
	});

	test.each<[string, (path: string) => void, string]>([
		['a pipe', makePipe, 'it is a pipe, not a file'],
		['a folder', (path) => mkdirSync(path), 'it is a folder (EISDIR)'],
	])('%s in place of the journal', async (_, put, why) => {
		const { path, setup } = await measured(0.25);
		rmSync(path);
		put(path);
		expect(await setup()).toMatchObject({
			code: 1,
			err: `${path} cannot be read: ${why}. Something that was measured may be missing: put that right, or measure again.\n`,
		});
		expect(await setup('--record', 'relief 0.3')).toEqual({
			code: 3,
			out: '',
			err: `What was measured was not kept: ${path} cannot be read: ${why}. Put that right, or move it away, and try again.\n`,
		});
	});

	test.each<[string, (path: string) => void]>([
		['a file', (path) => writeFileSync(path, 'x')],
		['a pipe', makePipe],
	])('%s in place of the folder', async (_, put) => {
		const { gear, setup } = await measured();
		put(gear);
		const why = `${gear} cannot be used: part of the path is a file, not a folder (ENOTDIR).`;
		expect(await setup()).toMatchObject({
			code: 1,
			err: `${why} Something that was measured may be missing: put that right, or measure again.\n`,
		});
		expect(await setup('--record', 'relief 0.3')).toEqual({
			code: 3,
			out: '',
			err: `What was measured was not kept: ${why} Put a folder in its place, or choose another data folder with --data DIR.\n`,
		});
	});

	test('junk takes nothing, and nothing is said of a night', async () => {
		const { path, setup } = await measured(0.25);
		const junk = Buffer.alloc(500, 'no journal\n');
		writeFileSync(path, junk);
		expect(await setup('--record', 'relief 0.3')).toEqual({
			code: 3,
			out: '',
			err: `What was measured was not kept: ${path} is damaged, and nothing can be added to it. Put a copy of it in its place, or move it away, and try again.\n`,
		});
		expect(readFileSync(path)).toEqual(junk);
	});

	test('by the list of nights when it tells all, and by the live screen', async () => {
		const { data, path, command } = await measured(0.25, 0.31);
		writeFileSync(path, flipped(readFileSync(path), readFileSync(path).length - 60));
		expect(await command('nights')).toMatchObject({ code: 0, err: '' });
		const { code, err } = await command('nights', '--verbose');
		expect({ code, err }).toEqual({ code: 1, err: expect.stringContaining(`${path} is damaged`) });
		const { screen } = await startLive({ data, columns: 200, rows: 40 });
		expect(screen.text()).toMatch(
			/^STORAGE .*\.journal is damaged, and something that was measured/m,
		);
	});
});

describe('what is not ours alone', () => {
	test('a folder behind a link is read and told, and not written through', async () => {
		const { data, gear, setup } = await measured(0.25);
		const behind = join(scratchFolder(), 'behind');
		renameSync(gear, behind);
		symlinkSync(behind, gear);
		const before = readdirSync(behind).map((name) => readFileSync(join(behind, name)));
		const told = await setup();
		expect(told).toMatchObject({
			code: 1,
			err: `${gear} is used, but it is a link: what is in it may not be yours.\n`,
		});
		expect(told.out).toContain('0.25 mm');
		expect(await setup('--record', 'relief 0.3')).toEqual({
			code: 3,
			out: '',
			err: `What was measured was not kept: ${gear} is a link, and nothing is written through one. Put a folder in its place, or choose another data folder with --data DIR.\n`,
		});
		expect(readdirSync(behind).map((name) => readFileSync(join(behind, name)))).toEqual(before);
		expect(readdirSync(data).sort()).toEqual(['gear', 'writer']);
	});

	test('a journal that is a link is told, and what is measured goes into a file beside it', async () => {
		const { path, setup } = await measured(0.25);
		const behind = join(scratchFolder(), 'behind');
		renameSync(path, behind);
		symlinkSync(behind, path);
		const before = readFileSync(behind);
		const kept = await setup('--record', 'relief 0.31');
		expect(kept).toMatchObject({
			code: 1,
			err: `${path} is used, but it is a link: what is in it may not be yours.\n`,
		});
		expect(kept.out).toContain('measured 0.31 mm');
		expect(readFileSync(behind)).toEqual(before);
	});

	test('a folder and a journal that others may write into are used and told', async () => {
		const { gear, path, setup } = await measured(0.25);
		chmodSync(gear, 0o777);
		chmodSync(path, 0o666);
		const words = (one: string) =>
			`${one} is used, but other users may write into it: what is in it may not be yours.\n`;
		expect(await setup('--record', 'relief 0.31')).toMatchObject({
			code: 1,
			err: words(gear) + words(path),
			out: expect.stringContaining('measured 0.31 mm'),
		});
	});

	test.runIf(isRoot)('so are those of another user', async () => {
		const { gear, path, setup } = await measured(0.25);
		for (const one of [gear, path]) chownSync(one, 65_534, 65_534);
		const words = (one: string) =>
			`${one} is used, but it belongs to another user: what is in it may not be yours.\n`;
		expect(await setup()).toMatchObject({ code: 1, err: words(gear) + words(path) });
	});
});
