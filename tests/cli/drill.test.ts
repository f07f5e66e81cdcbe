// `rackside drill` and `rackside walk` as they are typed without a terminal: the table, and what cannot be used.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { changeDrillResults, withAnswer } from '../../src/disk/drill-results.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { scratchFolder } from '../disk/scratch-folder.ts';
import { runCommand } from './run-command.ts';

const here = () => ({ cwd: process.cwd(), data: scratchFolder() });

test('the results are a table for each person, or data', async () => {
	const place = here();
	expect(await runCommand(place, 'drill', '--results')).toEqual({
		code: 0,
		out: 'No drill was done yet. rackside drill starts one.\n',
		err: '',
	});
	const keep = (person: string, kind: string, seconds: number | null) =>
		changeDrillResults({ disk: realDisk, folder: place.data }, (all) =>
			withAnswer(all, { person, kind, seconds }),
		);
	keep('Robin', 'pack', 13.2);
	keep('Robin', 'wrong-guitar', null);
	keep('Kim', 'pack', 9.9);
	keep('Kim', 'pack', 11);
	expect((await runCommand(place, 'drill', '--results')).out).toBe(
		[
			'Kim',
			'moment               best   last    right  missed',
			'wireless pack fails  9.9 s  11.0 s  2      0',
			'',
			'Robin',
			'moment                     best    last    right  missed',
			'wireless pack fails        13.2 s  13.2 s  1      0',
			'wrong instrument in hands  -       missed  0      1',
			'',
		].join('\n'),
	);
	const { out } = await runCommand(place, 'drill', '--results', '--json');
	expect(JSON.parse(out).people.Kim.pack).toEqual({ best: 9.9, last: 11, answered: 2, missed: 0 });
});

test.each([
	[['--seed', 'x'], '--seed needs a whole number (found x; expected 0 to 999999).'],
	[['--seed', '-1'], '--seed'],
	[['--moments', '0'], '--moments needs a whole number (found 0; expected 1 to 40).'],
	[['--moments', '2.5'], '--moments'],
	[['--name', ' '], '--name needs a name'],
	[['--name', 'n'.repeat(31)], '1 to 30 letters'],
])('%s cannot be used', async (options, words) => {
	const { code, err } = await runCommand(here(), 'drill', ...options);
	expect(code).toBe(2);
	expect(err).toContain(words);
});

test.each(['drill', 'walk'])(
	'%s needs a terminal, and leaves nothing where there is none',
	async (name) => {
		const place = here();
		const { code, out, err } = await runCommand(place, name);
		expect([code, out]).toEqual([2, '']);
		expect(err).toContain('needs a terminal');
		expect(existsSync(join(place.data, 'nights'))).toBe(false);
	},
);
