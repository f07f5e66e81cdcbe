// The YAML of one file as a tree of texts, lists and maps with their places. Strict: what a person
// does not write by hand, and what hurts a reader (aliases, tags, merge keys), is refused by name.

import {
	Composer,
	type CST,
	type Document,
	isAlias,
	isMap,
	isNode,
	isScalar,
	isSeq,
	Lexer,
	LineCounter,
	type Node,
	type Pair,
	Parser,
} from 'yaml';
import type { Place } from '../base/problem.ts';
import { isInheritedName } from './inherited-name.ts';
import { DEEPEST_LEVEL, MOST_TOKENS, NestingGuard, type Overgrowth } from './nesting-guard.ts';
import type { ShowFault, ShowFaultSaid } from './show-fault.ts';
import type { SourceEntry, SourceNode } from './source-node.ts';
import { syntaxProblem } from './syntax-problem.ts';

/** The tree of one file, empty texts included, or why there is none. Both when only keys were repeated. */
export type YamlReading = {
	readonly root: SourceNode | null;
	readonly problems: readonly ShowFault[];
};

const OPTIONS = {
	version: '1.2',
	schema: 'failsafe',
	uniqueKeys: false,
	stringKeys: true,
	prettyErrors: false,
	logLevel: 'error',
} as const;

/** More faults than these in one file follow from one another. */
const MOST_FAULTS = 3;

/**
 * One YAML 1.2 document, every scalar as the text that was written. Problems: bad syntax, depth over
 * 32, aliases, anchors, tags, merge keys, directives, several documents, keys that are no plain text,
 * that are given twice or that no object may have, and lone surrogates in escapes.
 */
export function readYaml(file: string, text: string): YamlReading {
	const lines = new LineCounter();
	const placeOf = (offset: number): Place => {
		const { line, col } = lines.linePos(offset);
		return { file, line: Math.max(1, line), column: Math.max(1, col) };
	};
	const { document, next, overgrowth } = compose(text, lines);
	if (overgrowth) {
		const problem = overgrowthProblem(overgrowth.reason, placeOf(overgrowth.offset));
		return { root: null, problems: [problem] };
	}
	const problems = [...syntaxProblems(document, placeOf)];
	if (next) problems.push(syntaxProblem('MULTIPLE_DOCS', '', placeOf(next.range[0])));
	if (problems.length > 0) return { root: null, problems };
	const tree = new TreeBuilder(placeOf);
	const root = tree.build(document.contents, 0);
	return { root: tree.isSpoilt ? null : root, problems: tree.problems };
}

type Composed = {
	readonly document: Document.Parsed;
	/** A second document, where there is one. */
	readonly next: Document.Parsed | null;
	readonly overgrowth: Overgrowth | null;
};

// The library's own way from text to document, with the guard between its two halves, so that the
// text is taken apart only once.
function compose(text: string, lines: LineCounter): Composed {
	const parser = new Parser(lines.addNewLine);
	const guard = new NestingGuard();
	const tokens: CST.Token[] = [];
	let overgrowth: Overgrowth | null = null;
	lines.addNewLine(0);
	for (const lexeme of new Lexer().lex(text)) {
		overgrowth = guard.see(lexeme);
		if (overgrowth) break;
		for (const token of parser.next(lexeme)) tokens.push(token);
	}
	if (!overgrowth) tokens.push(...parser.end());
	const [document, next] = new Composer(OPTIONS).compose(tokens, true, text.length);
	if (!document) throw new Error('the parser gave no document');
	return { document, next: next ?? null, overgrowth };
}

function syntaxProblems(
	document: Document.Parsed,
	placeOf: (offset: number) => Place,
): readonly ShowFault[] {
	const { explicit, version } = document.directives.yaml;
	if (explicit && version !== OPTIONS.version) {
		const where = placeOf(0);
		return [{ code: 'yaml-directive', version, where }];
	}
	const faults = [...document.errors, ...document.warnings]
		.sort((a, b) => a.pos[0] - b.pos[0])
		.map(({ code, message, pos }) => ({
			code,
			problem: syntaxProblem(code, message, placeOf(pos[0])),
		}));
	// An open quote or bracket swallows all that follows: what comes after it says nothing.
	const most = faults[0]?.code === 'MISSING_CHAR' ? 1 : MOST_FAULTS;
	return faults
		.filter(({ problem }, i) => problem.where?.line !== faults[i - 1]?.problem.where?.line)
		.slice(0, most)
		.map(({ problem }) => problem);
}

function overgrowthProblem(reason: 'too-deep' | 'too-many-values', where: Place): ShowFault {
	return { code: reason, most: reason === 'too-deep' ? DEEPEST_LEVEL : MOST_TOKENS, where };
}

/** Turns the library's nodes into ours, and refuses on the way what a show file may not hold. */
class TreeBuilder {
	readonly problems: ShowFault[] = [];
	/** Something was refused that leaves a hole in the tree. */
	isSpoilt = false;
	readonly #placeOf: (offset: number) => Place;

	constructor(placeOf: (offset: number) => Place) {
		this.#placeOf = placeOf;
	}

	build(node: unknown, offset: number): SourceNode {
		if (!isNode(node)) return { kind: 'empty', place: this.#placeOf(offset) };
		const place = this.#placeOf(node.range?.[0] ?? offset);
		this.#refuseExtras(node, place);
		if (isMap(node)) return this.#buildMap(node.items, place);
		if (isSeq(node)) {
			const items = node.items.map((item) => this.build(item, node.range?.[0] ?? offset));
			return { kind: 'list', place, items };
		}
		if (!isScalar(node) || typeof node.value !== 'string') return { kind: 'empty', place };
		if (!node.value.isWellFormed()) this.#refuse({ code: 'lone-surrogate' }, place);
		if (node.value === '' && node.type === 'PLAIN') return { kind: 'empty', place };
		return { kind: 'text', place, text: node.value };
	}

	#buildMap(pairs: readonly Pair[], place: Place): SourceNode {
		const entries: SourceEntry[] = [];
		const seen = new Map<string, Place>();
		for (const { key, value } of pairs) {
			const keyNode = isNode(key) ? key : null;
			const keyPlace = keyNode?.range ? this.#placeOf(keyNode.range[0]) : place;
			if (keyNode) this.#refuseExtras(keyNode, keyPlace);
			if (!isScalar(keyNode) || typeof keyNode.value !== 'string' || keyNode.value === '') {
				this.#refuse({ code: 'odd-key' }, keyPlace);
				continue;
			}
			const name = keyNode.value.normalize('NFC');
			const node = this.build(value, keyNode.range?.[1] ?? 0);
			if (name === '<<') this.#refuse({ code: 'merge-key' }, keyPlace);
			else if (isInheritedName(name) || !name.isWellFormed()) {
				this.#refuse({ code: 'forbidden-key', key: name }, keyPlace);
			} else if (seen.has(name)) {
				const firstLine = seen.get(name)?.line ?? null;
				this.problems.push({ code: 'repeated-key', key: name, firstLine, where: keyPlace });
			} else if (value === null) {
				seen.set(name, keyPlace);
				this.problems.push({ code: 'no-colon', key: name, where: keyPlace });
			} else {
				seen.set(name, keyPlace);
				entries.push({ key: name, place: keyPlace, value: node });
			}
		}
		return { kind: 'map', place, entries };
	}

	#refuseExtras(node: Node, place: Place): void {
		if (isAlias(node)) this.#refuse({ code: 'alias', found: `*${node.source}` }, place);
		else if (node.anchor) this.#refuse({ code: 'anchor', found: `&${node.anchor}` }, place);
		if (node.tag) {
			const found = node.tag.replace('tag:yaml.org,2002:', '!!');
			this.#refuse({ code: 'tag', found }, place);
		}
	}

	#refuse(refusal: ShowFaultSaid, where: Place): void {
		this.isSpoilt = true;
		this.problems.push({ ...refusal, where });
	}
}
