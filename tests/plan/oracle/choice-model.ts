// The choosing without the clock as a mixed-integer model for a general solver: flows of hands from section
// to section, one for each player, and the tuning of each instrument after each section. What each player may
// do is asked of the enumeration's rules; it shares nothing with the planner.

import type { Show } from '../../../src/showfile/show.ts';
import { stateBeforeDoors } from '../independent/before-doors.ts';
import { type Hold, type Numbered, numbered } from '../independent/holds.ts';
import { type Move, movesOf } from '../independent/moves.ts';
import { goesOn, roomBefore } from '../independent/stints.ts';

export const COUNTED = [
	'missing',
	'substituted',
	'overGap',
	'backup',
	'handOvers',
	'retunings',
	'preference',
] as const;
export type Counted = (typeof COUNTED)[number];

/** Each a sum of variables, in the solver's writing; what makes a choice better, weightiest first. */
export type ChoiceModel = {
	readonly criteria: Readonly<Record<Counted, string>>;
	readonly rows: readonly string[];
	readonly binaries: readonly string[];
};

/** What one player may have after a section: something, or nothing, before or after their first. */
type Node = { readonly name: string; readonly hold: Hold | null; readonly isFirst: boolean };

/** One thing that a player may do from one node. */
type Arc = { readonly name: string; readonly move: Move; readonly to: Node };

/** The model of a show whose hand-overs all take the same seconds. */
export function choiceModel(show: Show): ChoiceModel {
	const model = numbered(stateBeforeDoors(show));
	const { sections, players, gear } = model.state;
	const seconds = gear[0]!.instrument.times.handOver;
	const sums = new Map(COUNTED.map((name) => [name, [] as string[]]));
	const rows: string[] = ['nought = 0'];
	const binaries: string[] = [];
	const beginning = sections.map((): string[] => []);
	const arcs = sections.map((): Arc[][] => players.map(() => []));
	for (const p of players.keys()) {
		let before: readonly Node[] = [{ name: `s${p}`, hold: null, isFirst: true }];
		rows.push(`s${p} = 1`);
		for (const at of sections.keys()) {
			const into = new Map<string, { node: Node; arcs: string[] }>();
			for (const from of before) {
				const steps = stepsFrom(model, { at, p, from });
				rows.push(`${sumOf(steps.map(({ arc }) => arc.name))} - ${from.name} = 0`);
				for (const { arc, begins } of steps) {
					const known = into.get(arc.to.name) ?? { node: arc.to, arcs: [] };
					known.arcs.push(arc.name);
					into.set(arc.to.name, known);
					arcs[at]![p]!.push(arc);
					if (begins) beginning[at]!.push(arc.name);
					for (const [name, count] of countsOf(arc, from, { begins, isNew: isNew(model, at) })) {
						if (count > 0) sums.get(name)!.push(`${count} ${arc.name}`);
					}
				}
			}
			before = [...into.values()].map(({ node }) => node);
			for (const { node, arcs: coming } of into.values()) {
				rows.push(`${sumOf(coming)} - ${node.name} = 0`);
				// Where every node is one or none, so is every arc: no two lead from the same to the same.
				binaries.push(node.name);
			}
		}
	}
	for (const [at, section] of sections.entries()) {
		rows.push(...sharing(arcs[at]!));
		if (section.gap === null || section.isCue || beginning[at]!.length === 0) continue;
		rows.push(`${sumOf(beginning[at]!)} - o${at} <= ${Math.floor(section.gap / seconds)}`);
		sums.get('overGap')!.push(`o${at}`);
	}
	for (const instrument of gear.keys()) {
		const tuned = tunings(model, instrument, arcs);
		rows.push(...tuned.rows);
		sums.get('retunings')!.push(...tuned.changes);
	}
	const criteria = Object.fromEntries(
		[...sums].map(([name, all]) => [name, all.length === 0 ? 'nought' : sumOf(all)]),
	);
	return { criteria: criteria as ChoiceModel['criteria'], rows, binaries };
}

function sumOf(terms: readonly string[]): string {
	return terms.join(' + ');
}

/** Every stint is the first there: after an interval. */
function isNew({ state }: Numbered, at: number): boolean {
	return state.sections[at]!.isAfterInterval;
}

type From = { readonly at: number; readonly p: number; readonly from: Node };

function stepsFrom(model: Numbered, { at, p, from }: From) {
	const section = model.state.sections[at]!;
	const player = model.state.players[p]!.id;
	const held = section.isAfterInterval ? null : from.hold;
	const isFirst = section.isAfterInterval || from.isFirst;
	const asking = { section, index: at, player, held: from.hold, isInHands: held !== null };
	return movesOf(model, asking).map((move, place) => {
		const { hold } = move;
		const begins = hold !== null && !goesOn(held, hold, roomBefore(section));
		const fresh = hold === null && isFirst;
		const name = `y${p}_${at}_${hold === null ? (fresh ? 'F' : 'U') : hold.id}`;
		const to: Node = { name, hold, isFirst: fresh };
		return { arc: { name: `f${p}_${at}_${from.name}_${place}`, move, to }, begins };
	});
}

type Beginning = { readonly begins: boolean; readonly isNew: boolean };

function countsOf({ move }: Arc, from: Node, { begins, isNew: isAfterInterval }: Beginning) {
	const isCounted = begins && !from.isFirst && !isAfterInterval;
	return [
		['missing', move.how === 'missing' ? 1 : 0],
		['substituted', move.how === 'substituted' ? 1 : 0],
		['backup', begins ? move.backup : 0],
		['handOvers', isCounted ? 1 : 0],
		['preference', move.preference],
	] as const;
}

/** Nothing in two hands; what is named is played unless somebody has it who keeps it or is named it too; nobody without what is free. */
function sharing(arcs: readonly (readonly Arc[])[]): readonly string[] {
	const holding = (instrument: number, is: (p: number, move: Move) => boolean): string[] =>
		arcs.flatMap((mine, p) =>
			mine
				.filter(({ move }) => move.hold?.instrument === instrument && is(p, move))
				.map(({ name }) => name),
		);
	const instruments = new Set(
		arcs.flat().flatMap(({ move: { hold } }) => (hold === null ? [] : [hold.instrument])),
	);
	const rows = [...instruments].map(
		(instrument) => `${sumOf(holding(instrument, () => true))} <= 1`,
	);
	for (const [p, mine] of arcs.entries()) {
		const isFirm = (other: number, { how }: Move): boolean =>
			other !== p && (how === 'kept' || how === 'named');
		const without = Map.groupBy(
			mine.filter(({ move: { named, how } }) => named !== null && how !== 'named'),
			({ move: { named } }) => named!.instrument,
		);
		for (const [instrument, those] of without) {
			rows.push(atMost(those, holding(instrument, isFirm)));
		}
		const missing = mine.filter(({ move: { how } }) => how === 'missing');
		for (const instrument of new Set(missing.flatMap(({ move: { wouldDo } }) => wouldDo))) {
			const those = missing.filter(({ move: { wouldDo } }) => wouldDo.includes(instrument));
			rows.push(
				atMost(
					those,
					holding(instrument, (other) => other !== p),
				),
			);
		}
	}
	return rows;
}

/** These only where one of those is. */
function atMost(these: readonly Arc[], those: readonly string[]): string {
	return `${[sumOf(these.map(({ name }) => name)), ...those].join(' - ')} <= 0`;
}

/** Which tuning an instrument is in after each section, and a change wherever that is another than before. */
function tunings(
	model: Numbered,
	instrument: number,
	arcs: readonly (readonly (readonly Arc[])[])[],
): { readonly rows: readonly string[]; readonly changes: readonly string[] } {
	const now = model.tuningOf(model.state.gear[instrument]!.open);
	const inSection = arcs.map((all) =>
		all.flat().filter(({ move: { hold } }) => hold?.instrument === instrument),
	);
	const known = new Set([now, ...inSection.flat().map(({ move }) => move.hold!.tuning)]);
	if (known.size < 2) return { rows: [], changes: [] };
	const rows: string[] = [];
	const changes: string[] = [];
	for (const [at, mine] of inSection.entries()) {
		const variable = (tuning: number, section: number): string =>
			`w${instrument}_${section}_${tuning}`;
		const change = `c${instrument}_${at}`;
		changes.push(change);
		rows.push(`${sumOf([...known].map((tuning) => variable(tuning, at)))} = 1`);
		for (const tuning of known) {
			const before = at === 0 ? '' : ` - ${variable(tuning, at - 1)}`;
			const already = at === 0 && tuning === now ? 1 : 0;
			rows.push(`${variable(tuning, at)}${before} - ${change} <= ${already}`);
			const given = mine.filter(({ move }) => move.hold!.tuning === tuning);
			if (given.length > 0) {
				rows.push(`${sumOf(given.map(({ name }) => name))} - ${variable(tuning, at)} <= 0`);
			}
		}
	}
	return { rows, changes };
}
