// The night after: what was changed stands in the new file, once, and every song asks for what it asked for.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type NextNight, nextNight } from '../../src/report/next-night.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import { cellAt } from '../../src/session/cells.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import type { Part, Show } from '../../src/showfile/show.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playedNight } from './script-night.ts';

const shows = join(import.meta.dirname, '../../shows');

function played(show: Show, script: string): NextNight & { readonly last: Session } {
	const steps = nightSteps(show, playedNight(show, script).records);
	const next = nextNight({
		...{ night: 'n1', ...steps, dayOffsetMinutes: 0 },
		dayOf: (atMs) => new Date(atMs).toISOString().slice(0, 10),
	});
	return { ...next, last: steps.steps.at(-1)?.after ?? steps.opened };
}

function readAgain({ draft }: NextNight): { readonly show: Show; readonly text: string } {
	const text = writeShowFile(draft);
	const { show, problems } = readShow(() => Buffer.from(text), 'next.yaml');
	if (show === null) throw new Error(`${JSON.stringify(problems)}\n${text}`);
	return { show, text };
}

/** What each song of a list asks of each player who is named there or above, with the tuning that it means. */
function asked(session: Session, file: Show): readonly (readonly unknown[])[] {
	const meant = (part: Part | null) =>
		part?.kind === 'named' && part.tuning === null
			? { ...part, tuning: file.instruments.find(({ id }) => id === part.instrument)?.tuning }
			: part;
	return session.list.flatMap((item) =>
		item.kind === 'interval' || item.isDropped
			? []
			: [
					[
						item.song,
						...file.players.map(({ id }) =>
							meant(cellAt(session, { item, point: 0, player: id }).part),
						),
					],
				],
	);
}

const CLUB = `
-01:00 !ready
00:00 space
01:00 b 1
01:10 enter
01:20 e 3 enter
03:00 d
03:15 space
04:00 c 2 "drop C#" enter
04:05 c 5 "drop C" enter
04:10 c 6 2 enter
05:00 f 3 e
06:00 d
06:10 w a 2
06:30 w a -
40:00 t 1
41:00 tab tab down k enter
`;

describe('after a night of the club show', () => {
	const show = loadShow(join(shows, 'club.yaml'));
	const next = played(show, CLUB);
	const texts = next.carried.map(({ text }) => text);
	const again = readAgain(next);

	test('a tuning that was changed is as it hung, with the song and the time of day', () => {
		expect(texts).toContain('2 Ember in drop C#: as it hung during Lantern, 12:04');
		const ember = again.show.instruments.find(({ id }) => id === 'A2');
		expect(ember?.tuning.name).toBe('drop C#');
		expect(again.text).toContain('# 2 Ember in drop C#: as it hung during Lantern, 12:04.');
	});

	test('a tuning that its strings are not for is told, and the file keeps its own', () => {
		expect(texts).toContain(
			'5 Birch in drop C: as it hung during Lantern, 12:04; the file keeps E standard, which its strings are for, so retune it first',
		);
		expect(again.show.instruments.find(({ name }) => name === 'Birch')?.tuning.name).toBe(
			'E standard',
		);
	});

	test('a capo that is still on is told, since a file has no word for it', () => {
		expect(texts).toContain('6 Dozen with a capo on 2: as it hung during Lantern, 12:04');
	});

	test('strings that are new are of that day, with no hours', () => {
		expect(texts).toContain('1 Amber with new strings: put on after Lantern, 12:40');
		const amber = again.show.instruments.find(({ id }) => id === 'A1');
		expect(amber?.strung).toEqual({ on: '2000-01-01', hours: 0 });
	});

	test('hours in hands are on top of the hours of the file', () => {
		// In hands from 3:15 to the end at 41:03.
		const anchor = again.show.instruments.find(({ id }) => id === 'A4');
		const before = show.instruments.find(({ id }) => id === 'A4');
		expect(anchor?.strung.hours).toBeCloseTo((before?.strung.hours ?? 0) + 0.6, 5);
		expect(texts.filter((text) => text.startsWith('Hours on strings'))).toHaveLength(1);
	});

	test('what is out and what is suspect is told, and the file says it as far as it can', () => {
		expect(texts.filter((text) => text.startsWith('3 Cobble: '))).toHaveLength(1);
		expect(again.show.instruments.find(({ id }) => id === 'A3')?.notes).toMatch(/^2000-01-01: /);
		expect(texts.filter((text) => /^Pack .*: suspect, since 12:06/.test(text))).toHaveLength(1);
		// Above the pack's own line.
		expect(again.text).toMatch(/\n *# Pack ([^:]*): suspect, since 12:06[^\n]*\n *- \{id: \1\b/);
	});

	test('a song that was dropped is in the catalogue and not in the list', () => {
		const dropped = next.last.list.find((item) => item.kind === 'song' && item.isDropped);
		if (dropped?.kind !== 'song') throw new Error('nothing was dropped');
		expect(again.show.songs.some(({ id }) => id === dropped.song)).toBe(true);
		const inList = again.show.set.some(
			(item) => item.kind === 'song' && item.song === dropped.song,
		);
		expect(inList).toBe(false);
		expect(texts.some((text) => text.startsWith('Not in the list, since it was dropped: '))).toBe(
			true,
		);
	});

	test('what a file cannot say is to be done before the next show', () => {
		const toDo = next.carried.flatMap((one) => one.toDo ?? []);
		expect(toDo).toContain('take the capo off 6 Dozen');
		expect(toDo).toContain('retune 5 Birch to E standard');
		expect(toDo.filter((one) => one.startsWith('see to 3 Cobble ('))).toHaveLength(1);
		expect(toDo.some((one) => /^check battery and channel of pack /.test(one))).toBe(true);
		// What the file says is done by opening it.
		expect(toDo.some((one) => /Ember|Hours|order/.test(one))).toBe(false);
	});

	test('nothing is told twice', () => expect(new Set(texts).size).toBe(texts.length));
});

const MOVED = `
00:00 space
01:00 tab tab down down g down down enter
02:00 tab tab
03:00 d
03:15 space
04:00 right
04:05 right
05:00 j "mill" enter
06:00 d
06:15 space
`;

describe.each(['club', 'folk', 'festival', 'first'])('after a night of %s', (name) => {
	const show = loadShow(join(shows, `${name}.yaml`));

	test.each([
		['nothing happened', ''],
		['a song moved, two skipped, one called', MOVED],
		['two instruments were found in another tuning', '00:00 space\n01:00 c 1 "drop D" enter\n'],
	])('every song asks for what it asked for, where %s', (_, script) => {
		const next = played(show, script);
		const again = readAgain(next).show;
		const before = asked(next.last, next.last.show);
		// Of a song from off the list nothing says what the others have: in a list, what stands above it does.
		const after = asked(openSession(again), again).map((row, at) =>
			row.map((cell, index) => (before[at]?.[index] === null ? null : cell)),
		);
		expect(after).toEqual(before);
	});
});

test('a night in which nothing changed gives the same show', () => {
	const show = loadShow(join(shows, 'folk.yaml'));
	const next = played(show, '');
	expect(next.carried).toEqual([]);
	expect(readAgain(next).show).toEqual(show);
});
