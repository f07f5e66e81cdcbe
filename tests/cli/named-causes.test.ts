// What cannot be read or written is told by its cause: a folder is no missing file, and neither is one
// that belongs to somebody else.

import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { makePipe, makeSocket, scratchFolder } from '../disk/scratch-folder.ts';
import { runCommand } from './run-command.ts';

const PROGRAM = join(import.meta.dirname, '../../dist/rackside.js');

function place() {
	const cwd = scratchFolder();
	return { cwd, data: join(cwd, 'data') };
}

const NIGHT = '2026-06-12-203000-quay-street-7f3a';

function linkedSocket(path: string): void {
	makeSocket(`${path}-socket`);
	symlinkSync(`${path}-socket`, path);
}

describe('a show file', () => {
	test('that is not there', async () => {
		expect((await runCommand(place(), 'check', 'x.yaml')).err).toBe(
			'x.yaml: there is no such file. Check the name and the folder.\n',
		);
	});

	test.each([
		['a folder', mkdirSync, 'it is a folder'],
		['a pipe', makePipe, 'it is a pipe, not a file'],
		['a socket', makeSocket, 'it is a socket, not a file'],
		['a link to a socket', linkedSocket, 'it is a socket, not a file'],
		['a device', (path: string) => symlinkSync('/dev/null', path), 'it is a device, not a file'],
	])(
		'that is %s is called so by every command, and nobody waits for it',
		async (_, make, cause) => {
			const here = place();
			make(join(here.cwd, 'x.yaml'));
			writeFileSync(join(here.cwd, 'x.txt'), '0:01 space\n');
			writeFileSync(join(here.cwd, 'list.csv'), 'Song\nGravel\n');
			// One whose own copy of its show is lost.
			mkdirSync(join(here.data, 'nights'), { recursive: true });
			writeFileSync(join(here.data, 'nights', `${NIGHT}.journal`), 'nothing\n');
			for (const words of [
				['check', 'x.yaml'],
				['plan', 'x.yaml'],
				['rehearse', 'x.yaml', '--script', 'x.txt'],
				['new', '--songs', 'x.yaml'],
				['new', '--songs', 'list.csv', '--rack', 'x.yaml'],
				['report', NIGHT, '--show', 'x.yaml'],
			]) {
				const { code, err } = await runCommand(here, ...words);
				expect({ code, err }, words.join(' ')).toEqual({
					code: 2,
					err: expect.stringMatching(`cannot be read(: | \\()${cause}`),
				});
			}
		},
	);

	test('that is included and a folder', async () => {
		const here = place();
		mkdirSync(join(here.cwd, 'gear.yaml'));
		writeFileSync(join(here.cwd, 'x.yaml'), 'format: rackside/1\ninclude: [gear.yaml]\n');
		expect((await runCommand(here, 'check', 'x.yaml')).err).toMatch(
			/x\.yaml:2:\d+: this file cannot be read: it is a folder/,
		);
	});
});

test('a script that is a folder, a pipe that nobody writes into, and one that is not there', async () => {
	const here = place();
	copyFileSync('shows/first.yaml', join(here.cwd, 'first.yaml'));
	mkdirSync(join(here.cwd, 'script.txt'));
	const folder = await runCommand(here, 'rehearse', 'first.yaml', '--script', 'script.txt');
	expect(folder.err).toContain('this script cannot be read: it is a folder (EISDIR)');
	makePipe(join(here.cwd, 'pipe'));
	const pipe = await runCommand(here, 'rehearse', 'first.yaml', '--script', 'pipe');
	expect(pipe.err).toContain('this script cannot be read: it is a pipe, not a file');
	const missing = await runCommand(here, 'rehearse', 'first.yaml', '--script', 'none.txt');
	expect(missing.err).toContain('there is no such script');
});

/** What the delivered program says when started by a shell's line as a user who is nobody. */
function asNobody(cwd: string, line: string): string {
	const user = 'setpriv --reuid 65534 --regid 65534 --clear-groups';
	const env = { PATH: process.env.PATH ?? '', HOME: cwd, RACKSIDE_DATA: join(cwd, 'data') };
	return execFileSync('sh', ['-c', `${user} ${line} 2>&1 || true`], { cwd, env, encoding: 'utf8' });
}

describe.runIf(process.getuid?.() === 0)('as another user', () => {
	test('a file and a place without permission, and preferences of somebody else', () => {
		const cwd = scratchFolder();
		chmodSync(cwd, 0o755);
		copyFileSync('shows/first.yaml', join(cwd, 'closed.yaml'));
		copyFileSync('shows/first.yaml', join(cwd, 'open.yaml'));
		chmodSync(join(cwd, 'closed.yaml'), 0o600);
		const program = `'${process.execPath}' '${PROGRAM}'`;
		expect(asNobody(cwd, `${program} check closed.yaml`)).toContain(
			'cannot be read: no permission (EACCES)',
		);
		mkdirSync(join(cwd, 'data'), { mode: 0o755 });
		writeFileSync(join(cwd, 'data', 'settings.json'), '{}', { mode: 0o600 });
		expect(asNobody(cwd, `${program} settings looks grey`)).toContain('it belongs to another user');
	});
});

test.each(['a pipe', 'a file', 'a link to a file'])(
	'a data folder that is %s is no folder without nights',
	async (kind) => {
		const here = place();
		if (kind === 'a pipe') makePipe(here.data);
		else writeFileSync(kind === 'a file' ? here.data : `${here.data}-file`, '');
		if (kind === 'a link to a file') symlinkSync(`${here.data}-file`, here.data);
		for (const words of [['nights'], ['report']]) {
			const { code, out, err } = await runCommand(here, ...words);
			expect({ code, out }).toEqual({ code: 2, out: '' });
			expect(err).toBe(
				`${here.data} cannot be used: part of the path is a file, not a folder (ENOTDIR).\n`,
			);
		}
		// Data stays data, and the word of it stands beside.
		const json = await runCommand(here, 'nights', '--json');
		expect(JSON.parse(json.out).nights).toEqual([]);
		expect(json.err).toContain('cannot be used');
	},
);

test('a data folder that is yet to be made has no nights', async () => {
	expect(await runCommand(place(), 'nights')).toMatchObject({ code: 0, err: '' });
});

test('a name that is not UTF-8 is called so, for the data folder too, and nothing is kept elsewhere', () => {
	const cwd = scratchFolder();
	copyFileSync('shows/first.yaml', join(cwd, 'first.yaml'));
	const sh = (line: string) => {
		const env = { PATH: process.env.PATH ?? '', HOME: cwd, TMPDIR: cwd };
		return execFileSync('sh', ['-c', `${line} 2>&1 || echo "code $?"`], {
			cwd,
			env,
			encoding: 'utf8',
		});
	};
	const program = `'${process.execPath}' '${PROGRAM}'`;
	// As bytes: the name that a shell hands on when it was made under another coding of letters.
	const odd = `"$(printf 'a\\377b')"`;
	sh(`mkdir ${odd}; cp first.yaml "$(printf 's\\377.yaml')"`);
	const data = 'this name is not UTF-8, so nothing can be found or kept under it';
	for (const line of [
		`${program} nights --data ${odd}`,
		`RACKSIDE_DATA=${odd} ${program} nights`,
		`HOME=${odd} ${program} nights`,
	]) {
		const said = sh(line);
		expect(said, line).toContain(data);
		expect(said, line).toContain('Choose another folder with --data DIR');
		expect(said, line).toContain('code 2');
	}
	const show = sh(`${program} check "$(printf 's\\377.yaml')"`);
	expect(show).toContain(data);
	expect(show).toContain('Rename it');
	expect(sh(`${program} plan first.yaml --data ${odd}`)).toContain(data);
	// A name that has the sign itself is one like any other.
	expect(sh(`cp first.yaml 's\ufffd.yaml'; ${program} check 's\ufffd.yaml'`)).not.toContain(
		'UTF-8',
	);
	expect(sh(`ls | grep -c rackside`)).toContain('0');
});

test('too many open files is no missing file', () => {
	const cwd = scratchFolder();
	copyFileSync('shows/first.yaml', join(cwd, 'first.yaml'));
	// Every number up to the limit is taken before the show is opened.
	const program = `
		import { openSync, closeSync } from 'node:fs';
		import { loadBytes } from ${JSON.stringify(join(import.meta.dirname, '../../src/cli/open-show.ts'))};
		const taken = [];
		try { for (;;) taken.push(openSync('first.yaml')); } catch {}
		const found = loadBytes('first.yaml');
		for (const one of taken) closeSync(one);
		console.log(JSON.stringify(found));`;
	writeFileSync(join(cwd, 'taken.mjs'), program);
	const line = `ulimit -n 64; '${process.execPath}' taken.mjs`;
	expect(execFileSync('sh', ['-c', line], { cwd, encoding: 'utf8' })).toContain('"EMFILE"');
});
