// Set lists as people write them, made up and tuned to no reader. What each says was counted by hand.

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import { withRemarks } from '../../src/words/set-list.ts';
import { showFrom } from '../showfile/show-files.ts';
import { EXPECTED, TITLES } from './expected-lists.ts';
import { draftOf, readBytes } from './read-list.ts';

const LISTS = new URL('lists/', import.meta.url);

describe('a set list as people write it', () => {
	it('is one of those that are expected', () => {
		expect(readdirSync(LISTS).toSorted()).toEqual(Object.keys(EXPECTED).toSorted());
	});

	it.each(Object.entries(EXPECTED))('%s says what a person reads in it', (name, expected) => {
		const { list, reading } = readBytes(readFileSync(new URL(name, LISTS)), {
			form: name.endsWith('.txt') ? 'lines' : 'table',
		});
		const songs = reading.set.filter((item) => item.kind === 'song');
		expect({
			rows: list.rowCount,
			songs: reading.songs.length,
			listed: songs.length,
			encore: songs.filter(({ isEncore }) => isEncore).length,
			intervals: reading.set.length - songs.length,
			understood: reading.understood,
			asked: reading.asked.map(({ row, column }) => [row, column]),
			players: reading.players.map(({ id }) => id),
		}).toEqual(expected);
	});

	it.each(Object.entries(TITLES))('%s loses no song and makes none up', (name, titles) => {
		const { reading } = readBytes(readFileSync(new URL(name, LISTS)), {
			form: name.endsWith('.txt') ? 'lines' : 'table',
		});
		const played = reading.set.flatMap((item) =>
			item.kind === 'song' ? [reading.songs.find(({ id }) => id === item.song)?.title] : [],
		);
		expect(played).toEqual(titles);
	});

	it.each(Object.keys(EXPECTED))(
		'%s becomes a file that can be read, with a comment at each open place',
		(name) => {
			const { list, reading } = readBytes(readFileSync(new URL(name, LISTS)), {
				form: name.endsWith('.txt') ? 'lines' : 'table',
			});
			const file = { isDateGuessed: true, isStartGuessed: true, isTitleGuessed: true };
			const draft = withRemarks(draftOf(list, reading), reading, { source: name, ...file });
			const written = writeShowFile(draft);
			const show = showFrom(written);
			expect(show.set).toHaveLength(reading.set.length);
			expect(written.match(/# OPEN, row /g) ?? []).toHaveLength(reading.asked.length);
		},
	);
});
