// What the doctor says of laptops of every kind, each invented: fine, to look at with what to do, or unknown.

import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { examine } from '../../src/cli/commands/doctor.ts';
import { repeatLine, switchLine } from '../../src/cli/doctor/doctor-keys.ts';
import type { DoctorLine } from '../../src/cli/doctor/doctor-line.ts';
import {
	folderLine,
	nightsLine,
	spaceLine,
	syncLine,
	troublesLine,
} from '../../src/cli/doctor/doctor-program.ts';
import { clockLines, powerLine, sleepLines } from '../../src/cli/doctor/doctor-system.ts';
import { terminalLines } from '../../src/cli/doctor/doctor-terminal.ts';
import type { Io } from '../../src/cli/io.ts';
import type { Machine } from '../../src/cli/machine.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { syncTrial } from '../../src/disk/sync-trial.ts';
import type { TerminalAbilities } from '../../src/terminal/terminal-kind.ts';
import { FaultDisk } from '../disk/fault-disk.ts';

const NOON = Date.UTC(2026, 5, 12, 12);

type Files = Readonly<Record<string, string>>;

/** A laptop with these files and these programs that print. */
function laptop(files: Files = {}, rest: Partial<Machine> = {}, prints: Files = {}): Machine {
	const under = (path: string) =>
		Object.keys(files)
			.filter((one) => one.startsWith(`${path}/`))
			.map((one) => one.slice(path.length + 1).split('/')[0] ?? '');
	return {
		platform: 'linux',
		system: 'x64 6.1',
		node: '24.0.0',
		program: '0.1.0',
		timeZone: 'Europe/Lisbon',
		offsetMinutes: () => 60,
		terminalSize: { columns: 120, rows: 40 },
		text: (path) => files[path] ?? null,
		names: (path) => [...new Set(under(path))],
		printedBy: (program) => prints[program] ?? null,
		freeBytes: () => 5_000_000_000,
		...rest,
	};
}

const brief = (lines: readonly DoctorLine[]) =>
	Object.fromEntries(lines.map(({ what, state }) => [what, state]));
const of = (lines: readonly DoctorLine[], what: string) => lines.find((one) => one.what === what);

describe('the terminal', () => {
	const SCREEN: TerminalAbilities = { kind: 'screen', colorDepth: 24, isUnicode: true };
	const seen = (rest: Partial<Parameters<typeof terminalLines>[0]>) =>
		terminalLines({
			size: { columns: 120, rows: 40 },
			abilities: SCREEN,
			isColourRefused: false,
			colours: 'dark',
			drawnCells: 3,
			...rest,
		});

	test('as it should be', () => {
		const lines = seen({});
		expect(brief(lines)).toEqual({ size: 'fine', colours: 'fine', letters: 'fine' });
		// The distance that DEVELOPERS.md gives for this size.
		expect(of(lines, 'size')?.found).toContain('read up to 2.2 m');
	});

	test.each([
		['too small', { size: { columns: 79, rows: 24 } }, { size: 'look' }],
		['so many rows that letters are small', { size: { columns: 160, rows: 50 } }, { size: 'look' }],
		['of a size it does not say', { size: null }, { size: 'unknown' }],
		['without colour', { abilities: { ...SCREEN, colorDepth: 1 as const } }, { colours: 'look' }],
		[
			'without colour, as asked',
			{ abilities: { ...SCREEN, colorDepth: 1 as const }, isColourRefused: true },
			{ colours: 'fine' },
		],
		[
			'of sixteen colours',
			{ abilities: { ...SCREEN, colorDepth: 4 as const } },
			{ colours: 'fine' },
		],
		[
			'of sixteen colours, for amber',
			{ abilities: { ...SCREEN, colorDepth: 4 as const }, colours: 'amber' as const },
			{ colours: 'look' },
		],
		[
			'that cannot move its cursor',
			{ abilities: { ...SCREEN, kind: 'dumb' as const } },
			{ colours: 'look' },
		],
		['of ASCII', { abilities: { ...SCREEN, isUnicode: false } }, { letters: 'look' }],
		['that does not say what it draws', { drawnCells: null }, { letters: 'unknown' }],
		['that draws other signs', { drawnCells: 8 }, { letters: 'look' }],
	])('%s', (_, rest, states) => {
		const lines = seen(rest);
		expect(brief(lines)).toMatchObject(states);
		for (const { state, do: todo } of lines) expect(todo === null).toBe(state === 'fine');
	});
});

describe('keys', () => {
	const held = (delay: number, interval: number, until = 2000) => {
		const presses = [{ key: 'j', atMs: 1000 }];
		for (let at = delay; at <= until; at += interval) presses.push({ key: 'j', atMs: 1000 + at });
		return { kind: 'pressed' as const, presses };
	};

	// Counted by hand from the rule of the live screen: within 300 ms of the last press nothing counts; a press
	// up to 700 ms after one and followed by two within 100 ms each is taken back.
	test.each([
		[250, 33, 'fine', 'counts once'],
		[500, 33, 'fine', 'counts once'],
		[660, 40, 'fine', 'counts once'],
		[900, 33, 'look', 'counts 2 times'],
		[500, 150, 'look', 'counts 2 times'],
		[400, 320, 'look', 'counts 7 times'],
	])('repeat after %i ms, every %i ms', (delay, interval, state, words) => {
		const line = repeatLine(held(delay, interval));
		expect(line.state).toBe(state);
		expect(line.found).toContain(`begins after ${delay} ms, then every ${interval} ms`);
		expect(line.found).toContain(words);
	});

	test('no repeat, no key and a question left are unknown', () => {
		expect(repeatLine({ kind: 'pressed', presses: [{ key: 'j', atMs: 5 }] }).state).toBe('unknown');
		expect(repeatLine({ kind: 'pressed', presses: [] }).state).toBe('unknown');
		expect(repeatLine({ kind: 'left' }).state).toBe('unknown');
	});

	const pressed = (...keys: (string | null)[]) => ({
		kind: 'pressed' as const,
		presses: keys.map((key, index) => ({ key, atMs: index * 1000 })),
	});

	test.each([
		[pressed('pagedown', 'pageup', 'pagedown'), 'fine', 'PgDn (next), PgUp (one cue back)'],
		[pressed('right', 'left'), 'look', 'right (next song), left (previous song)'],
		[pressed('4'), 'look', '4 (does nothing)'],
		[pressed(null), 'look', 'does not read'],
		[pressed(), 'unknown', 'no key came'],
		[{ kind: 'none' as const }, 'fine', 'none'],
		[{ kind: 'left' as const }, 'unknown', 'left out'],
		[
			{
				kind: 'pressed' as const,
				presses: [
					{ key: 'pagedown', atMs: 0 },
					{ key: 'pageup', atMs: 20 },
				],
			},
			'look',
			'PgDn',
		],
	])('a foot switch: %j', (answer, state, words) => {
		const line = switchLine(answer, {});
		expect(line.state).toBe(state);
		expect(line.found).toContain(words);
	});
});

describe('the clock', () => {
	test('set, kept and of a place', () => {
		const lines = clockLines(laptop({}, {}, { timedatectl: 'yes\n' }), NOON);
		expect(brief(lines)).toEqual({ clock: 'fine', 'clock kept': 'fine', 'time zone': 'fine' });
		expect(of(lines, 'clock')?.found).toBe('2026-06-12 13:00');
		expect(of(lines, 'time zone')?.found).toBe('Europe/Lisbon (UTC+1)');
	});

	test('never set, and nobody knows what keeps it', () => {
		const files = { '/etc/adjtime': '0.0 0 0.0\n0\nLOCAL\n' };
		const zone = { timeZone: 'UTC', offsetMinutes: () => 0 };
		const lines = clockLines(laptop(files, zone), Date.UTC(1970, 0, 1));
		expect(brief(lines)).toEqual({ clock: 'look', 'clock kept': 'unknown', 'time zone': 'look' });
		expect(of(lines, 'clock kept')?.found).toContain('local time');
	});

	test('not kept', () => {
		const lines = clockLines(laptop({}, {}, { timedatectl: 'no\n' }), NOON);
		expect(of(lines, 'clock kept')?.state).toBe('look');
	});

	test.each([
		[-210, 'UTC-3:30'],
		[345, 'UTC+5:45'],
	])('%i minutes from UTC', (minutes, words) => {
		const lines = clockLines(laptop({}, { offsetMinutes: () => minutes }), NOON);
		expect(of(lines, 'time zone')?.found).toContain(words);
	});
});

describe('sleep, lid and lock', () => {
	const BOOTED = { '/run/systemd/system/a': '' };
	const LID = { '/proc/acpi/button/lid/LID0/state': 'open' };

	// Defaults and precedence: logind.conf(5), its sections IdleAction, HandleLidSwitch and CONFIGURATION DIRECTORIES
	// AND PRECEDENCE.
	test.each([
		['nothing is set', {}, { sleep: 'unknown', lid: 'look' }],
		[
			'an idle action',
			{ '/etc/systemd/logind.conf': '[Login]\n#IdleAction=ignore\nIdleAction=suspend\n' },
			{ sleep: 'look', lid: 'look' },
		],
		[
			'a drop-in of the user goes before the file',
			{
				'/etc/systemd/logind.conf': '[Login]\nIdleAction=lock\n',
				'/etc/systemd/logind.conf.d/50-show.conf': '[Login]\nIdleAction=\nHandleLidSwitch=ignore\n',
			},
			{ sleep: 'unknown', lid: 'fine' },
		],
		[
			'of two drop-ins the later name counts, wherever it is',
			{
				'/usr/lib/systemd/logind.conf.d/60-a.conf': 'HandleLidSwitch=suspend',
				'/etc/systemd/logind.conf.d/50-b.conf': 'HandleLidSwitch=ignore',
			},
			{ lid: 'look' },
		],
		[
			'a drop-in of the same name in /etc masks the other',
			{
				'/usr/lib/systemd/logind.conf.d/60-a.conf': 'HandleLidSwitch=suspend',
				'/etc/systemd/logind.conf.d/60-a.conf': 'HandleLidSwitch=ignore',
			},
			{ lid: 'fine' },
		],
		[
			'on mains it is another',
			{
				'/etc/systemd/logind.conf':
					'HandleLidSwitch=ignore\nHandleLidSwitchExternalPower=hibernate\n',
			},
			{ lid: 'look' },
		],
	])('%s', (_, files, states) => {
		const lines = sleepLines(laptop({ ...BOOTED, ...LID, ...files }), {});
		expect(brief(lines)).toMatchObject({ ...states, 'screen lock': 'unknown' });
	});

	test('what holds it awake counts, and a desktop that takes the lid is asked about it', () => {
		const held = { busctl: 's "handle-lid-switch:idle"\n' };
		const idle = { '/etc/systemd/logind.conf': 'IdleAction=suspend' };
		const lines = sleepLines(laptop({ ...BOOTED, ...LID, ...idle }, {}, held), {});
		expect(brief(lines)).toMatchObject({ sleep: 'unknown', lid: 'unknown' });
		expect(of(lines, 'sleep')?.found).toContain('keeps logind from it');
	});

	test('without a login manager, and on other systems, nothing is claimed', () => {
		for (const machine of [laptop(), laptop({}, { platform: 'win32' })]) {
			for (const { state, do: todo } of sleepLines(machine, {})) {
				expect(state).toBe('unknown');
				expect(todo).toMatch(/^Look in /);
			}
		}
	});

	test('on a console no desktop has a mind of its own', () => {
		const lines = sleepLines(laptop(BOOTED), { TERM: 'linux' });
		expect(of(lines, 'sleep')?.state).toBe('fine');
	});

	test('a console goes dark or not, as the kernel says', () => {
		const goesDark = (seconds: string) =>
			of(
				sleepLines(laptop({ '/sys/module/kernel/parameters/consoleblank': seconds }), {
					TERM: 'linux',
				}),
				'screen lock',
			)?.state;
		expect([goesDark('0\n'), goesDark('600\n')]).toEqual(['fine', 'look']);
	});

	// As pmset(1) prints; from memory.
	test.each([
		[' sleep                0\n displaysleep         0\n', 'fine'],
		[' sleep                1 (sleep prevented by x)\n displaysleep 0\n', 'look'],
		[' sleep                0\n displaysleep         10\n', 'look'],
		['', 'unknown'],
	])('macOS: %j', (pmset, state) => {
		const lines = sleepLines(laptop({}, { platform: 'darwin' }, { pmset }), {});
		expect(of(lines, 'sleep')?.state).toBe(state);
	});
});

describe('power', () => {
	// The kernel's Documentation/ABI/testing/sysfs-class-power: type, online, scope, capacity, status.
	const supply = (name: string, files: Files) =>
		Object.fromEntries(
			Object.entries(files).map(([file, text]) => [
				`/sys/class/power_supply/${name}/${file}`,
				`${text}\n`,
			]),
		);
	const battery = supply('BAT0', { type: 'Battery', capacity: '87', status: 'Discharging' });

	test.each([
		['mains', { ...supply('AC', { type: 'Mains', online: '1' }), ...battery }, 'fine', '87 %'],
		['unplugged', { ...supply('AC', { type: 'Mains', online: '0' }), ...battery }, 'look', '87 %'],
		['a battery alone', battery, 'look', 'on battery'],
		['nothing', {}, 'unknown', 'does not say'],
		[
			"a mouse's",
			supply('hid', { type: 'Battery', scope: 'Device', capacity: '5', status: 'Discharging' }),
			'unknown',
			'does not say',
		],
	])('%s', (_, files, state, words) => {
		const line = powerLine(laptop(files));
		expect(line.state).toBe(state);
		expect(line.found).toContain(words);
	});

	// As pmset(1) prints; from memory.
	test.each([
		["Now drawing from 'AC Power'\n -InternalBattery-0\t100%; charged", 'fine'],
		["Now drawing from 'Battery Power'\n -InternalBattery-0\t40%; discharging", 'look'],
		['', 'unknown'],
	])('macOS: %j', (pmset, state) => {
		expect(powerLine(laptop({}, { platform: 'darwin' }, { pmset })).state).toBe(state);
	});
});

describe('the disk and what is on it', () => {
	test.each([
		[[0.2, 0.3, 0.9], 'fine'],
		[[20, 40, 350], 'look'],
		[[20, 40, 1500], 'look'],
		[{ code: 'folder-unusable' as const, path: '/x', trouble: 'EROFS' }, 'look'],
	])('synced writes: %j', (trial, state) => {
		expect(syncLine(trial).state).toBe(state);
	});

	test('a disk that fails is said, and nothing is left of the trial', async () => {
		const folder = mkdtempSync(join(tmpdir(), 'rackside-doctor-'));
		try {
			let nowMs = 0;
			const parts = { folder, mark: 'x', nowMs: () => (nowMs += 2), appends: 25 };
			expect(await syncTrial({ ...parts, disk: realDisk })).toEqual(Array(25).fill(2));
			expect(readdirSync(folder)).toEqual([]);
			const failing = new FaultDisk();
			failing.effect = ({ name }) => (name === 'sync' ? { fail: 'EIO' } : null);
			expect(await syncTrial({ ...parts, disk: failing, folder: '/data' })).toEqual({
				...{ code: 'folder-unusable', path: '/data', trouble: 'EIO' },
			});
			expect(failing.list('/data')).toEqual([]);
		} finally {
			rmSync(folder, { recursive: true });
		}
	});

	test('room and folder', () => {
		expect(
			[spaceLine(99_000_000), spaceLine(2e9), spaceLine(null)].map((one) => one.state),
		).toEqual(['look', 'fine', 'unknown']);
		expect(spaceLine(2e9).found).toBe('2.0 GB');
		expect(folderLine('/tmp/x', []).state).toBe('look');
		expect(folderLine('/var/tmp/x', []).state).toBe('fine');
	});

	test('troubles of late are to be looked at, old ones are not', () => {
		const moment = { wallMs: NOON, offsetMinutes: 60 };
		const noted = (days: number) =>
			troublesLine(
				{
					troubles: [{ atMs: NOON - days * 86_400_000, code: 'unsaved', detail: 'ENOSPC' }],
					fault: null,
				},
				moment,
			);
		expect(noted(2)).toMatchObject({ state: 'look' });
		expect(noted(2).found).toContain('2026-06-10 13:00');
		expect(noted(40)).toMatchObject({ state: 'fine' });
		expect(troublesLine({ troubles: [], fault: null }, moment).state).toBe('fine');
		const fault = { code: 'file-unreadable' as const, path: '/x', trouble: 'EACCES' };
		expect(troublesLine({ troubles: [], fault }, moment).state).toBe('look');
	});

	test('nights that nobody can list are to be looked at', () => {
		expect(nightsLine([], false).state).toBe('fine');
		expect(nightsLine([], true).state).toBe('look');
	});
});

describe('the command', () => {
	const data = mkdtempSync('/var/tmp/rackside-doctor-');
	afterAll(() => rmSync(data, { recursive: true }));

	const FINE = {
		...{ '/run/systemd/system/a': '', '/sys/module/kernel/parameters/consoleblank': '0' },
		...{ '/sys/class/power_supply/AC/type': 'Mains', '/sys/class/power_supply/AC/online': '1' },
	};

	async function examined(
		machine: Machine,
		{ isTerminal, options }: { isTerminal: boolean; options?: Record<string, true> },
	) {
		let out = '';
		const io: Io = {
			write: (text) => {
				out += text;
			},
			complain: () => {},
			env: { RACKSIDE_DATA: data, TERM: 'xterm-256color', LANG: 'C.UTF-8' },
			cwd: data,
			isInputTerminal: isTerminal,
			isOutputTerminal: isTerminal,
			wallMs: () => NOON,
		};
		let nowMs = 0;
		const presses = [0, 500, 530, 560, 590].map((atMs) => ({ key: 'j', atMs }));
		const code = await examine({ words: [], options: options ?? {} }, io, {
			machine,
			clock: { nowMs: () => (nowMs += 1), after: () => () => {}, afterReading: () => {} },
			asked: {
				drawnCells: async () => 3,
				holdKey: async () => ({ kind: 'pressed', presses }),
				pressSwitch: async () => ({ kind: 'none' }),
			},
		});
		return { code, out };
	}

	test('ends with 0 where all is fine or unknown, and else with 1', async () => {
		const machine = laptop(FINE, {}, { timedatectl: 'yes' });
		const { code, out } = await examined(machine, { isTerminal: true });
		expect(out).not.toContain('LOOK');
		expect(code).toBe(0);
		expect(out).toMatch(/^fine +key repeat +begins after 500 ms/m);
		expect(out).toMatch(/^fine +foot switch +none/m);
		for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
		const never = await examined(laptop(FINE, {}, { timedatectl: 'no' }), { isTerminal: true });
		expect(never.out.match(/^LOOK.*/gm)).toEqual([expect.stringContaining('clock kept')]);
		expect(never.code).toBe(1);
	});

	test('without a terminal the keys are left out, and --json is one document', async () => {
		const machine = laptop(FINE, {}, { timedatectl: 'yes' });
		const { code, out } = await examined(machine, { isTerminal: false, options: { json: true } });
		const { lines } = JSON.parse(out);
		for (const line of lines) {
			expect(Object.keys(line)).toEqual(['what', 'state', 'found', 'do']);
			expect(['fine', 'look', 'unknown']).toContain(line.state);
		}
		expect(brief(lines)).toMatchObject({ 'key repeat': 'unknown', 'foot switch': 'unknown' });
		expect(code).toBe(lines.some((one: DoctorLine) => one.state === 'look') ? 1 : 0);
	});
});
