// Small shows by chance, as the text of a show file, in which players get into each other's way: few
// instruments for many wishes, tunings that differ, gaps that are short, spares and lists of what stands in.

/** From 0 up to but not 1, as often as it is asked. */
export type Chance = () => number;

export type Size = {
	readonly players: number;
	readonly songs: number;
	readonly instruments: number;
};

const TUNINGS = ['E standard', 'E standard', 'half-step down', 'drop D', 'DADGAD', 'open G'];
/** One sound is asked for more than others, so that what is in hands often does for the next song too. */
const SOUNDS = ['E standard', 'E standard', 'E standard', ...TUNINGS];
const LENGTHS = [60, 90, 120, 150, 180, 240, 300];
const GAPS = [0, 5, 9, 12, 20, 30, 45, 60, 60];

/** A size by chance that enumeration takes some milliseconds for. */
export function chanceSize(chance: Chance): Size {
	const players = 2 + below(chance, 2);
	return {
		players,
		songs: 3 + below(chance, players === 2 ? 4 : 3),
		instruments: 4 + below(chance, 4),
	};
}

/**
 * A show of this size, in the contract's format; it opens without problems. Players p1, p2 … share
 * electric guitars i1, i2 …; songs s1, s2 … are played in order, at times
 * the first again in place of the last.
 */
export function chanceShow(chance: Chance, size: Size): string {
	const players = names('p', size.players);
	const instruments = names('i', size.instruments);
	const songs = names('s', size.songs);
	const dice: Dice = {
		is: (share) => chance() < share,
		of: (list) => list[below(chance, list.length)]!,
		below: (limit) => below(chance, limit),
	};
	const lines = [
		'format: rackside/1',
		`show: {title: By chance, recheck-after: ${dice.of(['2m', '4m', '8m', '15m'])}, recheck-new: 1m}`,
		'players:',
		...players.map(
			(id) => `  - {id: ${id}, key: "${id.replace('p', 'xyz'[Number(id.slice(1)) - 1]!)[0]}"}`,
		),
		'instruments:',
		...instruments.map((id, i) => instrumentLine(dice, { id, slot: i + 1, players, instruments })),
		'songs:',
		...songs.flatMap((id, i) => songLines(dice, { id, isFirst: i === 0, players, instruments })),
		'set:',
		...setLines(dice, songs),
		'boards:',
		...players.map((id) => `  ${id}: [{id: drive}]`),
	];
	return `${lines.join('\n')}\n`;
}

type Dice = {
	readonly is: (share: number) => boolean;
	readonly of: <Item>(list: readonly Item[]) => Item;
	readonly below: (limit: number) => number;
};

function below(chance: Chance, limit: number): number {
	return Math.floor(chance() * limit);
}

function names(letter: string, count: number): readonly string[] {
	return Array.from({ length: count }, (_, i) => `${letter}${i + 1}`);
}

type Rack = { readonly players: readonly string[]; readonly instruments: readonly string[] };

function instrumentLine(dice: Dice, rack: Rack & { id: string; slot: number }): string {
	const { id, slot, players, instruments } = rack;
	const keys = [`id: ${id}`, `slot: "${slot}"`, 'kind: electric-6', `tuning: ${dice.of(TUNINGS)}`];
	if (dice.is(0.15)) keys.push('bridge: floating');
	if (dice.is(0.2)) keys.push('spare: true');
	if (dice.is(0.3)) keys.push('features: [arm]');
	if (dice.is(0.25)) keys.push(`for: [${dice.of(players)}]`);
	if (dice.is(0.2)) keys.push(`recheck-after: ${dice.of(['90s', '3m', '10m'])}`);
	const times = [`touch-up: ${dice.of([30, 45, 60])}s`, `hand-over: ${dice.of([8, 12, 20])}s`];
	if (dice.is(0.3)) keys.push(`times: {${dice.of(times)}}`);
	if (dice.is(0.4)) {
		const others = instruments.filter((one) => one !== id);
		const list = others.filter(() => dice.is(0.4)).map((one) => insteadItem(dice, one));
		keys.push(`instead: [${list.join(', ')}]`);
	}
	return `  - {${keys.join(', ')}}`;
}

function insteadItem(dice: Dice, id: string): string {
	if (dice.is(0.6)) return id;
	return `{instrument: ${id}, tuning: ${dice.of(TUNINGS)}, capo: ${dice.below(3)}}`;
}

function songLines(
	dice: Dice,
	{ id, isFirst, players, instruments }: Rack & { id: string; isFirst: boolean },
): readonly string[] {
	const length = dice.is(0.9) ? `, length: ${dice.of(LENGTHS)}s` : '';
	const ends = dice.is(0.15) ? ', ends: segue' : '';
	const hands = players.flatMap((player) => {
		const is = dice.below(100);
		if (is < (isFirst ? 5 : 20)) return [];
		if (is < (isFirst ? 10 : 27)) return [`${player}: none`];
		return [`${player}: ${is < 72 ? named(dice, instruments) : needs(dice, instruments)}`];
	});
	const cues: string[] = [];
	if (dice.is(0.25)) cues.push(`{at: Ch1, near: ${10 + dice.below(25)}s, p1: {drive: on}}`);
	if (dice.is(0.12)) {
		const near = dice.is(0.5) ? `, near: ${36 + dice.below(4)}s` : '';
		const hand = dice.is(0.6) ? named(dice, instruments) : needs(dice, instruments);
		cues.push(`{at: bridge${near}, hand: {${dice.of(players)}: ${hand}}}`);
	}
	return [
		`  - {id: ${id}${length}${ends}, hands: {${hands.join(', ')}}, cues: [${cues.join(', ')}]}`,
	];
}

function named(dice: Dice, instruments: readonly string[]): string {
	const keys = [`instrument: ${dice.of(instruments)}`];
	if (dice.is(0.4)) keys.push(`tuning: ${dice.of(TUNINGS)}`);
	if (dice.is(0.25)) keys.push(`capo: ${1 + dice.below(3)}`);
	return `{${keys.join(', ')}}`;
}

function needs(dice: Dice, instruments: readonly string[]): string {
	const keys = ['kind: electric-6', `sounds: ${dice.of(SOUNDS)}`];
	if (dice.is(0.15)) keys.push('features: [arm]');
	if (dice.is(0.6)) keys.push(`prefer: ${dice.of(instruments)}`);
	return `{needs: {${keys.join(', ')}}}`;
}

function setLines(dice: Dice, all: readonly string[]): readonly string[] {
	const songs = dice.is(0.15) ? all.with(-1, all[0]!) : all;
	const encore = dice.is(0.25) ? songs.length - 1 : songs.length;
	const interval = dice.is(0.25) ? 1 + dice.below(encore - 1) : -1;
	return songs.flatMap((id, i) => {
		const gap = i > 0 && dice.is(0.7) ? `{song: ${id}, gap: ${dice.of(GAPS)}s}` : id;
		if (i === encore) return [`  - encore: [${gap}]`];
		return [...(i === interval ? [`  - interval: ${dice.of([90, 240, 600])}s`] : []), `  - ${gap}`];
	});
}
