// What the launcher leaves behind on a real terminal when the program under it ends in each way. The
// program is a tiny stand-in for the bundle, so that each end comes exactly when the test wants it.

import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { spawn } from '@lydell/node-pty';
import xterm from '@xterm/headless';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const source = fileURLToPath(new URL('../../src/cli/launch.sh', import.meta.url));
const environment = { ...process.env, PATH: `${dirname(process.execPath)}:${process.env.PATH}` };
let folder = '';
let launcher = '';

beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), 'rackside-launch-'));
	mkdirSync(join(folder, 'dist'));
	launcher = join(folder, 'dist/launch.sh');
	copyFileSync(source, launcher);
});
afterAll(() => rmSync(folder, { recursive: true }));

function program(text: string) {
	writeFileSync(join(folder, 'dist/rackside.js'), text);
}

/** Takes the terminal as the live screen does, then does `then`. */
const live = (then: string) => `
	process.stdin.setRawMode(true);
	process.stdin.resume();
	process.stdout.write('\\x1b[?1049h\\x1b[?25l\\x1b[?2004h\\x1b[2J\\x1b[Hlive ' + process.ppid + '!', () => { ${then} });
`;
const farewell = `process.stdout.write('\\x1b[?2004l\\x1b[?25h\\x1b[?1049lsaved\\r\\n')`;

/** Runs the launcher from a shell on a terminal and gives what that shell and the eye find afterwards. */
async function afterwards(onScreen?: (launcherPid: number) => void) {
	const screen = new xterm.Terminal({ cols: 80, rows: 24, allowProposedApi: true });
	const shell = `echo before; stty -g >modes-before; dist/launch.sh; code=$?; stty -g >modes-after; echo "after $code"`;
	const pty = spawn('/bin/sh', ['-c', shell], {
		cwd: folder,
		cols: 80,
		rows: 24,
		env: environment,
	});
	let written = '';
	let isTold = false;
	pty.onData((data) => {
		written += data;
		screen.write(data);
		const launcherPid = written.match(/live (\d+)!/)?.[1];
		if (isTold || launcherPid === undefined) return;
		isTold = true;
		onScreen?.(Number(launcherPid));
	});
	await new Promise((resolve) => pty.onExit(resolve));
	await new Promise<void>((resolve) => screen.write('', resolve));
	const modes = (name: string) => readFileSync(join(folder, name), 'utf8');
	const buffer = screen.buffer.active;
	const lines = Array.from({ length: 24 }, (_, row) =>
		buffer.getLine(row)?.translateToString(true),
	);
	return {
		lines: lines.filter((line) => line !== ''),
		leavings: written.split('\x1b[?1049l').length - 1,
		isPrimary: buffer.type === 'normal',
		isPasteBracketed: screen.modes.bracketedPasteMode,
		isCursorHidden: written.lastIndexOf('\x1b[?25l') > written.lastIndexOf('\x1b[?25h'),
		areModesKept: modes('modes-before') === modes('modes-after'),
	};
}

const putRight = {
	isPrimary: true,
	isPasteBracketed: false,
	isCursorHidden: false,
	areModesKept: true,
};

describe('on a terminal', () => {
	test.each([
		['KILL', 137],
		['ABRT', 134],
		['SEGV', 139],
	])('puts everything right after %s, and says so', async (signal, code) => {
		program(live(`process.kill(process.pid, 'SIG${signal}')`));
		const found = await afterwards();
		expect(found).toMatchObject(putRight);
		expect(found.lines[0]).toBe('before');
		expect(found.lines.join('')).toMatch(/rackside stopped unexpectedly.*type reset\.after \d+$/);
		expect(found.lines.at(-1)).toBe(`after ${code}`);
	});

	test.each([
		['HUP', 129],
		['INT', 130],
		['TERM', 143],
	] as const)('hands %s on, and adds nothing to a proper farewell', async (signal, code) => {
		const leave = `${farewell}; process.stdin.setRawMode(false); process.exitCode = ${code}; process.stdin.destroy();`;
		program(`process.on('SIG${signal}', () => { ${leave} }); ${live('')}`);
		const found = await afterwards((pid) => process.kill(pid, `SIG${signal}`));
		expect(found).toMatchObject(putRight);
		expect(found.lines).toEqual(['before', 'saved', `after ${code}`]);
	});

	test('writes nothing, and puts the settings right, once it was told that the last words are out', async () => {
		const leave = `${farewell}; process.kill(process.ppid, 'SIGUSR2'); process.exit(143);`;
		program(`process.on('SIGTERM', () => { ${leave} }); ${live('')}`);
		const found = await afterwards((pid) => process.kill(pid, 'SIGTERM'));
		expect(found).toMatchObject(putRight);
		expect(found.lines).toEqual(['before', 'saved', 'after 143']);
		// Once, by the program itself: a second time would move the cursor (xterm control sequences, 1049).
		expect(found.leavings).toBe(1);
	});

	test('puts the screen right when the farewell was lost', async () => {
		program(`process.on('SIGTERM', () => process.exit(143)); ${live('')}`);
		const found = await afterwards((pid) => process.kill(pid, 'SIGTERM'));
		expect(found).toMatchObject(putRight);
		expect(found.lines).toEqual(['before', 'after 143']);
	});

	test('does not wait for a program that has said goodbye and cannot end', async () => {
		// As a sync that hangs: the loop stands still, and no signal but KILL gets through.
		const hang = 'Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0)';
		const leave = `${farewell}; process.stdin.setRawMode(false); process.kill(process.ppid, 'SIGUSR1'); setTimeout(() => ${hang}, 50);`;
		program(live(`setTimeout(() => { ${leave} }, 10)`));
		const beganMs = performance.now();
		const found = await afterwards();
		expect(performance.now() - beganMs).toBeLessThan(5000);
		expect(found).toMatchObject(putRight);
		expect(found.lines).toEqual(['before', 'saved', 'after 3']);
	});

	test('puts the terminal right even if somebody else sends it the word for that', async () => {
		program(live(''));
		const found = await afterwards((pid) => process.kill(pid, 'SIGUSR1'));
		expect(found).toMatchObject(putRight);
		expect(found.lines.at(-1)).toBe('after 3');
	});

	test('keeps the code of one that could end all the same', async () => {
		program(live(`${farewell}; process.kill(process.ppid, 'SIGUSR1'); process.exit(1)`));
		const found = await afterwards();
		expect(found.lines.at(-1)).toBe('after 1');
	});

	test.each([0, 1, 2, 3, 70])(
		'ends with %i as the program did, and writes nothing',
		async (code) => {
			program(`process.exitCode = ${code}`);
			const found = await afterwards();
			expect(found.lines).toEqual(['before', `after ${code}`]);
		},
	);
});

describe('from a place that Node loads nothing from', () => {
	test.each([
		['a backslash', Buffer.from('back\\slash'), 'back\\slash'],
		['a name that is not UTF-8', Buffer.from([0x61, 0xff]), 'a?'],
	])('%s: a plain sentence', (_, name, said) => {
		const inside = Buffer.concat([Buffer.from(`${folder}/`), name]);
		mkdirSync(inside);
		const dist = Buffer.concat([inside, Buffer.from('/launch.sh')]);
		copyFileSync(source, dist);
		const found = spawnSync('/bin/sh', ['-c', '"$1"/*[!a-z]*/launch.sh plan', 'sh', folder], {
			encoding: 'utf8',
			env: environment,
		});
		expect(found.stderr).toMatch(/^rackside cannot be started from .*: Node loads no program from/);
		expect(found.stderr).toContain(`/${said}: Node`);
		expect(found.status).toBe(2);
		rmSync(inside, { recursive: true });
	});

	test('letters of any script are none', () => {
		const inside = join(folder, 'Müller 日本');
		mkdirSync(inside);
		copyFileSync(source, join(inside, 'launch.sh'));
		writeFileSync(join(inside, 'rackside.js'), "console.log('started')");
		const found = spawnSync(join(inside, 'launch.sh'), { encoding: 'utf8', env: environment });
		expect(found).toMatchObject({ status: 0, stdout: 'started\n', stderr: '' });
	});
});

describe('away from a terminal', () => {
	test('hands over arguments, input, output and exit code', () => {
		program(`
			process.stdout.write(JSON.stringify(process.argv.slice(2)));
			process.stdin.pipe(process.stdout);
			process.exitCode = 1;
		`);
		const args = ['run', 'a b.yaml', '--data=*', ''];
		const found = spawnSync(launcher, args, { input: ' in', encoding: 'utf8', env: environment });
		expect(found).toMatchObject({ status: 1, stdout: `${JSON.stringify(args)} in`, stderr: '' });
	});

	test('says what is missing where there is no node', () => {
		const found = spawnSync('/bin/sh', ['-c', 'PATH=; . "$0"', launcher], { encoding: 'utf8' });
		expect(found.stderr).toMatch(/needs Node 22\.2 or newer/);
		expect(found.status).toBe(2);
	});
});
