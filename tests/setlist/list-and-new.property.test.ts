// What `list` prints of a show is read back by `new` without loss, in each of its forms.

import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listCsv, listedShow, listText } from '../../src/setlist/list-show.ts';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import type { Show } from '../../src/showfile/show.ts';
import { type Folder, showFrom } from '../showfile/show-files.ts';
import { draft } from './random-draft.ts';
import { draftOf, readText } from './read-list.ts';

const RUNS = Number(process.env.PROPERTY_RUNS ?? 60);

const FORMS = [
	['text', 'lines', listText],
	['csv', 'table', listCsv],
	['json', 'table', (show: Show) => JSON.stringify(listedShow(show))],
] as const;

function again(text: string, form: 'lines' | 'table'): Show {
	const { list, reading } = readText(text, { form });
	expect(reading.asked).toEqual([]);
	return showFrom(writeShowFile(draftOf(list, reading)));
}

describe.each(FORMS)('the list as %s', (_, form, print) => {
	it('gives the same list again, whatever the show', () => {
		fc.assert(
			fc.property(draft, (one) => {
				fc.pre(one.set.length > 0);
				const show = showFrom(writeShowFile(one));
				expect(listedShow(again(print(show), form))).toEqual(listedShow(show));
			}),
			{ numRuns: RUNS },
		);
	});

	it.each(['club', 'festival', 'folk', 'first'])('gives the example show %s again', (name) => {
		const file = (path: string) =>
			readFileSync(new URL(`../../shows/${path}`, import.meta.url), 'utf8');
		const folder: Folder = {
			'show.yaml': file(`${name}.yaml`),
			'club-gear.yaml': file('club-gear.yaml'),
		};
		const show = showFrom(folder);
		expect(listedShow(again(print(show), form))).toEqual(listedShow(show));
	});
});

describe('the table', () => {
	it('keeps gaps, tempos, who starts, how it ends and notes too', () => {
		fc.assert(
			fc.property(draft, (one) => {
				fc.pre(one.set.length > 0);
				const show = showFrom(writeShowFile(one));
				const other = again(listCsv(show), 'table');
				expect(played(other)).toEqual(played(show));
			}),
			{ numRuns: RUNS },
		);
	});
});

describe('the lines', () => {
	it('keep notes too, on one line', () => {
		const said = ({ set, songs }: Show) =>
			set.map((item) => {
				const song = item.kind === 'song' ? songs.find(({ id }) => id === item.song) : null;
				return song?.notes?.replace(/\s+/g, ' ') ?? null;
			});
		fc.assert(
			fc.property(draft, (one) => {
				fc.pre(one.set.length > 0);
				const show = showFrom(writeShowFile(one));
				expect(said(again(listText(show), 'lines'))).toEqual(said(show));
			}),
			{ numRuns: RUNS },
		);
	});
});

/** Each place of the list with what the table says of it beside the data. */
function played(show: Show) {
	return show.set.map((item) => {
		if (item.kind === 'interval') return item.seconds;
		const song = show.songs.find(({ id }) => id === item.song);
		return [item.gapSeconds, song?.tempo, song?.starts, song?.ends, song?.notes];
	});
}
