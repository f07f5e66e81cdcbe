// The choosing without the clock as a mixed-integer model for a general solver: flows of hands from line
// to line, one for each player, and the tuning of each instrument after each line. Shares nothing with
// the planner.

import type { Show } from '../../../src/showfile/show.ts';
import { sameHeld } from './judge.ts';
import type { Held, Line } from './lines.ts';
import { linesOf, partIn, sameStrings, semitones, whatWouldDo } from './lines.ts';

/** Each a sum of variables, in the solver's writing; what makes a choice better, weightiest first. */
export type ChoiceModel = {
	readonly criteria: Readonly<
		Record<'missing' | 'overGap' | 'handOvers' | 'retunings' | 'preference', string>
	>;
	readonly rows: readonly string[];
	readonly binaries: readonly string[];
};

/** What one player may have after a line: something, or nothing, before or after their first. */
type Node = {
	readonly name: string;
	readonly held: Held | null;
	readonly isFresh: boolean;
	readonly points: number;
	readonly isMissing: boolean;
};

/** The model of a show whose hand-overs all take the same seconds. */
export function choiceModel(show: Show): ChoiceModel {
	const lines = linesOf(show);
	const rows: string[] = ['nought = 0'];
	const binaries: string[] = [];
	const sums = { missing: [], overGap: [], handOvers: [], retunings: [], preference: [] } as Record<
		string,
		string[]
	>;
	const seconds = show.instruments[0]!.times.handOver;
	const beginning = lines.map((): string[] => []);
	const nodes = lines.map((): Node[][] => []);
	for (const [index, { id }] of show.players.entries()) {
		let before: readonly Node[] = [
			{ name: `s${index}`, held: null, isFresh: true, points: 0, isMissing: false },
		];
		rows.push(`s${index} = 1`);
		for (const [at, line] of lines.entries()) {
			const into = new Map<string, { node: Node; arcs: string[] }>();
			for (const from of before) {
				const out: string[] = [];
				for (const { to, begins, counts } of movesFrom(show, { line, id, from, at, index })) {
					const arc = `f${index}_${at}_${from.name}_${to.name}`;
					out.push(arc);
					const known = into.get(to.name) ?? { node: to, arcs: [] };
					known.arcs.push(arc);
					into.set(to.name, known);
					if (begins) beginning[at]!.push(arc);
					if (counts) sums.handOvers!.push(arc);
				}
				rows.push(`${out.join(' + ')} - ${from.name} = 0`);
			}
			before = [...into.values()].map(({ node }) => node);
			for (const { node, arcs } of into.values()) {
				rows.push(`${arcs.join(' + ')} - ${node.name} = 0`);
				binaries.push(node.name);
				if (node.isMissing) sums.missing!.push(node.name);
				if (node.points > 0) sums.preference!.push(`${node.points} ${node.name}`);
			}
			nodes[at]![index] = [...before];
		}
	}
	for (const [at, line] of lines.entries()) {
		rows.push(...sharing(show, line, nodes[at]!));
		if (line.gapSeconds === null || beginning[at]!.length === 0) continue;
		const room = Math.floor(line.gapSeconds / seconds);
		rows.push(`${beginning[at]!.join(' + ')} - o${at} <= ${room}`);
		sums.overGap!.push(`o${at}`);
	}
	for (const { id, tuning } of show.instruments) {
		const tuned = tunings(id, semitones(tuning.notes), nodes);
		rows.push(...tuned.rows);
		sums.retunings!.push(...tuned.changes);
	}
	const sum = (name: string): string => sums[name]!.join(' + ') || 'nought';
	return {
		criteria: {
			missing: sum('missing'),
			overGap: sum('overGap'),
			handOvers: sum('handOvers'),
			retunings: sum('retunings'),
			preference: sum('preference'),
		},
		rows,
		binaries,
	};
}

type MoveAsked = {
	readonly line: Line;
	readonly id: string;
	readonly from: Node;
	readonly at: number;
	readonly index: number;
};

type Move = { readonly to: Node; readonly begins: boolean; readonly counts: boolean };

function movesFrom(show: Show, { line, id, from, at, index }: MoveAsked): readonly Move[] {
	const part = partIn(line, id, from.held);
	const isFresh = line.isAfterInterval || from.isFresh;
	const nameOf = (held: Held | null, fresh: boolean): string =>
		held === null
			? `y${index}_${at}_${fresh ? 'F' : 'U'}`
			: `y${index}_${at}_${held.instrument}_${held.strings.join('_')}_${held.capo}`.replaceAll(
					'-',
					'm',
				);
	const to = (held: Held | null, more: Partial<Node> = {}): Node => {
		const fresh = held === null && isFresh;
		return {
			name: nameOf(held, fresh),
			held,
			isFresh: fresh,
			points: 0,
			isMissing: false,
			...more,
		};
	};
	const arriving = (node: Node): Move => {
		const begins =
			node.held !== null && (line.isAfterInterval || !goesOn(from.held, node.held, line));
		return { to: node, begins, counts: begins && !isFresh };
	};
	if (part === undefined) return [arriving(to(from.held))];
	if (part.kind === 'none') return [arriving(to(null))];
	const named = new Set(
		show.players.flatMap((other) => {
			const theirs = line.parts[other.id];
			const isTheirs = other.id !== id && theirs?.kind === 'named';
			return isTheirs && whatWouldDo(show, other.id, theirs).length > 0 ? [theirs.instrument] : [];
		}),
	);
	const ways = whatWouldDo(show, id, part).filter(
		({ held }) => part.kind === 'named' || !named.has(held.instrument),
	);
	return [
		...ways.map(({ held, points }) => arriving(to(held, { points }))),
		arriving(to(null, { isMissing: true })),
	];
}

function goesOn(before: Held | null, held: Held, { point, gapSeconds }: Line): boolean {
	if (before === null || before.instrument !== held.instrument) return false;
	const hasTime = point === 0 && (gapSeconds === null || gapSeconds >= 10);
	return sameHeld(before, held) || (sameStrings(before.strings, held.strings) && hasTime);
}

/** Nothing in two hands, and nobody left with nothing while something that would do is free. */
function sharing(show: Show, line: Line, nodes: readonly (readonly Node[])[]): readonly string[] {
	const rows: string[] = [];
	const holding = (instrument: string, may: (index: number) => boolean): readonly string[] =>
		nodes.flatMap((mine, index) =>
			may(index)
				? mine.filter(({ held }) => held?.instrument === instrument).map(({ name }) => name)
				: [],
		);
	for (const { id } of show.instruments) {
		const all = holding(id, () => true);
		if (all.length > 0) rows.push(`${all.join(' + ')} <= 1`);
	}
	for (const [index, mine] of nodes.entries()) {
		const part = line.parts[show.players[index]!.id];
		if (part === undefined || part.kind === 'none') continue;
		const candidates = new Set(
			whatWouldDo(show, show.players[index]!.id, part).map(({ held }) => held.instrument),
		);
		for (const { name } of mine.filter(({ isMissing }) => isMissing)) {
			for (const instrument of candidates) {
				const others = holding(instrument, (other) => {
					const theirs = line.parts[show.players[other]!.id];
					const mayKeep = line.handed?.includes(show.players[other]!.id) === false;
					const givesWay = part.kind === 'named' && theirs?.kind === 'needs' && !mayKeep;
					return other !== index && !givesWay;
				});
				rows.push(`${[name, ...others.map((one) => `- ${one}`)].join(' ')} <= 0`);
			}
		}
	}
	return rows;
}

/** Which tuning an instrument is in after each line, and a change wherever that is another than before. */
function tunings(
	instrument: string,
	now: readonly number[],
	nodes: readonly (readonly (readonly Node[])[])[],
): { readonly rows: readonly string[]; readonly changes: readonly string[] } {
	const known = new Map([[now.join('_'), 0]]);
	const inLine = nodes.map((all) =>
		all.flat().filter(({ held }) => held?.instrument === instrument),
	);
	for (const { held } of inLine.flat()) {
		const key = held!.strings.join('_');
		if (!known.has(key)) known.set(key, known.size);
	}
	if (known.size < 2) return { rows: [], changes: [] };
	const rows: string[] = [];
	const changes: string[] = [];
	for (const [at, mine] of inLine.entries()) {
		const variable = (tuning: number, line: number): string => `w${instrument}_${line}_${tuning}`;
		const change = `c${instrument}_${at}`;
		changes.push(change);
		rows.push(`${[...known.values()].map((one) => variable(one, at)).join(' + ')} = 1`);
		for (const [key, tuning] of known) {
			const before = at === 0 ? '' : ` - ${variable(tuning, at - 1)}`;
			const already = at === 0 && tuning === 0 ? 1 : 0;
			rows.push(`${variable(tuning, at)}${before} - ${change} <= ${already}`);
			const given = mine.filter(({ held }) => held!.strings.join('_') === key);
			if (given.length > 0) {
				rows.push(`${given.map(({ name }) => name).join(' + ')} - ${variable(tuning, at)} <= 0`);
			}
		}
	}
	return { rows, changes };
}
