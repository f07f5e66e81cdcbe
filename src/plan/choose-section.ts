// Who plays what in one section, given what everybody holds as it comes. What is named is had where it
// can be; needs are met in the order of the file, one at a time: a first form, and not always the best.

import type { Show } from '../showfile/show.ts';
import { KINDS } from '../tuning/kind.ts';
import type { Standing, Wanted } from './candidates.ts';
import { firstChoice, whatGoesOn } from './candidates.ts';
import type { Demand } from './demand.ts';
import type { Hand } from './hand.ts';
import { whyAbsent, whyUnplayable } from './why-unplayable.ts';

export type SectionAsked = {
	readonly show: Show;
	readonly demands: ReadonlyMap<string, Demand>;
	/** In hands as the section comes; nothing after an interval. */
	readonly before: ReadonlyMap<string, Hand | null>;
	/** What was in hands before an interval: who keeps takes it again. */
	readonly heldBefore: ReadonlyMap<string, Hand>;
	/** It is on now: where nothing can be had, a player goes on with what is in their hands. */
	readonly isOn: boolean;
	/** Whose hands are left alone. */
	readonly settled: ReadonlySet<string>;
	readonly standings: ReadonlyMap<string, Omit<Standing, 'isComingBack'>>;
};

export type SectionChoice = {
	/** What the player is to play; null for nothing, or where nothing can be had. */
	readonly play: Hand | null;
	/** Why nothing can be had; null when something can, or nothing is asked for. */
	readonly why: string | null;
};

const NOTHING: SectionChoice = { play: null, why: null };

/**
 * What each player of the show is to play.
 *
 * @example
 * chooseSection(asked({ ash: lanternForAsh })).get('ash').play.instrument // => 'A4'
 */
export function chooseSection(asked: SectionAsked): ReadonlyMap<string, SectionChoice> {
	const choices = new Map<string, SectionChoice>();
	const taken = new Map<string, string>();
	const choose = (player: string, choice: SectionChoice): void => {
		choices.set(player, choice);
		if (choice.play !== null) taken.set(choice.play.instrument, player);
	};
	const players = asked.show.players.map(({ id }) => id);
	const open = players.filter((id) => !asked.settled.has(id));
	const openWith = <Kind extends Demand['kind']>(kind: Kind) =>
		open.flatMap((player) => {
			const demand = asked.demands.get(player);
			return demand?.kind === kind
				? [{ player, demand: demand as Extract<Demand, { kind: Kind }> }]
				: [];
		});

	for (const id of asked.settled) {
		const held = asked.before.get(id) ?? null;
		if (held !== null) taken.set(held.instrument, id);
	}
	for (const { player } of openWith('none')) choose(player, NOTHING);
	for (const { player } of openWith('keeps')) choose(player, kept(asked, player, taken));
	const named = openWith('named');
	const has = ({ player, demand }: (typeof named)[number]): boolean =>
		asked.before.get(player)?.instrument === demand.instrument.id;
	for (const { player, demand } of [...named.filter(has), ...named.filter((one) => !has(one))]) {
		choose(player, namedChoice(asked, demand, taken));
	}
	if (asked.isOn) keepWhatIsHeld(asked, choices, taken);
	const needs = openWith('needs');
	for (const { player, demand } of needs) {
		const play = goingOn(asked, { player, part: demand.part }, taken);
		if (play !== null) choose(player, { play, why: null });
	}
	for (const { player, demand } of needs) {
		if (choices.has(player)) continue;
		choose(player, neededChoice(asked, { player, part: demand.part }, taken));
	}
	// What settled players should have is worked out last, for saying so: their hands do not change.
	for (const player of asked.settled) choices.set(player, settledChoice(asked, player, taken));
	return choices;
}

type Taken = ReadonlyMap<string, string>;

/** What those hold for whom nothing can be had is not free for somebody else. */
function keepWhatIsHeld(
	{ before }: SectionAsked,
	choices: ReadonlyMap<string, SectionChoice>,
	taken: Map<string, string>,
): void {
	for (const [player, { why }] of choices) {
		const held = before.get(player) ?? null;
		if (why !== null && held !== null && !taken.has(held.instrument)) {
			taken.set(held.instrument, player);
		}
	}
}

function kept(asked: SectionAsked, player: string, taken: Taken): SectionChoice {
	const play = asked.before.get(player) ?? asked.heldBefore.get(player) ?? null;
	const standing = play && asked.standings.get(play.instrument);
	if (!play || !standing || taken.has(play.instrument)) return NOTHING;
	return whyAbsent(standing.instrument, standing.state) === null ? { play, why: null } : NOTHING;
}

function namedChoice(
	{ show, standings }: SectionAsked,
	{ instrument, tuning, capo }: Extract<Demand, { kind: 'named' }>,
	taken: Taken,
): SectionChoice {
	const standing = standings.get(instrument.id);
	if (standing === undefined) return { play: null, why: `${instrument.id} is not in this show` };
	const why = whyUnplayable({ instrument, state: standing.state, tuning });
	if (why !== null) return { play: null, why };
	const other = taken.get(instrument.id);
	if (other !== undefined) {
		const name = show.players.find(({ id }) => id === other)?.name ?? other;
		return { play: null, why: `${name} has ${instrument.id}` };
	}
	return { play: { instrument: instrument.id, tuning, capo }, why: null };
}

function goingOn(asked: SectionAsked, wanted: Wanted, taken: Taken): Hand | null {
	const held = asked.before.get(wanted.player) ?? null;
	const standing = held && asked.standings.get(held.instrument);
	if (!held || !standing || taken.has(held.instrument)) return null;
	return whatGoesOn(held, { ...standing, isComingBack: false }, wanted);
}

function neededChoice(asked: SectionAsked, wanted: Wanted, taken: Taken): SectionChoice {
	const inHands = new Set([...asked.before.values()].map((hand) => hand?.instrument));
	const standings = [...asked.standings.values()]
		.filter(({ instrument }) => !taken.has(instrument.id))
		.map((one): Standing => ({ ...one, isComingBack: inHands.has(one.instrument.id) }));
	const play = firstChoice(standings, wanted);
	if (play !== null) return { play, why: null };
	const { instrumentKind, sounds } = wanted.part;
	return { play: null, why: `no ${KINDS[instrumentKind].words} for ${sounds.name} is free` };
}

/** What a settled player should have; what they hold, where that does. */
function settledChoice(asked: SectionAsked, player: string, taken: Taken): SectionChoice {
	const demand = asked.demands.get(player) ?? { kind: 'keeps' };
	const held = asked.before.get(player) ?? null;
	const others = new Map([...taken].filter(([, holder]) => holder !== player));
	if (demand.kind === 'none') return NOTHING;
	if (demand.kind === 'keeps') return held === null ? NOTHING : { play: held, why: null };
	if (demand.kind === 'named') return namedChoice(asked, demand, others);
	const wanted = { player, part: demand.part };
	const play = goingOn(asked, wanted, others);
	return play === null ? neededChoice(asked, wanted, others) : { play, why: null };
}
