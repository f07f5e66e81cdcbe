// What a new show takes over of another file: players, gear and whatever belongs to them, comments included.

import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import type { Abbreviations } from '../tuning/tuning.ts';

/** What is of one night, or of the file itself; all else lasts, and may be linked to by what else lasts. */
const OF_ONE_NIGHT: readonly string[] = ['format', 'include', 'show', 'songs', 'set'];

export type TakenOver = {
	/** By the part's key, as nodes of the YAML library. */
	readonly further: Readonly<Record<string, unknown>>;
	/** What the file includes in turn. */
	readonly include: readonly string[];
};

/** The lasting parts of a show file's text. */
export function takeOver(text: string): TakenOver {
	const { contents } = parseDocument(text);
	const further: Record<string, unknown> = {};
	const include: string[] = [];
	for (const { key, value } of isMap(contents) ? contents.items : []) {
		if (!isScalar(key)) continue;
		if (!OF_ONE_NIGHT.includes(String(key.value))) further[String(key.value)] = value;
		if (key.value !== 'include') continue;
		const names = isSeq(value) ? value.items : [value];
		include.push(...names.flatMap((name) => (isScalar(name) ? [String(name.value)] : [])));
	}
	return { further, include };
}

/** The parts with these abbreviations behind those that are there. */
export function withAbbreviations(
	further: Readonly<Record<string, unknown>>,
	abbreviations: Abbreviations,
): Readonly<Record<string, unknown>> {
	if (Object.keys(abbreviations).length === 0) return further;
	const there = further.abbreviations;
	if (!isMap(there)) return { ...further, abbreviations };
	for (const [short, tuning] of Object.entries(abbreviations)) there.set(short, tuning);
	return further;
}
