// Tables and lists of any bytes: each ends in a show that can be read or in a named problem, every row in one of
// the two, never in an error thrown. LIST_RUNS sets how many are tried; half of them are tables.

import { readdirSync, readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NO_ANSWERS, readingOf } from '../../src/setlist/answers.ts';
import { decodeText } from '../../src/setlist/decode-text.ts';
import { EMPTY_RACK } from '../../src/setlist/list-reading.ts';
import { readSetList } from '../../src/setlist/make-show.ts';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import { whyAsked, withRemarks } from '../../src/words/set-list.ts';
import { loaderOf } from '../showfile/show-files.ts';
import { draftOf } from './read-list.ts';

const RUNS = Math.ceil(Number(process.env.LIST_RUNS ?? 200) / 2);

const LISTS = new URL('lists/', import.meta.url);
// Bytes as Latin-1, so that cutting anywhere also makes bad UTF-8.
const SEEDS = readdirSync(LISTS).map((name) => readFileSync(new URL(name, LISTS), 'latin1'));

const PIECES = [
	...[
		'"',
		'""',
		'\n',
		'\r',
		'\r\n',
		'\t',
		';',
		',',
		'\0',
		'\x1b',
		'\xff\xfe',
		'\xfe\xff',
		'\xef\xbb\xbf',
	],
	...[
		'\xc3',
		'\xe2\x99\xad',
		'\xed\xa0\x80',
		'\xe2\x80\xae',
		'---\n',
		'\n\n',
		'>>',
		'1. ',
		'- ',
		'(4:05)',
	],
	...[
		'[DADGAD c2]',
		'Encore',
		'Interval',
		'interval,20:00',
		'Title',
		'Song',
		'Length',
		'Id',
		'Section',
	],
	...[
		'encore',
		'Amber [A1, bass-4] drop D c3',
		'[none]',
		'[__proto__]',
		'__proto__',
		'constructor',
		'none',
	],
	...[
		'at',
		'say',
		'hand',
		'-',
		'?',
		'capo 99',
		'c12',
		'12:61',
		'4:05:00',
		'99999999999',
		'-5',
		'1e9',
		'½↓',
	],
	...[
		'{',
		'}',
		'{"songs":[{"title":"a"}]}',
		'=1+1',
		'| Ash: Amber DD',
		'| : :',
		' | ',
		'tuning',
		'capo',
	],
	...['#', '# ', ': ', '&a', '*a', '!!str', '%YAML', 'yes', 'null', 'PK\x03\x04', 'x'.repeat(1200)],
];

const spot = fc.nat({ max: 99_999 });
const at = (source: string, where: number) => where % (source.length + 1);

const edit = fc.oneof(
	fc.tuple(spot, fc.constantFrom(...PIECES)).map(
		([where, piece]) =>
			(text: string) =>
				text.slice(0, at(text, where)) + piece + text.slice(at(text, where)),
	),
	fc.tuple(spot, fc.nat({ max: 30 })).map(
		([where, count]) =>
			(text: string) =>
				text.slice(0, at(text, where)) + text.slice(at(text, where) + count),
	),
	fc.tuple(spot, spot, fc.nat({ max: 200 })).map(
		([from, to, count]) =>
			(text: string) =>
				text.slice(0, at(text, to)) +
				text.slice(at(text, from), at(text, from) + count) +
				text.slice(at(text, to)),
	),
);

const damaged = fc
	.tuple(fc.constantFrom(...SEEDS), fc.array(edit, { minLength: 1, maxLength: 8 }))
	.map(([seed, edits]) => edits.reduce((text, one) => one(text), seed));
const heap = fc
	.array(fc.constantFrom(...PIECES, 'a', 'Ash', 'Amber', '\n'), { maxLength: 60 })
	.map((all) => all.join(''));
const bytes = fc
	.oneof(
		{ weight: 6, arbitrary: damaged },
		{ weight: 3, arbitrary: heap },
		{
			weight: 1,
			arbitrary: fc.uint8Array({ maxLength: 200 }).map((all) => String.fromCharCode(...all)),
		},
	)
	.map((text) => Uint8Array.from(text, (letter) => letter.charCodeAt(0)));

/** One list may take this long; a slow machine under load is given more. */
const MOST_MS = 5000;

function madeOf(input: Uint8Array, form: 'table' | 'lines'): string {
	const decoded = decodeText(input);
	if (!decoded.ok) return `no text: ${decoded.is}`;
	const read = readSetList({ text: decoded.text, form, columns: {}, rack: EMPTY_RACK });
	if (!read.ok) return read.code;
	const reading = readingOf(read.list, EMPTY_RACK, NO_ANSWERS);
	const file = { isDateGuessed: true, isStartGuessed: true, isTitleGuessed: true };
	const draft = withRemarks(draftOf(read.list, reading), reading, { source: 'list', ...file });
	const { show, problems } = readShow(loaderOf({ 'show.yaml': writeShowFile(draft) }), 'show.yaml');
	expect(problems).toEqual([]);
	// Every row that is a song has its place in the order, and what was open its reason.
	const songRows = read.list.rows.filter(({ kind }) => kind === 'song').length;
	expect(show?.set.filter(({ kind }) => kind === 'song')).toHaveLength(songRows);
	for (const one of reading.asked) expect(whyAsked(one)).not.toBe('');
	return 'show';
}

describe.each(['table', 'lines'] as const)('any bytes as %s', (form) => {
	it('end in a show that can be read or in a named problem, soon', () => {
		fc.assert(
			fc.property(bytes, (input) => {
				// The processor's time, since others may have the machine.
				const begin = process.cpuUsage();
				expect(madeOf(input, form)).toMatch(
					/^(?:show|no text: .*|no-rows|no-title|no-songs|too-long)$/,
				);
				expect(process.cpuUsage(begin).user / 1000).toBeLessThan(MOST_MS);
			}),
			{ numRuns: RUNS },
		);
	});
});
