// What the players of one section may have together: every combination that the model allows, and no other.

import type { Counts } from './cost.ts';
import type { Hold, Numbered } from './holds.ts';
import { type Cell, type Section, slotKey } from './live-state.ts';

export type Move = {
	readonly how: 'kept' | 'named' | 'substituted' | 'chosen' | 'missing' | 'none';
	readonly hold: Hold | null;
	/** What of `backup` it costs when a stint begins with it. */
	readonly backup: number;
	/** What of `preference` it costs. */
	readonly preference: number;
	/** It is `changed` against what people were told. */
	readonly isChanged: boolean;
	/** What was named for the slot, where it is to be played when it can be had. */
	readonly named: Hold | null;
	/** Instruments that would do: while one of them is free the slot is not missing. */
	readonly wouldDo: readonly number[];
};

/** One move a player, in the order of the players. */
export type Joint = readonly Move[];

/** What is in each player's hands, or was when the interval began. */
export type Hands = readonly (Hold | null)[];

/** Whether what a player has as a section comes is really in their hands: an interval has not put it on the rack. */
export function hasInHands({ state }: Numbered, index: number, player: number): boolean {
	if (index === 0) return state.players[player]!.holds !== null;
	return !state.sections[index]!.isAfterInterval;
}

/** Every allowed combination of moves in a section, for players who have these in hands. */
export function jointMoves(model: Numbered, index: number, hands: Hands): readonly Joint[] {
	const section = model.state.sections[index]!;
	const lists = model.state.players.map(({ id }, p) =>
		movesOf(model, {
			section,
			index,
			player: id,
			held: hands[p]!,
			isInHands: hasInHands(model, index, p),
		}),
	);
	const found: Joint[] = [];
	const chosen: Move[] = [];
	const taken = new Set<number>();
	const next = (): void => {
		const list = lists[chosen.length];
		if (list === undefined) {
			if (chosen.every((move) => isAllowed(move, chosen, taken))) found.push([...chosen]);
			return;
		}
		for (const move of list) {
			const instrument = move.hold?.instrument;
			if (instrument !== undefined && taken.has(instrument)) continue;
			if (instrument !== undefined) taken.add(instrument);
			chosen.push(move);
			next();
			chosen.pop();
			if (instrument !== undefined) taken.delete(instrument);
		}
	};
	next();
	return found;
}

/**
 * What is named is played unless another player keeps it or has it by name; a slot is missing only when all
 * that would do is in other hands.
 */
function isAllowed(move: Move, joint: Joint, taken: ReadonlySet<number>): boolean {
	const { named } = move;
	if (named !== null && move.how !== 'named') {
		const isOthers = joint.some(
			(other) =>
				other !== move &&
				(other.how === 'kept' || other.how === 'named') &&
				other.hold?.instrument === named.instrument,
		);
		if (!isOthers) return false;
	}
	return move.how !== 'missing' || move.wouldDo.every((instrument) => taken.has(instrument));
}

export type Asking = {
	readonly section: Section;
	readonly index: number;
	readonly player: string;
	readonly held: Hold | null;
	/** What is held was not put on the rack by an interval. */
	readonly isInHands: boolean;
};

type Bare = Pick<Move, 'how' | 'hold'> & Partial<Move>;

/** All that one player may do in a section, others left out of account. */
export function movesOf(model: Numbered, asking: Asking): readonly Move[] {
	const { section, player } = asking;
	const cell = section.cells[player] ?? { demand: { kind: 'keep' }, isAsAbove: true };
	const told = model.state.told[slotKey(section.key, player)];
	const toldHold = told ? model.holdOf(told) : null;
	return bareMoves(model, asking, cell).map((bare) => ({
		backup: 0,
		preference: 0,
		named: null,
		wouldDo: [],
		...bare,
		isChanged: told !== undefined && toldHold !== bare.hold,
	}));
}

function bareMoves(model: Numbered, asking: Asking, cell: Cell): readonly Bare[] {
	const { demand, isAsAbove, goesOn = false } = cell;
	const { index, player, held, isInHands } = asking;
	if (demand.kind === 'none') return [{ how: 'none', hold: null }];
	if (goesOn && isInHands && held !== null) return [{ how: 'kept', hold: held }];
	if (demand.kind === 'keep') {
		// An interval puts everything on the rack, and what cannot be had is not taken from it again.
		const isGone = !isInHands && held !== null && !model.canHave(held, index);
		return [{ how: held === null || isGone ? 'none' : 'kept', hold: isGone ? null : held }];
	}
	const asked = demand.kind === 'named' ? model.holdOf(demand) : null;
	const named = asked !== null && model.canHave(asked, index) ? asked : null;
	if (isAsAbove && held !== null && model.canHave(held, index)) {
		if (model.sounds(held, demand, player)) {
			const isBackup = asked !== null && asked.instrument !== held.instrument;
			const goesBack = !isInHands && isBackup && named !== null;
			if (!goesBack) return [{ how: 'kept', hold: held }];
			return [
				{ how: 'named', hold: named, named },
				{ how: 'kept', hold: held, named },
			];
		}
	}
	if (demand.kind === 'needs') {
		const { gear } = model.state;
		const holds = model.choices(demand, player).filter((hold) => model.canHave(hold, index));
		const chosen = holds.map((hold): Bare => {
			const { id, spare } = gear[hold.instrument]!.instrument;
			const isOther = demand.prefer !== null && demand.prefer !== id;
			const preference = (isOther ? 10 : 0) + (spare ? 5 : 0) + (hold.capo > 0 ? 1 : 0);
			return { how: 'chosen', hold, preference };
		});
		return [...chosen, { how: 'missing', hold: null, wouldDo: instrumentsOf(holds) }];
	}
	const usable = model
		.substitutes(demand, player)
		.filter(({ hold }) => hold !== named && model.canHave(hold, index));
	const substituted = usable.map(({ hold, place }): Bare => {
		const isSpare = model.state.gear[hold.instrument]!.instrument.spare;
		const rank = place === null ? (isSpare ? 0 : 5) : 10 * place;
		return { how: 'substituted', hold, named, backup: rank + (hold.capo > 0 ? 1 : 0) };
	});
	const wouldDo = instrumentsOf(usable.map(({ hold }) => hold));
	return [
		...(named === null ? [] : [{ how: 'named', hold: named, named } as const]),
		...substituted,
		{ how: 'missing', hold: null, named, wouldDo },
	];
}

function instrumentsOf(holds: readonly Hold[]): readonly number[] {
	return [...new Set(holds.map(({ instrument }) => instrument))];
}

/** The counts of a combination that need nothing but itself. */
export function countsOfSlots(joint: Joint): Counts {
	const count = (has: (move: Move) => boolean): number => joint.filter(has).length;
	return [
		count(({ how }) => how === 'missing'),
		count(({ how }) => how === 'substituted'),
		0,
		count(({ isChanged }) => isChanged),
		0,
		0,
		0,
		joint.reduce((sum, { preference }) => sum + preference, 0),
	];
}
