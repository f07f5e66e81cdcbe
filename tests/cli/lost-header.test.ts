// A night whose header cannot be read any more: the show file stands in for its copy, and the night goes on.

import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { beginNight } from '../../src/cli/live/begin-night.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { runCommand } from './run-command.ts';

const STARTED_MS = Date.UTC(2026, 5, 12, 18, 30);

function place() {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-lost-'));
	onTestFinished(() => rmSync(folder, { recursive: true }));
	cpSync('shows/first.yaml', join(folder, 'first.yaml'));
	return { folder, nights: join(folder, 'nights') };
}

type Place = ReturnType<typeof place>;

/** The night that a start at this minute opens. */
async function begun({ folder, nights }: Place, minute: number, isRehearsal = false) {
	const clock = { wallMs: () => STARTED_MS + minute * 60_000, upMs: () => minute, bootId: 'b' };
	const io = {
		write: () => undefined,
		complain: () => undefined,
		env: { RACKSIDE_DATA: folder },
		cwd: folder,
		isInputTerminal: false,
		isOutputTerminal: false,
		wallMs: clock.wallMs,
	};
	const night = await beginNight(
		{
			file: 'first.yaml',
			folders: [nights],
			request: { words: [], options: {} },
			isRehearsal,
			isAnew: false,
			clock,
			release: () => undefined,
		},
		io,
	);
	if (!('journal' in night)) throw new Error('no night was opened');
	return night;
}

type Begun = Awaited<ReturnType<typeof begun>>;

async function note({ journal }: Begun, minute: number, ...entries: readonly Entry[]) {
	journal.append(entries, { wallMs: STARTED_MS + minute * 60_000, upMs: minute });
	await journal.close();
}

const memo = (words: string): Entry => ({ k: 'memo-written', at: STARTED_MS, words });
const words = ({ journal }: Begun) =>
	journal
		.records()
		.flatMap(({ e }) => (e as readonly Entry[]).map((entry) => 'words' in entry && entry.words));

/** Spoils the header of every night so far, in both places where it stands. */
function spoil({ nights }: Place): void {
	for (const name of readdirSync(nights)) {
		const path = join(nights, name);
		const bytes = readFileSync(path);
		let start = 0;
		while (bytes.includes('"k":"header"', start)) {
			const at = bytes.indexOf('"k":"header"', start);
			bytes[at] = 0x21;
			start = at + 1;
		}
		writeFileSync(path, bytes);
	}
}

test('it is taken up with the show file, said so, and is whole again from then on', async () => {
	const here = place();
	const first = await begun(here, 0);
	await note(first, 1, memo('one'));
	spoil(here);
	const second = await begun(here, 10);
	expect(second.journal.id).toBe(first.journal.id);
	expect(second.show.title).toBe('First night');
	expect(second.startedAtMs).toBe(STARTED_MS + 60_000);
	expect(second.findings).toEqual([
		'The beginning of the night cannot be read, nor its copy of the show; the show file is used in its place.',
		"A place in the night's file is damaged, but no record is missing.",
	]);
	await note(second, 11, memo('two'));
	rmSync(join(here.folder, 'first.yaml'));
	const third = await begun(here, 20);
	expect(third.journal.id).toBe(first.journal.id);
	expect(words(third)).toEqual(['one', 'two']);
	expect(third.startedAtMs).toBe(STARTED_MS + 60_000);
	await third.journal.close();
});

test('it comes before an older unfinished night of the same show', async () => {
	const here = place();
	const older = await begun(here, 0);
	await note(older, 1, memo('older'));
	cpSync(here.nights, join(here.folder, 'kept'), { recursive: true });
	rmSync(here.nights, { recursive: true });
	const newer = await begun(here, 60);
	await note(newer, 61, memo('newer'));
	spoil(here);
	cpSync(join(here.folder, 'kept'), here.nights, { recursive: true });
	const next = await begun(here, 90);
	expect(words(next)).toEqual(['newer']);
	await next.journal.close();
});

test('it stays as it is when it was ended, is older than another of its show, or a rehearsal is wanted', async () => {
	const here = place();
	const ended = await begun(here, 0);
	await note(ended, 1, { k: 'show-ended', at: STARTED_MS });
	spoil(here);
	const second = await begun(here, 10);
	expect(words(second)).toEqual([]);
	await note(second, 11, memo('second'));
	spoil(here);
	const rehearsal = await begun(here, 20, true);
	expect(words(rehearsal)).toEqual([]);
	await note(rehearsal, 21, memo('rehearsal'));
	const again = await begun(here, 30);
	expect(words(again)).toEqual(['second']);
	await again.journal.close();
});

test('it has a report before it is taken up, by the show file that is named', async () => {
	const here = place();
	const first = await begun(here, 0);
	await note(first, 1, memo('one'));
	const at = { cwd: here.folder, data: here.folder };
	const whole = await runCommand(at, 'report', '--show', 'first.yaml');
	expect(whole.err).toBe(
		'This night has its own copy of the show, and the report goes by that; --show is not needed.\n',
	);
	spoil(here);
	const without = await runCommand(at, 'report');
	expect(without).toMatchObject({ code: 2, out: '' });
	expect(without.err).toContain(`rackside report ${first.id} --show FILE`);
	const missing = await runCommand(at, 'report', '--show', 'none.yaml');
	expect(missing).toMatchObject({ code: 2, out: '' });
	expect(missing.err).toContain('none.yaml: there is no such file');
	const { code, out } = await runCommand(at, 'report', '--show', 'first.yaml');
	expect(code).toBe(1);
	// The same as before but for what was lost with the beginning, which is said.
	const beside = (text: string) => text.split('\n').filter((line) => /one|First night/.test(line));
	expect(beside(out)).toEqual(beside(whole.out));
	expect(beside(out)).not.toEqual([]);
	expect(out).toContain('The beginning of the night cannot be read');
});
