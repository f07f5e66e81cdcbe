// What is played where an instrument cannot be had, each entry followed to its instrument and tuning.

import type { ShapedInstead, ShapedInstrument } from './instrument-shape.ts';
import type { Linking } from './linking.ts';
import type { Instead, Instrument } from './show.ts';
import type { SourcePath } from './source-node.ts';

/** What entries are followed to. */
export type InsteadLinks = {
	/** By id; one whose own entry is faulty is missing. */
	readonly own: ReadonlyMap<string, Instrument>;
	readonly linking: Linking;
};

/**
 * What stands in for an instrument, best first; null where the file does not say. An id alone sounds the
 * same by its own ways. A capo without a tuning goes on the tuning that the file gives that instrument,
 * as in a song's hands. Problems: ids that nobody has, an instrument instead of itself as it is, the
 * same thing twice, a tuning that the kind does not have.
 */
export function resolveInstead(
	shaped: ShapedInstrument,
	path: SourcePath,
	links: InsteadLinks,
): readonly Instead[] | null {
	const { linking } = links;
	if (shaped.instead === undefined) return null;
	const seen = new Set<string>();
	return shaped.instead.flatMap((entry, index): Instead[] => {
		const here = [...path, index];
		const id = typeof entry === 'string' ? entry : entry.instrument;
		linking.follow('instruments', id, [...here, 'instrument']);
		const instead = insteadOf(entry, here, links);
		if (instead === null) return [];
		if (id === shaped.id && instead.tuning === null) {
			linking.complain(here, { code: 'instead-of-itself', id });
			return [];
		}
		const key = [id, instead.capo, ...(instead.tuning?.notes ?? [])].join(' ');
		if (seen.has(key)) {
			linking.complain(here, { code: 'instead-twice', id });
			return [];
		}
		seen.add(key);
		return [instead];
	});
}

function insteadOf(
	entry: ShapedInstead,
	path: SourcePath,
	{ own, linking }: InsteadLinks,
): Instead | null {
	if (typeof entry === 'string') return { instrument: entry, tuning: null, capo: 0 };
	const { instrument, tuning, capo } = entry;
	if (tuning === undefined && capo === undefined) return { instrument, tuning: null, capo: 0 };
	const it = own.get(instrument);
	if (it === undefined) return null;
	const meant =
		tuning === undefined ? it.tuning : linking.tuning(tuning, it.kind, [...path, 'tuning']);
	return meant === null ? null : { instrument, tuning: meant, capo: capo ?? 0 };
}
