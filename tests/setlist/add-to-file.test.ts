// A file that is added to keeps every byte that was in it: take the new lines out, and it is the old file.

import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addToShowFile } from '../../src/setlist/add-to-file.ts';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import { showFrom } from '../showfile/show-files.ts';
import { draft } from './random-draft.ts';
import { draftOf, readText } from './read-list.ts';

const RUNS = Number(process.env.PROPERTY_RUNS ?? 60);

const shows = (name: string) =>
	readFileSync(new URL(`../../shows/${name}`, import.meta.url), 'utf8');

const { list, reading } = readText('Title,Length,Ivo\nPlover,3:00,Reed DD\nEncore\nHarbour,,\n', {
	form: 'table',
});
const MORE = draftOf(list, reading);

/** Whether the old text is what is left of the new one without some of its lines. */
function holdsInOrder(text: string, old: string): boolean {
	const lines = text.split('\n');
	let at = 0;
	for (const line of old.split('\n')) {
		at = lines.indexOf(line, at) + 1;
		if (at === 0) return false;
	}
	return true;
}

describe('a file that is added to', () => {
	it('has the new entries behind its own, with its own indent, comments and keys as they were', () => {
		const old = `# Mine. Hands off!
format: rackside/1
show: {title: 'Two', start: "19:30"}   # odd but mine
players:
- {id: ash, name: Ash}   # left
instruments:   # the rack
- id: A1
  kind:   electric-6
  tuning: "E standard"   # always

songs:
- id: a
  notes: >-
    folded
    words
# between
- id: b   # last one

set:
- a
- b
# at the end
`;
		expect(addToShowFile(old, MORE)).toBe(`# Mine. Hands off!
format: rackside/1
show: {title: 'Two', start: "19:30"}   # odd but mine
players:
- {id: ash, name: Ash}   # left
- {id: ivo, name: Ivo, plays: guitar}
instruments:   # the rack
- id: A1
  kind:   electric-6
  tuning: "E standard"   # always
- {id: I1, name: Reed, slot: "1", kind: electric-6, for: [ivo], tuning: drop D}

songs:
- id: a
  notes: >-
    folded
    words
# between
- id: b   # last one

- id: plover
  title: Plover
  length: "3:00"
  hands: {ivo: I1}

- id: harbour
  title: Harbour

set:
- a
- b
- plover
- encore:
    - harbour
# at the end
`);
	});

	it('is the example show with more in it', () => {
		const old = shows('first.yaml');
		const { list: other, reading: read } = readText('Title,Length\nPlover,3:00\nDunlin,2:00\n', {
			form: 'table',
		});
		const text = addToShowFile(old, draftOf(other, read)) ?? '';
		expect(holdsInOrder(text, old)).toBe(true);
		expect(showFrom(text).set).toHaveLength(showFrom(old).set.length + 2);
	});

	it('keeps all lines of any file that this program wrote', () => {
		fc.assert(
			fc.property(draft, (one) => {
				const old = writeShowFile({
					...one,
					players: one.players.filter(({ id }) => id !== 'ivo'),
				});
				const songs = MORE.songs.map((song) => ({ ...song, id: `new-${song.id}`, hands: {} }));
				const set = MORE.set.map((item) =>
					item.kind === 'song' ? { ...item, song: `new-${item.song}` } : item,
				);
				const text =
					addToShowFile(old, { ...MORE, players: [], instruments: [], songs, set }) ?? '';
				expect(holdsInOrder(text, old)).toBe(true);
				expect(showFrom(text).set).toHaveLength(one.set.length + 2);
			}),
			{ numRuns: RUNS },
		);
	});

	it('gets parts that it lacks at its end, and a last line without its end is ended first', () => {
		const old = 'format: rackside/1\nplayers:\n  - {id: ash, name: Ash} # me';
		expect(addToShowFile(old, MORE)).toBe(
			`${old}\n  - {id: ivo, name: Ivo, plays: guitar}

instruments:
  - {id: I1, name: Reed, slot: "1", kind: electric-6, for: [ivo], tuning: drop D}

songs:
  - id: plover
    title: Plover
    length: "3:00"
    hands: {ivo: I1}

  - id: harbour
    title: Harbour

set:
  - plover
  - encore:
      - harbour
`,
		);
	});

	it('is left alone where its list stands on one line', () => {
		expect(addToShowFile('format: rackside/1\nset: [a]\n', MORE)).toBeNull();
		expect(addToShowFile('just words', MORE)).toBeNull();
	});
});

describe('abbreviations that are added', () => {
	const NONE = { ...MORE, players: [], instruments: [], songs: [], set: [] };
	it.each([
		['songs: []\n', 'songs: []\n\nabbreviations:\n  OPG*: open G\n'],
		['abbreviations: {DD: drop D} # ours\n', 'abbreviations: {DD: drop D, OPG*: open G} # ours\n'],
		[
			'abbreviations:\n  DD: drop D # low\nset: []\n',
			'abbreviations:\n  DD: drop D # low\n  OPG*: open G\nset: []\n',
		],
		['abbreviations: {}\n', 'abbreviations: {OPG*: open G}\n'],
	])('stand behind those of %j', (before, after) => {
		expect(addToShowFile(before, NONE, { 'OPG*': 'open G' })).toBe(after);
	});
});
