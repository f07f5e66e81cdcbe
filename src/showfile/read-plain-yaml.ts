// YAML as people write it in a show file: block maps and lists, and values that end on their line. It
// understands less than the YAML library and starts in a tenth of the time; whatever it does not know
// for certain, faults above all, it leaves to the library.

import { isInheritedName } from './inherited-name.ts';
import type { SourceEntry, SourceNode } from './source-node.ts';

/** In characters; a longer text is left to the library, which counts its words and signs. */
const LONGEST = 200_000;

/** A show nests eight deep. */
const DEEPEST = 16;

/** Tabs, and characters that some readers take for the end of a line or the mark of a byte order. */
const ODD = /[\t\r\u0085\u2028\u2029\ufeff]/;

/** A key in letters, digits and a few signs, with the spaces behind its colon. */
const KEY = /([A-Za-z0-9_][\w.-]{0,99}(?: +[\w.-]{1,99}){0,9}):(?: +|$)/y;
const PLAIN = /[^\s\-?:,[\]{}#&*!|>'"%@`](?:[^:#]|:(?! |$)|(?<! )#)*/y;
const PLAIN_IN_BRACKETS = /[^\s\-?:,[\]{}#&*!|>'"%@`](?:[^:#,[\]{}]|:(?![ ,[\]{}]|$)|(?<! )#)*/y;
const QUOTED = /"([^"\\]*)"|'([^']*)'(?!')/y;
const SPACES = / */y;
const LINE_END = /(?: +#.*| *)$/y;

class NotPlain extends Error {}

/** The tree that the YAML library would give without a complaint; null where it has to be asked. */
export function readPlainYaml(file: string, text: string): SourceNode | null {
	if (text.length > LONGEST || ODD.test(text)) return null;
	try {
		return new PlainReader(file, text).read();
	} catch (error) {
		if (error instanceof NotPlain) return null;
		throw error;
	}
}

/** A line that says something; its indentation is the index of its first character. */
type Line = { readonly number: number; readonly text: string; readonly indent: number };

class PlainReader {
	readonly #file: string;
	readonly #lines: readonly Line[];
	#next = 0;
	/** Where reading stands in its line. */
	#column = 0;
	#depth = 0;

	constructor(file: string, text: string) {
		this.#file = file;
		this.#lines = text
			.split('\n')
			.map((line, index): Line => ({ number: index + 1, text: line, indent: line.search(/[^ ]/) }))
			.filter((line) => line.indent !== -1 && line.text[line.indent] !== '#');
	}

	read(): SourceNode {
		const root = this.#map(0);
		// A line further in than its level goes on with the value before it, or is a fault: no level took it.
		if (this.#line) throw new NotPlain();
		return root;
	}

	get #line(): Line | undefined {
		return this.#lines[this.#next];
	}

	#isItem(line: Line): boolean {
		return line.text.startsWith('- ', line.indent);
	}

	#placeAt(column: number) {
		return { file: this.#file, line: this.#line?.number ?? 0, column: column + 1 };
	}

	/** What this pattern finds where reading stands, which then goes on behind it. */
	#take(pattern: RegExp): RegExpExecArray | null {
		pattern.lastIndex = this.#column;
		const match = pattern.exec(this.#line?.text ?? '');
		if (match) this.#column = pattern.lastIndex;
		return match;
	}

	/** Reads what lies one level deeper. */
	#inside<Node extends SourceNode>(read: () => Node): Node {
		this.#depth += 1;
		if (this.#depth > DEEPEST) throw new NotPlain();
		const node = read();
		this.#depth -= 1;
		return node;
	}

	/** The map whose first key stands in this column of the line, with its keys in the lines below. */
	#map(column: number): SourceNode {
		return this.#inside(() => {
			const place = this.#placeAt(column);
			const entries: SourceEntry[] = [];
			this.#column = column;
			do {
				const keyPlace = this.#placeAt(this.#column);
				const key = this.#key(entries);
				entries.push({ key, place: keyPlace, value: this.#valueUnder(column) });
				this.#column = column;
			} while (this.#line?.indent === column && !this.#isItem(this.#line));
			return { kind: 'map', place, entries };
		});
	}

	/** The list whose dashes stand in this column. */
	#list(column: number): SourceNode {
		return this.#inside(() => {
			const place = this.#placeAt(column);
			const items: SourceNode[] = [];
			do {
				this.#column = column + 1;
				this.#take(SPACES);
				const start = this.#column;
				const isMap = this.#take(KEY) !== null;
				this.#column = start;
				items.push(isMap ? this.#map(start) : this.#lastOnLine());
			} while (this.#line?.indent === column && this.#isItem(this.#line));
			return { kind: 'list', place, items };
		});
	}

	#key(before: readonly SourceEntry[]): string {
		const key = this.#take(KEY)?.[1];
		if (key === undefined || isInheritedName(key) || before.some((one) => one.key === key)) {
			throw new NotPlain();
		}
		return key;
	}

	/** What a key of a map in this column has: the rest of its line, or the lines below. */
	#valueUnder(column: number): SourceNode {
		const { text = '' } = this.#line ?? {};
		if (this.#column < text.length && text[this.#column] !== '#') return this.#lastOnLine();
		this.#next += 1;
		const line = this.#line;
		if (!line) throw new NotPlain();
		if (this.#isItem(line) && line.indent >= column) return this.#list(line.indent);
		if (line.indent > column) return this.#map(line.indent);
		throw new NotPlain();
	}

	/** A value behind which its line holds nothing more but a comment. */
	#lastOnLine(): SourceNode {
		const value = this.#value(PLAIN);
		if (!this.#take(LINE_END)) throw new NotPlain();
		this.#next += 1;
		return value;
	}

	#value(plain: RegExp): SourceNode {
		const place = this.#placeAt(this.#column);
		const first = this.#line?.text[this.#column];
		if (first === '[') return this.#inside(() => ({ kind: 'list', place, items: this.#items() }));
		if (first === '{')
			return this.#inside(() => ({ kind: 'map', place, entries: this.#entries() }));
		const quoted = this.#take(QUOTED);
		if (quoted) return { kind: 'text', place, text: quoted[1] ?? quoted[2] ?? '' };
		const text = this.#take(plain)?.[0].trimEnd();
		if (text === undefined) throw new NotPlain();
		// Spaces before a comment belong to its sign.
		this.#column = place.column - 1 + text.length;
		return { kind: 'text', place, text };
	}

	#items(): SourceNode[] {
		const items: SourceNode[] = [];
		this.#each(']', () => items.push(this.#value(PLAIN_IN_BRACKETS)));
		return items;
	}

	#entries(): SourceEntry[] {
		const entries: SourceEntry[] = [];
		this.#each('}', () => {
			const place = this.#placeAt(this.#column);
			const key = this.#key(entries);
			entries.push({ key, place, value: this.#value(PLAIN_IN_BRACKETS) });
		});
		return entries;
	}

	/** From an opening bracket to its own end, with commas between. */
	#each(end: string, read: () => void): void {
		for (let isFirst = true; ; isFirst = false) {
			this.#column += 1;
			this.#take(SPACES);
			if (isFirst && this.#line?.text[this.#column] === end) break;
			read();
			this.#take(SPACES);
			const sign = this.#line?.text[this.#column];
			if (sign === end) break;
			if (sign !== ',') throw new NotPlain();
		}
		this.#column += 1;
	}
}
