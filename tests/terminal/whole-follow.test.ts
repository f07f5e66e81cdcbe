// The whole program twice on one night: one keeps it, one in a second terminal follows it. What the second
// shows, how soon, and that it touches nothing.

import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { pause } from './pty-screen.ts';
import {
	cleanUpAfterEach,
	PATIENCE_MS,
	type Program,
	scratch,
	startLive,
	startProgram,
	until,
} from './whole-program.ts';

cleanUpAfterEach();

/** Half a second is what it may take alone; the rest is what a busy machine may add. */
const SEEN_MS = Number(process.env.SEEN_MS ?? 3000);

async function startFollowing(data: string, size = { columns: 80, rows: 24 }): Promise<Program> {
	const program = startProgram({ words: 'follow', data, ...size });
	await program.screen.waitFor('FOLLOWS', PATIENCE_MS);
	return program;
}

/** From the view to be read from afar through that of the rig to the stage. */
async function toStage({ screen }: Program): Promise<void> {
	await screen.press('tab');
	await screen.waitFor(/^ {2}RIG/m, PATIENCE_MS);
	// The same key again counts once within 300 ms.
	await pause(310);
	await screen.press('tab');
	await screen.waitFor(/^TO DO/m, PATIENCE_MS);
}

/** All files below a folder with their bytes and times. */
function contents(folder: string): readonly string[] {
	return readdirSync(folder, { recursive: true, withFileTypes: true })
		.filter((entry) => entry.isFile())
		.map(({ parentPath, name }) => {
			const path = join(parentPath, name);
			return [path, statSync(path).mtimeMs, readFileSync(path, 'base64')].join(' ');
		})
		.toSorted();
}

/** The rows of the stage view that stand still, the last step among them; only the first window takes it back. */
const stageRows = ({ screen }: Program): readonly string[] =>
	screen
		.rows()
		.filter((row) => /^(THEN|WATCH|CURFEW|LAST)/.test(row))
		.map((row) => row.replace(/u undo *$/, '').trimEnd());

test('a step is seen in the second terminal at once, at both sizes', async () => {
	const first = await startLive();
	await first.record('t 0', 'space');
	const low = await startFollowing(first.data);
	const high = await startFollowing(first.data, { columns: 200, rows: 60 });
	expect(low.screen.text()).toMatch(/[█▀▄]/);
	await toStage(low);
	const isSame = () => stageRows(low).join() === stageRows(first).join();
	await until(isSame, 'the same on both');
	const timed = async (key: string, seen: () => Promise<unknown>) => {
		const beganMs = performance.now();
		await first.record(key);
		await seen();
		expect(performance.now() - beganMs).toBeLessThan(SEEN_MS);
	};
	for (const key of ['space', 'd']) {
		const before = stageRows(low);
		await timed(key, () =>
			low.screen.waitFor(() => stageRows(low).join() !== before.join() && isSame(), PATIENCE_MS),
		);
	}
	const before = high.screen.rows();
	const isOtherCard = (rows: readonly string[]) =>
		rows.filter((row, index) => row !== before[index]).length > 12;
	await timed('enter', () => high.screen.waitFor(isOtherCard, PATIENCE_MS));
});

test('it goes on through a kill of the first, touches nothing, and leaves with 0', async () => {
	const first = await startLive();
	await first.record('t 0', 'space');
	const second = await startFollowing(first.data);
	first.signal('SIGKILL');
	await first.gone();
	await pause(300);
	const before = contents(first.data);
	for (const key of [
		't',
		'0',
		'space',
		'enter',
		'u',
		'b',
		'1',
		'd',
		'j',
		'x',
		',',
		'm',
		'left',
		'right',
	])
		await second.screen.press(key);
	await second.screen.waitFor('This window only follows.', PATIENCE_MS);
	await pause(1200);
	expect(contents(first.data)).toEqual(before);
	// No lock is held: the night can be taken up.
	const third = await startLive({ data: first.data });
	await third.record('space');
	await toStage(second);
	// Each draws in its own time.
	const both = () => [second, third].map((program) => stageRows(program).join());
	await until(() => /LAST .*at Ch1/.test(both()[0] ?? ''), 'the step in the second window');
	await until(() => new Set(both()).size === 1, 'the same in both');
	await second.screen.press('q');
	expect((await second.afterwards()).code).toBe(0);
	expect(third.pid()).toBeDefined();
});

test('without a night under way, and off a terminal, it says so and ends with 2', async () => {
	const none = startProgram({ words: 'follow', data: scratch(), columns: 200 });
	expect((await none.afterwards()).code).toBe(2);
	expect(none.screen.text()).toMatch(/no night is under way\. rackside run SHOW begi/);
	const piped = startProgram({ line: 'PROGRAM </dev/null', words: 'follow' });
	expect((await piped.afterwards()).code).toBe(2);
	expect(piped.screen.text()).toContain('The live screen needs a terminal');
});

test('a night that cannot be read is no night that is not there', async () => {
	const data = scratch();
	const id = '2026-06-12-203000-quay-street-ab12';
	mkdirSync(join(data, 'nights'));
	writeFileSync(join(data, 'nights', `${id}.journal`), '');
	const none = startProgram({ words: 'follow', data });
	expect((await none.afterwards()).code).toBe(2);
	expect(none.screen.text().replaceAll(/\s+/g, '')).toContain(
		`${id}.journal cannot be read: it is empty.`.replaceAll(' ', ''),
	);
	rmSync(join(data, 'nights', `${id}.journal`));
	mkdirSync(join(data, 'nights', `${id}.journal`));
	const named = startProgram({ words: `follow ${id}`, data });
	expect((await named.afterwards()).code).toBe(2);
	expect(named.screen.text()).toMatch(/this night cannot be read: it is a folder \(EISDIR\)/);
});
