// A state with its instruments, tunings and ways of playing numbered, so that enumeration compares numbers.

import type { Demand, LiveState, Played } from './live-state.ts';
import { heard, isSame, type Pitches, pitchesOf, waysToSound } from './sounding.ts';

/** One instrument in one open tuning with one capo, all numbered. */
export type Hold = {
	readonly id: number;
	readonly instrument: number;
	readonly tuning: number;
	readonly capo: number;
	readonly played: Played;
};

/** A way of playing what another instrument was named for; `place` in its list, null where it has none. */
export type Substitute = { readonly hold: Hold; readonly place: number | null };

export type Numbered = {
	readonly state: LiveState;
	readonly holdOf: (played: Played) => Hold;
	readonly tuningOf: (open: Pitches) => number;
	readonly openOf: (tuning: number) => Pitches;
	readonly instrumentOf: (id: string) => number;
	/** Whether from this section on a stint might begin on the instrument in this tuning. */
	readonly canMatter: (section: number, instrument: number, tuning: number) => boolean;
	/** Whether it can be had for this section, in this tuning, as far as nobody else has it. */
	readonly canHave: (hold: Hold, section: number) => boolean;
	/** Every way of playing a `needs` slot, in the order of the file, whoever has the instruments. */
	readonly choices: (demand: Needs, player: string) => readonly Hold[];
	/** Every way of playing a named slot on something else, best first. */
	readonly substitutes: (demand: Named, player: string) => readonly Substitute[];
	/** Whether what is in hands sounds like the demand, its strings apart. */
	readonly sounds: (hold: Hold, demand: Demand, player: string) => boolean;
};

export type Named = Extract<Demand, { kind: 'named' }>;
export type Needs = Extract<Demand, { kind: 'needs' }>;

/** The state with numbers in place of names. */
export function numbered(state: LiveState): Numbered {
	const tunings = new Map<string, number>();
	const holds = new Map<string, Hold>();
	const instruments = new Map(state.gear.map(({ instrument }, i) => [instrument.id, i]));
	const opens: Pitches[] = [];
	const tuningOf = (open: Pitches): number =>
		known(tunings, open.join(' '), () => opens.push(open) - 1);
	const instrumentOf = (id: string): number => instruments.get(id)!;
	const holdOf = (played: Played): Hold => {
		const [instrument, tuning] = [instrumentOf(played.instrument), tuningOf(played.open)];
		const { open, capo } = played;
		return known(holds, `${instrument} ${tuning} ${capo}`, () => {
			const bare = { instrument: played.instrument, open, capo };
			return { id: holds.size, instrument, tuning, capo, played: bare };
		});
	};
	const waysOn = (id: string, sounds: Pitches): readonly Hold[] => {
		const { instrument, open } = state.gear[instrumentOf(id)]!;
		return waysToSound(instrument, open, sounds).map((way) => holdOf({ instrument: id, ...way }));
	};
	const mayHave = (player: string, to: readonly string[] | null): boolean =>
		to === null || to.includes(player);

	const choices = (demand: Needs, player: string): readonly Hold[] =>
		state.gear
			.filter(
				({ instrument }) =>
					instrument.kind === demand.instrumentKind &&
					mayHave(player, instrument.for) &&
					demand.features.every((feature) => instrument.features.includes(feature)),
			)
			.flatMap(({ instrument }) => waysOn(instrument.id, demand.sounds));

	const substitutes = (demand: Named, player: string): readonly Substitute[] => {
		const { instrument: named } = state.gear[instrumentOf(demand.instrument)]!;
		const sounds = heard(demand);
		if (named.instead === undefined) {
			return state.gear
				.filter(
					({ instrument }) => instrument.kind === named.kind && mayHave(player, instrument.for),
				)
				.flatMap(({ instrument }) => waysOn(instrument.id, sounds))
				.map((hold) => ({ hold, place: null }));
		}
		const listed = named.instead.flatMap(({ instrument, tuning, capo }, place) => {
			if (tuning === null) return waysOn(instrument, sounds).map((hold) => ({ hold, place }));
			return [{ hold: holdOf({ instrument, open: pitchesOf(tuning), capo }), place }];
		});
		return listed.filter(({ hold }, i) => listed.findIndex((one) => one.hold === hold) === i);
	};

	const sounds = (hold: Hold, demand: Demand, player: string): boolean => {
		if (demand.kind === 'needs') return choices(demand, player).some(({ id }) => id === hold.id);
		if (demand.kind !== 'named') return false;
		const { instrument: named } = state.gear[instrumentOf(demand.instrument)]!;
		const { instrument: has } = state.gear[hold.instrument]!;
		const listed = named.instead ?? [];
		const isKin = has.kind === named.kind || listed.some(({ instrument }) => instrument === has.id);
		if (isKin && isSame(heard(hold.played), heard(demand))) return true;
		return substitutes(demand, player).some(
			({ hold: listedHold, place }) => place !== null && listedHold.id === hold.id,
		);
	};

	const canHave = (hold: Hold, section: number): boolean => {
		const { instrument, canBeHad, open, stringsDown, restrungFor } = state.gear[hold.instrument]!;
		if (!canBeHad) return false;
		if (stringsDown > 0 && (restrungFor === null || section < restrungFor)) return false;
		return instrument.bridge === 'fixed' || isSame(open, hold.played.open);
	};

	const asked = { choices: remembered(choices), substitutes: remembered(substitutes) };
	const matters = tuningsToCome(state, asked, holdOf);
	return {
		state,
		holdOf,
		tuningOf,
		openOf: (tuning) => opens[tuning]!,
		canMatter: (section, instrument, tuning) =>
			matters[section]?.has(`${instrument} ${tuning}`) ?? false,
		instrumentOf,
		canHave,
		...asked,
		sounds,
	};
}

/** For each section, the instruments and tunings in which stints might begin there or later. */
function tuningsToCome(
	{ sections, players }: LiveState,
	{ choices, substitutes }: Pick<Numbered, 'choices' | 'substitutes'>,
	holdOf: Numbered['holdOf'],
): readonly ReadonlySet<string>[] {
	const sets: ReadonlySet<string>[] = [];
	let after: ReadonlySet<string> = new Set();
	for (const { cells } of [...sections].reverse()) {
		const here = new Set(after);
		for (const { id } of players) {
			const demand = cells[id]?.demand;
			const holds: Hold[] = [];
			if (demand?.kind === 'needs') holds.push(...choices(demand, id));
			if (demand?.kind === 'named') {
				holds.push(holdOf(demand), ...substitutes(demand, id).map(({ hold }) => hold));
			}
			for (const { instrument, tuning } of holds) here.add(`${instrument} ${tuning}`);
		}
		after = here;
		sets.unshift(here);
	}
	return sets;
}

function known<Value>(table: Map<string, Value>, key: string, make: () => Value): Value {
	const found = table.get(key);
	if (found !== undefined) return found;
	const made = make();
	table.set(key, made);
	return made;
}

/** The same function, asking once for each demand and player. */
function remembered<Asked extends object, Answer>(
	ask: (demand: Asked, player: string) => Answer,
): (demand: Asked, player: string) => Answer {
	const answers = new Map<Asked, Map<string, Answer>>();
	return (demand, player) => {
		const byPlayer = answers.get(demand) ?? new Map<string, Answer>();
		answers.set(demand, byPlayer);
		return known(byPlayer, player, () => ask(demand, player));
	};
}
