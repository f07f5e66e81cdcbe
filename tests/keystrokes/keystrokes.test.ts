// Every moment at which there are only seconds takes no more keys than it may, and does what it is for.
// The table beside this file is made from these, with WRITE_KEYSTROKES=1.

import { chmodSync, copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runCommand } from '../cli/run-command.ts';
import { scratchFolder } from '../disk/scratch-folder.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';
import { AT_LEISURE } from './at-leisure.ts';
import { ASKED_FOR, type AskedFor, type Seen, STORIES, type Story } from './stories.ts';

const showFile = join(import.meta.dirname, '../../shows/club.yaml');
const show = loadShow(showFile);
const tableFile = join(import.meta.dirname, 'keystrokes.md');

function seen({ before, at }: Story, keys: readonly string[]): Seen {
	const pressed = keys.length === 0 ? '' : `${at} ${keys.join(' ')}\n`;
	const { states, screen } = playShow(
		show,
		`${before}${pressed}${lookAt(at, keys.length)} !screen`,
	);
	return { state: states.at(-1), screen };
}

/** A little after so many keys, which are 400 ms apart in a script. */
function lookAt(at: string, keys: number): string {
	const sign = at.startsWith('-') ? -1 : 1;
	const [minutes = 0, seconds = 0] = at.replace('-', '').split(':').map(Number);
	const ms = sign * (minutes * 60 + seconds) * 1000 + keys * 400 + 50;
	const whole = Math.abs(ms);
	const mark = `${String(Math.floor(whole / 60_000)).padStart(2, '0')}:${((whole % 60_000) / 1000).toFixed(3).padStart(6, '0')}`;
	return ms < 0 ? `-${mark}` : mark;
}

describe('in seconds', () => {
	for (const story of STORIES) {
		test(story.moment, () => {
			expect(story.keys.length).toBeLessThanOrEqual(story.most);
			const after = seen(story, story.keys);
			expect(story.isDone(after), `${JSON.stringify(after.state)}\n${after.screen}`).toBe(true);
			if (story.keys.length > 0) expect(story.isDone(seen(story, []))).toBe(false);
		});
	}
});

/** Typed in a data folder with that one night. */
async function printed({ typed, night }: AskedFor): Promise<string> {
	const data = scratchFolder();
	const nights = join(data, 'nights');
	mkdirSync(nights, { mode: 0o700 });
	const path = join(nights, `${night}.journal`);
	copyFileSync(join(import.meta.dirname, '../journals', `${night}.journal`), path);
	chmodSync(path, 0o600);
	// The file of that night is gone, which is none of the sheet's business.
	const file = typed.includes('--tonight') ? '/home/lou/tour/club.yaml' : showFile;
	const words = typed.split(' ').map((word) => (word === 'SHOW' ? file : word));
	return (await runCommand({ cwd: data, data }, ...words)).out;
}

describe('on the command line', () => {
	test.each(ASKED_FOR)('$moment', async (asked) => {
		const out = await printed(asked);
		expect(asked.isDone(out), out).toBe(true);
	});
});

describe('with time', () => {
	for (const { moment, pressed: count, most, isDone } of AT_LEISURE) {
		test(moment, () => {
			expect(isDone()).toBe(true);
			expect(count).toBeLessThanOrEqual(most);
		});
	}
});

test('the table of keystrokes says so', () => {
	const table = [
		'| moment | keys | pressed | at most |',
		'|---|---|---|---|',
		...STORIES.map(
			({ moment, keys, most }) =>
				`| ${moment} | ${keys.join(' ') || 'seen without a key'} | ${keys.length} | ${most} |`,
		),
		...ASKED_FOR.map(({ moment, typed }) => `| ${moment} | rackside ${typed} | typed | |`),
		...AT_LEISURE.map(
			({ moment, keys, pressed: count, most }) => `| ${moment} | ${keys} | ${count} | ${most} |`,
		),
		'',
	].join('\n');
	if (process.env.WRITE_KEYSTROKES) writeFileSync(tableFile, table);
	expect(readFileSync(tableFile, 'utf8')).toBe(table);
});
