// The commands that look at many nights, as they are typed.

import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import { HtmlValidate } from 'html-validate';
import { expect, test } from 'vitest';
import { makeFolders } from '../../src/disk/folders.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { runCommand } from '../cli/run-command.ts';
import { scratchFolder } from '../disk/scratch-folder.ts';
import { bytesOf, keepNights, NIGHTS, SHOW_TEXT, showOf } from './three-nights.ts';

function withNights() {
	const data = scratchFolder();
	keepNights(data);
	const command = (...argv: string[]) => runCommand({ cwd: data, data }, ...argv);
	return { data, command };
}

test('times are told and not set until that is asked for', async () => {
	const { data, command } = withNights();
	const { out, code } = await command('times');
	expect(code).toBe(0);
	expect(await command('times', '--careful')).toMatchObject({ code: 2, out: '' });
	expect(out).toMatch(/^hand-over +9 +0:21 +0:27 +0:15 +0:15 \(built in\)$/m);
	expect(JSON.parse((await command('settings', '--json')).out).settings['time.hand-over']).toBe(
		'0:15',
	);
	const used = await command('times', '--use');
	expect(used.out).toContain('  hand-over: 0:21\n');
	expect((await command('settings', 'time.hand-over')).out).toBe('0:21\n');
	// Of restrings fewer than five were measured.
	expect((await command('settings', 'time.restring')).out).toBe('4:30\n');
	await command('times', '--use', '--careful');
	expect((await command('settings', 'time.hand-over')).out).toBe('0:27\n');
	expect(readFileSync(join(data, 'settings.json'), 'utf8')).toContain('"hand-over": 27');
});

test('from one night alone nothing is used, and the settings stay as they are', async () => {
	const { command } = withNights();
	const before = (await command('settings', '--json')).out;
	const { out, code } = await command('times', NIGHTS[0]?.id ?? '', '--use');
	expect([code, out]).toEqual([0, 'Nothing was measured often enough, so no time was changed.\n']);
	expect((await command('settings', '--json')).out).toBe(before);
});

test('where only rehearsals are recorded, it is said that they do not count, and one that is named does', async () => {
	const data = scratchFolder();
	const [first] = NIGHTS;
	if (first === undefined) throw new Error('no night');
	const kept = { show: showOf(), showPath: join(data, 'three.yaml'), isRehearsal: true };
	mkdirSync(join(data, 'nights'));
	writeFileSync(join(data, 'nights', `${first.id}.journal`), bytesOf(first, kept));
	const command = (...argv: string[]) => runCommand({ cwd: data, data }, ...argv);
	const { code, out, err } = await command('tomorrow');
	expect([code, out, err]).toEqual([
		2,
		'',
		'only rehearsals are recorded here, and they do not count unless named. rackside nights lists all nights.\n',
	]);
	expect(await command('tomorrow', first.id)).toMatchObject({ code: 0 });
});

test('times of named nights only, as data', async () => {
	const { command } = withNights();
	const [first, second] = NIGHTS;
	const { out } = await command('times', second?.id ?? '', first?.id ?? '', '--json');
	const told = JSON.parse(out);
	expect(told.nights).toEqual([first?.id, second?.id]);
	expect(told.times[0]).toEqual({
		...{ work: 'hand-over', count: 6, leftOut: 0, usedSeconds: 15 },
		// Of 16 17 19 21 22 24, definition 7: 20 in the middle, half the way from 22 to 24 at 0.9.
		...{ medianSeconds: 20, highSeconds: 23, ownSeconds: null },
	});
	expect(told.used).toBeNull();
	expect(told.pieces[0]).toEqual({
		...{ night: first?.id, work: 'hand-over', shown: '4 Anchor', title: 'Two' },
		...{ usedSeconds: 15, plannedSeconds: 15, seconds: 21 },
	});
	const each = await command('times', first?.id ?? '', '--each');
	expect(each.out).toMatch(/^2026-06-10 +Two +4 Anchor +hand-over +0:15 +0:21$/m);
});

test('a report has of each piece of work the planned and the real seconds that times measures', async () => {
	const { command } = withNights();
	for (const { id } of NIGHTS) {
		const { pieces } = JSON.parse((await command('times', id, '--json')).out);
		const measured = pieces
			.filter(({ work }: { work: string }) => work !== 'hand-over')
			.map(({ plannedSeconds, seconds }: Record<string, number>) => [plannedSeconds, seconds]);
		const { work } = JSON.parse((await command('report', id, '--json')).out);
		const told = work
			.filter(({ takenSeconds }: { takenSeconds: number | null }) => takenSeconds !== null)
			.map(({ plannedSeconds, takenSeconds }: Record<string, number>) => [
				plannedSeconds,
				takenSeconds,
			]);
		expect(told).toEqual(measured);
		expect(measured.length).toBeGreaterThan(0);
	}
});

test('nights beside one another: the last ones, since a day, as data; a wrong request is refused', async () => {
	const { command } = withNights();
	const { out } = await command('report', '--nights', '2');
	expect(out).toMatch(/^# 2 nights, 2026-06-11 to 2026-06-12$/m);
	const since = JSON.parse((await command('report', '--since', '2026-06-12', '--json')).out);
	expect(since.format).toBe('rackside-nights/1');
	expect(since.nights.map(({ day }: { day: string }) => day)).toEqual(['2026-06-12']);
	for (const [argv, found] of [
		[['--nights', '0'], '--nights needs a whole number (found 0; expected 1 to 100)'],
		[
			['--since', 'tuesday'],
			'--since needs a day (found tuesday; expected a day such as 2026-06-12)',
		],
		[['--since', '2031-05-04'], 'no night since 2031-05-04 has a song that was played'],
		[['--nights', '2', NIGHTS[0]?.id ?? ''], '--nights and --since take the last nights'],
		[
			['--nights', '2', '--as', 'moon'],
			'a report cannot be written as this (found moon; expected markdown',
		],
	] as const) {
		const { code, err } = await command('report', ...argv);
		expect(err).toContain(found);
		expect(code).toBe(2);
	}
});

test('nights beside one another as tables and as a page, by csv-parse and html-validate', async () => {
	const { command } = withNights();
	const rowsOf = (text: string): string[][] => parse(text);
	for (const name of ['incidents', 'hand-overs', 'songs', 'work', 'strings']) {
		const each: string[][] = [];
		for (const { id } of NIGHTS) {
			const { out } = await command('report', id, '--as', name);
			each.push(
				...rowsOf(out)
					.slice(1)
					.map((cells) => [id, ...cells]),
			);
		}
		const [names, ...all] = rowsOf((await command('report', '--nights', '9', '--as', name)).out);
		expect(names?.slice(0, 2)).toEqual(['night', 'day']);
		expect(all.map(([night, _day, ...cells]) => [night, ...cells])).toEqual(each);
		expect(all.map(([night = '', day]) => day === night.slice(0, 10))).not.toContain(false);
	}
	const { out } = await command('report', '--nights', '2', '--as', 'html');
	const checked = await new HtmlValidate({ extends: ['html-validate:standard'] }).validateString(
		out,
	);
	expect(checked.results.flatMap(({ messages }) => messages)).toEqual([]);
	expect(out).toContain('<h1><bdi>2 nights, 2026-06-11 to 2026-06-12</bdi></h1>');
});

test('the data of several nights fits its published schema, by ajv', async () => {
	const { command } = withNights();
	const schema = JSON.parse((await command('schema', '--nights')).out);
	const fits = new Ajv2020({ allErrors: true }).compile(schema);
	for (const asked of [
		['--nights', '1'],
		['--nights', '3'],
		['--since', '2026-06-11'],
	]) {
		const data = JSON.parse((await command('report', ...asked, '--json')).out);
		expect([asked, fits(data), fits.errors]).toEqual([asked, true, null]);
		expect(fits({ ...data, moon: 1 })).toBe(false);
	}
	expect(await command('schema', '--report', '--nights')).toMatchObject({ code: 2, out: '' });
});

test('a night that is not there is refused with the nearest name', async () => {
	const { command } = withNights();
	const { code, err } = await command('times', '2026-06-10-200000-three-nights-aaab');
	expect(code).toBe(2);
	expect(err).toContain(`Did you mean ${NIGHTS[0]?.id}?`);
});

test('a rehearsal like a night goes by its lengths and gaps', async () => {
	const { data, command } = withNights();
	writeFileSync(join(data, 'three.yaml'), SHOW_TEXT);
	writeFileSync(join(data, 'keys.txt'), '00:00 space\n00:30 !state\n');
	const plain = await command('rehearse', 'three.yaml', '--script', 'keys.txt', '--quiet');
	const like = ['--like', NIGHTS[2]?.id ?? ''];
	const { out, err } = await command(
		...['rehearse', 'three.yaml', '--script', 'keys.txt', '--quiet', ...like],
	);
	expect(err).toBe('');
	const inSeconds = (text: string) => JSON.parse(text.split('\n')[0] ?? '').players.ash.next.in;
	// One is 60 s by the file and was on for 62; before Two the gap was 40 s both times, 15 of them for the hand-over.
	expect([inSeconds(plain.out), inSeconds(out)]).toEqual([55, 57]);
	const unknown = await command('rehearse', 'three.yaml', '--like', 'none');
	expect(unknown.code).toBe(2);
});

const JOURNALS = join(import.meta.dirname, '../journals');
const KEPT = readdirSync(JOURNALS).filter((name) => /^\d.*\.journal$/.test(name));

test.each(KEPT)('the kept night %s is told beside others as in its own report', async (name) => {
	const data = scratchFolder();
	const nights = join(data, 'nights');
	makeFolders(realDisk, nights);
	copyFileSync(join(JOURNALS, name), join(nights, name));
	const command = (...argv: string[]) => runCommand({ cwd: data, data }, ...argv);
	const id = name.replace('.journal', '');
	const report = JSON.parse((await command('report', id, '--json')).out);
	const broke = report.incidents.filter(({ kind }: { kind: string }) => kind === 'string-break');
	const beside = JSON.parse((await command('report', '--nights', '1', '--json')).out);
	expect(beside.nights).toMatchObject([{ night: report.night, breaks: broke.length }]);
	const late = report.handOvers.filter(({ isLate }: { isLate: boolean | null }) => isLate === true);
	expect(beside.nights[0].handOversLate).toBe(late.length);
	const { pieces } = JSON.parse((await command('times', '--json')).out);
	for (const { seconds, plannedSeconds } of pieces) {
		expect(seconds).toBeGreaterThanOrEqual(0);
		expect(plannedSeconds).toBeGreaterThan(0);
	}
	const { out, err } = await command('tomorrow', '--json');
	expect(err).toBe('');
	for (const line of JSON.parse(out).lines) {
		expect(Object.keys(line)).toEqual(['kind', 'instrument', 'slot', 'name', 'text', 'why']);
		expect(line.text).not.toBe('');
		expect(line.why).not.toBe('');
	}
});
