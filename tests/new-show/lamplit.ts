// An invented act asked for by questions: six on the rack, ten songs. Its keys are counted, what is typed of names and
// titles apart.

import { graphemes } from '../../src/base/display-width.ts';
import { type NewShow, press, startNewShow } from '../../src/new-show/new-show.ts';

export const BEGINNING = { today: '2026-11-30', title: 'Untitled show' } as const;

/** A text that only the act can know, or a key. */
export type Pressed = { readonly name: string } | string;

const name = (text: string): Pressed => ({ name: text });
const typed = (text: string): readonly Pressed[] => graphemes(text);

/** A name of what they play, then the enter that takes it. */
const named = (text: string): readonly Pressed[] => [name(text), 'enter'];
const song = (title: string, length: string): readonly Pressed[] => [
	...named(title),
	...typed(length),
	'enter',
];

/** The show, its players, its rack, its songs, their order; then who plays what, song by song. */
export const LAMPLIT = {
	show: [
		...named('Lamplit Ferries'),
		'enter',
		...typed('2030'),
		'enter',
		...typed('2245'),
		'enter',
	],
	players: [
		...[...named('Maren'), 'enter'],
		...[...named('Osk'), 'enter'],
		...[...named('Tilde'), '2'],
		'enter',
	],
	rack: [
		...[...named('Kestrel'), 'enter', 'enter', '1'],
		...[...named('Plover'), 'enter', ...typed('dd'), 'enter', '1'],
		...[...named('Sandpiper'), 'enter', ...typed('eb'), 'enter', '2'],
		...[...named('Curlew'), '3', 'enter', 'enter'],
		...[...named('Dunlin'), '7', 'enter'],
		...[...named('Knot'), 'enter', 'enter'],
		'enter',
	],
	songs: [
		...song('Harbour Lights', '3:40'),
		...song('Lantern', '4:05'),
		...song('Gravel Road', '3:10'),
		...song('Slow Ferry', '5:12'),
		...song('Reed Song', '2:58'),
		...song('Saltings', '3:33'),
		...song('The Weir', '4:20'),
		...song('Moth', '2:45'),
		...song('Long Water', '6:00'),
		...song('Ebb', '3:30'),
		'enter',
	],
	order: [...Array<Pressed>(9).fill('down'), 'h', 'enter'],
	hands: [
		'enter',
		...['2', 'enter'],
		...['1', 'enter'],
		...['4', '=', ...typed('c2'), 'enter', 'enter'],
		...['3', 'enter'],
		'enter',
		...['2', 'enter'],
		...['-', 'enter'],
		...['1', 'enter'],
		'enter',
	],
	write: ['enter'],
} as const satisfies Record<string, readonly Pressed[]>;

export type Part = keyof typeof LAMPLIT;

/** The keys of these parts, each press one. */
export function keysOf(...parts: readonly Part[]): readonly string[] {
	return parts.flatMap((part) =>
		LAMPLIT[part].flatMap((one: Pressed) =>
			typeof one === 'string'
				? [one]
				: graphemes(one.name).map((key) => (key === ' ' ? 'space' : key)),
		),
	);
}

/** How many presses are no letters of a name. */
export function pressesBesidesNames(...parts: readonly Part[]): number {
	return parts.flatMap((part) => LAMPLIT[part].filter((one: Pressed) => typeof one === 'string'))
		.length;
}

/** The state after these keys, from the first question on. */
export function pressed(
	keys: readonly string[],
	from: NewShow = startNewShow(BEGINNING, null),
): NewShow {
	return keys.reduce(press, from);
}

export const ALL: readonly Part[] = ['show', 'players', 'rack', 'songs', 'order', 'hands', 'write'];
