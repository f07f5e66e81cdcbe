// What can be tried with the hands to find a fault. Every test takes some suspects out of the sound path, or
// listens in front of some: it says whether the fault is among them. Nothing is opened, no earth is lifted.

import type { Suspect, SuspectKind } from './fault-suspects.ts';

export type FaultTest = {
	/** Such as `bypass-board`, `swap-lead`, `listen-drive`. */
	readonly id: string;
	readonly does: 'swap' | 'bypass' | 'straight' | 'listen';
	/** What it is done to: a part's id, a board's; the last part before the ear. */
	readonly at: string;
	/** Ids of suspects that are out of the way: sound with the test done means that one of them is at fault. */
	readonly clears: readonly string[];
	readonly seconds: number;
	/** Whether the player can go on with it done. */
	readonly restores: boolean;
};

/** Seconds to put another in its place: common practice, no source. */
const SWAP_SECONDS: Readonly<Record<SuspectKind, number>> = {
	instrument: 15,
	cord: 15,
	pack: 20,
	pedal: 60,
	loop: 60,
	splitter: 60,
	'direct-box': 40,
	preamp: 60,
	amp: 90,
	cab: 90,
	desk: 60,
};

/** Seconds to step one pedal out, to take a board out by one cord, to run one cord past everything, to listen at a point: common practice, no source. */
const BYPASS_PEDAL = 5;
const BYPASS_BOARD = 15;
const STRAIGHT = 20;
const LISTEN = 20;

/**
 * Every test of a path, given from the strings to the desk.
 *
 * @example
 * faultTests(suspectsOf(CORDS, { player: 'bo', instrument: 'B1', symptom: 'silent' })).map(({ id }) => id) // => ['swap-B1', 'swap-lead', 'swap-head', 'straight', 'listen-B1', 'listen-lead']
 */
export function faultTests(path: readonly Suspect[]): readonly FaultTest[] {
	const swaps = path.flatMap(({ id, kind, swapSeconds, along = [] }): readonly FaultTest[] => {
		const seconds = swapSeconds ?? SWAP_SECONDS[kind];
		const swap = { does: 'swap', at: id, seconds, restores: true } as const;
		const single = { ...swap, id: `swap-${id}`, clears: [id] };
		return along.length === 0
			? [single]
			: [single, { ...swap, id: `swap-${[id, ...along].join('+')}`, clears: [id, ...along] }];
	});
	return [...swaps, ...bypasses(path), ...straight(path), ...listening(path)];
}

function bypasses(path: readonly Suspect[]): readonly FaultTest[] {
	const pedals = path.filter(({ kind }) => kind === 'pedal' || kind === 'loop');
	const single = pedals.map(
		({ id }): FaultTest => ({
			...{ id: `bypass-${id}`, does: 'bypass', at: id, clears: [id] },
			...{ seconds: BYPASS_PEDAL, restores: true },
		}),
	);
	const boards = [...new Set(path.flatMap(({ board }) => board ?? []))];
	const whole = boards.map(
		(board): FaultTest => ({
			...{ id: `bypass-${board}`, does: 'bypass', at: board },
			clears: path.filter((one) => one.board === board).map(({ id }) => id),
			...{ seconds: BYPASS_BOARD, restores: true },
		}),
	);
	const known = new Set(single.map(({ id }) => id));
	return [...single, ...whole.filter(({ id }) => !known.has(id))];
}

/** One good cord from the instrument to the amplifier, or to whatever comes last: everything between is out of the way. */
function straight(path: readonly Suspect[]): readonly FaultTest[] {
	const amp = path.findIndex(({ kind }) => kind === 'amp');
	const end = amp < 0 ? path.length - 1 : amp;
	const clears = path.slice(1, end).map(({ id }) => id);
	const at = path[end]?.id;
	if (clears.length === 0 || at === undefined) return [];
	return [{ id: 'straight', does: 'straight', at, clears, seconds: STRAIGHT, restores: true }];
}

/** The sound is heard behind a part; there it is right when the fault comes later. */
function listening(path: readonly Suspect[]): readonly FaultTest[] {
	return path.slice(0, -1).map(
		({ id, testSeconds }, at): FaultTest => ({
			...{ id: `listen-${id}`, does: 'listen', at: id },
			clears: path.slice(at + 1).map((one) => one.id),
			...{ seconds: testSeconds ?? LISTEN, restores: false },
		}),
	);
}
