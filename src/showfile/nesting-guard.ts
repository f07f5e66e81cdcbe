// How deep a YAML text nests and how long it runs, counted from its tokens on their way to the parser.
// The parser's second half recurses, and a text made to hurt exhausts its stack: this stops before.

/** A show nests eight deep; nothing sensible comes near this. */
export const DEEPEST_LEVEL = 32;

/** A tour's gear and songs need a tenth of it; reading takes time that grows with it. */
export const MOST_TOKENS = 250_000;

/** Why a text is not read on, and where that was noticed. */
export type Overgrowth = {
	readonly reason: 'too-deep' | 'too-many-values';
	readonly offset: number;
};

type Level = { readonly column: number; readonly kind: 'map' | 'list' };

/** Tokens of the lexer that stand for no characters of the text: document, flow error, scalar. */
const MARKS = new Set(['\u0002', '\u0018', '\u001f']);

/** Sees every token of a text in order. */
export class NestingGuard {
	#blocks: Level[] = [];
	#flow = 0;
	#offset = 0;
	#lineStart = 0;
	#count = 0;
	/** Column of the first thing on this line that may turn out to be a key. */
	#keyColumn: number | null = null;

	/** What is wrong once this token has come; null while nothing is. */
	see(token: string): Overgrowth | null {
		if (MARKS.has(token)) return null;
		this.#count += 1;
		this.#nest(token, this.#offset - this.#lineStart);
		const offset = this.#offset;
		const feed = token.lastIndexOf('\n');
		if (feed !== -1) {
			this.#lineStart = offset + feed + 1;
			this.#keyColumn = null;
		}
		this.#offset += token.length;
		if (this.#blocks.length + this.#flow > DEEPEST_LEVEL) return { reason: 'too-deep', offset };
		return this.#count > MOST_TOKENS ? { reason: 'too-many-values', offset } : null;
	}

	#nest(token: string, column: number): void {
		if (token === '[' || token === '{') {
			if (this.#flow === 0) this.#keyColumn ??= column;
			this.#flow += 1;
		} else if (token === ']' || token === '}') this.#flow = Math.max(0, this.#flow - 1);
		else if (this.#flow > 0) return;
		else if (token === '-' || token === '?' || token === ':') {
			const start = token === ':' ? (this.#keyColumn ?? column) : column;
			this.#open(start, token === '-' ? 'list' : 'map');
			this.#keyColumn = null;
		} else if (token.trim() !== '' && !token.startsWith('#')) this.#keyColumn ??= column;
	}

	/** A list may stand in the same column as the keys of the map that it belongs to; nothing else may share one. */
	#open(column: number, kind: Level['kind']): void {
		for (let top = this.#blocks.at(-1); top; top = this.#blocks.at(-1)) {
			const isBeside = top.column === column;
			if (top.column < column || (isBeside && top.kind === 'map' && kind === 'list')) break;
			if (isBeside && top.kind === kind) return;
			this.#blocks.pop();
		}
		this.#blocks.push({ column, kind });
	}
}
