// Where in its files a risk of a show stands: the line that somebody would change.

import type { Place } from '../base/problem.ts';
import { sectionOf } from './section-of.ts';
import type { SourceNode } from './source-node.ts';
import { childAt, nodeAt } from './source-node.ts';

/** What a finding or a warning is about, as far as it says. */
export type About = {
	readonly code: string;
	readonly song?: string;
	readonly songs?: readonly string[];
	readonly cue?: string;
	readonly player?: string;
	readonly instrument?: string;
	/** What is listed among what is played instead of the instrument. */
	readonly entry?: string;
};

/** About the gap before a song, so where the set lists it. */
const OF_GAP = new Set(['segue-hand-over', 'gap-too-short', 'tight-gap', 'late']);
const OF_CURFEW = new Set(['past-curfew', 'short-curfew']);
const OF_OFFSETS = new Set(['octaves-spoilt', 'offsets-differ']);
const OF_STAGE = new Set(['stage-drift', 'stage-humidity']);

/** The narrowest place that is known; that of the whole file where nothing narrower is. */
export function placeOfFinding(root: SourceNode, about: About): Place {
	const { code, song, player, cue, entry } = about;
	const within = (node: SourceNode | undefined, ...keys: string[]) =>
		node === undefined ? undefined : nodeAt(node, keys);
	if (OF_CURFEW.has(code))
		return placed(root, within(root, 'show', 'curfew'), childAt(root, 'set'));
	if (code === 'no-gap') return placed(root, childAt(root, 'set'));
	if (OF_STAGE.has(code)) return placed(root, childAt(root, 'stage'));
	if (OF_OFFSETS.has(code)) return placed(root, childAt(root, 'offsets'));
	if (OF_GAP.has(code)) return placed(root, inSet(root, song ?? ''));
	const songNode = entryOf(root, 'songs', song ?? about.songs?.[0]);
	const gear = entryOf(root, 'instruments', about.instrument);
	if (code === 'no-stand-in' || entry !== undefined) {
		return placed(root, within(gear, 'instead'), gear);
	}
	if (code === 'string-tension') return placed(root, within(gear, 'strings'), gear);
	if (code === 'no-length' || code === 'not-played') return placed(root, songNode);
	if (songNode === undefined) return placed(root, gear);
	const cueNode = cuesOf(songNode).find((one) => textOf(childAt(one, 'at')) === cue);
	const sides =
		code === 'pedal-missing' ? ['board'] : code.startsWith('shape') ? ['shapes'] : ['hands'];
	const inSong = player === undefined ? [] : sides.map((side) => within(songNode, side, player));
	const inCues =
		player === undefined || code !== 'pedal-missing'
			? []
			: cuesOf(songNode).map((one) => childAt(one, player));
	const atCue = player === undefined ? cueNode : (within(cueNode, 'hand', player) ?? cueNode);
	const ofCue = cue === undefined ? [] : [atCue];
	return placed(root, ...ofCue, ...inSong, ...inCues, songNode);
}

function placed(root: SourceNode, ...nodes: readonly (SourceNode | undefined)[]): Place {
	return (nodes.find((node) => node !== undefined) ?? root).place;
}

function entryOf(root: SourceNode, list: 'songs' | 'instruments', id: string | undefined) {
	return itemsOf(sectionOf(root, list)).find((one) => textOf(childAt(one, 'id')) === id);
}

/** The first place of the set, encores among it, that plays this song. */
function inSet(root: SourceNode, song: string): SourceNode | undefined {
	const items = itemsOf(sectionOf(root, 'set')).flatMap((one) => [
		one,
		...itemsOf(childAt(one, 'encore')),
	]);
	return items.find((one) => (textOf(one) ?? textOf(childAt(one, 'song'))) === song);
}

function cuesOf(song: SourceNode): readonly SourceNode[] {
	return itemsOf(childAt(song, 'cues'));
}

function itemsOf(node: SourceNode | undefined): readonly SourceNode[] {
	return node?.kind === 'list' ? node.items : [];
}

function textOf(node: SourceNode | undefined): string | null {
	return node?.kind === 'text' ? node.text.trim().normalize('NFC') : null;
}
