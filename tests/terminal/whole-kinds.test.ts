// The whole program on every kind of terminal and on none, and with every kind of text in a show.
// Numbers in brackets are those of the list of faults that the program must survive.

import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { PtyScreen } from './pty-screen.ts';
import {
	cleanUpAfterEach,
	PATIENCE_MS,
	scratch,
	startLive,
	startProgram,
} from './whole-program.ts';

cleanUpAfterEach();

/** A style that is set: SGR with a first parameter above 0 (ECMA-48). */
function styles(output: string): string[] {
	return output.split('\u001B[').flatMap((one) => /^[1-9][\d;]*m/.exec(one)?.[0] ?? []);
}

/** What asks for one of the palette's or of all colours (ECMA-48, SGR 30 to 37, 90 to 97, 38). */
const isColour = (style: string): boolean => /(^|;)(3[0-8]|9[0-7])(;|m)/.test(style);

describe('a live screen', () => {
	test.each([
		['[48] where CI is set', { CI: '1' }, true],
		['[50] with 256 colours', {}, true],
		['[50] with sixteen colours', { TERM: 'xterm' }, true],
		['[61] in screen', { TERM: 'screen' }, true],
		['[61] in tmux', { TERM: 'tmux-256color' }, true],
		['[50] without colour', { NO_COLOR: '1' }, false],
		['[50] without colour, though forced', { NO_COLOR: '1', FORCE_COLOR: '3' }, false],
		['[50] with colour forced off', { FORCE_COLOR: '0' }, false],
		['[50] on a terminal without colour', { TERM: 'vt100' }, false],
		['[50] in another language', { LANG: 'C', LC_ALL: 'C' }, true],
	] as const)('%s', async (_, env, hasColour) => {
		const { screen, signal, record, afterwards } = await startLive({ env });
		await record('t 0', 'space', 'b 1');
		// What is urgent has a colour where there is one, and its words everywhere.
		await screen.waitFor('STRING BREAK', PATIENCE_MS);
		const rows = screen.rows();
		expect(styles(screen.rawOutput()).some(isColour)).toBe(hasColour);
		if ('LC_ALL' in env) {
			const drawn = rows.join('');
			expect([...drawn].filter((one) => one > '~')).toEqual([]);
		}
		signal('SIGTERM');
		expect(await afterwards()).toEqual({ code: 143, areSettingsKept: true });
	});

	test.each(['dumb', '', 'unknown'])(
		'[49] is refused in words where TERM is "%s"',
		async (TERM) => {
			const { screen, afterwards } = startProgram({ env: { TERM } });
			expect(await afterwards()).toEqual({ code: 2, areSettingsKept: true });
			expect(screen.text().replaceAll('\n', '')).toContain('plan SHOW --sheet.code 2');
			expect(screen.rawOutput()).not.toContain('\u001B');
		},
	);

	test.each([
		['[46] input is no terminal', 'PROGRAM </dev/null'],
		['[46] input is a pipe', 'echo q | PROGRAM'],
		['[47] output is no terminal', 'PROGRAM | cat; exit 2'],
		['[47] output is a file', 'PROGRAM >/dev/null'],
	])('%s: one line, and code 2', async (_, line) => {
		for (const by of ['node', 'launcher'] as const) {
			const { screen, afterwards } = startProgram({ by, line: `(${line})` });
			expect(await afterwards()).toEqual({ code: 2, areSettingsKept: true });
			expect(screen.text().replaceAll('\n', '')).toMatch(
				/^a shellThe live screen needs a terminal[^.]*\.[^.]*\.code 2/,
			);
			expect(screen.rawOutput()).not.toContain('\u001B');
		}
	});
});

describe('commands whose reader goes away', () => {
	test.each(['plan shows/club.yaml', 'plan shows/festival.yaml --json', 'schema', '--help'])(
		'[45] %s',
		(words) => {
			const line = `{ '${process.execPath}' dist/rackside.js ${words}; echo "code $?" >&2; } | head -c 10 >/dev/null`;
			const { stderr } = spawnSync('bash', ['-c', line], {
				encoding: 'utf8',
				env: { ...process.env, RACKSIDE_DATA: scratch() },
			});
			// 141 is what a shell says of SIGPIPE (13); a short text may have gone out whole.
			expect(stderr).toMatch(/^code (0|1|141)\n$/);
		},
	);

	test.each(['plan shows/club.yaml', 'check shows/club.yaml'])(
		'[45] %s, closed from the first',
		(words) => {
			const line = `'${process.execPath}' dist/rackside.js ${words} >&-; echo "code $?" >&2`;
			const { stderr } = spawnSync('bash', ['-c', line], { encoding: 'utf8' });
			expect(stderr).toMatch(/^code \d+\n$/);
		},
	);

	// The second asks first whether it writes to a terminal, and its output is opened for that.
	test.each(['plan shows/festival.yaml --json', 'check shows/club.yaml'])(
		'[12] %s to a full disk: said in words, code 2',
		(words) => {
			const line = `'${process.execPath}' dist/rackside.js ${words} >/dev/full; echo "code $?" >&2`;
			const { stderr } = spawnSync('bash', ['-c', line], { encoding: 'utf8' });
			expect(stderr).toBe('The output could not be written (ENOSPC). Send it elsewhere.\ncode 2\n');
		},
	);

	test('complaints to a full disk: the code is the same', () => {
		const line = `'${process.execPath}' dist/rackside.js check nowhere.yaml 2>/dev/full; echo "code $?"`;
		const { stdout } = spawnSync('bash', ['-c', line], { encoding: 'utf8' });
		expect(stdout).toBe('code 2\n');
	});
});

// Each with what is drawn of it in a field of 24 cells.
const TITLES = [
	['wide', '日本語の歌', '日本語の歌  start'],
	['combining', 'Cafe\u0301 de\u0301ja\u0300', 'Café déjà  start'],
	[
		'with five hundred marks',
		`Zal${'\u0301'.repeat(500)}go`,
		`Za\u013a${'\u0301'.repeat(8)}go  start`,
	],
	['of emoji, joined, and flags', '👩‍👩‍👧 🇩🇪 👍🏽 🎸', '👩 DE 👍 🎸  start'],
	['right to left', 'שיר ערב', 'שיר ערב  start'],
	['two hundred wide', '歌'.repeat(200), '歌'.repeat(12)],
	['with controls of terminals', 'Red \u009B31m alert \u202E mirrored', 'Red ·31m alert · mirror'],
] as const;

test.each(TITLES)('[53] a title %s: columns as with any other', async (_, title, drawn) => {
	const show = join(scratch('show'), 'show.yaml');
	writeFileSync(
		show,
		[
			'format: rackside/1',
			'show: {title: Evening, date: 2026-06-12, start: "20:30"}',
			'players: [{id: ash, name: Ash, plays: guitar}]',
			'instruments: [{id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}]',
			`songs: [{id: one, title: ${JSON.stringify(title)}, length: "4:00"}, {id: two, title: Plain, length: "4:00"}]`,
			'set: [one, two, one]',
		].join('\n'),
	);
	const { screen, record } = await startLive({ words: `run '${show}'` });
	await record('t 0', 'space');
	// The clock ticks over, so that a row was drawn again in part.
	const time = await songRow(screen);
	expect(time).toContain(drawn);
	await screen.waitFor(
		() => screen.rows().some((row) => row.startsWith('SONG') && !sameTime(row, time)),
		PATIENCE_MS,
	);
	const now = await songRow(screen);
	expect(now).toContain(drawn);
	expect(now).toMatch(/\d of 4:00 +3:\d\d left {2}\d\d:\d\d$/);
	const at = screen.rows().indexOf(now);
	// The clock ends the row, wherever wide signs stand before it.
	expect(screen.cell(79, at).text).toMatch(/\d/);
	expect(screen.cell(77, at).text).toBe(':');
	expect(screen.rows().filter((row) => row.includes('? all')).length).toBe(1);
});

async function songRow(screen: PtyScreen): Promise<string> {
	const rows = await screen.waitFor(/^SONG +1 of 3/m, PATIENCE_MS);
	return rows.find((row) => row.startsWith('SONG')) ?? '';
}

function sameTime(row: string, other: string): boolean {
	return row.slice(-16) === other.slice(-16);
}
