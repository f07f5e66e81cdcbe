// Songs with every player, instrument, pack and tuning followed. Pedals are not: a board that lacks one
// can be played all the same, and is a matter for `check`.

import { cleanText } from '../base/clean-text.ts';
import type { InstrumentKind } from '../tuning/kind.ts';
import type { Linking } from './linking.ts';
import type { ShapedBoard, ShapedCue, ShapedPart, ShapedSong } from './shape.ts';
import { CUE_KEYS } from './shape.ts';
import type { Cue, Part, PedalState, PedalStates, Song } from './show.ts';
import type { SourcePath } from './source-node.ts';

/** The id that means empty hands, so no instrument has it. */
export const EMPTY_HANDS = 'none';

/** What songs refer to. */
export type SongLinks = {
	readonly linking: Linking;
	/** By instrument id; an instrument whose own entry is faulty is missing. */
	readonly kinds: ReadonlyMap<string, InstrumentKind>;
};

/** A song of the show, its path given for the places of its problems. */
export function resolveSong(shaped: ShapedSong, path: SourcePath, links: SongLinks): Song {
	const cues = (shaped.cues ?? []).map((cue, i) => resolveCue(cue, [...path, 'cues', i], links));
	return {
		id: shaped.id,
		title: shaped.title ?? shaped.id,
		lengthSeconds: shaped.length ?? null,
		tempo: shaped.tempo ?? null,
		parts: resolveParts(shaped.hands ?? {}, [...path, 'hands'], links),
		board: resolveBoards(shaped.board ?? {}, [...path, 'board'], links),
		cues,
		starts: shaped.starts === undefined ? null : whoStarts(shaped.starts, path, links),
		count: shaped.count ?? null,
		ends: shaped.ends ?? 'stop',
		notes: shaped.notes ?? null,
		...shapesOf(shaped.shapes, [...path, 'shapes'], links),
		...orderOf(shaped.order, [...path, 'order'], links),
	};
}

function shapesOf(
	shaped: ShapedSong['shapes'],
	path: SourcePath,
	{ linking }: SongLinks,
): Pick<Song, 'shapes'> {
	if (shaped === undefined) return {};
	for (const player of Object.keys(shaped)) linking.followPlayerKey([...path, player]);
	return { shapes: shaped };
}

function orderOf(
	shaped: ShapedSong['order'],
	path: SourcePath,
	{ linking }: SongLinks,
): Pick<Song, 'order'> {
	if (shaped === undefined) return {};
	for (const player of Object.keys(shaped)) linking.followPlayerKey([...path, player]);
	return { order: shaped };
}

// A drummer or a singer begins many a song and has no instrument here, so any words do; but what is
// nearly a player's id is taken for a slip.
function whoStarts(text: string, path: SourcePath, { linking }: SongLinks): string {
	if (linking.nearest('players', text) !== null)
		linking.follow('players', text, [...path, 'starts']);
	return text;
}

function resolveCue(shaped: ShapedCue, path: SourcePath, links: SongLinks): Cue {
	const boards = Object.entries(shaped).filter(([key]) => !isCueKey(key));
	return {
		at: shaped.at,
		nearSeconds: shaped.near ?? null,
		say: shaped.say ?? null,
		hand: resolveParts(shaped.hand ?? {}, [...path, 'hand'], links),
		boards: Object.fromEntries(
			boards.map(([player, board]) => [player, pedalStates(board as ShapedBoard)]),
		),
	};
}

function isCueKey(key: string): boolean {
	return (CUE_KEYS as readonly string[]).includes(key);
}

function resolveBoards(
	shaped: Readonly<Record<string, ShapedBoard>>,
	path: SourcePath,
	{ linking }: SongLinks,
): Record<string, PedalStates> {
	for (const player of Object.keys(shaped)) linking.followPlayerKey([...path, player]);
	return Object.fromEntries(
		Object.entries(shaped).map(([player, board]) => [player, pedalStates(board)]),
	);
}

/** A whole board; `off` alone means that everything is at rest. */
function pedalStates(shaped: ShapedBoard): PedalStates {
	if (shaped === 'off') return {};
	return Object.fromEntries(
		Object.entries(shaped).map(([pedal, state]): [string, PedalState] => [
			cleanText(pedal),
			typeof state === 'boolean' ? { on: state } : { on: true, settings: cleanKeys(state) },
		]),
	);
}

function cleanKeys(settings: Readonly<Record<string, string>>): Record<string, string> {
	return Object.fromEntries(Object.entries(settings).map(([key, text]) => [cleanText(key), text]));
}

function resolveParts(
	shaped: Readonly<Record<string, ShapedPart>>,
	path: SourcePath,
	links: SongLinks,
): Record<string, Part> {
	const parts: Record<string, Part> = {};
	for (const [player, part] of Object.entries(shaped)) {
		const here = [...path, player];
		links.linking.followPlayerKey(here);
		const resolved = resolvePart(part, here, links);
		if (resolved) parts[player] = resolved;
	}
	return parts;
}

function resolvePart(shaped: ShapedPart, path: SourcePath, links: SongLinks): Part | null {
	const { linking, kinds } = links;
	if (shaped === EMPTY_HANDS) return { kind: 'none' };
	if (typeof shaped === 'string') {
		linking.follow('instruments', shaped, path);
		return { kind: 'named', instrument: shaped, tuning: null, capo: 0, leave: null, pack: null };
	}
	if (shaped.pack !== undefined) linking.follow('packs', shaped.pack, [...path, 'pack']);
	const { needs } = shaped;
	if (needs && !shaped.instrument) return resolveNeeds({ ...shaped, needs }, path, linking);
	if (!shaped.instrument || needs) {
		linking.complain(path, {
			code: 'part-unclear',
			player: String(path.at(-1)),
			isBoth: needs !== undefined,
		});
		return null;
	}
	if (shaped.instrument === EMPTY_HANDS) return { kind: 'none' };
	linking.follow('instruments', shaped.instrument, [...path, 'instrument']);
	const kind = kinds.get(shaped.instrument);
	return {
		kind: 'named',
		instrument: shaped.instrument,
		tuning:
			kind === undefined || shaped.tuning === undefined
				? null
				: linking.tuning(shaped.tuning, kind, [...path, 'tuning']),
		capo: shaped.capo ?? 0,
		leave: shaped.leave ?? null,
		pack: shaped.pack ?? null,
	};
}

type ShapedPartMap = Exclude<ShapedPart, string>;
type ShapedNeeds = ShapedPartMap & { readonly needs: NonNullable<ShapedPartMap['needs']> };

function resolveNeeds(shaped: ShapedNeeds, path: SourcePath, linking: Linking): Part | null {
	const { needs } = shaped;
	for (const key of ['tuning', 'capo'] as const) {
		if (shaped[key] === undefined) continue;
		linking.complainOfKey([...path, key], { code: 'part-unclear', key });
	}
	if (needs.prefer !== undefined) {
		linking.follow('instruments', needs.prefer, [...path, 'needs', 'prefer']);
	}
	const sounds = linking.tuning(needs.sounds, needs.kind, [...path, 'needs', 'sounds']);
	if (!sounds) return null;
	return {
		kind: 'needs',
		instrumentKind: needs.kind,
		sounds,
		features: needs.features ?? [],
		prefer: needs.prefer ?? null,
		leave: shaped.leave ?? null,
		pack: shaped.pack ?? null,
	};
}
