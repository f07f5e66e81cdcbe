// What a technician does at the keys, by chance: keys in order, and how long it takes until the next thing.

import type { Session } from '../../../src/session/session.ts';
import type { Chance } from '../../plan/independent/chance-show.ts';

export type Gesture = {
	/** What it is about; the same for all gestures of a kind. */
	readonly kind: string;
	readonly keys: readonly string[];
	/** Seconds before it. */
	readonly wait: number;
};

const WAITS = [1, 2, 4, 8, 15, 15, 30, 45, 60, 90, 150, 240];
const FRETS = ['0', '0', '1', '2', '3'];
const TUNINGS = ['E standard', 'drop D', 'DADGAD'];

type Made = (dice: Dice) => readonly string[];

type Dice = {
	readonly of: <Item>(list: readonly Item[]) => Item;
	readonly below: (limit: number) => number;
	readonly slot: () => string;
	readonly player: () => string;
	readonly song: () => readonly string[];
	/** From the stage to a row of the list. */
	readonly row: () => readonly string[];
};

const typed = (text: string): readonly string[] =>
	[...text].map((letter) => (letter === ' ' ? 'space' : letter));
const times = (count: number, key: string): readonly string[] =>
	Array.from({ length: count }, () => key);

/** Each kind of gesture, and how often it comes of a hundred and some. */
const KINDS: readonly (readonly [kind: string, weight: number, keys: Made])[] = [
	['space', 34, () => ['space']],
	['enter', 14, ({ of }) => of([['enter'], ['enter', 'enter']])],
	['slot', 4, ({ slot }) => ['enter', slot(), 'esc']],
	['done', 6, () => ['d']],
	['jump', 6, ({ song, of }) => ['j', ...song(), ...of([[], [], ['tab']]), 'enter']],
	['right', 4, () => ['right']],
	['left', 3, () => ['left']],
	[
		'exchange',
		7,
		({ slot, player, of }) =>
			of([
				['x', slot(), 'esc'],
				['x', player(), slot()],
			]),
	],
	['empty', 2, ({ player }) => ['x', player(), '-']],
	['break', 5, ({ slot, of }) => ['b', slot(), of(['enter', '0', 'esc', slot()])]],
	['answer', 2, ({ of, slot }) => ['b', of(['enter', '0', slot()])]],
	['out', 5, ({ slot, of }) => ['f', slot(), of(['enter', 'enter', 'b'])]],
	['back', 6, ({ slot }) => ['r', slot()]],
	['ready', 12, () => ['t', 'enter']],
	['ready-slot', 6, ({ slot }) => ['t', slot()]],
	['ready-all', 3, () => ['t', '0', 'esc']],
	['as-it-is', 3, ({ slot, of }) => ['c', slot(), ...typed(of([...FRETS, ...TUNINGS])), 'enter']],
	['doubt', 1, () => ['a', 'enter']],
	['undo', 6, ({ of }) => of([['u'], ['u'], ['u', 'u']])],
	['redo', 2, () => ['y']],
	['move', 3, ({ row, of }) => [...row(), 'g', of(['down', 'up']), 'enter', 'esc']],
	['drop', 2, ({ row }) => [...row(), 'k', 'enter', 'esc']],
	['insert', 2, ({ row, song }) => [...row(), 'p', ...song(), 'enter', 'esc']],
	[
		'tonight',
		3,
		({ row, player, slot, of }) => [
			...row(),
			'x',
			player(),
			of([slot(), slot(), slot(), '-', '0']),
			'enter',
			'esc',
		],
	],
	['page-back', 1, () => ['backspace']],
	['nothing', 4, () => ['esc']],
];
const WEIGHT = KINDS.reduce((sum, [, weight]) => sum + weight, 0);

/** What is done next in this night. */
export function chanceGesture(chance: Chance, { show, list }: Session): Gesture {
	const below = (limit: number): number => Math.floor(chance() * limit);
	const of = <Item>(all: readonly Item[]): Item => all[below(all.length)]!;
	const dice: Dice = {
		of,
		below,
		slot: () => of(show.instruments).slot!,
		player: () => of(show.players).key,
		song: () => typed(of(show.songs).id),
		row: () => {
			const row = below(list.length);
			return ['esc', 'tab', 'tab', ...times(list.length, 'up'), ...times(row, 'down')];
		},
	};
	let at = below(WEIGHT);
	for (const [kind, weight, keys] of KINDS) {
		at -= weight;
		if (at < 0) return { kind, keys: keys(dice), wait: of(WAITS) };
	}
	throw new Error('weights add up to less than their sum');
}
