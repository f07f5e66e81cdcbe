// The running order with every song followed, an encore's songs marked as such.

import type { Linking } from './linking.ts';
import type { ShapedSetItem } from './shape.ts';
import type { SetItem } from './show.ts';
import type { SourcePath } from './source-node.ts';

type SongEntry = Extract<SetItem, { kind: 'song' }>;

/** The set in order. An interval must stand between two songs that are no encore: else there is nothing to wait for. */
export function resolveSet(shaped: readonly ShapedSetItem[], linking: Linking): SetItem[] {
	const items = shaped.flatMap((item, index) => resolveItem(item, ['set', index], linking));
	for (const [index, { item, path }] of items.entries()) {
		if (item.kind !== 'interval') continue;
		const before = items[index - 1]?.item;
		const after = items[index + 1]?.item;
		const isBetween = before?.kind === 'song' && after?.kind === 'song' && !after.isEncore;
		if (isBetween) continue;
		linking.complain(path, { code: 'interval-place' });
	}
	return items.map(({ item }) => item);
}

type Placed = { readonly item: SetItem; readonly path: SourcePath };

function resolveItem(shaped: ShapedSetItem, path: SourcePath, linking: Linking): Placed[] {
	if (typeof shaped === 'string') {
		return [{ item: songEntry({ song: shaped }, path, linking), path }];
	}
	const { song, gap, interval, encore } = shaped;
	const kinds = [song, interval, encore].filter((one) => one !== undefined).length;
	if (kinds !== 1 || (gap !== undefined && song === undefined)) {
		linking.complain(path, {
			code: 'set-item-unclear',
			isSeveral: kinds > 1,
			isGapAstray: kinds === 1,
		});
		return [];
	}
	if (interval !== undefined) return [{ item: { kind: 'interval', seconds: interval }, path }];
	if (song !== undefined) {
		return [{ item: songEntry({ song, gap }, [...path, 'song'], linking), path }];
	}
	if (encore?.length === 0) {
		linking.complain(path, { code: 'empty-encore' });
	}
	return (encore ?? []).map((one, index) => {
		const here = [...path, 'encore', index];
		const given = typeof one === 'string' ? { song: one } : one;
		const entry = songEntry(given, [...here, 'song'], linking);
		return { item: { ...entry, isEncore: true }, path: here };
	});
}

function songEntry(
	given: { readonly song: string; readonly gap?: number | undefined },
	path: SourcePath,
	linking: Linking,
): SongEntry {
	linking.follow('songs', given.song, path);
	return { kind: 'song', song: given.song, gapSeconds: given.gap ?? null, isEncore: false };
}
