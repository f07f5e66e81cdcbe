// The copy of a show that a night has: the same show whatever it is read by, and said in words where it is none.

import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import type { Show } from '../../src/showfile/show.ts';
import { keptShow, showRecord } from '../../src/showfile/show-record.ts';
import { runCommand } from '../cli/run-command.ts';
import { loadShow } from '../scenarios/load-show.ts';

test.each([undefined, null, 'a show', {}, { players: [], songs: [], set: [] }])(
	'%j is none',
	(copy) => {
		expect(keptShow(copy)).toBe(null);
	},
);

const SHOWS = ['club', 'festival', 'first', 'folk'];

/** As a journal has it. */
const onDisk = (copy: unknown): unknown => JSON.parse(JSON.stringify(copy));

test.each(SHOWS)('%s is the same show again', (name) => {
	const show = loadShow(`shows/${name}.yaml`);
	expect(keptShow(onDisk(showRecord(show)))).toEqual(onDisk(show));
});

test.each(SHOWS)('%s is read without a number too, as nights kept it at first', (name) => {
	const show = loadShow(`shows/${name}.yaml`);
	expect(keptShow(onDisk(show))).toEqual(onDisk(show));
});

test('what came later has what it had before it was known', () => {
	const { boards, packs, times, stock, abbreviations, techs, staleNewSeconds, ...early } = onDisk(
		loadShow('shows/club.yaml'),
	) as Show;
	expect(keptShow(early)).toMatchObject({
		...{ boards: {}, packs: [], times: {}, stock: [], abbreviations: {}, techs: [] },
		staleNewSeconds: 300,
		title: early.title,
	});
});

test('offsets are those of a night that kept them under their former name', () => {
	const { show } = showRecord(loadShow('shows/first.yaml'));
	const offsets = [{ player: 'ash', cents: { 3: -3 } }];
	expect(keptShow({ v: 2, show: { ...show, sweeten: offsets } })).toMatchObject({ offsets });
	expect(keptShow({ ...show, sweeten: offsets })).toMatchObject({ offsets });
});

test('nothing but what the form has is kept', () => {
	const show = { ...loadShow('shows/first.yaml'), scratch: 1 };
	expect(showRecord(show).show).not.toHaveProperty('scratch');
});

test('a show of a later version, or one that is half a show, is none', () => {
	const record = showRecord(loadShow('shows/first.yaml'));
	expect(keptShow({ ...record, v: 4 })).toBe(null);
	expect(keptShow({ ...record, show: { ...record.show, players: [{ id: 'ash' }] } })).toBe(null);
});

test('the report of such a night says so', async () => {
	const data = mkdtempSync(join(tmpdir(), 'rackside-kept-'));
	onTestFinished(() => rmSync(data, { recursive: true }));
	mkdirSync(join(data, 'nights'));
	// Its show has a title and nothing else.
	copyFileSync('tests/journals/v1.journal', join(data, 'nights/v1.journal'));
	const { code, err: told } = await runCommand({ cwd: process.cwd(), data }, 'report', 'v1');
	expect({ code, told }).toEqual({ code: 2, told: expect.stringContaining('cannot be read') });
});
