// `rackside report` for each reader and in each form, with and without names, into one folder, and with what somebody
// adds before it goes out.

import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { runCommandLine } from '../../src/cli/run-command-line.ts';
import { scratchFolder } from '../disk/scratch-folder.ts';
import { nightName } from '../journal/sample-journal.ts';
import { playedNight } from '../report/script-night.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { runCommand } from './run-command.ts';

const CLUB = new URL('../../shows/club.yaml', import.meta.url).pathname;
const HIRED = { serial: 'QS-01447', owner: 'Northern Lights', hiredFrom: 'Quay Hire' };

const SCRIPT = `
-01:00 !ready
00:00  space
01:00  m "Ash wants more wedge" enter
02:30  d
02:45  space
03:30  b 4
03:40  enter
03:45  e 3 enter
05:00  d
05:10  i
05:15  e "no sound at all, asked Ash" enter
05:40  enter
05:50  q e
`;

/** A data folder with one night of the club show, one of its instruments hired. */
function withNight() {
	const data = scratchFolder();
	mkdirSync(join(data, 'nights'), { mode: 0o700 });
	const club = loadShow(CLUB);
	const show = {
		...club,
		instruments: club.instruments.map((one) => (one.slot === '4' ? { ...one, ...HIRED } : one)),
	};
	const path = join(data, 'nights', `${nightName}.journal`);
	writeFileSync(path, playedNight(show, SCRIPT).bytes, { mode: 0o600 });
	const run = async (env: Record<string, string>, ...argv: string[]) => {
		let out = '';
		let err = '';
		const code = await runCommandLine(argv, {
			write: (text) => {
				out += text;
			},
			complain: (text) => {
				err += text;
			},
			env: { RACKSIDE_DATA: data, ...env },
			cwd: data,
			isInputTerminal: false,
			isOutputTerminal: false,
			wallMs: () => 0,
		});
		return { code, out, err };
	};
	const report = (...argv: string[]) => run({}, 'report', ...argv);
	return { data, path, run, report };
}

describe('each reader gets what is theirs', () => {
	test("production hears that nothing is to be repaired, and of what the technician's list puts right", async () => {
		const { path, report } = withNight();
		const pageOf = async (script: string) => {
			writeFileSync(path, playedNight(loadShow(CLUB), script).bytes, { mode: 0o600 });
			const [page, own] = [await report('--for', 'production'), await report()];
			return { page: page.out, own: own.out };
		};
		const nothing = 'Nothing is noted to repair or restring before the next show.';
		const plain = await pageOf('-01:00 !ready\n00:00 space\n02:30 d\n05:50 q e\n');
		expect(plain.page).toContain(`${nothing}\n`);
		const capo = await pageOf(
			'-01:00 !ready\n00:00 space\n02:30 d\n02:40 c 4 "2" enter\n05:50 q e\n',
		);
		expect(capo.own).toMatch(/4 .*capo 2 is on/);
		expect(capo.page).toContain(
			`${nothing} One instrument is not as the show file says: the technician puts it right.`,
		);
	});

	test('what is planned from a length that nobody gave is about', async () => {
		const { data, path, report } = withNight();
		const show = loadShow(CLUB);
		const [first] = show.set.flatMap((item) => (item.kind === 'song' ? [item.song] : []));
		const songs = show.songs.map((one) =>
			one.id === first ? { ...one, lengthSeconds: null } : one,
		);
		const night = playedNight(
			{ ...show, songs },
			'-01:00 !ready\n00:00 space\n02:30 d\n05:50 q e\n',
		);
		writeFileSync(path, night.bytes, { mode: 0o600 });
		const rows = (await report()).out.split('\n').filter((line) => /^\| [12] \|/.test(line));
		expect(rows[0]).toMatch(/\| about \d:\d\d \|/);
		expect(rows[1]).not.toContain('about');
		expect((await report('--for', 'production')).out).toMatch(/\(planned about \d\d:\d\d\)/);
		await report('--for', 'production', '--as', 'html', '--out', join(data, 'page.html'));
		expect(readFileSync(join(data, 'page.html'), 'utf8')).toMatch(/about \d\d:\d\d/);
	});

	test('a player two lines, with the break and when sound was back', async () => {
		const { report } = withNight();
		const { out } = await report('--for', 'player=ash');
		const lines = out.split('\n').filter((line) => line !== '');
		expect(lines[0]).toMatch(/^# /);
		expect(lines.slice(-2)).toEqual([
			// Amber for Gravel came 40 s after Lantern, whose gap is 15 s.
			'Thanks for tonight, Ash: 2 songs on 3 instruments; 1 of 4 hand-overs came late, sorry for that.',
			expect.stringMatching(
				/^String 3 broke in song 2 Lantern \(4 .+\): sound back after 0:10, on .+\. /,
			),
		]);
		expect((await report('--for', 'player=ASH')).out).toBe(out);
		expect(out).not.toContain('wedge');
	});

	test('production the times, the curfew, what was lost and what tomorrow costs', async () => {
		const { report } = withNight();
		const { out } = await report('--for', 'production');
		// Of the file's list only two songs were played.
		expect(out).toMatch(/^Began .+; ended .+\. It ran 5:00 against .+ planned: .+ under\.$/m);
		expect(out).toMatch(/^Curfew \d\d:\d\d: /m);
		expect(out).toContain('## Time lost');
		expect(out).toContain('## What went wrong');
		expect(out).toMatch(/## What it costs tomorrow\n\n- 4 .+: restring/);
		expect(out.split('\n').length).toBeLessThan(35);
	});

	test('a hire firm its items alone', async () => {
		const { report } = withNight();
		const { out } = await report('--for', 'hire=quay hire');
		expect(out).toContain('## Quay Hire');
		expect(out).toMatch(
			/\| 4 .+ \| QS-01447 \| Northern Lights \| 0:0\d h \| restring \(string 3 broken\) \|/,
		);
		expect(out.match(/^\| /gm)).toHaveLength(3);
		expect(out).not.toMatch(/wedge|no sound|Ash/);
		const data = JSON.parse((await report('--for', 'hire', '--json')).out);
		expect(data.instruments).toHaveLength(1);
		expect([data.memos, data.players, data.wrongHolds]).toEqual([[], [], []]);
		const none = await report('--for', 'hire=Nobody');
		expect([none.code, none.err]).toEqual([
			2,
			'nothing of this show is hired from this firm (found Nobody; expected Quay Hire).\n',
		]);
	});

	test('the technician all of it, each song and incident on one line', async () => {
		const { report } = withNight();
		const { out } = await report();
		expect(out).toBe((await report('--for', 'tech')).out);
		expect(out.match(/^\| \d+ \| .+ \| played \|/gm)).toHaveLength(2);
		expect(out.match(/^- .+string break, Ash, 4 .+$/gm)).toHaveLength(1);
		expect(out).toContain('Ash wants more wedge');
	});

	test.each([
		['playr=ash', 'a report is not written for this reader'],
		['player=zed', 'there is no such player in this show'],
	])('%s is refused', async (reader, words) => {
		const { report } = withNight();
		const { code, err, out } = await report('--for', reader);
		expect([code, out]).toEqual([2, '']);
		expect(err).toContain(words);
	});
});

test('the data fits the published schema, and every table has its rows', async () => {
	const { report, run } = withNight();
	const schema = JSON.parse((await run({}, 'schema', '--report')).out);
	const fits = new Ajv2020().compile(schema);
	for (const reader of ['tech', 'production', 'player=ash', 'hire']) {
		const data = JSON.parse((await report('--json', '--for', reader)).out);
		expect([reader, fits(data), fits.errors]).toEqual([reader, true, null]);
		expect(data.format).toBe(2);
	}
	const rows = async (form: string) => parse((await report('--as', form)).out) as string[][];
	const data = JSON.parse((await report('--json')).out);
	expect(await rows('incidents')).toHaveLength(data.incidents.length + 1);
	expect(await rows('hand-overs')).toHaveLength(data.handOvers.length + 1);
	expect(await rows('songs')).toHaveLength(data.songs.length + 1);
	expect(await rows('work')).toHaveLength(data.work.length + 1);
	expect(await rows('strings')).toHaveLength(2);
});

/** Nights with a show; the others there are journals alone. */
const KEPT = new URL('../journals/', import.meta.url);

test.each(readdirSync(KEPT).filter((name) => /club.*\.journal$/.test(name)))(
	'the data of %s, which an earlier program wrote, fits it too',
	async (name) => {
		const data = scratchFolder();
		mkdirSync(join(data, 'nights'), { mode: 0o700 });
		writeFileSync(join(data, 'nights', name), readFileSync(new URL(name, KEPT)), { mode: 0o600 });
		const command = (...argv: string[]) => runCommand({ cwd: data, data }, ...argv);
		const fits = new Ajv2020().compile(JSON.parse((await command('schema', '--report')).out));
		const report = JSON.parse((await command('report', '--json')).out);
		expect([fits(report), fits.errors]).toEqual([true, null]);
	},
);

test('without names no form holds one, and roles stand for them', async () => {
	const { report } = withNight();
	const { players, techs } = loadShow(CLUB);
	const people = [...players, ...techs].flatMap(({ id, name }) => [id, name]);
	for (const form of ['markdown', 'json', 'incidents', 'hand-overs', 'songs', 'work', 'strings']) {
		for (const reader of ['tech', 'production', 'player=ash', 'hire']) {
			const { out } = await report('--as', form, '--for', reader, '--no-names');
			expect(out.length).toBeGreaterThan(20);
			for (const name of people) {
				expect([form, reader, out.match(new RegExp(`\\b${name}\\b`, 'gi'))]).toEqual([
					form,
					reader,
					null,
				]);
			}
		}
	}
	expect((await report('--no-names')).out).toContain('guitar 1 wants more wedge');
	expect((await report('--no-names', '--for', 'player=ash')).out).toContain(
		'Thanks for tonight, guitar 1:',
	);
});

describe('--all', () => {
	test('writes every reader and table into one folder, and never over what is there', async () => {
		const { data, report } = withNight();
		const first = await report('--all');
		const folder = join(data, `${nightName}-reports`);
		const names = readdirSync(folder).sort();
		expect(names).toEqual(
			[
				...[
					'hand-overs.csv',
					'incidents.csv',
					'report.json',
					'songs.csv',
					'strings.csv',
					'work.csv',
				],
				...['hire-quay-hire', 'production', 'tech'].flatMap((name) => [
					`${name}.md`,
					`${name}.html`,
				]),
				...loadShow(CLUB).players.flatMap(({ id }) => [`player-${id}.md`, `player-${id}.html`]),
			].sort(),
		);
		expect(first.out.trim().split('\n')).toHaveLength(names.length);
		expect(readFileSync(join(folder, 'tech.md'), 'utf8')).toBe((await report()).out);
		expect(readFileSync(join(folder, 'player-ash.md'), 'utf8')).toBe(
			(await report('--for', 'player=ash')).out,
		);
		await report('--all');
		expect(readdirSync(`${folder}-2`)).toHaveLength(names.length);

		writeFileSync(join(folder, 'songs.csv'), 'mine');
		const again = await report('--all', '--out', folder);
		expect(again.code).toBe(2);
		expect(again.err).toContain('of that name is there already');
		expect(readFileSync(join(folder, 'songs.csv'), 'utf8')).toBe('mine');
		await report('--all', '--out', folder, '--force');
		expect(readFileSync(join(folder, 'songs.csv'), 'utf8')).not.toBe('mine');
	});

	test('goes with no other reader or form', async () => {
		const { report } = withNight();
		expect((await report('--all', '--json')).err).toContain('--all and --json ask for two things');
	});
});

/** A program that puts a text in place of the file it is given. */
function editor(folder: string, text: string, code = 0): string {
	const path = join(folder, 'editor.sh');
	writeFileSync(path, `#!/bin/sh\ncat > "$1" <<'END'\n${text}\nEND\nexit ${code}\n`);
	chmodSync(path, 0o700);
	return path;
}

describe('--edit', () => {
	test('keeps what the editor wrote beside the night, in every form and not in the journal', async () => {
		const { data, path, run, report } = withNight();
		const journal = readFileSync(path);
		const text = `# told\n[night]\nA good room,\n=and a loud one.\n[incident 1]\nburr on the saddle\n[signed]\nLou`;
		const edited = await run({ EDITOR: editor(data, text) }, 'report', '--edit');
		const kept = join(data, 'nights', `${nightName}.remarks`);
		expect([edited.code, edited.out, edited.err]).toEqual([
			0,
			`Kept in ${kept}; every form of the report has it.\n`,
			'',
		]);
		expect(statSync(kept).mode & 0o777).toBe(0o600);
		expect(readFileSync(path)).toEqual(journal);
		expect(readdirSync(join(data, 'nights')).sort()).toEqual(
			[`${nightName}.journal`, `${nightName}.remarks`].sort(),
		);
		for (const reader of ['tech', 'production', 'player=ash', 'hire']) {
			const { out } = await report('--for', reader);
			for (const part of ['A good room, =and a loud one.', 'burr on the saddle', 'Signed: Lou']) {
				expect([reader, out]).toEqual([reader, expect.stringContaining(part)]);
			}
		}
		const told = JSON.parse((await report('--json')).out);
		expect([told.remark, told.signed, told.incidents[0].remark]).toEqual([
			'A good room, =and a loud one.',
			'Lou',
			'burr on the saddle',
		]);
		expect((await report('--as', 'incidents')).out).toContain('"burr on the saddle"');
		expect((await report('--no-names')).out).not.toContain('Lou');
	});

	test('shows what stands there, and an editor that changes nothing keeps nothing', async () => {
		const { data, run } = withNight();
		await run({ EDITOR: editor(data, '[night]\nFirst.') }, 'report', '--edit');
		const seen = join(data, 'seen');
		const look = await run(
			{ VISUAL: `cp -f "$1" "${seen}"; :`, EDITOR: 'false' },
			'report',
			'--edit',
		);
		expect([look.code, look.out]).toEqual([0, 'Nothing was changed.\n']);
		const text = readFileSync(seen, 'utf8');
		expect(text).toContain('[night]\n# A line on the night.\nFirst.\n');
		expect(text).toMatch(/\[incident 1\]\n# \d\d:\d\d:\d\d, song 2 .+, string break, Ash, 4 /);
	});

	test('what cannot be used is said with its line, and what was written stays', async () => {
		const { data, run } = withNight();
		const draft = join(data, 'nights', `${nightName}.remarks-draft`);
		const bad = await run(
			{ EDITOR: editor(data, '[night]\nx\n[incident 9]\ny') },
			'report',
			'--edit',
		);
		expect(bad.code).toBe(2);
		expect(bad.err).toContain(`${draft}:3: there is no such heading (found incident 9; expected`);
		expect(readFileSync(draft, 'utf8')).toContain('[incident 9]');
		const seen = join(data, 'seen');
		await run({ EDITOR: `cp -f "$1" "${seen}"; false` }, 'report', '--edit');
		expect(readFileSync(seen, 'utf8')).toContain('[incident 9]');
	});

	test('a draft that a kill left empty costs nothing that was kept', async () => {
		const { data, run } = withNight();
		await run({ EDITOR: editor(data, '[night]\nFirst.') }, 'report', '--edit');
		const draft = join(data, 'nights', `${nightName}.remarks-draft`);
		writeFileSync(draft, '', { mode: 0o600 });
		const look = await run({ EDITOR: 'true' }, 'report', '--edit');
		expect([look.code, look.out, look.err]).toEqual([0, 'Nothing was changed.\n', '']);
		const kept = readFileSync(join(data, 'nights', `${nightName}.remarks`), 'utf8');
		expect(JSON.parse(kept)).toMatchObject({ night: 'First.' });
	});

	test('an editor that fails keeps nothing, and with none it is said what to do', async () => {
		const { data, run } = withNight();
		const failed = await run({ EDITOR: editor(data, '[night]\nx', 1) }, 'report', '--edit');
		expect(failed.code).toBe(2);
		expect(failed.err).toContain('the editor ended with an error');
		expect(readdirSync(join(data, 'nights'))).not.toContain(`${nightName}.remarks`);
		const none = await run({}, 'report', '--edit');
		expect([none.code, none.err]).toEqual([
			2,
			'nothing to edit with: EDITOR names no program, and this is not a terminal. Set EDITOR to an editor, or start it in a terminal.\n',
		]);
	});

	test('a file of remarks that is damaged is said and never written over', async () => {
		const { data, run, report } = withNight();
		const kept = join(data, 'nights', `${nightName}.remarks`);
		writeFileSync(kept, '{"night":', { mode: 0o600 });
		const told = await report();
		expect(told.err).toContain(`${kept} cannot be read: `);
		expect(told.out).toContain('string break');
		await run({ EDITOR: editor(data, '[night]\nx') }, 'report', '--edit');
		expect(readFileSync(kept, 'utf8')).toBe('{"night":');
	});
});
