// What following an id needs: which ids a show has, the complaint about one that leads nowhere, and
// the place of it. Ids count as known when their own entry is faulty, so that one slip gives one problem.

import { nearestName } from '../base/nearest-name.ts';

import type { InstrumentKind } from '../tuning/kind.ts';
import type { Tuning } from '../tuning/tuning.ts';
import { readTuning } from '../tuning/tuning.ts';
import { sectionOf } from './section-of.ts';
import type { IdList, ShowFault, ShowFaultSaid } from './show-fault.ts';
import type { SourceNode, SourcePath } from './source-node.ts';
import { childAt, keyPlaceAt, placeAt } from './source-node.ts';

/** All ids of a show, by list, those of faulty entries included. */
export type KnownIds = Readonly<Record<IdList, ReadonlySet<string>>>;

/** Every list whose entries have ids. */
export const ID_LISTS: readonly IdList[] = [
	'techs',
	'players',
	'instruments',
	'songs',
	'packs',
	'supplies',
];

/** A list of ids longer than this helps nobody in one line. */
const MOST_LISTED = 12;

/** The ids that stand in the lists of a file's tree. */
export function knownIds(root: SourceNode): KnownIds {
	const idsOf = (list: IdList): ReadonlySet<string> => {
		const items = sectionOf(root, list);
		const ids = items?.kind === 'list' ? items.items.map((item) => childAt(item, 'id')) : [];
		return new Set(
			ids.flatMap((one) => (one?.kind === 'text' ? [one.text.trim().normalize('NFC')] : [])),
		);
	};
	const pairs = ID_LISTS.map((list) => [list, idsOf(list)] as const);
	return Object.fromEntries(pairs) as Record<IdList, ReadonlySet<string>>;
}

/** Follows ids and names of one show, and gathers what leads nowhere. */
export class Linking {
	readonly problems: ShowFault[] = [];
	readonly #root: SourceNode;
	readonly #known: KnownIds;
	readonly #isWhole: boolean;
	readonly abbreviations: Readonly<Record<string, string>>;

	/** `isWhole` false: a file of the show is missing, so that unknown ids may well be in it. */
	constructor(show: {
		readonly root: SourceNode;
		readonly known: KnownIds;
		readonly isWhole: boolean;
		readonly abbreviations: Readonly<Record<string, string>>;
	}) {
		this.#root = show.root;
		this.#known = show.known;
		this.#isWhole = show.isWhole;
		this.abbreviations = show.abbreviations;
	}

	/** Notes a problem with the value at a path. */
	complain(path: SourcePath, said: ShowFaultSaid): void {
		this.problems.push({ ...said, where: placeAt(this.#root, path) });
	}

	/** Notes a problem with the key at a path's end. */
	complainOfKey(path: SourcePath, said: ShowFaultSaid): void {
		this.problems.push({ ...said, where: keyPlaceAt(this.#root, path) });
	}

	/** Notes a problem when the value at a path is no id of the list. */
	follow(list: IdList, id: string, path: SourcePath): void {
		if (this.#isUnknown(list, id)) this.complain(path, this.#unknown(list, id));
	}

	/** Notes a problem when the key at a path's end is no player. */
	followPlayerKey(path: SourcePath): void {
		const id = String(path.at(-1));
		if (this.#isUnknown('players', id)) {
			this.complainOfKey(path, this.#unknown('players', id));
		}
	}

	/** The nearest id of a list, when one is near. */
	nearest(list: IdList, id: string): string | null {
		return nearestName(id, this.#known[list]);
	}

	/** The tuning that a text at a path means on a kind of instrument; null with a problem when it means none. */
	tuning(text: string, kind: InstrumentKind, path: SourcePath): Tuning | null {
		const reading = readTuning(text, kind, this.abbreviations);
		if (reading.ok) return reading.tuning;
		const { unread } = reading;
		this.complain(path, { code: 'unknown-tuning', at: path, text, kind, unread });
		return null;
	}

	#isUnknown(list: IdList, id: string): boolean {
		return this.#isWhole && !this.#known[list].has(id);
	}

	#unknown(list: IdList, id: string): ShowFaultSaid {
		const names = [...this.#known[list]];
		const known = names.length <= MOST_LISTED ? names : [];
		return { code: 'unknown-id', list, id, known, near: nearestName(id, names) };
	}
}
