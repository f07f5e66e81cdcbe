// A technician's own times for pieces of work. They stand in for what is built in and for nothing else:
// whatever a show file says comes first. A show takes them up when it is read and carries them with it.

import { parseSeconds } from '../base/duration.ts';
import { INSTRUMENT_KINDS, type InstrumentKind, KINDS } from '../tuning/kind.ts';
import { retuneSeconds } from '../tuning/retune.ts';
import type { Instrument, OwnTimes, Show, Times, WorkTimes } from './show.ts';
import { type GivenTimes, type TimeKey, USUAL_SECONDS, workTimesOf } from './work-times.ts';

/** As a time is kept, and typed on the command line. */
export type OwnTimeName =
	| 'hand-over'
	| 'walk'
	| 'capo'
	| 'wipe'
	| `touch-up.${InstrumentKind}`
	| 'one-string-more'
	| 'two-strings-more'
	| 'all-strings-more'
	| 'other-tuning-more'
	| 'restring'
	| 'restring-floating'
	| 'further-string';

/** A piece of work whose time a technician can have their own way. */
export type OwnTime = {
	readonly name: OwnTimeName;
	/** The built-in seconds; null: as many as the touch-up. */
	readonly usual: number | null;
	/** The key of a show file's `times` that comes first. */
	readonly key: TimeKey;
	/** Comes on top of the touch-up, where the file's is the whole of it. */
	readonly isAdded: boolean;
	readonly concerns: (instrument: Pick<Instrument, 'kind' | 'bridge'>) => boolean;
};

const whole = (name: OwnTimeName & TimeKey, usual: number): OwnTime => ({
	...{ name, key: name, usual },
	isAdded: false,
	concerns: () => true,
});

type Retuning = 'one-string' | 'two-strings' | 'all-strings' | 'other-tuning';

const onTop = (key: Retuning, usual: number | null): OwnTime => ({
	...({ name: `${key}-more`, key, usual } as const),
	isAdded: true,
	concerns: () => true,
});

/** All of them, those that most songs need first. */
export const OWN_TIMES: readonly OwnTime[] = [
	whole('hand-over', USUAL_SECONDS.handOver),
	whole('walk', USUAL_SECONDS.walk),
	whole('capo', USUAL_SECONDS.capo),
	whole('wipe', USUAL_SECONDS.wipe),
	...INSTRUMENT_KINDS.map(
		(kind): OwnTime => ({
			name: `touch-up.${kind}`,
			key: 'touch-up',
			usual: KINDS[kind].touchUpSeconds,
			isAdded: false,
			concerns: (one) => one.kind === kind,
		}),
	),
	onTop('one-string', retuneSeconds('one-string', 0)),
	onTop('two-strings', retuneSeconds('two-strings', 0)),
	onTop('all-strings', null),
	onTop('other-tuning', retuneSeconds('other', 0)),
	{
		...whole('restring', USUAL_SECONDS.restring),
		concerns: ({ bridge }) => bridge === 'fixed',
	},
	{
		...whole('restring', USUAL_SECONDS.restringFloating),
		name: 'restring-floating',
		concerns: ({ bridge }) => bridge === 'floating',
	},
	whole('further-string', USUAL_SECONDS.furtherString),
];

/** Seconds as a show file writes them; null for what is no time in whole seconds. */
export function readOwnTime(text: string): number | null {
	const seconds = parseSeconds(text);
	return seconds !== null && Number.isInteger(seconds) ? seconds : null;
}

/** Why a kept time is as built in; `kept`: what stands there, left out where the name is none. */
export type UnusableTime = { readonly name: string; readonly kept?: unknown };

/** Those of the kept times that can be used, and those that cannot: they are as built in. */
export function usableTimes(kept: Readonly<Record<string, unknown>>): {
	readonly times: OwnTimes;
	readonly problems: readonly UnusableTime[];
} {
	const read = OWN_TIMES.filter(({ name }) => Object.hasOwn(kept, name)).map((one) => ({
		...one,
		seconds: readOwnTime(String(kept[one.name])),
	}));
	const unknown = Object.keys(kept).filter((name) => !OWN_TIMES.some((one) => one.name === name));
	return {
		times: Object.fromEntries(
			read.flatMap(({ name, seconds }) => (seconds === null ? [] : [[name, seconds]])),
		),
		problems: [
			...read
				.filter(({ seconds }) => seconds === null)
				.map(({ name }) => ({ name, kept: kept[name] })),
			...unknown.map((name) => ({ name })),
		],
	};
}

/** The same with one of them set, or with null taken back. */
export function ownTimesWith(own: OwnTimes, name: string, seconds: number | null): OwnTimes {
	const { [name]: _, ...others } = own;
	return usableTimes(seconds === null ? others : { ...others, [name]: seconds }).times;
}

/** The show with these times in place of the built-in ones, and of those that it was read with. */
export function withOwnTimes(show: Show, own: OwnTimes): Show {
	const { ownTimes = {}, ...others } = show;
	if (isSame(ownTimes, own)) return show;
	const instruments = show.instruments.map((one) => {
		// Before instruments carried what the file gives them, only a difference tells that it gives some.
		const isFileTimed =
			one.givenTimes === undefined && !isSame(one.times, timesOf(one, show.times, ownTimes));
		return isFileTimed ? one : { ...one, times: timesOf(one, show.times, own) };
	});
	return {
		...others,
		instruments,
		...(Object.keys(own).length === 0 ? {} : { ownTimes: own }),
	};
}

/** What the show file says of this time for each instrument that it concerns; null where it says nothing. */
export function fileSeconds(show: Show, time: OwnTime): readonly (number | null)[] {
	return show.instruments
		.filter(time.concerns)
		.map(
			(one) =>
				fileLayers(one, show.times).find((layer) => layer[time.key] !== undefined)?.[time.key] ??
				null,
		);
}

function fileLayers({ givenTimes, kind }: Instrument, times: Times): readonly GivenTimes[] {
	return [givenTimes, times[kind], times.all].filter((layer) => layer !== undefined);
}

function timesOf(instrument: Instrument, times: Times, own: OwnTimes): WorkTimes {
	const { kind, bridge } = instrument;
	const mine = OWN_TIMES.filter((one) => own[one.name] !== undefined && one.concerns(instrument));
	const layer = (isAdded: boolean, add: number): GivenTimes =>
		Object.fromEntries(
			mine
				.filter((one) => one.isAdded === isAdded)
				.map(({ name, key }) => [key, add + (own[name] ?? 0)]),
		);
	const layers = [...fileLayers(instrument, times), layer(false, 0)];
	const { touchUp } = workTimesOf(kind, bridge, layers);
	return workTimesOf(kind, bridge, [...layers, layer(true, touchUp)]);
}

function isSame(one: unknown, other: unknown): boolean {
	return JSON.stringify(one) === JSON.stringify(other);
}
