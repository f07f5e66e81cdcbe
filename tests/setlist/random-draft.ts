// Drafts by chance, for the tests of what is written and read again: texts that YAML and tables trip over
// among them, and everything that a draft may leave out.

import * as fc from 'fast-check';
import type {
	DraftCell,
	DraftInstrument,
	DraftItem,
	DraftPlayer,
	DraftSong,
	ShowDraft,
} from '../../src/setlist/show-draft.ts';

/** Titles and names as people have them, and as they hurt a file. */
const ODD_TEXTS = [
	'No',
	'yes',
	'~',
	'null',
	'1.10',
	'007',
	'12:30',
	'1_000',
	'0b11',
	'Harbour: the return',
	'# 1',
	'- one',
	'? what',
	'"Quoted"',
	"It's",
	"'90s",
	'{brace}',
	'[bracket]',
	'a, b; c',
	'*star',
	'&and',
	'!bang',
	'%',
	'@ home',
	'`tick`',
	'|',
	'>>',
	'<<',
	'=',
	'tail #1',
	'tail:',
	'back\\slash',
	'Ünterwegs ½ ♭',
	'---',
	'...',
	'true',
	'2026-06-12',
	'1e3',
	'.5',
	'+1',
	'none',
];

/** One line without outer spaces, as a cleaned text is. */
export const text: fc.Arbitrary<string> = fc.oneof(
	fc.constantFrom(...ODD_TEXTS),
	fc
		.array(fc.constantFrom(...'abcXYZ 019:#-,;"\'{}[]\\|>&*!%@`~=?/.éß½♯'), {
			minLength: 1,
			maxLength: 20,
		})
		.map((letters) => letters.join('').trim())
		.filter((one) => one !== ''),
);

const maybe = <Value>(one: fc.Arbitrary<Value>) => fc.option(one, { nil: null });
const remarks = fc.array(text, { maxLength: 2 });
const ids = (letters: readonly string[], most: number, least = 0) =>
	fc.uniqueArray(fc.constantFrom(...letters), { minLength: least, maxLength: most });

const TUNINGS = ['E standard', 'drop D', 'DADGAD', 'D2 A2 D3 G3 A3 D4'];
const KINDS = ['electric-6', 'acoustic-6', 'electric-6', 'nylon-6'] as const;

/** A whole draft whose ids lead somewhere. */
export const draft: fc.Arbitrary<ShowDraft> = fc
	.record({
		players: ids(['ash', 'bo', 'cleo', 'no', 'y', '1', 'null', 'étoile'], 4),
		instruments: ids(['A1', 'A2', 'B1', '7', 'off', '1e3', '0x1'], 5),
		songs: ids(['harbour', 'lantern', 'true', '12', 'on', 'a.b', '1.10', 'zwölf'], 6, 1),
	})
	.chain(({ players, instruments, songs }) =>
		fc.record({
			title: text,
			venue: maybe(text),
			date: maybe(fc.constantFrom('2026-06-12', '2027-01-31')),
			start: maybe(fc.constantFrom('20:30', '09:05')),
			curfew: maybe(fc.constantFrom('22:45', '23:00')),
			remarks,
			showRemarks: fc.record({ title: text, start: text }, { requiredKeys: [] }),
			partRemarks: fc.record({ songs: remarks, set: remarks }, { requiredKeys: [] }),
			players: fc.tuple(...players.map(player)),
			instruments: fc.tuple(...instruments.map((id, index) => instrument(id, index, players))),
			songs: fc.tuple(...songs.map((id) => song(id, players, instruments))),
			set: setOf(songs),
		}),
	);

function player(id: string): fc.Arbitrary<DraftPlayer> {
	return fc.record({ id: fc.constant(id), name: text, plays: maybe(text), remarks });
}

function instrument(
	id: string,
	index: number,
	players: readonly string[],
): fc.Arbitrary<DraftInstrument> {
	return fc.record({
		id: fc.constant(id),
		name: text,
		slot: fc.constantFrom(String(index + 1), null),
		kind: fc.constantFrom(...KINDS),
		for:
			players.length === 0 ? fc.constant(null) : maybe(fc.subarray([...players], { minLength: 1 })),
		tuning: fc.constantFrom(...TUNINGS),
		remarks,
	});
}

function cell(instruments: readonly string[]): fc.Arbitrary<DraftCell> {
	const others: fc.Arbitrary<DraftCell>[] = [
		fc.constant({ kind: 'none' }),
		fc.record({
			kind: fc.constant('needs'),
			instrumentKind: fc.constantFrom(...KINDS),
			sounds: fc.constantFrom(...TUNINGS),
		}),
	];
	if (instruments.length === 0) return fc.oneof(...others);
	return fc.oneof(
		...others,
		fc.record({
			kind: fc.constant('named'),
			instrument: fc.constantFrom(...instruments),
			tuning: maybe(fc.constantFrom(...TUNINGS)),
			capo: fc.nat({ max: 12 }),
		}),
	);
}

function song(
	id: string,
	players: readonly string[],
	instruments: readonly string[],
): fc.Arbitrary<DraftSong> {
	return fc.record({
		id: fc.constant(id),
		title: text,
		seconds: maybe(fc.oneof(fc.integer({ min: 1, max: 5000 }), fc.constant(200.5))),
		tempo: maybe(fc.oneof(fc.integer({ min: 20, max: 400 }), fc.constant(92.5))),
		// A drummer or any other word; one that is nearly a player's id is a slip.
		starts: maybe(fc.constantFrom(...players, 'the drums')),
		ends: maybe(fc.constantFrom('stop', 'ring', 'segue', 'talk')),
		notes: maybe(text),
		hands:
			players.length === 0
				? fc.constant({})
				: fc
						.array(fc.tuple(fc.constantFrom(...players), cell(instruments)))
						.map((pairs) => Object.fromEntries(pairs)),
		remarks,
	});
}

function setOf(songs: readonly string[]): fc.Arbitrary<readonly DraftItem[]> {
	const one = (isEncore: boolean) =>
		fc.record({
			kind: fc.constant('song' as const),
			song: fc.constantFrom(...songs),
			gapSeconds: maybe(fc.oneof(fc.nat({ max: 400 }), fc.constant(12.5))),
			isEncore: fc.constant(isEncore),
			remarks,
		});
	const pause = fc.record({
		kind: fc.constant('interval' as const),
		seconds: fc.integer({ min: 1, max: 4000 }),
		remarks,
	});
	const half = fc.array(one(false), { minLength: 1, maxLength: 4 });
	return fc
		.tuple(half, fc.option(pause, { nil: undefined }), half, fc.array(one(true), { maxLength: 3 }))
		.map(([first, between, second, encore]) => [
			...first,
			...(between ? [between] : []),
			...second,
			...encore,
		]);
}
