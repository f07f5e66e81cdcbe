// `plan --sheet` as it is typed: its forms and pages, files and PDFs, and what a reprint says.

import {
	chmodSync,
	copyFileSync,
	existsSync,
	mkdirSync,
	mkdtempSync,
	readFileSync,
	rmSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { rackText } from '../report/small-show.ts';
import { runCommand } from './run-command.ts';

let folder: string;
const write = (text: string) => writeFileSync(join(folder, 'show.yaml'), text);
const sheet = (...argv: readonly string[]) =>
	runCommand(
		{ cwd: folder, data: join(folder, 'data'), wallMs: Date.UTC(2026, 5, 12, 17, 5) },
		'plan',
		'show.yaml',
		'--sheet',
		...argv,
	);

beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'rackside-sheet-'));
	write(rackText);
});
afterEach(() => rmSync(folder, { recursive: true }));

/** The lines about what changed, and the version. */
const said = (out: string) => ({
	version: /^version (\d+), ([0-9A-F]{6}), printed /m.exec(out)?.slice(1),
	changes: out.split('\n').filter((line) => line.startsWith('* ')),
});

describe('a reprint', () => {
	test('has the same version and says that nothing changed, where nothing did', async () => {
		const first = said((await sheet()).out);
		expect(first).toEqual({ version: ['1', expect.any(String)], changes: [] });
		const second = said((await sheet()).out);
		expect(second.version).toEqual(first.version);
		expect(second.changes).toEqual([
			expect.stringMatching(/^\* Since version 1, printed \d{4}-\d\d-\d\d \d\d:\d\d$/),
			'* Nothing changed.',
		]);
	});

	test('says what was added, dropped, moved and changed since', async () => {
		const first = said((await sheet()).out);
		write(
			rackText
				.replace('sg2, sg3, sg4]', 'sg2, sg5, sg4]')
				.replace('songs:', 'songs:\n  - {id: sg5, title: Ferry, length: "2:00"}')
				.replace('ends: ring', 'ends: talk'),
		);
		const second = said((await sheet()).out);
		expect(second.version).not.toEqual(first.version);
		expect(second.version?.[0]).toBe('2');
		expect(second.changes.slice(1)).toEqual([
			'* 2 Lantern: ends talk',
			'* Added: 3 Ferry',
			// Without Tide its capo is neither put on nor taken off.
			'* 4 Gravel: no longer BO keeps 5 Birch E std, CAPO OFF',
			'* Dropped: 3 Tide',
			'* Clock times are others from 4 Gravel on.',
		]);
		write(readFileSync(join(folder, 'show.yaml'), 'utf8').replace('sg5, sg4]', 'sg4, sg5]'));
		// Compared with the second one, and either of the two may count as moved.
		const third = said((await sheet()).out);
		expect(third.changes.filter((line) => line.startsWith('* Moved'))).toHaveLength(1);
		expect(third.version?.[0]).toBe('3');
	});

	test('says so where it is none of the songs that changed', async () => {
		const first = said((await sheet()).out);
		write(rackText.replace('case: red', 'case: blue'));
		const second = said((await sheet()).out);
		expect(second.version).not.toEqual(first.version);
		expect(second.changes.slice(1)).toEqual([
			'* The songs are the same; work, warnings, packs or the rack changed.',
		]);
	});

	test('says what is noted of a song since, and the page has it beside the song', async () => {
		await sheet();
		write(rackText.replace('ends: ring', 'ends: ring, notes: DI ch 14'));
		expect(said((await sheet()).out).changes.slice(1)).toEqual(['* 2 Lantern: note: DI ch 14']);
		const { out } = await sheet('--as', 'html');
		const rows = out.match(/<article.*?<\/article>/gs)!;
		expect(rows.find((row) => row.includes('<h3>2 '))).toContain('DI ch 14');
		expect(out.match(/note: DI ch 14/g)).toHaveLength(1);
	});

	test('marks on the page the songs that are new or otherwise', async () => {
		await sheet();
		write(rackText.replace('ends: ring', 'ends: talk'));
		const { out } = await sheet('--as', 'html');
		const rows = out.match(/<article.*?<\/article>/gs)!;
		const changed = rows.filter((row) => row.includes('CHANGED'));
		expect(changed).toHaveLength(1);
		expect(changed[0]).toContain('Lantern');
	});

	test('is of one show alone, and other pages than the run sheet do not count', async () => {
		await sheet('--page', 'rack');
		expect(said((await sheet()).out).changes).toEqual([]);
		writeFileSync(join(folder, 'other.yaml'), rackText);
		const place = { cwd: folder, data: join(folder, 'data') };
		const { out } = await runCommand(place, 'plan', 'other.yaml', '--sheet');
		expect(said(out).changes).toEqual([]);
	});

	test('prints all the same where the last one cannot be kept or read, and writes over nothing that is not ours', async () => {
		const kept = join(folder, 'data', 'sheets.json');
		await sheet();
		const foreign = join(folder, 'foreign.json');
		writeFileSync(foreign, 'theirs');
		rmSync(kept);
		symlinkSync(foreign, kept);
		const linked = await sheet();
		expect(linked.code).toBe(0);
		expect(linked.out).toContain('Lantern');
		expect(linked.err).toBe(
			`${kept} could not be written: a link stands where the file should be (ELOOP). The next printing cannot say what changed since this one.\n`,
		);
		expect(readFileSync(foreign, 'utf8')).toBe('theirs');
		rmSync(kept);
		writeFileSync(kept, '{"sheets":[{"show":1}]}', { mode: 0o600 });
		const damaged = await sheet();
		expect(damaged.code).toBe(0);
		expect(damaged.out).toMatch(/^version [0-9A-F]{6}, printed /m);
		expect(readFileSync(kept, 'utf8')).toBe('{"sheets":[{"show":1}]}');
	});
});

describe('its pages', () => {
	test('one board: what to press and the whole of it', async () => {
		const { out } = await sheet('--page', 'cues=bo');
		expect(out).toContain('solo: −DRIVE +DELAY eighth 300 ms  (Delay eighth 300 ms)  “eight bars”');
		expect(out).not.toContain('Amber');
	});

	test('the rack: slot, tuning, for whom, strings, case', async () => {
		const { out } = await sheet('--page', 'rack');
		expect(out).toContain(
			'1 Amber E std, six-string electric guitar, Ash, 10 13 17 26w 36w 46w, case\n    red, pack P1 (11)\n',
		);
		expect(out).toContain('S Spruce E std, six-string electric guitar, spare for Ash');
	});

	test('the radio: who wears what from when, what is spare, who has to be told', async () => {
		const { out } = await sheet('--page', 'radio');
		expect(out).toContain('ASH pack P1, channel 11, from 1 Harbour on 1 Amber\n');
		expect(out).toContain('ASH pack P2, channel 12, from 2 Lantern on 1 Amber, TELL THE DESK');
		expect(out).toContain('Spare: P3 (13).');
		expect(out).toContain('tell the desk, Lou, and whoever mixes the monitors at\n  once.');
	});

	test('the floor before a player: their own alone', async () => {
		const { out } = await sheet('--page', 'floor=Ash');
		expect(out).toContain('  1 Harbour: 1 Amber E std, YOU START');
		expect(out).not.toContain('Birch');
		expect(out).not.toContain('DRIVE');
		expect((await sheet('--page', 'floor=bo')).out).toContain('  3 Tide: 5 Birch, CAPO ON 2\n');
	});

	test('cut down to what changes for one player, whose floor page has every song all the same', async () => {
		const { out } = await sheet('--as', 'html', '--player', 'ash', '--changes');
		const [run = '', , ...floors] = out.match(/<section>.*?<\/section>/gs)!;
		expect(run).toContain('>Lantern<');
		for (const other of ['>Tide<', '>BO<', 'BO 5 Birch', '+DRIVE'])
			expect(run).not.toContain(other);
		expect(floors).toHaveLength(1);
		for (const title of ['Harbour', 'Lantern', 'Tide', 'Gravel'])
			expect(floors[0]).toContain(title);
	});

	test('for the players of one technician', async () => {
		const { out } = await sheet('--tech', 'lou');
		expect(out).toContain('ASH on 1 Amber');
		expect(out).not.toMatch(/BO (on|keeps)/);
	});
});

test('of the night under way: what is played is done, and does not count as dropped', async () => {
	// A night of tests/night/frozen-nights.test.ts, whose show file is not on this machine.
	const kept = join(import.meta.dirname, '../journals/2026-12-01-club-open.journal');
	const nights = join(folder, 'data', 'nights');
	mkdirSync(nights, { recursive: true, mode: 0o700 });
	chmodSync(join(folder, 'data'), 0o700);
	copyFileSync(kept, join(nights, '2026-12-01-club-open.journal'));
	chmodSync(join(nights, '2026-12-01-club-open.journal'), 0o600);
	const show = '/home/lou/tour/club.yaml';
	const before = {
		show,
		version: 4,
		hash: '000000',
		printedAtMs: 0,
		songs: [
			{ key: 'harbour 1', name: '1 Harbour', clock: '20:30', said: [] },
			{ key: 'gone 1', name: '2 Gone', clock: '20:34', said: [] },
		],
	};
	const sheets = JSON.stringify({ sheets: [before] });
	writeFileSync(join(folder, 'data', 'sheets.json'), sheets, { mode: 0o600 });
	const place = { cwd: folder, data: join(folder, 'data') };
	const { code, out } = await runCommand(place, 'plan', show, '--tonight');
	expect(code).toBe(0);
	expect(out).toMatch(/^ {2}1 Harbour +done$/m);
	expect(out).toMatch(/^ 14 Quarry +\d\d:\d\d/m);
	const { version, changes } = said(out);
	expect(version?.[0]).toBe('5');
	expect(changes).toContain('* Dropped: 2 Gone');
	expect(changes.join(' ')).not.toContain('Harbour is');
	expect(changes.join(' ')).not.toContain('Dropped: 1');
});

describe('a request that cannot be used', () => {
	test.each([
		[
			['--page', 'rak'],
			'there is no such page of a run sheet (found rak; expected run, rack, radio, cues=PLAYER',
		],
		[['--page', 'cues'], 'there is no such page of a run sheet'],
		[['--page', 'cues=cy'], 'there is no such player in this show (found cy; expected Ash, Bo)'],
		[['--player', 'as'], 'Did you mean Ash?'],
		[['--tech', 'ash'], 'there is no such technician in this show'],
		[['--as', 'pdf'], 'a run sheet cannot be written as this (found pdf; expected text, html)'],
		[
			['--pdf', 'a.pdf', '--paper', 'a5'],
			'there is no such paper here (found a5; expected a4, letter)',
		],
		[['--pdf', 'a.pdf', '--out', 'b'], '--pdf and --out ask for two things'],
		[['--player', 'ash', '--tech', 'lou'], '--player and --tech ask for two things'],
		[['--why', 'Harbour'], '--why and --sheet ask for two things'],
	])('%j', async (argv, words) => {
		const { code, out, err } = await sheet(...argv);
		expect({ code, out }).toEqual({ code: 2, out: '' });
		expect(err).toContain(words);
	});

	test('a file that is there is not written over, unless told so', async () => {
		writeFileSync(join(folder, 'a.html'), 'mine');
		const refused = await sheet('--as', 'html', '--out', 'a.html');
		expect(refused.code).toBe(2);
		expect(readFileSync(join(folder, 'a.html'), 'utf8')).toBe('mine');
		const forced = await sheet('--as', 'html', '--out', 'a.html', '--force');
		expect(forced.code).toBe(0);
		expect(readFileSync(join(folder, 'a.html'), 'utf8')).toMatch(/^<!DOCTYPE html>/);
	});
});

describe('--pdf', () => {
	const pdf = (path: string) =>
		runCommand(
			{ cwd: folder, data: join(folder, 'data'), path },
			'plan',
			'show.yaml',
			'--pdf',
			'a.pdf',
		);

	test('says where no browser is at hand, and how to print without', async () => {
		const { code, err } = await pdf(folder);
		expect(code).toBe(2);
		expect(err).toContain(
			'no browser was found that can print to a PDF by itself (chromium in PATH)',
		);
		expect(err).toContain('--as html --out sheet.html');
		expect(existsSync(join(folder, 'a.pdf'))).toBe(false);
	});

	test('says where a browser does not print', async () => {
		const browser = join(folder, 'chromium');
		writeFileSync(browser, '#!/bin/sh\nexit 0\n');
		chmodSync(browser, 0o755);
		const { code, err } = await pdf(folder);
		expect(code).toBe(2);
		expect(err).toContain('this browser did not print the sheet');
	});
});
