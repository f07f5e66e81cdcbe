// Show files larger than any example, made up by chance and the same every time: what grows with a tour.
// Each player has a main instrument, more of their own, and a few things that anybody may have.

import { type Chance, chance } from '../plan/oracle/chance.ts';

export type GrownShape = {
	readonly seed: number;
	readonly songs: number;
	readonly instruments: number;
	readonly players: number;
	/** Share of what a song asks of a player that leaves the instrument open. */
	readonly open: number;
};

/** What a song calls what is in whose hands; BENCH_HANDS for a build that reads another word. */
const HANDS = process.env.BENCH_HANDS ?? 'hands';
const NAMES = ['Ash', 'Bo', 'Cleo', 'Dee', 'Eli', 'Fay', 'Gus', 'Hal'];
/** No player's letter, so that each keeps the first of their name. */
const SLOTS = [...'123456789ijklmnopqrstuvwxyz'];
const GUITAR_TUNINGS = ['E standard', 'E standard', 'drop D', 'half-step down', 'DADGAD'];
const BASS_TUNINGS = ['E standard', 'E standard', 'drop D'];
/** An interval stands after so many songs. */
const SET_SONGS = 20;

type Owned = {
	readonly id: string;
	readonly kind: 'electric-6' | 'acoustic-6' | 'bass-4';
	readonly tuning: string;
	/** Null: anybody's who plays that kind. */
	readonly owner: string | null;
};

/** The whole file as YAML. */
export function grownShow(shape: GrownShape): string {
	const by = chance(shape.seed);
	const names = NAMES.slice(0, shape.players);
	const ids = names.map((name) => name.toLowerCase());
	const bassist = ids.at(-1);
	const instruments = rackBy(by, shape, ids);
	const mineOf = (player: string): readonly Owned[] =>
		instruments.filter(
			({ owner, kind }) =>
				owner === player || (owner === null && (kind === 'bass-4') === (player === bassist)),
		);
	const songs = Array.from({ length: shape.songs }, (_, index) => {
		const taken = new Set<string>();
		const hands = ids.map((player) => {
			const mine = mineOf(player);
			const part = by.is(shape.open) ? neededBy(by, mine) : namedBy(by, mine, taken);
			return `      ${player}: ${part}`;
		});
		const length = 150 + 15 * by.below(13);
		return [
			`  - id: song${index + 1}`,
			`    title: Song ${index + 1}`,
			`    length: "${Math.floor(length / 60)}:${String(length % 60).padStart(2, '0')}"`,
			`    ${HANDS}:`,
			...hands,
		].join('\n');
	});
	return [
		'format: rackside/1',
		`show: {title: Grown ${shape.seed}, start: "20:00"}`,
		'players:',
		...names.map((name, place) => {
			const plays = ids[place] === bassist ? 'bass' : 'guitar';
			return `  - {id: ${ids[place]}, name: ${name}, plays: ${plays}}`;
		}),
		'instruments:',
		...instruments.map(rackLine),
		'songs:',
		...songs,
		'set:',
		...songs.flatMap((_, index) => [
			...(index > 0 && index % SET_SONGS === 0 ? ['  - interval: 20m'] : []),
			// Room for everybody's hand-over.
			`  - {song: song${index + 1}, gap: ${15 * shape.players}s}`,
		]),
		'',
	].join('\n');
}

/** An eighth of the rack is anybody's; the rest goes round the players, whose first is the main one. */
function rackBy(by: Chance, { instruments }: GrownShape, players: readonly string[]): Owned[] {
	const shared = Math.floor(instruments / 8);
	const bassist = players.at(-1);
	return Array.from({ length: instruments }, (_, index): Owned => {
		const owner = index < instruments - shared ? players[index % players.length]! : null;
		const isBass = owner === null ? index % 4 === 0 : owner === bassist;
		const isMain = index < players.length;
		const kind = isBass ? 'bass-4' : !isMain && by.is(0.25) ? 'acoustic-6' : 'electric-6';
		const tuning = isMain ? 'E standard' : by.of(isBass ? BASS_TUNINGS : GUITAR_TUNINGS);
		return { id: `I${index + 1}`, kind, tuning, owner };
	});
}

function rackLine({ id, kind, tuning, owner }: Owned, index: number): string {
	const slot = SLOTS[index];
	return `  - {${[
		`id: ${id}`,
		...(slot === undefined ? [] : [`slot: "${slot}"`]),
		`kind: ${kind}`,
		...(owner === null ? [] : [`for: [${owner}]`]),
		`tuning: ${tuning}`,
	].join(', ')}}`;
}

/** Mostly the main one, which stays as it is tuned; nothing is named twice in a song. */
function namedBy(by: Chance, mine: readonly Owned[], taken: Set<string>): string {
	const main = mine[0]!;
	const free = mine.filter(({ id }) => !taken.has(id));
	const one = by.is(0.6) ? main : by.of(free);
	taken.add(one.id);
	const isMoved = one !== main && one.tuning === 'E standard' && by.is(0.3);
	return `{instrument: ${one.id}${isMoved ? ', tuning: drop D' : ''}}`;
}

/** Something that sounds as one of theirs does. */
function neededBy(by: Chance, mine: readonly Owned[]): string {
	const { kind, tuning } = by.of(mine);
	return `{needs: {kind: ${kind}, sounds: ${tuning}}}`;
}
