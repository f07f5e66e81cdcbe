// Shows of several files: which names may be included, how what they hold is joined, and what is said where that cannot be.

import { describe, expect, it } from 'vitest';
import { readShow } from '../../src/showfile/read-show.ts';
import { LARGEST_SHOW_BYTES } from '../../src/showfile/read-source.ts';
import { problemText } from '../../src/words/problem-text.ts';
import { problemOf } from '../../src/words/problems.ts';
import { type Folder, linesFrom, loaderOf, showFrom } from './show-files.ts';

const PARTS = `players: [{id: ash, name: Ash}]
instruments: [{id: A1, slot: "1", kind: electric-6, tuning: E standard}]
songs: [{id: a, hands: {ash: A1}}]
`;
const including = (...names: readonly string[]) =>
	`format: rackside/1\ninclude: ${JSON.stringify(names)}\nset: [a]\n`;

describe('the name of an included file', () => {
	it.each([
		'gear.yaml',
		'_gear 2026-06.yaml',
		'Gitarren für Ströme.yaml',
		'ギター.yaml',
		'9.yaml',
		'e\u0301te\u0301.yaml',
		'x'.repeat(255),
		' gear.yaml ',
	])('may be %s', (name) => {
		const folder = { 'show.yaml': including(name), [name.trim()]: PARTS };
		expect(showFrom(folder).songs).toHaveLength(1);
	});

	it.each([
		'../gear.yaml',
		'sub/gear.yaml',
		'sub\\gear.yaml',
		'/etc/passwd',
		'.hidden.yaml',
		'-gear.yaml',
		'gear\u0301/x.yaml',
		'für/gear.yaml',
		'gear.yaml?x',
		'gear.yaml*',
		'ü*',
		'*ü',
		'́gear.yaml',
		'x'.repeat(256),
		'ü'.repeat(256),
	])('cannot be %s, and no such file is asked for', (name) => {
		const asked: string[] = [];
		const load = loaderOf({ 'show.yaml': including(name) });
		const { problems } = readShow((path) => {
			asked.push(path);
			return load(path);
		}, 'show.yaml');
		expect(problems.map(({ code }) => code)).toEqual(['include-name']);
		expect(problems[0]?.where).toMatchObject({ file: 'show.yaml', line: 2, column: 11 });
		expect(asked).toEqual(['show.yaml']);
	});
});

describe('what is included', () => {
	it.each([
		['twice', including('gear.yaml', 'gear.yaml'), 'show.yaml:2:23: this file is included'],
		['itself', including('show.yaml', 'gear.yaml'), 'show.yaml:2:11: a file cannot include itself'],
		[
			'more than twenty files',
			including('gear.yaml', ...Array.from({ length: 20 }, (_, at) => `empty-${at}.yaml`)),
			'show.yaml:2:',
		],
	])('cannot be %s', (_, main, said) => {
		// The last one is not even there: it is not asked for.
		const empty = Array.from({ length: 19 }, (__, at) => [`empty-${at}.yaml`, '']);
		const folder = { 'show.yaml': main, 'gear.yaml': PARTS, ...Object.fromEntries(empty) };
		const lines = linesFrom(folder);
		expect(lines).toHaveLength(1);
		expect(lines[0]).toContain(said);
	});

	it('may be twenty files, and empty ones', () => {
		const names = Array.from({ length: 19 }, (_, at) => `empty-${at}.yaml`);
		const folder = {
			'show.yaml': including('gear.yaml', ...names),
			'gear.yaml': PARTS,
			...Object.fromEntries(names.map((name, at) => [name, at % 2 === 0 ? '' : '# nothing yet\n'])),
		};
		expect(showFrom(folder).songs).toHaveLength(1);
		// With every file there, an id that nobody has is a mistake all the same.
		expect(
			linesFrom({ ...folder, 'show.yaml': folder['show.yaml'].replace('[a]', '[b]') }),
		).toEqual([expect.stringContaining('show.yaml:3:7: there is no song b')]);
	});

	it('is asked for in the folder of the main file, however that is written', () => {
		for (const folder of ['tour/', 'C:\\shows\\', '../a/b\\']) {
			const files = {
				[`${folder}show.yaml`]: including('gear.yaml'),
				[`${folder}gear.yaml`]: PARTS,
			};
			expect(readShow(loaderOf(files), `${folder}show.yaml`).problems).toEqual([]);
			const itself = { [`${folder}show.yaml`]: including('show.yaml') };
			const { problems } = readShow(loaderOf(itself), `${folder}show.yaml`);
			expect(problems.map(({ code }) => code)).toEqual(['include-twice']);
		}
	});

	it('is named by a text', () => {
		const main = including('gear.yaml').replace('["gear.yaml"]', '[{a: gear.yaml}, gear.yaml]');
		expect(linesFrom({ 'show.yaml': main, 'gear.yaml': PARTS })).toEqual([
			expect.stringContaining('show.yaml:2:11: '),
		]);
	});

	it('must hold keys: a list or a text is no part of a show, and hides what else may be missing', () => {
		const folder: Folder = { 'show.yaml': including('gear.yaml'), 'gear.yaml': '- id: A1\n' };
		expect(linesFrom(folder)).toEqual([expect.stringMatching(/^gear\.yaml:1:1: /)]);
	});

	it('that cannot be read is said by its name and why, and nothing that it may hold is missed', () => {
		const load = loaderOf({ 'show.yaml': including('gear.yaml') });
		const { problems } = readShow(
			(path) => (path === 'gear.yaml' ? { trouble: 'EACCES' } : load(path)),
			'show.yaml',
		);
		expect(problems.map((one) => problemText(problemOf(one)))).toEqual([
			expect.stringMatching(/^show\.yaml:2:11: .*no permission \(EACCES\)/),
		]);
	});

	it('under a name that cannot be hides no slip in the rest, and is no reason for others', () => {
		const main = `${including('../gear.yaml')}songs: [{id: b, hands: {ash: A1}, lenght: "3:00"}]\n`;
		expect(linesFrom(main).map((line) => line.split(' ')[0])).toEqual([
			'show.yaml:2:11:',
			'show.yaml:4:35:',
		]);
	});
});

describe('a main file', () => {
	it.each([
		[null, 'there is no such file'],
		[{ trouble: 'EACCES' }, 'no permission (EACCES)'],
		[{ trouble: 'EISDIR' }, 'it is a folder'],
	])('that cannot be had is said with its name: %j', (bytes, said) => {
		const { show, problems } = readShow(() => bytes, 'tour/sh\u001bow.yaml');
		expect(show).toBeNull();
		const lines = problems.map((one) => problemText(problemOf(one)));
		expect(lines).toEqual([expect.stringContaining(said)]);
		expect(lines[0]).toContain('tour/sh␛ow.yaml');
	});

	it.each(['- a\n- b\n', 'a text\n', ''])('that holds no keys is no show: %j', (text) => {
		const lines = linesFrom(text);
		expect(lines).toHaveLength(1);
		expect(lines[0]).toMatch(/^show\.yaml:1:1: /);
	});
});

describe('joined', () => {
	const joined = (gear: string, main: string) =>
		linesFrom({
			'show.yaml': `${including('gear.yaml')}${main}`,
			'gear.yaml': `${PARTS}${gear}`,
		});

	it('are lists, maps by key and times by kind and work', () => {
		const show = showFrom({
			'show.yaml': `${including('gear.yaml', 'more.yaml')}songs: [{id: c}]\nboards: {bo: [{id: two}]}\ntimes: {all: {wipe: 10s}}\nplayers: [{id: bo}]\nabbreviations: {Q: drop D}\n`,
			'gear.yaml': `${PARTS}format: rackside/1\ntimes: {all: {walk: 5s}, bass-4: {wipe: 20s}}\nboards: {ash: [{id: one}]}\n`,
			'more.yaml': 'songs: [{id: b}]\nplayers:\nabbreviations:\n',
		});
		expect(show.songs.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
		expect(Object.keys(show.boards)).toEqual(['ash', 'bo']);
		expect(show.times).toEqual({ all: { walk: 5, wipe: 10 }, 'bass-4': { wipe: 20 } });
		expect(show.abbreviations).toEqual({ Q: 'drop D' });
	});

	it.each([
		['a board', 'boards: {ash: [{id: one}]}\n', 'boards: {ash: [{id: two}]}\n', '4:15: ash'],
		['a time', 'times: {all: {walk: 5s}}\n', 'times: {all: {walk: 6s}}\n', '4:21: walk'],
		['a short name', 'abbreviations: {Q: drop D}\n', 'abbreviations: {Q: drop C}\n', '4:20: Q'],
		['a list where the other has keys', 'stage: {humidity: 40}\n', 'stage: [40]\n', '4:8: stage'],
		['keys where the other has a text', 'stage: warm\n', 'stage: {humidity: 40}\n', '4:8: stage'],
		['keys where the other has a list', 'gauges: ["10"]\n', 'gauges: {a: 1}\n', '4:9: gauges'],
		[
			'a short name that is called as a key of the file',
			'abbreviations: {format: drop D}\n',
			'abbreviations: {format: drop C}\n',
			'4:25: format',
		],
		['a set', 'set: [a]\n', '', '3:6: set'],
	])('cannot be %s that both have', (_, gear, main, said) => {
		expect(joined(gear, main)).toContainEqual(
			expect.stringContaining(
				`show.yaml:${said} is in two files (found the other one in gear.yaml)`,
			),
		);
	});

	it.each(['show: {title: x}\n', 'include: other.yaml\n'])(
		'is nothing that belongs in the main file: %s',
		(gear) => {
			const main = 'show: {title: y}\n';
			expect(joined(gear, main)).toEqual([expect.stringMatching(/^gear\.yaml:4:1: /)]);
			// It hides nothing else.
			expect(joined(gear, 'offsets: [{player: bo, cents: {}}]\n')).toEqual([
				expect.stringContaining('show.yaml:4:20: there is no player bo'),
				expect.stringMatching(/^gear\.yaml:4:1: /),
			]);
		},
	);

	it('count into one size, to the byte', () => {
		const main = including('gear.yaml');
		const room = LARGEST_SHOW_BYTES - main.length;
		const gear = (bytes: number) => `${PARTS}#${'x'.repeat(bytes - PARTS.length - 2)}\n`;
		expect(linesFrom({ 'show.yaml': main, 'gear.yaml': gear(room) })).toEqual([]);
		expect(linesFrom({ 'show.yaml': main, 'gear.yaml': gear(room + 1) })).toEqual([
			expect.stringContaining('gear.yaml: the file is too large'),
		]);
	});
});
