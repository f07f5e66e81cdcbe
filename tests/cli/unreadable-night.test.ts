// An unfinished night that cannot be read is never answered by another one unasked.

import { execFileSync } from 'node:child_process';
import {
	chmodSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	renameSync,
	rmSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { whyNoInjection } from '../campaigns/injected-faults.ts';
import {
	cleanUpAfterEach,
	PATIENCE_MS,
	scratch,
	startLive,
	startProgram,
} from '../terminal/whole-program.ts';
import { runCommand } from './run-command.ts';

cleanUpAfterEach();

const SHOW = 'run shows/club.yaml';

/** The data folder of a night that was left open, and the file of it. */
async function leftOpen(): Promise<{ readonly data: string; readonly path: string }> {
	const data = scratch();
	const { record, screen, afterwards } = await startLive({ data });
	await record('t 0', 'space');
	await screen.press('q', 'enter');
	await afterwards();
	const nights = join(data, 'nights');
	const name = readdirSync(nights).find((one) => one.endsWith('.journal')) ?? '';
	return { data, path: join(nights, name) };
}

const nightsIn = (data: string): string[] =>
	readdirSync(join(data, 'nights')).filter((name) => name.endsWith('.journal'));

describe.each([
	['empty', () => Buffer.alloc(0), 'it is empty.'],
	['zeros', (bytes: Buffer) => Buffer.alloc(bytes.length), 'nothing of a night is left in its'],
])('%s', (_, spoil, cause) => {
	test('the file and the cause are named, nothing is begun, and n begins anew', async () => {
		const { data, path } = await leftOpen();
		const spoilt = spoil(readFileSync(path));
		writeFileSync(path, spoilt);
		const refused = startProgram({ data, words: SHOW, columns: 400 });
		await refused.screen.waitFor('any other key ends', PATIENCE_MS);
		expect(refused.screen.text()).toContain(`${path} cannot be read: ${cause}`);
		expect(refused.screen.text()).toContain('An unfinished night of this show may be in it.');
		await refused.screen.press('q');
		expect(await refused.afterwards()).toEqual({ code: 2, areSettingsKept: true });
		expect(nightsIn(data)).toHaveLength(1);

		const anew = startProgram({ data, words: SHOW, columns: 400 });
		await anew.screen.waitFor('any other key ends', PATIENCE_MS);
		await anew.screen.press('n');
		await anew.screen.waitFor('? all', PATIENCE_MS);
		await anew.record('t 0');
		await anew.screen.press('q', 'enter');
		expect(await anew.afterwards()).toEqual({ code: 1, areSettingsKept: true });
		expect(nightsIn(data)).toHaveLength(2);
		expect(readFileSync(path)).toEqual(spoilt);
		// The choice stands: the new night is taken up from then on.
		await startLive({ data });
		expect(nightsIn(data)).toHaveLength(2);
	});
});

// What is left of one that was removed: how far it came, that it had begun, what was put aside of it, a text that was not yet entered.
test.each(['.left-3', '.begun', '.journal.torn-812', '.2.journal.unreadable-90', '.drafts'])(
	'one that is gone but for its %s is asked about once, and told by list and report',
	async (ending) => {
		const { data, path } = await leftOpen();
		const nights = join(data, 'nights');
		for (const name of readdirSync(nights)) rmSync(join(nights, name));
		const left = path.replace('.journal', ending);
		writeFileSync(left, '{}');
		const words = `${path} is not there any more: it was moved or removed, and only ${left} is left of that night`;
		const refused = startProgram({ data, words: SHOW, columns: 600 });
		await refused.screen.waitFor('any other key ends', PATIENCE_MS);
		expect(refused.screen.text()).toContain(words);
		expect(refused.screen.text()).toContain('If there is a copy of it, put that in its place');
		await refused.screen.press('q');
		expect(await refused.afterwards()).toEqual({ code: 2, areSettingsKept: true });
		expect(nightsIn(data)).toEqual([]);
		expect((await runCommand({ cwd: data, data }, 'nights')).out).toContain(words);
		const report = await runCommand({ cwd: data, data }, 'report');
		expect(report).toMatchObject({ code: 2, err: expect.stringContaining(words) });

		const anew = startProgram({ data, words: SHOW, columns: 600 });
		await anew.screen.waitFor('any other key ends', PATIENCE_MS);
		await anew.screen.press('n');
		await anew.screen.waitFor('? all', PATIENCE_MS);
		await anew.screen.press('q', 'enter');
		await anew.afterwards();
		await startLive({ data });
		expect(nightsIn(data)).toHaveLength(1);
	},
);

test('one whose show was over and whose files were put elsewhere is no matter', async () => {
	const { data } = await leftOpen();
	const ended = await startLive({ data });
	await ended.screen.press('q', 'e');
	await ended.afterwards();
	for (const name of nightsIn(data)) rmSync(join(data, 'nights', name));
	expect(readdirSync(join(data, 'nights'))).toHaveLength(1);
	await startLive({ data });
	expect(nightsIn(data)).toHaveLength(1);
});

test('--anew begins without a question, and takes up a night that can be read', async () => {
	const { data, path } = await leftOpen();
	const again = await startLive({ data, words: `${SHOW} --anew` });
	await again.screen.press('q', 'enter');
	await again.afterwards();
	expect(nightsIn(data)).toHaveLength(1);
	writeFileSync(path, '');
	await startLive({ data, words: `${SHOW} --anew` });
	expect(nightsIn(data)).toHaveLength(2);
});

test('a folder in the place of the file is named as one', async () => {
	const { data, path } = await leftOpen();
	renameSync(path, `${path}-kept`);
	mkdirSync(path);
	const { screen } = startProgram({ data, words: SHOW, columns: 400 });
	await screen.waitFor('any other key ends', PATIENCE_MS);
	expect(screen.text()).toContain(`${path} cannot be read: it is a folder (EISDIR).`);
});

const why = whyNoInjection();

// Once alone, as a loose cable does: the next time the disk lists it all.
test.skipIf(why !== null).each(['getdents64', 'openat'])(
	`a folder of nights whose listing fails once (%s) is not taken for empty${why ? ` (left out: ${why})` : ''}`,
	async (call) => {
		const { data } = await leftOpen();
		const nights = join(data, 'nights');
		const inject = `-e trace=${call} -e inject=${call}:error=EIO:when=1`;
		const line = `strace -f -qq -o /dev/null -P '${nights}' ${inject} PROGRAM`;
		const { screen, afterwards } = startProgram({ data, words: SHOW, columns: 400, line });
		await screen.waitFor('any other key ends', PATIENCE_MS);
		expect(screen.text()).toContain(`${nights} cannot be read: the disk reports a fault (EIO).`);
		await screen.press('q');
		await afterwards();
		expect(nightsIn(data)).toHaveLength(1);
	},
	60_000,
);

test('a folder of nights that others may write into, or that is a link, is told on the screen', async () => {
	const { data } = await leftOpen();
	const nights = join(data, 'nights');
	chmodSync(nights, 0o777);
	const open = await startLive({ data, columns: 120, rows: 40 });
	expect(open.screen.text()).toMatch(
		/^STORAGE .*nights is used, but other users may write into it/m,
	);
	await open.screen.press('!', 'q', 'enter');
	await open.afterwards();
	chmodSync(nights, 0o700);
	renameSync(nights, join(data, 'behind'));
	symlinkSync('behind', nights);
	const linked = await startLive({ data, columns: 120, rows: 40 });
	expect(linked.screen.text()).toMatch(/^STORAGE .*nights is used, but it is a link/m);
});

// Only root can be somebody else, and without that nobody's files are closed to us.
test.runIf(process.getuid?.() === 0)(
	'one that belongs to root says so, and what to do',
	async () => {
		const { data, path } = await leftOpen();
		const asNobody = 'setpriv --reuid 65534 --regid 65534 --clear-groups PROGRAM';
		execFileSync('chown', ['-R', '65534:65534', data]);
		execFileSync('chown', ['0:0', path]);
		const file = startProgram({ data, words: SHOW, columns: 400, line: asNobody });
		await file.screen.waitFor('any other key ends', PATIENCE_MS);
		expect(file.screen.text()).toContain(`${path} cannot be read: no permission (EACCES).`);
		expect(file.screen.text()).toContain(`sudo chown -R "$USER" ${path}`);
		await file.screen.press('q');
		await file.afterwards();
		execFileSync('chown', ['0:0', data]);
		execFileSync('chmod', ['700', data]);
		const folder = startProgram({ data, words: SHOW, columns: 400, line: asNobody });
		await folder.screen.waitFor('any other key ends', PATIENCE_MS);
		expect(folder.screen.text()).toContain(`${join(data, 'nights')} cannot be read: no permission`);
		// What is in it may be ours already: the folder above keeps us out.
		expect(folder.screen.text()).toContain(
			`(sudo chown -R "$USER" ${data} && chmod -R u+rwX ${data}) and start again.`,
		);
	},
);
