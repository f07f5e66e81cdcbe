// One draft for each program that makes something new: several at once share a folder, and none writes into another's.

import type { Disk } from './disk.ts';
import { draftFile } from './draft-file.ts';
import { takeLock } from './lock.ts';

/** More at once are no people. */
const MOST = 20;

/** Which draft it is about, such as the file it becomes; a text like the drafts' own. */
const ABOUT = 'about';

export type TakenDraft = {
	/** Texts by the names of their fields; empty for a new one. */
	readonly kept: () => Readonly<Record<string, string>>;
	readonly keep: (drafts: Readonly<Record<string, string>>) => void;
	/** Leaves it to the next who comes. */
	readonly release: () => void;
};

type DraftWish = {
	readonly folder: string;
	/** What drafts of this sort are called; others than the first have a number behind it. */
	readonly name: string;
	/** What it is about; null for nothing yet. */
	readonly about: string | null;
};

/** A draft that nobody else has: one about the same if there is any, else the first that was left, else a new one. */
export async function takeDraft(
	disk: Disk,
	{ folder, name, about }: DraftWish,
): Promise<TakenDraft> {
	const all = Array.from({ length: MOST }, (_, index) => {
		const night = index === 0 ? name : `${name}-${index + 1}`;
		return { night, file: draftFile(disk, { folder, night }) };
	});
	const rank = ({ file }: (typeof all)[number]): number => {
		const kept = file.kept();
		if (Object.keys(kept).length === 0) return 2;
		return about !== null && kept[ABOUT] === about ? 0 : 1;
	};
	const ranked = all
		.map((one) => ({ ...one, rank: rank(one) }))
		.toSorted((a, b) => a.rank - b.rank);
	for (const { night, file } of ranked) {
		const lock = await takeLock({ disk, folder, name: night });
		if (!lock.isHeld) continue;
		const keep: TakenDraft['keep'] = (drafts) => {
			const isNone = Object.keys(drafts).length === 0;
			file.keep(isNone || about === null ? drafts : { ...drafts, [ABOUT]: about });
		};
		return { kept: file.kept, keep, release: lock.release };
	}
	return { kept: () => ({}), keep: () => {}, release: () => {} };
}
