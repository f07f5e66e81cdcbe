// The rig as people read it: parts of the sound path, figures with their units.

import type { BatteryIn } from '../journal/entry.ts';
import {
	isSetAgain,
	quarterNotes,
	type TempoMove,
	type TempoTime,
	tempoMilliseconds,
} from '../rig/tempo-times.ts';
import type { ToneCorner } from '../rig/tone-corners.ts';
import type { Source, TwoSources } from '../rig/two-sources.ts';
import type { PartKind, RigPart } from '../showfile/rig.ts';
import type { Pedal, PedalState, PedalStates, Show } from '../showfile/show.ts';
import { packName, pedalName, playerName, shownInstrument } from '../showfile/shown-names.ts';

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
	phase: 'PHASE',
	tempo: 'TEMPO',
	patch: 'BY SONG',
	look: 'LOOK AT',
	loadColumns: ['amp', 'load', 'set to'],
	supplyColumns: ['output', 'drawn', 'gives', 'on it'],
	batteryColumns: ['battery', 'left'],
	toneColumns: ['instrument', 'player', 'corner', 'lost'],
	tempoColumns: ['song', 'player', 'pedal', 'time'],
	patchColumns: ['song', 'player', 'at', 'board'],
	unknown: 'not said',
	noLoad: 'no cabinet',
	start: 'start',
	order: 'order',
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
	return [partInWords({ kind, name }), ...(figures.length > 0 ? [figures.join(', ')] : [])].join(
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
	return `${kind} ${hertzWords(hertz)}`;
}

/** `0.6 dB at 10 kHz, 0.1 dB overall`, `12 dB at its lowest string`. */
export function lostWords({ kind, decibels, inputDecibels }: ToneCorner): string {
	const lost = (gain: number) => `${figure(Math.abs(gain))} dB`;
	const where = kind === 'low-pass' ? 'at 10 kHz' : 'at its lowest string';
	return [
		...(decibels === null ? [] : [`${lost(decibels)} ${where}`]),
		...(inputDecibels === null ? [] : [`${lost(inputDecibels)} overall`]),
	].join(', ');
}

/** `572 Hz`, `1.1 kHz`. */
export function hertzWords(hertz: number): string {
	return hertz < 1000 ? `${figure(hertz)} Hz` : `${figure(hertz / 1000)} kHz`;
}

/** `dotted eighth 433 ms`. */
export function noteWords({
	value,
	milliseconds,
}: Pick<TempoTime, 'value' | 'milliseconds'>): string {
	const time = milliseconds === null ? ', no tempo' : ` ${Math.round(milliseconds)} ms`;
	return `${spaced(value)}${time}`;
}

const spaced = (value: string): string => value.replace(/-/g, ' ');

/** A setting's value at a tempo in beats a minute: `dotted eighth 433 ms`; what does not hang on it as it is. */
export function settingWords(value: string, tempo: number | null): string {
	const milliseconds = tempo === null ? null : tempoMilliseconds(value, tempo);
	return milliseconds === null ? value : noteWords({ value, milliseconds });
}

/** A board from one state to another, and the tempo with it. */
export type BoardMove = {
	readonly was: PedalStates;
	readonly is: PedalStates;
	/** The pedals that do not switch. */
	readonly stuck: readonly string[];
	readonly tempo: TempoMove;
};

/** What a player has to do from one state of a board to the next: `Boost on`, `Delay to dotted eighth: 433 ms`. */
export function boardDifference(
	pedals: readonly Pedal[],
	{ was, is, stuck, tempo }: BoardMove,
): readonly string[] {
	return pedals.flatMap((pedal) => {
		const { id, name } = pedal;
		const [before, after] = [was[id], is[id]];
		if (after?.on !== true) return before?.on === true ? [`${name} off`] : [];
		const isOn = before?.on === true;
		const settings = Object.entries(after.settings ?? {}).filter(
			([control, value]) =>
				!isOn ||
				before.settings?.[control] !== value ||
				(!stuck.includes(id) && isSetAgain(pedal, value, tempo)),
		);
		const gone = isOn
			? Object.keys(before.settings ?? {}).filter((one) => after.settings?.[one] === undefined)
			: [];
		const to = settings.map(([control, value]) => settingChange(control, value, tempo.to));
		const parts = [...to, ...gone.map((control) => `${control} ${RIG_VIEW.asUsual}`)];
		if (parts.length === 0) return isOn ? [] : [`${name} on`];
		return [`${name}${isOn ? '' : ' on'} ${parts.join(', ')}`];
	});
}

function settingChange(control: string, value: string, tempo: number | null): string {
	const milliseconds = tempo === null ? null : tempoMilliseconds(value, tempo);
	if (milliseconds !== null) return `to ${spaced(value)}: ${Math.round(milliseconds)} ms`;
	// The name of a scene says what it is.
	return control === 'scene' ? `to ${value}` : `${control} to ${value}`;
}

/** `Chorus before Drive`; for none that pedals go back into their usual order. */
export function orderWords(pedals: readonly Pick<Pedal, 'name'>[]): string {
	return pedals.length === 0
		? 'pedals in their usual order'
		: pedals.map(({ name }) => name).join(' before ');
}

/** Headings and labels of the view, and how what is not to be trusted is marked. */
export const RIG_VIEW = {
	rig: 'RIG',
	now: 'now',
	next: 'next',
	change: 'change',
	noChange: 'nothing to change',
	asUsual: 'as usual',
	batteries: 'BATTERIES',
	wireless: 'WIRELESS',
	supplies: 'SUPPLIES',
	amps: 'AMPS',
	loads: 'LOOK AT',
	noInstrument: 'no instrument',
	spare: 'nobody',
	short: 'SHORT',
	doubts: {
		suspect: 'SUSPECT',
		stuck: 'STUCK',
		load: 'LOAD',
		power: 'POWER',
		battery: 'BATTERY',
	},
} as const;

/** `Brick a 35 mA of 100 mA`. */
export function suppliedWords(output: {
	readonly name: string;
	readonly used: string;
	readonly rated: string;
}): string {
	return `${output.name} ${output.used} of ${output.rated}`;
}

/** `Ash Left head 4 ohms, set to 16 ohms`; null is not said. */
export function drivenWords(amp: {
	readonly name: string;
	readonly load: string | null;
	readonly tap: string | null;
}): string {
	return `${amp.name} ${amp.load ?? RIG_PAGE.noLoad}, set to ${amp.tap ?? RIG_PAGE.unknown}`;
}

/** `P1 G1 Ash`; who wears it, or that nobody does. */
export function wirelessWords(pack: {
	readonly name: string;
	readonly channel: string | null;
	readonly wearers: readonly string[];
}): string {
	const { name, channel, wearers } = pack;
	return [
		name,
		...(channel === null ? [] : [channel]),
		wearers.length === 0 ? RIG_VIEW.spare : wearers.join(' and '),
	].join(' ');
}

/** `Drive, Delay wide`; times that hang on the tempo with their milliseconds, or that the song has none. */
export function boardStateWords(
	show: Show,
	{
		player,
		states,
		tempo,
	}: {
		readonly player: string;
		readonly states: Readonly<Record<string, PedalState>>;
		/** Beats a minute of the song. */
		readonly tempo: number | null;
	},
): string {
	const on = Object.entries(states).filter(([, { on: isOn }]) => isOn);
	if (on.length === 0) return RIG_PAGE.allOff;
	const valueWords = (value: string) =>
		tempo === null && quarterNotes(value) !== null
			? noteWords({ value, milliseconds: null })
			: settingWords(value, tempo);
	return on
		.map(([pedal, { settings = {} }]) =>
			[pedalName(show, player, pedal), ...Object.values(settings).map(valueWords)].join(' '),
		)
		.join(', ');
}

/** Two sources of one sound: how much later one comes, what that cancels, what to do about it. */
export function phaseWords(show: Show, two: TwoSources): string {
	const { player, instrument, sources, offset } = two;
	const whose =
		player === null ? shownInstrument(show, instrument ?? '') : playerName(show, player);
	const same = `${whose}: ${bothWords(sources)} carry the same sound`;
	if (offset === null) {
		return `${same}. Whether they add or cancel is not known from the file: flip the polarity of one at the desk and keep what sounds fuller.`;
	}
	const { milliseconds, later, isOpposed, cancelledHertz } = offset;
	const inverted = `${capital(sourceWords(sources[sources[0].isInverted ? 0 : 1].from))} has its polarity inverted`;
	if (cancelledHertz === null) {
		const polarity = isOpposed
			? `${inverted}: they cancel each other. Flip it at the desk to keep the lows.`
			: KEEP_POLARITY;
		return `${same} at the same time. ${polarity}`;
	}
	const tone = (hertz: number) => hertzWords(Math.round(hertz));
	const polarity = isOpposed
		? `${inverted}: they cancel the lows, and ${tone(cancelledHertz)}. Flip it at the desk to keep the lows; they then cancel ${tone(cancelledHertz / 2)} first.`
		: `They cancel ${tone(cancelledHertz)} first. ${KEEP_POLARITY}`;
	const [late, early] = [sources[later], sources[later === 0 ? 1 : 0]];
	const delay = delayWords(milliseconds);
	return `${same}, ${sourceWords(late.from)} ${delay} later. ${polarity} Delay ${sourceWords(early.from)} by ${delay} there to line them up.`;
}

const KEEP_POLARITY = 'Leave the polarity at the desk as it is: that keeps the lows.';

/** `piezo and microphone`. */
export function bothWords([one, other]: TwoSources['sources']): string {
	return `${sourceWords(one.from)} and ${sourceWords(other.from)}`;
}

/** `amp head`, `microphone`. */
export function sourceWords(from: Source['from']): string {
	if ('kind' in from) return partInWords(from);
	if (from.name !== undefined) return from.name;
	if (from.picofarads !== undefined) return 'piezo';
	return from.ohms === undefined ? 'microphone' : 'pickup';
}

/** `0.87 ms`, as desks set it. */
export function delayWords(milliseconds: number): string {
	return `${Number(milliseconds.toFixed(2))} ms`;
}

function capital(words: string): string {
	return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

/** A part with its kind: `amp head`; where its name repeats the kind, that once: `direct box` for one called box, `amp 2`, `Right amp`. */
export function partInWords({ kind, name }: Pick<RigPart, 'kind' | 'name'>): string {
	const words = PART_WORDS[kind];
	const last = words.split(' ').at(-1) ?? words;
	if (new RegExp(`\\w ${last}$`, 'i').test(name)) return name;
	const again = [words, last].find((one) => new RegExp(`^${one}\\b`, 'i').test(name));
	return again === undefined ? `${words} ${name}` : `${words}${name.slice(again.length)}`;
}

/** What a battery is in: `pack P1`, `4 Anchor`, `Bo Drive`. */
export function batteryOf(show: Show, { what, player, id }: BatteryIn): string {
	if (what === 'pack') return `pack ${packName(show, id)}`;
	if (what === 'instrument') return shownInstrument(show, id);
	const part =
		what === 'part' ? show.rigs?.[player ?? '']?.find((one) => one.id === id) : undefined;
	const name = part?.name ?? pedalName(show, player ?? '', id);
	return `${player === null ? '' : playerName(show, player)} ${name || id}`.trimStart();
}

/** At most one decimal. */
export function figure(value: number): string {
	return String(Math.round(value * 10) / 10);
}
