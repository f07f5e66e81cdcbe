// What is written of a draft is read again as the same show, by our reader and by any other reader of YAML.

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { DraftCell, ShowDraft } from '../../src/setlist/show-draft.ts';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import type { Part, Show } from '../../src/showfile/show.ts';
import { readTuning } from '../../src/tuning/tuning.ts';
import { showFrom } from '../showfile/show-files.ts';
import { draft, text } from './random-draft.ts';

const RUNS = Number(process.env.PROPERTY_RUNS ?? 200);

const tuningName = (written: string): string => {
	const reading = readTuning(written, 'electric-6', {});
	return reading.ok ? reading.tuning.name : written;
};

function cellOf(part: Part): DraftCell {
	if (part.kind === 'none') return part;
	if (part.kind === 'needs') {
		return { kind: 'needs', instrumentKind: part.instrumentKind, sounds: part.sounds.name };
	}
	const { kind, instrument, tuning, capo } = part;
	return { kind, instrument, tuning: tuning?.name ?? null, capo };
}

/** What a draft says, in the words of a show. */
function saidOf(one: ShowDraft) {
	return {
		...{ title: one.title, venue: one.venue, date: one.date },
		players: one.players.map(({ id, name, plays }) => ({ id, name, plays })),
		instruments: one.instruments.map(({ id, name, slot, kind, for: whose, tuning }) => ({
			...{ id, name, slot, kind, for: whose },
			tuning: tuningName(tuning),
		})),
		songs: one.songs.map(({ remarks: _, hands, ends, ...song }) => ({
			...song,
			ends: ends ?? 'stop',
			hands: Object.fromEntries(Object.entries(hands).map(([id, cell]) => [id, named(cell)])),
		})),
		set: one.set.map(({ remarks: _, ...item }) => item),
	};
}

function named(cell: DraftCell): DraftCell {
	if (cell.kind === 'needs') return { ...cell, sounds: tuningName(cell.sounds) };
	if (cell.kind === 'named' && cell.tuning !== null) {
		return { ...cell, tuning: tuningName(cell.tuning) };
	}
	return cell;
}

function readOf(show: Show) {
	return {
		...{ title: show.title, venue: show.venue, date: show.date },
		players: show.players.map(({ id, name, plays }) => ({ id, name, plays })),
		instruments: show.instruments.map(({ id, name, slot, kind, for: whose, tuning }) => ({
			...{ id, name, slot, kind, for: whose },
			tuning: tuning.name,
		})),
		songs: show.songs.map((song) => ({
			...{ id: song.id, title: song.title, seconds: song.lengthSeconds, tempo: song.tempo },
			...{ starts: song.starts, ends: song.ends, notes: song.notes },
			hands: Object.fromEntries(Object.entries(song.parts).map(([id, part]) => [id, cellOf(part)])),
		})),
		set: show.set,
	};
}

describe('a draft written and read', () => {
	it('is the same show', () => {
		fc.assert(
			fc.property(draft, (one) => {
				expect(readOf(showFrom(writeShowFile(one)))).toEqual(saidOf(one));
			}),
			{ numRuns: RUNS },
		);
	});

	it('says the same to readers of YAML 1.1, which take more words for something else', () => {
		fc.assert(
			fc.property(fc.array(text, { minLength: 1 }), (titles) => {
				// A date is a date to both, so none stands here.
				const songs = titles
					.filter((title) => !/^\d+-\d+-\d+$/.test(title))
					.map((title, index) => ({ ...SONG, id: `s${index}`, title }));
				const written = writeShowFile({ ...EMPTY, songs });
				expect(parse(written, { version: '1.1' })).toEqual(parse(written, { version: '1.2' }));
			}),
			{ numRuns: RUNS },
		);
	});

	it('gives the same text again for the same draft, without loose ends', () => {
		fc.assert(
			fc.property(draft, (one) => {
				const written = writeShowFile(one);
				expect(writeShowFile(one)).toBe(written);
				expect(written).not.toMatch(/[ \t]$/m);
				expect(written).not.toMatch(/\n\n\n/);
			}),
			{ numRuns: RUNS },
		);
	});
});

const EMPTY: ShowDraft = {
	...{ title: 'Night', venue: null, date: null, start: null, curfew: null },
	...{ players: [], instruments: [], songs: [], set: [], remarks: [] },
};

const SONG = {
	...{ id: 'a', title: 'A', seconds: null, tempo: null, starts: null, ends: null, notes: null },
	hands: {},
};

describe('the file as a person would write it', () => {
	it('keeps short things on a line, a blank line between songs, remarks where they belong', () => {
		const written = writeShowFile({
			...{ title: 'Quay Street', venue: 'Wharrel Rooms', date: '2026-06-12', start: '20:00' },
			...{ curfew: null, remarks: ['Made from list.csv.'] },
			showRemarks: { start: 'nobody said when' },
			players: [{ id: 'ash', name: 'Ash', plays: 'guitar' }],
			instruments: [
				{ ...{ id: 'A1', name: 'Amber', slot: '1', kind: 'electric-6' }, ...E, for: ['ash'] },
				{ ...{ id: 'A2', name: 'Anchor', slot: 's', kind: 'electric-6' }, ...E, for: null },
			],
			songs: [
				{
					...SONG,
					...{ id: 'harbour', title: 'Harbour', seconds: 245, tempo: 96, starts: 'ash' },
					hands: { ash: { kind: 'named', instrument: 'A1', tuning: null, capo: 0 } },
				},
				{
					...SONG,
					...{ id: 'lantern', title: 'Lantern' },
					hands: { ash: { kind: 'named', instrument: 'A2', tuning: 'drop D', capo: 2 } },
					remarks: ['Ash: which Anchor is not said.'],
				},
			],
			set: [
				{ kind: 'song', song: 'harbour', gapSeconds: 90, isEncore: false },
				{ kind: 'song', song: 'lantern', gapSeconds: null, isEncore: true },
			],
		});
		expect(written).toBe(`# Made from list.csv.

format: rackside/1

show:
  title: Quay Street
  venue: Wharrel Rooms
  date: 2026-06-12
  start: "20:00" # nobody said when

players:
  - {id: ash, name: Ash, plays: guitar}

instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: A2, name: Anchor, slot: "s", kind: electric-6, tuning: E standard}

songs:
  - id: harbour
    title: Harbour
    length: "4:05"
    tempo: 96
    hands: {ash: A1}
    starts: ash

  # Ash: which Anchor is not said.
  - id: lantern
    title: Lantern
    hands: {ash: {instrument: A2, tuning: drop D, capo: 2}}

set:
  - {song: harbour, gap: 90s}
  - encore:
      - lantern
`);
	});
});

const E = { tuning: 'E standard' } as const;
