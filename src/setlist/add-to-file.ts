// A show file with more in it: new entries are put in behind those of their part, and every byte that was there
// stays. The YAML library says where each part ends.

import {
	isMap,
	isNode,
	isScalar,
	isSeq,
	type Node,
	parseDocument,
	stringify,
	type YAMLMap,
} from 'yaml';
import type { Abbreviations } from '../tuning/tuning.ts';
import type { DraftPart, ShowDraft } from './show-draft.ts';
import { partEntries } from './write-show-file.ts';

const PARTS: readonly DraftPart[] = ['players', 'instruments', 'songs', 'set'];

type Piece = { readonly at: number; readonly text: string };

/** The text with the draft's players, instruments, songs, set and these abbreviations behind its own; null where a part is written on one line. */
export function addToShowFile(
	given: string,
	draft: ShowDraft,
	abbreviations: Abbreviations = {},
): string | null {
	const ending = given.includes('\r\n') ? '\r\n' : '\n';
	const text = given === '' || given.endsWith('\n') ? given : `${given}${ending}`;
	const { contents } = parseDocument(text);
	if (!isMap(contents) || contents.flow === true) return null;
	const pieces: Piece[] = [];
	for (const part of PARTS) {
		const isNew = partEntries(draft, part, '') === '';
		if (isNew) continue;
		const pair = contents.items.find(({ key }) => isScalar(key) && key.value === part);
		if (!pair) {
			pieces.push({
				at: text.length,
				text: `\n${part}:\n${partEntries(draft, part, '  ').replace(/^\n/, '')}`,
			});
			continue;
		}
		const list = pair.value;
		if (!isSeq(list) || list.flow === true) return null;
		const last = list.items.at(-1) as Node | undefined;
		const first = list.items[0] as Node | undefined;
		if (!last?.range || !first?.range || !list.range) return null;
		const end = lineEnd(text, last.range[1]);
		pieces.push({ at: end, text: partEntries(draft, part, indentOf(text, list.range[0])) });
	}
	if (Object.keys(abbreviations).length > 0)
		pieces.push(abbreviationsAdded(text, contents, abbreviations));
	// From the end on, so that no place moves before its turn.
	return pieces
		.reverse()
		.toSorted((a, b) => b.at - a.at)
		.reduce((now, piece) => {
			const lines = piece.text.replaceAll('\n', ending);
			return now.slice(0, piece.at) + lines + now.slice(piece.at);
		}, text);
}

/** Behind the last one there is, on its line or on lines of their own as those stand. */
function abbreviationsAdded(text: string, contents: YAMLMap, abbreviations: Abbreviations): Piece {
	const lines = stringify(abbreviations, { lineWidth: 0 }).trimEnd().split('\n');
	const flow = { lineWidth: 0, collectionStyle: 'flow', flowCollectionPadding: false } as const;
	const onOneLine = stringify(abbreviations, flow).trim().slice(1, -1);
	const pair = contents.items.find(({ key }) => isScalar(key) && key.value === 'abbreviations');
	const map = pair?.value;
	const last = isMap(map) ? map.items.at(-1) : undefined;
	if (!isMap(map) || !map.range || !isNode(last?.value) || !last.value.range) {
		// Nothing stands there, or an empty map, which means as much.
		const [from, to] = isMap(map) && map.range ? map.range : [text.length, text.length];
		const indented = lines.map((line) => `  ${line}\n`).join('');
		if (from === to) return { at: text.length, text: `\nabbreviations:\n${indented}` };
		return { at: from + 1, text: onOneLine };
	}
	if (map.flow === true) return { at: last.value.range[1], text: `, ${onOneLine}` };
	const indent = indentOf(text, map.range[0]);
	return {
		at: lineEnd(text, last.value.range[1]),
		text: lines.map((line) => `${indent}${line}\n`).join(''),
	};
}

/** The spaces in front of the first dash. */
function indentOf(text: string, start: number): string {
	return ' '.repeat(start - (text.lastIndexOf('\n', start - 1) + 1));
}

/** Behind the line on which the value ends, a comment on it included. */
function lineEnd(text: string, end: number): number {
	// A value in a block ends behind its line already.
	if (text[end - 1] === '\n') return end;
	const next = text.indexOf('\n', end);
	return next === -1 ? text.length : next + 1;
}
