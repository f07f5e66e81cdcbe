// What those who only look at nights are told beside their names: damage anywhere in them, where they lie, and
// folders that cannot be read or that others may write into.

import { spawnSync } from 'node:child_process';
import {
	chmodSync,
	chownSync,
	copyFileSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	renameSync,
	rmSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test, vi } from 'vitest';
import { nightPlaces } from '../../src/cli/nights/night-places.ts';
import { findPaths } from '../../src/disk/paths.ts';
import { whyNoInjection } from '../campaigns/injected-faults.ts';
import { makePipe, makeSocket, scratchFolder } from '../disk/scratch-folder.ts';
import { runCommand } from './run-command.ts';

const NIGHT = '2026-11-club';
const KEPT = fileURLToPath(new URL(`../journals/${NIGHT}.journal`, import.meta.url));
const NOBODY = 65_534;

/** A data folder with one night, as an earlier version of the program left it. */
function withNight() {
	const data = scratchFolder();
	const nights = join(data, 'nights');
	mkdirSync(nights, { mode: 0o700 });
	const path = join(nights, `${NIGHT}.journal`);
	copyFileSync(KEPT, path);
	chmodSync(path, 0o600);
	const command = (...argv: string[]) => runCommand({ cwd: data, data }, ...argv);
	return { data, nights, path, command };
}

const why = whyNoInjection();
const ENTRY = fileURLToPath(new URL('../../src/cli/entry.ts', import.meta.url));

// The two calls with which a folder is listed: getdents64(2) comes twice, the second time for the end.
test.skipIf(why !== null).each([
	['nights', 1],
	['nights', 2],
	['report', 1],
	['plan shows/club.yaml --tonight', 1],
])(
	`a folder that the disk does not list is told by %s, never taken for empty${why ? ` (left out: ${why})` : ''}`,
	(words, at) => {
		const { data, nights } = withNight();
		const inject = ['-e', 'trace=getdents64', '-e', `inject=getdents64:error=EIO:when=${at}`];
		const { status, stdout, stderr } = spawnSync(
			'strace',
			[
				...['-f', '-qq', '-o', '/dev/null', '-P', nights, ...inject],
				...[process.execPath, ENTRY, ...words.split(' '), '--data', data],
			],
			{ encoding: 'utf8' },
		);
		expect(stderr).toBe(`${nights} cannot be read: the disk reports a fault (EIO).\n`);
		expect(stdout).toBe('');
		expect(status).toBe(2);
	},
	60_000,
);

test('a night in good order has nothing beside its name', async () => {
	const { command } = withNight();
	const { out, err } = await command('nights');
	expect(err).toBe('');
	expect(out).toMatch(/unfinished {2}Quay Street, second night {2}2026-11-club\n$/);
});

test('one damaged byte in the middle is told by the list as by the report', async () => {
	const { path, command } = withNight();
	const bytes = readFileSync(path);
	const middle = bytes.indexOf('\n', bytes.length / 2) + 40;
	bytes[middle] = (bytes[middle] ?? 0) ^ 1;
	writeFileSync(path, bytes);
	for (const name of ['nights', 'report']) {
		expect((await command(name)).out, name).toContain('1 record of this night cannot be read');
	}
});

test.each([
	['a folder', mkdirSync, 'it is a folder (EISDIR)'],
	['a pipe', makePipe, 'it is a pipe, not a file'],
	// unix(7): opening one gives ENXIO, as a device does that is gone.
	['a socket', makeSocket, 'it is a socket, not a file'],
	[
		'a link to nowhere',
		(path: string) => symlinkSync('nowhere', path),
		'a link stands where the file should be (ELOOP)',
	],
])('%s in the place of a night is called so, once', async (_, make, cause) => {
	const { path, command } = withNight();
	rmSync(path);
	make(path);
	expect((await command('nights')).out).toBe(
		`unreadable  ${path} cannot be read: ${cause}.  ${NIGHT}\n`,
	);
});

test.each([
	['emptied', (path: string) => writeFileSync(path, '', { mode: 0o600 }), 'it is empty'],
	[
		'gone',
		(path: string) => writeFileSync(path.replace('journal', 'left-9'), ''),
		'is not there any more',
	],
])('where the last night is %s, whoever wants the last one is told', async (_, make, words) => {
	const { data, nights, command } = withNight();
	make(join(nights, '2026-12-24-203000-quay-street-7f3a.journal'));
	for (const line of [['report'], ['tomorrow'], ['report', '--nights', '3']]) {
		const { err } = await command(...line);
		expect(err.split(words), line.join(' ')).toHaveLength(2);
	}
	const named = await command('report', '2026-12-24-203000-quay-street-7f3a');
	expect(named).toMatchObject({ code: 2, out: '' });
	expect(named.err.split(words)).toHaveLength(2);
	// An older one is of no matter to them.
	for (const name of readdirSync(nights).filter((one) => one.startsWith('2026-12')))
		renameSync(join(nights, name), join(nights, name.replace('2026-12', '2026-10')));
	expect((await command('report')).err).toBe('');
	expect((await runCommand({ cwd: data, data }, 'nights')).out).toContain(words);
});

test('zeros at the end are told by both', async () => {
	const { path, command } = withNight();
	writeFileSync(path, Buffer.alloc(300), { flag: 'a' });
	for (const name of ['nights', 'report']) {
		expect((await command(name)).out, name).toContain('300 zero bytes, left out');
	}
});

test('a night in the folder for temporary files is told to lie there, and not safe', async () => {
	// Where tests have theirs a restart empties nothing.
	vi.stubEnv('TMPDIR', '/tmp');
	onTestFinished(() => {
		vi.unstubAllEnvs();
	});
	const { data, nights, path, command } = withNight();
	const paths = findPaths({
		...{ dataOption: data, environment: {}, home: '/', platform: 'linux' },
	});
	const spare = nightPlaces(paths).folders[1] ?? '';
	mkdirSync(spare, { mode: 0o700 });
	onTestFinished(() => renameSync(spare, join(data, 'spare')));
	expect((await command('nights')).out).toContain(
		`It is in ${nights}, not safe: a restart of the machine empties that folder. Copy it away before one.`,
	);
	renameSync(path, join(spare, `${NIGHT}.journal`));
	expect((await command('nights')).out).toContain(
		`It is in ${spare}, not safe: a restart of the machine empties that folder.`,
	);
});

test('a folder that is no folder, or open for others, or a link, is told', async () => {
	const { data, nights, command } = withNight();
	chmodSync(nights, 0o777);
	expect((await command('nights')).err).toContain(
		`${nights} is used, but other users may write into it`,
	);
	chmodSync(nights, 0o700);
	renameSync(nights, join(data, 'behind'));
	symlinkSync('behind', nights);
	const { out, err } = await command('nights');
	expect(err).toContain(`${nights} is used, but it is a link`);
	expect(out).toContain(NIGHT);
	const file = join(dirname(scratchFolder()), 'none');
	const other = scratchFolder();
	writeFileSync(join(other, 'nights'), file);
	expect((await runCommand({ cwd: other, data: other }, 'nights')).err).toContain(
		'cannot be used: part of the path is a file, not a folder (ENOTDIR).',
	);
});

test('a folder that cannot be looked into is told once', async () => {
	const { nights, command } = withNight();
	rmSync(nights, { recursive: true });
	symlinkSync('nights', nights);
	const { err } = await command('nights');
	expect(err).toBe(`${nights} cannot be used: a link stands where the file should be (ELOOP).\n`);
});

test.runIf(process.getuid?.() === 0)('a night that somebody else made is told', async () => {
	const { path, command } = withNight();
	chownSync(path, NOBODY, NOBODY);
	const words = `${path} is used, but it belongs to another user`;
	expect((await command('nights')).out).toContain(words);
	expect((await command('report')).out.replaceAll('\\', '')).toContain(words);
});
