// How deep a YAML text nests, from its tokens alone. The parser proper recurses, and a text made to
// hurt exhausts its stack; this count uses no recursion and can stop at the first level too many.

import { Lexer } from 'yaml';

/** A show nests eight deep; nothing sensible comes near this. */
export const DEEPEST_LEVEL = 32;

/** A tour's gear and songs need a tenth of it; parsing and checking grow with it. */
export const MOST_TOKENS = 250_000;

/** Why a text is not parsed: too deep, or too many tokens; `offset` is where that was noticed. */
export type Overgrowth = {
	readonly reason: 'too-deep' | 'too-many-values';
	readonly offset: number;
};

type Level = { readonly column: number; readonly kind: 'map' | 'list' };

const SCALAR_MARK = '\u001f';
const DOCUMENT_MARK = '\u0002';
const FLOW_ERROR_MARK = '\u0018';

/** Where a text first nests deeper than `DEEPEST_LEVEL` or has more than `MOST_TOKENS`; null when it never does. */
export function findOvergrowth(text: string): Overgrowth | null {
	const blocks: Level[] = [];
	let flow = 0;
	let offset = 0;
	let lineStart = 0;
	let tokens = 0;
	/** Column of the first node on this line that may turn out to be a key. */
	let keyColumn: number | null = null;
	for (const token of new Lexer().lex(text)) {
		if (token === SCALAR_MARK || token === DOCUMENT_MARK || token === FLOW_ERROR_MARK) continue;
		tokens += 1;
		const column = offset - lineStart;
		if (token === '[' || token === '{') {
			if (flow === 0) keyColumn ??= column;
			flow += 1;
		} else if (token === ']' || token === '}') flow = Math.max(0, flow - 1);
		else if (flow === 0) {
			if (token === '-' || token === '?') open(blocks, column, token === '-' ? 'list' : 'map');
			else if (token === ':') open(blocks, keyColumn ?? column, 'map');
			else if (token.trim() !== '' && !token.startsWith('#')) keyColumn ??= column;
			if (token === '-' || token === '?' || token === ':') keyColumn = null;
		}
		if (blocks.length + flow > DEEPEST_LEVEL) return { reason: 'too-deep', offset };
		if (tokens > MOST_TOKENS) return { reason: 'too-many-values', offset };
		const feed = token.lastIndexOf('\n');
		if (feed !== -1) {
			lineStart = offset + feed + 1;
			keyColumn = null;
		}
		offset += token.length;
	}
	return null;
}

/** A list may stand in the same column as the keys of the map that it belongs to; nothing else may share one. */
function open(blocks: Level[], column: number, kind: Level['kind']): void {
	for (let top = blocks.at(-1); top; top = blocks.at(-1)) {
		const isInside =
			top.column < column || (top.column === column && top.kind === 'map' && kind === 'list');
		if (isInside) break;
		if (top.column === column && top.kind === kind) return;
		blocks.pop();
	}
	blocks.push({ column, kind });
}
