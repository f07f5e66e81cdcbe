// The rig as people read it: parts of the way of the sound, figures with their units.

import type { BatteryLeft } from '../rig/battery-hours.ts';
import type { TempoTime } from '../rig/tempo-times.ts';
import type { PartKind, RigPart } from '../showfile/rig.ts';
import type { PedalState, Show } from '../showfile/show.ts';
import { pedalName } from '../showfile/shown-names.ts';

/** What parts are called. */
export const PART_WORDS: Readonly<Record<PartKind, string>> = {
	cord: 'cord',
	pack: 'pack',
	board: 'board',
	loop: 'loop',
	splitter: 'splitter',
	'direct-box': 'direct box',
	preamp: 'preamp',
	amp: 'amp',
	cab: 'cabinet',
	desk: 'line to the desk',
};

/** Headings and labels of the page. */
export const RIG_PAGE = {
	path: 'PATH',
	loads: 'LOADS',
	supplies: 'SUPPLIES',
	batteries: 'BATTERIES',
	tone: 'TONE',
	tempo: 'TEMPO',
	patch: 'BY SONG',
	look: 'LOOK AT',
	loadColumns: ['amp', 'load', 'set to'],
	supplyColumns: ['output', 'drawn', 'gives', 'on it'],
	batteryColumns: ['battery', 'left'],
	toneColumns: ['instrument', 'player', 'corner'],
	tempoColumns: ['song', 'player', 'pedal', 'time'],
	patchColumns: ['song', 'player', 'at', 'board'],
	unknown: 'not said',
	noLoad: 'no cabinet',
	start: 'start',
	allOff: 'all off',
	nothing: 'This show says nothing of its rig. Add rigs, supplies, or power to its pedals.',
	instrumentFirst: 'instrument',
} as const;

/** `cord lead 6 m`, `amp head 30 W, 4 ohms`. */
export function partWords({ kind, name, metres, watts, tap, ohms }: RigPart): string {
	const figures = [
		...(metres === undefined ? [] : [`${figure(metres)} m`]),
		...(watts === undefined ? [] : [`${figure(watts)} W`]),
		...(tap === undefined ? [] : [`set to ${ohmWords(tap)}`]),
		...(ohms === undefined ? [] : [ohmWords(ohms)]),
	];
	return [`${PART_WORDS[kind]} ${name}`, ...(figures.length > 0 ? [figures.join(', ')] : [])].join(
		' ',
	);
}

/** `board (Drive, Delay)`. */
export function boardWords(pedals: readonly string[]): string {
	return `${PART_WORDS.board} (${pedals.join(', ')})`;
}

/** `2.7 ohms`. */
export function ohmWords(ohms: number): string {
	return `${figure(ohms)} ohms`;
}

/** `105 mA`; null is not said. */
export function milliampWords(milliamps: number | null): string {
	return milliamps === null ? RIG_PAGE.unknown : `${figure(milliamps)} mA`;
}

/** `2 h`, `2 h 50 min`, `40 min`; null is not said. */
export function hourWords(hours: number | null): string {
	if (hours === null) return RIG_PAGE.unknown;
	const minutes = Math.round(hours * 60);
	const whole = Math.floor(minutes / 60);
	const rest = minutes % 60;
	if (whole === 0) return `${rest} min`;
	return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`;
}

/** `low-pass 26.5 kHz`. */
export function cornerWords(kind: 'low-pass' | 'high-pass', hertz: number): string {
	return `${kind} ${hertz < 1000 ? `${figure(hertz)} Hz` : `${figure(hertz / 1000)} kHz`}`;
}

/** `dotted eighth 433 ms`. */
export function tempoWords({ value, milliseconds }: TempoTime): string {
	const note = value.replace(/-/g, ' ');
	return milliseconds === null ? `${note}, no tempo` : `${note} ${Math.round(milliseconds)} ms`;
}

/** `Drive, Delay wide`; times that hang on the tempo with their milliseconds. */
export function boardStateWords(
	show: Show,
	{
		player,
		states,
		tempo,
	}: {
		readonly player: string;
		readonly states: Readonly<Record<string, PedalState>>;
		readonly tempo: readonly TempoTime[];
	},
): string {
	const on = Object.entries(states).filter(([, { on: isOn }]) => isOn);
	if (on.length === 0) return RIG_PAGE.allOff;
	return on
		.map(([pedal, { settings = {} }]) =>
			[
				pedalName(show, player, pedal),
				...Object.entries(settings).map(([control, value]) => {
					const time = tempo.find(
						(one) => one.pedal === pedal && one.control === control && one.value === value,
					);
					return time === undefined ? value : tempoWords(time);
				}),
			].join(' '),
		)
		.join(', ');
}

/** What a battery is in. */
export function batteryOf(
	{ what, id }: Pick<BatteryLeft, 'what' | 'id'>,
	names: { readonly owner: string; readonly name: string },
): string {
	return what === 'pack'
		? `pack ${names.name}`
		: what === 'instrument'
			? names.name
			: `${names.owner} ${names.name || id}`;
}

/** At most one decimal. */
export function figure(value: number): string {
	return String(Math.round(value * 10) / 10);
}
