// `rackside new` from a list and `rackside list`, as they are typed.

import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runCommand } from './run-command.ts';

let cwd = '';

beforeEach(() => {
	cwd = mkdtempSync(join(tmpdir(), 'rackside-new-'));
});

afterEach(() => {
	rmSync(cwd, { recursive: true, force: true });
});

/** Half past seven in the evening, UTC. */
const WALL_MS = Date.UTC(2026, 5, 12, 19, 30);

const run = (...argv: readonly string[]) =>
	runCommand({ cwd, data: join(cwd, 'data'), wallMs: WALL_MS }, ...argv);
const put = (name: string, text: string | Uint8Array) => writeFileSync(join(cwd, name), text);
const text = (name: string) => readFileSync(join(cwd, name), 'utf8');

const TABLE = `Title,Length,Gtr 1,Bass
Harbour,4:05,Amber DD c2,Coal
Lantern,245,DADGAD,
Gravel,4'05,?,-
`;

describe('new from a table', () => {
	it('writes the show, lists what is open with row and column, and ends with 1', async () => {
		put('friday.csv', TABLE);
		const { code, out, err } = await run('new', 'friday.yaml', '--songs', 'friday.csv');
		expect(code).toBe(1);
		expect(err).toContain('friday.csv: row 4, Gtr 1: "?": it can be read in more than one way.');
		expect(out).toContain('3 rows read, 3 songs made, 7 cells understood, 1 left open.');
		expect(out).toContain('New, four-string bass, by the heading of the column: Coal.');
		expect(text('friday.yaml')).toContain('  # OPEN, row 4, Gtr 1: "?": ');
		expect(text('friday.yaml')).toContain('date: 2026-06-12 # today, since the list has no date');
		expect(text('friday.yaml')).toContain('start: "20:00" # not in the list');
		expect((await run('list', 'friday.yaml')).code).toBe(0);
	});

	it('ends with one line of JSON and nothing else on standard output', async () => {
		put('friday.csv', TABLE);
		const { code, out } = await run('new', 'f.yaml', '--songs', 'friday.csv', '--json');
		expect(code).toBe(1);
		expect(out.split('\n')).toHaveLength(2);
		expect(JSON.parse(out)).toEqual({
			rows: 3,
			songs: 3,
			understood: 7,
			asked: [{ row: 4, column: 'Gtr 1', text: '?', why: 'it can be read in more than one way' }],
			file: 'f.yaml',
		});
	});

	it('is called as the row on top says, and says what no list tells', async () => {
		put('f.csv', `Mill Hall, Friday;;\n\nTitle;Length;Ash\nHarbour;4:05;Amber\n`);
		const { out } = await run('new', 'f.yaml', '--songs', 'f.csv');
		expect(text('f.yaml')).toContain('title: Mill Hall, Friday\n');
		expect(out).toContain(
			'Called Mill Hall, Friday; on 2026-06-12, start 20:00, which no list says. ',
		);
		put('g.csv', 'Title\nHarbour\n');
		expect((await run('new', 'h.yaml', '--songs', 'g.csv')).out).toContain(
			"Called g, after the list's file; on 2026-06-12",
		);
	});

	it('shows the first of many risks, and how to see all', async () => {
		const rows = Array.from(
			{ length: 9 },
			(_, i) => `Song ${i};3:00;Amber ${i % 2 ? 'DD' : 'E'}\n`,
		);
		put('f.csv', `Title;Length;Ash\n${rows.join('')}`);
		const { out } = await run('new', 'my file.yaml', '--songs', 'f.csv');
		const all = (await run('check', 'my file.yaml')).out.split('\n');
		expect(all.length).toBeGreaterThan(6);
		const count = all.length - 2;
		expect(out).toContain(
			`${all.slice(0, 4).join('\n')}\n${count} to look at, the first 4 above. rackside check 'my file.yaml' lists all.\n`,
		);
		expect(out).not.toContain(all[4]);
	});

	// One rule for all ways of `new`: 1 where something in the file is left open. What check finds, check's own exit code tells.
	it.each([
		['nothing to look at', 'Title,Length\nHarbour,3:00\nLantern,4:00\n', 0, 'Nothing to look at.'],
		['what check finds', 'Title,Length\nHarbour,3:00\nLantern,\n', 0, '1 to look at.'],
		['a cell left open', 'Title,Length\nHarbour,3:00\nLantern,4.05\n', 1, '1 left open.'],
	])('ends with the exit code of %s', async (_, table, expected, words) => {
		put('f.csv', table);
		const { code, out } = await run('new', 'f.yaml', '--songs', 'f.csv');
		expect(out).toContain(words);
		expect(code).toBe(expected);
		put('f.txt', table.replaceAll(',', ' ').replace('Title Length\n', '').replace('4.05', '245'));
		expect((await run('new', 'g.yaml', '--list', 'f.txt')).code).toBe(expected);
	});

	it('checks a list of one night, and says so where it is more', async () => {
		const rows = Array.from({ length: 1001 }, (_, i) => `Song ${i};3:00;Amber\n`);
		put('f.csv', `Title;Length;Ash\n${rows.join('')}`);
		const { code, out } = await run('new', 'f.yaml', '--songs', 'f.csv');
		expect(code).toBe(1);
		expect(out).toContain('Not checked: 1001 places in the list are more than one night.');
		expect(out).toContain('Next: rackside run f.yaml');
	});

	it('keeps the name of a player whose heading has more than letters', async () => {
		put('f.csv', "Title;Length;Ash (LG);Bo 'B' Low-end\nHarbour;4:05;Amber;Coal BEADG\n");
		expect(await run('new', 'f.yaml', '--songs', 'f.csv')).toMatchObject({ code: 0, err: '' });
		for (const [form, option] of [
			['csv', '--songs'],
			['text', '--list'],
		] as const) {
			put(`again.${form}`, (await run('list', 'f.yaml', '--as', form)).out);
			expect(await run('new', `${form}.yaml`, option, `again.${form}`)).toMatchObject({
				code: 0,
				err: '',
			});
			expect(text(`${form}.yaml`)).toContain('{id: ash-lg, name: Ash (LG), plays: guitar}');
			expect(text(`${form}.yaml`)).toContain("name: Bo 'B' Low-end, plays: bass}");
		}
	});

	it('takes a heading of the act as the player who is named, for several headings', async () => {
		put('friday.csv', TABLE);
		const { out } = await run(
			...['new', 'f.yaml', '--songs', 'friday.csv', '--json'],
			...['--column', 'Gtr 1=ash', '--column', 'Bass=cleo'],
		);
		expect(JSON.parse(out).asked).toHaveLength(1);
		const { out: list } = await run('list', 'f.yaml', '--as', 'json');
		expect(JSON.parse(list).songs[0].hands).toEqual({
			ash: { instrument: 'A1', tuning: 'drop D', capo: 2 },
			cleo: { instrument: 'C1', tuning: 'E standard', capo: 0 },
		});
		const wrong = await run('new', 'g.yaml', '--songs', 'friday.csv', '--column', 'Gtr 2=ash');
		expect(wrong.code).toBe(2);
		expect(wrong.err).toContain('found Gtr 2; expected Title, Length, Gtr 1, Bass');
	});

	it('never writes over a file, and adds to one only when told', async () => {
		put('friday.csv', 'Title\nPlover\n');
		const old = `# mine\n${'format: rackside/1\nsongs:\n  - {id: a}  # first\nset:\n  - a\n'}`;
		put('f.yaml', old);
		const refused = await run('new', 'f.yaml', '--songs', 'friday.csv');
		expect(refused.code).toBe(2);
		expect(refused.err).toContain('--add');
		expect(text('f.yaml')).toBe(old);
		expect(await run('new', 'f.yaml', '--songs', 'friday.csv', '--add')).toMatchObject({
			code: 0,
			err: '',
		});
		const now = text('f.yaml');
		expect(now.startsWith('# mine\nformat: rackside/1\nsongs:\n  - {id: a}  # first\n')).toBe(true);
		expect(now).toContain('  - id: plover\n');
		expect(readdirSync(cwd).toSorted()).toEqual(['f.yaml', 'friday.csv']);
	});

	it('takes instruments and players from a file of gear beside it, and includes that', async () => {
		put(
			'gear.yaml',
			`players:\n  - {id: ash, name: Ash, plays: guitar}\ninstruments:\n  - {id: A7, name: Amber, slot: q, kind: electric-6, for: [ash], tuning: E standard}\nabbreviations: {WOB: open G}\n`,
		);
		put('friday.csv', 'Title,Ash\nPlover,q WOB c1\nDunlin,Ambr\nKnot,Amber\n');
		const { code, err } = await run(
			'new',
			'f.yaml',
			'--songs',
			'friday.csv',
			'--rack',
			'gear.yaml',
		);
		expect(code).toBe(1);
		expect(err).toContain('row 3, Ash: "Ambr": no instrument is called so: did you mean Amber?');
		expect(text('f.yaml')).toContain('include: [gear.yaml]');
		expect(text('f.yaml')).toContain('hands: {ash: {instrument: A7, tuning: open G, capo: 1}}');
		expect(text('f.yaml')).not.toContain('instruments:');
	});

	it('copies them from a show, comments included', async () => {
		put(
			'old.yaml',
			`format: rackside/1\nshow: {title: Old}\nplayers:\n  # on the left\n  - {id: ash, name: Ash}\ninstruments:\n  - {id: A7, name: Amber, slot: q, kind: electric-6, tuning: E standard} # red\nsongs: [{id: a}]\nset: [a]\n`,
		);
		put('friday.csv', 'Title,Ash,Bo\nPlover,Amber DD,Wren\n');
		const made = await run('new', 'f.yaml', '--songs', 'friday.csv', '--rack', 'old.yaml');
		expect(made).toMatchObject({ code: 0, err: '' });
		expect(text('f.yaml')).toContain('# on the left\n');
		expect(text('f.yaml')).toContain('tuning: E standard} # red\n');
		expect(text('f.yaml')).toContain('name: Wren');
		expect(text('f.yaml')).not.toContain('Old');
	});

	it('copies the rig with them, and the supplies that feed it', async () => {
		put(
			'old.yaml',
			`format: rackside/1
players: [{id: ash, name: Ash}]
instruments: [{id: A7, name: Amber, slot: q, kind: electric-6, tuning: E standard}]
supplies: [{id: brick, outputs: [{id: a, volts: 9, ma: 500}]}]
boards: {ash: [{id: drive, name: Drive, power: {supply: brick, output: a, ma: 50}}]}
rigs: {ash: [{id: lead, kind: cord}]}
songs: [{id: a}]
set: [a]
`,
		);
		put('friday.csv', 'Title,Ash\nPlover,Amber DD\n');
		const made = await run('new', 'f.yaml', '--songs', 'friday.csv', '--rack', 'old.yaml');
		expect(made).toMatchObject({ code: 0, err: '' });
		expect(text('f.yaml')).toContain('id: brick');
		expect(text('f.yaml')).toContain('id: lead');
	});

	it('names a spreadsheet’s own file and how to save it', async () => {
		// A ZIP file begins with PK and names its parts in the clear: common practice, from memory.
		put('a.xlsx', Buffer.from('PK\x03\x04......xl/workbook.xml', 'latin1'));
		put(
			'a.ods',
			Buffer.from('PK\x03\x04mimetypeapplication/vnd.oasis.opendocument.spreadsheet', 'latin1'),
		);
		for (const name of ['xlsx', 'ods']) {
			const { code, err } = await run('new', 'f.yaml', '--songs', `a.${name}`);
			expect(code).toBe(2);
			expect(err).toContain(`(.${name})`);
			expect(err).toContain('Save as');
		}
		expect(readdirSync(cwd).toSorted()).toEqual(['a.ods', 'a.xlsx']);
	});

	it.each([
		[['new', 'f.yaml', '--songs', 'no.csv'], 'no.csv: there is no such file.'],
		[['new', 'f.yaml', '--songs', 'empty.csv'], 'empty.csv: there is nothing in the list.'],
		[
			['new', 'f.yaml', '--songs', 'a.csv', '--list', 'a.csv'],
			'--songs and --list are both given.',
		],
		[['new', 'f.yaml', '--songs', 'a.csv', '--column', 'Ash'], '--column is not HEADING=player'],
		[['list', 'no.yaml', '--as', 'cvs'], 'Did you mean csv?'],
	])('%j is refused in a sentence', async (argv, words) => {
		put('empty.csv', '\n\n');
		put('a.csv', 'Title\nPlover\n');
		const { code, err } = await run(...argv);
		expect(code).toBe(2);
		expect(err).toContain(words);
		expect(readdirSync(cwd).toSorted()).toEqual(['a.csv', 'empty.csv']);
	});
});

describe('new from lines', () => {
	it('has the title of the list, its encore and its own name where none is given', async () => {
		put('msg.txt', 'Friday at the Mill\n\n1. Plover (3:00)\n2. Dunlin >>\n3. Knot\n\n4. Ruff\n');
		expect(await run('new', '--list', 'msg.txt')).toMatchObject({ code: 0, err: '' });
		expect(text('msg.yaml')).toContain('title: Friday at the Mill\n');
		const { out } = await run('list', 'msg.yaml', '--json');
		expect(JSON.parse(out)).toEqual({
			songs: [
				{ position: 1, title: 'Plover', seconds: 180, section: 'set', hands: {} },
				{ position: 2, title: 'Dunlin', seconds: null, section: 'set', hands: {} },
				{ position: 3, title: 'Knot', seconds: null, section: 'set', hands: {} },
				{ position: 4, title: 'Ruff', seconds: null, section: 'encore', hands: {} },
			],
			breaks: [],
		});
	});
});
