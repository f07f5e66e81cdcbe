// A night that was cut off in a write says so wherever it is read: on the first screen of every resume,
// in the list of nights, and in the report.

import { appendFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { cleanUpAfterEach, scratch, startLive } from '../terminal/whole-program.ts';
import { runCommand } from './run-command.ts';

cleanUpAfterEach();

test('screen, list and report tell how many bytes, where they are, and what may be missing', async () => {
	const data = scratch();
	const first = await startLive({ data });
	await first.record('t 0', 'space');
	first.signal('SIGKILL');
	await first.gone();
	const nights = join(data, 'nights');
	const name = readdirSync(nights).find((one) => one.endsWith('.journal')) ?? '';
	const torn = '12345678 {"v":2,"s":9';
	appendFileSync(join(nights, name), torn);

	const command = (...argv: string[]) => runCommand({ cwd: data, data }, ...argv);
	const words = 'Incomplete: the night was cut off in the middle of a write (21 bytes,';
	expect((await command('nights')).out).toContain(`${words} left out)`);
	expect((await command('report')).out).toContain(`${words} left out)`);

	for (const _ of ['the first resume', 'one after it']) {
		const next = await startLive({ data });
		const rows = next.screen.rows();
		expect(rows.join('\n')).toMatch(/^STORAGE {3}Incomplete: the night was cut off/m);
		// In full below it, until the next key.
		expect(rows.join(' ').replaceAll(/ +/g, ' ')).toContain(words);
		await next.screen.press('!', 'q', 'enter');
		await next.afterwards();
	}
	const aside = readdirSync(nights).find((one) => one.includes('.torn-')) ?? '';
	expect(readFileSync(join(nights, aside), 'utf8')).toBe(torn);
	expect((await command('nights')).out).toContain(`now in ${join(nights, aside)}`);
	const report = await command('report');
	expect(report.code).toBe(1);
	expect(report.out.replaceAll('\\', '')).toContain(`now in ${join(nights, aside)}`);
	const listed = JSON.parse((await command('nights', '--json', '--verbose')).out);
	expect(listed.nights[0].incomplete).toHaveLength(1);
	// A busy machine may have a slow disk to note before that.
	expect(listed.troubles).toContainEqual(
		expect.objectContaining({ code: 'tail-cut-off', detail: '21' }),
	);
	expect((await command('nights', '--verbose')).out).toMatch(
		/\d\d:\d\d:\d\d {2}A night was cut off in the middle of a write: 21 bytes\./,
	);
});

test('steps that are gone from the end of a night that was left are counted, on the screen too', async () => {
	const data = scratch();
	// And where its troubles belong, something else stands.
	mkdirSync(join(data, 'troubles.log'));
	const first = await startLive({ data });
	expect(first.screen.rows().join('\n')).toMatch(/^STORAGE .*troubles\.log/m);
	await first.record('t 0', 'space', 'space');
	await first.screen.press('q', 'enter');
	await first.afterwards();
	const nights = join(data, 'nights');
	const path = join(nights, readdirSync(nights).find((one) => one.endsWith('.journal')) ?? '');
	const lines = readFileSync(path, 'utf8').split('\n');
	writeFileSync(path, `${lines.slice(0, -3).join('\n')}\n`);

	const words = 'The last 2 steps of this night were not kept:';
	const listed = await runCommand({ cwd: data, data }, 'nights');
	expect(listed.code).toBe(1);
	expect(listed.out).toContain(words);
	expect((await runCommand({ cwd: data, data }, 'report')).out).toContain(words);
	const next = await startLive({ data });
	await next.screen.press('!');
	const rows = next.screen.rows().join(' ').replaceAll(/ +/g, ' ');
	expect(rows).toContain(words);
	expect(rows).toContain('Troubles with the disk are not noted.');
});
