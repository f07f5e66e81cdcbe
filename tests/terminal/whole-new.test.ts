// `rackside new` as a user has it, in a terminal: from nothing to a file that `run` opens; killed in the middle, the
// draft is there; the second night from the first.

import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Kept, keptOf, press } from '../../src/new-show/new-show.ts';
import { ALL, keysOf, pressed } from '../new-show/lamplit.ts';
import { pause } from './pty-screen.ts';
import {
	cleanUpAfterEach,
	PATIENCE_MS,
	type Program,
	scratch,
	startProgram,
	until,
} from './whole-program.ts';

cleanUpAfterEach();

const startNew = async (words: string, data: string): Promise<Program> => {
	const program = startProgram({ words: `new ${words}`, data, by: 'launcher' });
	await program.screen.waitFor('NEW SHOW', PATIENCE_MS);
	return program;
};

const DRAFT = 'new-show.drafts';

/** Presses keys from the first question on, each once the one before it is in the draft on the disk. */
async function pressAll({ screen, data }: Program, keys: readonly string[]): Promise<void> {
	let state = pressed([]);
	for (const [index, key] of keys.entries()) {
		await screen.press(key);
		const before = keptOf(state);
		state = press(state, key);
		const kept = keptOf(state);
		// The last key of all ends it, and nothing is left.
		if (state.end !== null || index === keys.length - 1) break;
		if (JSON.stringify(before) === JSON.stringify(kept)) await pause(50);
		else await until(() => isSame(join(data, DRAFT), kept), `${key} in the draft`);
	}
}

function isSame(path: string, kept: Kept | null): boolean {
	if (!existsSync(path)) return false;
	const { answers, typed } = JSON.parse(readFileSync(path, 'utf8'));
	return answers === JSON.stringify(kept?.answers) && typed === kept?.typed;
}

test('from nothing to a file that run opens, and the next night from it', async () => {
	const data = scratch();
	const folder = scratch('files');
	const file = join(folder, 'lamplit.yaml');
	const program = await startNew(file, data);
	await pressAll(program, keysOf(...ALL));
	await program.screen.waitFor('code ', PATIENCE_MS);
	const said = program.screen.text().replace(/\s+/g, ' ');
	expect(said).toMatch(/Written: \S+lamplit\.yaml/);
	expect(said).toMatch(/Next: rackside plan/);
	const { code, areSettingsKept } = await program.afterwards();
	expect([0, 1]).toContain(code);
	expect(areSettingsKept).toBe(true);
	expect(readFileSync(file, 'utf8')).toMatch(/^format: rackside\/1\n/);
	// Nothing is left of the draft, and the file is added to only where that is wanted.
	expect(readdirSync(data).filter((name) => name.includes('draft'))).toEqual([]);
	const written = readFileSync(file, 'utf8');
	const again = await startNew(file, data);
	await again.screen.waitFor('Add to it?', PATIENCE_MS);
	await again.screen.press('esc');
	await again.screen.waitFor('code 1', PATIENCE_MS);
	expect(readFileSync(file, 'utf8')).toBe(written);

	const night = startProgram({ words: `run ${file}`, data });
	await night.screen.waitFor('? all', PATIENCE_MS);
	await night.record('t 0', 'space');
	expect(night.screen.text()).toMatch(/Harbour Lights/);
	await night.screen.press('q');
	await night.screen.press('enter');
	await night.screen.waitFor('code ', PATIENCE_MS);

	const next = join(folder, 'next.yaml');
	const from = await startNew(`${next} --from last`, data);
	for (const asked of ['called', 'Which day', 'start', 'be over', 'Write the file']) {
		await from.screen.waitFor(asked, PATIENCE_MS);
		await from.screen.press('enter');
	}
	await from.screen.waitFor('code ', PATIENCE_MS);
	expect(existsSync(next)).toBe(true);
	expect(readFileSync(next, 'utf8')).toMatch(/^# From the night /);
}, 90_000);

test('killed in the middle: every answer is offered the next time, for its owner alone', async () => {
	const data = scratch();
	const file = join(scratch('files'), 'lamplit.yaml');
	const program = await startNew(file, data);
	await pressAll(program, [...keysOf('show', 'players'), ...'Kest']);
	await program.screen.waitFor('Kest_', PATIENCE_MS);
	program.signal('SIGKILL');
	await program.screen.waitFor(/code \d/, PATIENCE_MS);
	expect((await program.afterwards()).areSettingsKept).toBe(true);
	expect(existsSync(file)).toBe(false);
	const draft = join(data, DRAFT);
	expect(statSync(draft).mode & 0o777).toBe(0o600);

	const again = await startNew(file, data);
	await again.screen.waitFor('Go on with Lamplit Ferries?', PATIENCE_MS);
	await again.screen.press('enter');
	await again.screen.waitFor('Kest_', PATIENCE_MS);
	expect(again.screen.text()).toMatch(/name: Tilde/);
	await again.screen.press('esc');
	await again.screen.waitFor('Kept as a draft.', PATIENCE_MS);
	expect((await again.afterwards()).code).toBe(1);
}, 90_000);

test('two at once keep a draft each, and each is offered for its file', async () => {
	const data = scratch();
	const folder = scratch('files');
	const names = ['friday.yaml', 'saturday.yaml'] as const;
	const programs: Program[] = [];
	for (const name of names) programs.push(await startNew(join(folder, name), data));
	for (const [index, { screen }] of programs.entries()) {
		for (const key of ['A', 'B'][index] ?? '') await screen.press(key);
		await screen.waitFor(/[AB]_/, PATIENCE_MS);
		await screen.press('enter');
		await screen.waitFor('Which day', PATIENCE_MS);
	}
	for (const { screen } of programs) {
		await screen.press('esc');
		await screen.waitFor('Kept as a draft.', PATIENCE_MS);
	}
	for (const [index, name] of [...names.entries()].toReversed()) {
		const again = await startNew(join(folder, name), data);
		await again.screen.waitFor(`Go on with ${['A', 'B'][index]}?`, PATIENCE_MS);
		await again.screen.press('esc');
		await again.screen.waitFor(/code \d/, PATIENCE_MS);
	}
}, 90_000);

test.each([
	['no draft', '{'],
	['answers of another kind', JSON.stringify({ answers: '{"a":1}', typed: 'x' })],
	['far too many', JSON.stringify({ answers: JSON.stringify(Array(9000).fill('x'.repeat(20))) })],
])('a draft file that holds %s keeps nobody from beginning', async (_, text) => {
	const data = scratch();
	writeFileSync(join(data, DRAFT), text, { mode: 0o600 });
	const program = await startNew(join(scratch('files'), 'a.yaml'), data);
	await program.screen.press('esc');
	await program.screen.waitFor(/code \d/, PATIENCE_MS);
	expect((await program.afterwards()).code).toBe(1);
});

test('a question about a list that is left with Ctrl-C leaves no file', async () => {
	const folder = scratch('files');
	writeFileSync(join(folder, 'a.csv'), 'Title;Length;Ash\nHarbour;4:05;Amber Xyz DD Qrs\n');
	const [file, list] = [join(folder, 'a.yaml'), join(folder, 'a.csv')];
	const program = startProgram({ words: `new ${file} --songs ${list}`, by: 'launcher' });
	await program.screen.waitFor('Type the whole cell anew', PATIENCE_MS);
	await program.screen.press('ctrl-c');
	await program.screen.waitFor('Left. Nothing was written.', PATIENCE_MS);
	await program.screen.waitFor('code ', PATIENCE_MS);
	expect((await program.afterwards()).code).toBe(130);
	expect(existsSync(file)).toBe(false);
});

test('what a list leaves open is asked, a word of the act’s own once for all its cells', async () => {
	const folder = scratch('files');
	const [file, list] = [join(folder, 'a.yaml'), join(folder, 'a.csv')];
	writeFileSync(
		list,
		'No,Song,Ash\n1,Harbour,Amber\n2,Lantern,Amber OPG*\n3,Break,\n4,Gravel,Amber OPG*\n',
	);
	const { screen, afterwards } = startProgram({ words: `new ${file} --songs ${list}` });
	for (const [asked, keys] of [
		["1 OPG* is a tuning of the act's own, wherever it stands", ['1', 'enter']],
		['Which tuning is OPG*?', [...'opg', 'enter']],
		['1 an interval', ['1', 'enter']],
		['enter: all are right', ['enter']],
	] as const) {
		await screen.waitFor(asked, PATIENCE_MS);
		for (const key of keys) await screen.press(key);
	}
	await screen.waitFor('0 left open', PATIENCE_MS);
	await screen.waitFor('code ', PATIENCE_MS);
	expect([0, 1]).toContain((await afterwards()).code);
	const written = readFileSync(file, 'utf8');
	expect(written).toContain('abbreviations: {OPG*: open G}\n');
	expect(written.match(/tuning: open G}/g)).toHaveLength(2);
	expect(written).toContain('  - interval: 20m\n');
});

test('without a terminal and without a list it is a sentence, and 2', async () => {
	const program = startProgram({ words: 'new x.yaml', line: 'echo | PROGRAM | cat; false' });
	await program.screen.waitFor('code ', PATIENCE_MS);
	expect(program.screen.text().replace(/\s+/g, ' ')).toMatch(
		/no list was given, and there is no terminal to ask on\. /,
	);
	const alone = startProgram({ words: 'new x.yaml', line: 'PROGRAM </dev/null' });
	await alone.screen.waitFor('code 2', PATIENCE_MS);
});
