// Lines that say by name who has what, without a sign behind the name: `Kiln - Ilse Blonde 1 c2, Tobin Black 2`.

import { headingKey } from './columns.ts';
import { kindIn } from './guess-kind.ts';
import type { CellSaid } from './read-cell.ts';

type Read = (text: string) => CellSaid;

export type NamedPieces = {
	readonly title: string;
	/** By the name as it is written. */
	readonly cells: readonly (readonly [name: string, text: string])[];
	/** What stands among them and is nobody's. */
	readonly notes: readonly string[];
	/** The next song follows at once. */
	readonly isOpen: boolean;
};

const BRACKETS = /\(([^()]*)\)|\[([^[\]]*)\]/gu;
const DIVIDES = /\s*[,;|/]\s*/u;
const FOLLOWED = /^(.*\S)\s*(?:>>+|→|[-–=]+>)$/su;
const TAIL = /^.*?\S\s*(?:\s[-–—|]+\s|:\s)\s*(.*)$/su;
const NAME_AND_MORE = /^(\p{Lu}[\p{L}'’-]*):?\s+(\S.*)$/u;
/** Of everybody, and so of nobody. */
const OF_ALL = /^(?:all|everyone|everybody|both|rest|others)(?![\p{L}\d])/iu;

/**
 * The names by which lines speak of players nobody knows yet: two at the least stand in one line, each at the head
 * of a piece, come again in other lines, and have different instruments behind them. An instrument's first word has
 * the same behind it.
 */
export function namesSpokenOf(texts: readonly string[], read: Read): readonly string[] {
	const heads = texts.map((text) => {
		const tail = TAIL.exec(text)?.[1]?.replace(BRACKETS, ' ') ?? '';
		return tail.split(DIVIDES).flatMap((piece) => {
			const [, name = '', behind = ''] = NAME_AND_MORE.exec(piece.trim()) ?? [];
			return name === '' || kindIn(name) !== null || OF_ALL.test(name) ? [] : [{ name, behind }];
		});
	});
	const all = Map.groupBy(heads.flat(), ({ name }) => headingKey(name));
	const isTwice = (key: string) =>
		heads.some((line) => line.filter(({ name }) => headingKey(name) === key).length > 1);
	const instrumentsOf = (key: string) =>
		new Set(
			(all.get(key) ?? []).flatMap(({ behind }) => {
				const said = read(behind);
				return said.kind === 'has' && said.name !== null
					? [`${said.name} ${said.slot ?? ''}`.toLowerCase()]
					: [];
			}),
		).size;
	const often = [...all.keys()].filter((key) => (all.get(key)?.length ?? 0) > 1 && !isTwice(key));
	const sure = often.filter((key) => instrumentsOf(key) > 1);
	const isBeside = heads.some(
		(line) => line.filter(({ name }) => sure.includes(headingKey(name))).length > 1,
	);
	if (!isBeside) return [];
	return often
		.filter((key) => instrumentsOf(key) > 0)
		.flatMap((key) => all.get(key)?.[0]?.name ?? []);
}

/** The line taken apart at these names; null where it names none of them behind a title. */
export function piecesByName(
	text: string,
	names: readonly string[],
	read: Read,
): NamedPieces | null {
	if (names.length === 0) return null;
	const words = names.map((name) => name.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')).join('|');
	const start = new RegExp(
		`^(.*?\\S)\\s*(?:\\s[-–—|]+\\s|:\\s|\\s\\()\\s*(?=(?:${words})[\\s:])`,
		'isu',
	);
	const found = start.exec(text);
	if (!found) return null;
	const followed = FOLLOWED.exec(text.slice(found[0].length));
	const notes: string[] = [];
	const tail = (followed?.[1] ?? text.slice(found[0].length))
		.replace(BRACKETS, (bracket, round?: string, square?: string) => {
			if (square !== undefined || isShorthand(read(round ?? ''))) return bracket;
			notes.push((round ?? '').trim());
			return ' ';
		})
		.replace(/[()]/g, ' ');
	const named = new RegExp(`(?:^|(?<=[\\s,;|/]))(${words})(?::\\s*|\\s+)(?=\\S)`, 'giu');
	const at = [...tail.matchAll(named)];
	const said = at.map(({ 1: name = '' }) => headingKey(name));
	if (new Set(said).size < said.length) return null;
	const cells = at.map((one, index): readonly [string, string] => {
		const own = tail.slice(one.index + one[0].length, at[index + 1]?.index);
		const [first = '', ...others] = own.trim().split(DIVIDES);
		const more = others.filter((piece) => isShorthand(read(piece)) && !OF_ALL.test(piece));
		notes.push(...others.filter((piece) => piece !== '' && !more.includes(piece)));
		return [one[1] ?? '', [first.trim(), ...more].join(' ')];
	});
	return { title: found[1] ?? '', cells, notes, isOpen: followed !== null };
}

/** Whether it is a tuning or a capo and no more. */
function isShorthand(said: CellSaid): boolean {
	return (
		said.kind === 'has' &&
		(said.tuning !== null || said.capo !== null) &&
		(said.name ?? said.slot) === null
	);
}
