// What is wrong or risky in a show's rig: loads, supplies, batteries, channels, and what cues ask of pedals.

import type { Current, SupplyOutput } from '../showfile/rig.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { Show } from '../showfile/show.ts';
import { amplifierLoads, cabWatts, mayDrive } from './amplifier-loads.ts';
import { batteriesLeft, isShort } from './battery-hours.ts';
import { instrumentsOf, rangeOf } from './instruments-of.ts';
import type { RigFinding } from './rig-finding.ts';
import { outputLoads } from './supply-loads.ts';
import { tempoTimes } from './tempo-times.ts';
import { toneCorners } from './tone-corners.ts';
import { lowsLostBelow, type TwoSources, twoSources } from './two-sources.ts';

/** A supply that gives more than this of its rating runs warm and sags: common practice, no source. */
const DERATING = 0.8;
/** A piezo that loses more than this at its lowest string sounds thin: common practice, no source. */
const THIN_DECIBELS = -3;
/** A cord whose corner is under this takes brightness that is missed: common practice, no source. */
const DULL_HERTZ = 5000;

/**
 * Findings of a rig, those of the amplifiers first; none for a show that says nothing of its rig.
 *
 * @example
 * checkRig(BOARD) // => [{ code: 'supply-load', severity: 'risk', supply: 'S1', output: 'a', usedMa: 105, ratedMa: 100, isOver: true }, { code: 'daisy-chain', severity: 'note', supply: 'S1', output: 'a', on: [{ player: 'bo', id: 'drive' }, { player: 'bo', id: 'boost' }] }]
 */
export function checkRig(show: Show): readonly RigFinding[] {
	return [
		...amplifiers(show),
		...supplies(show),
		...batteries(show),
		...channels(show),
		...scenes(show),
		...tempos(show),
		...corners(show),
		...sources(show),
	];
}

function amplifiers(show: Show): RigFinding[] {
	return amplifierLoads(show).flatMap((load): RigFinding[] => {
		const { player, amplifier, cabs, ohms, tapOhms } = load;
		const about = { player, amplifier: amplifier.id } as const;
		const all: RigFinding[] = [];
		if (cabs.length === 0 && amplifier.isTube === true) {
			all.push({ code: 'amp-no-load', severity: 'risk', ...about });
		}
		if (ohms !== null && tapOhms !== null && !mayDrive(amplifier, { ohms, tapOhms })) {
			const fits =
				amplifier.taps?.find((one) => mayDrive(amplifier, { ohms, tapOhms: one })) ?? null;
			all.push({ code: 'amp-load', severity: 'risk', ...about, ohms, tapOhms, fits });
		}
		for (const [at, watts] of (cabWatts(load) ?? []).entries()) {
			const { id: cab = '', watts: ratedWatts } = cabs[at] ?? {};
			if (ratedWatts === undefined || watts <= ratedWatts) continue;
			all.push({ code: 'cab-power', severity: 'risk', ...about, cab, watts, ratedWatts });
		}
		return all;
	});
}

function supplies(show: Show): RigFinding[] {
	return outputLoads(show).flatMap(({ supply, output, on, usedMilliamps }): RigFinding[] => {
		const at = { supply: supply.id, output: output.id } as const;
		const all: RigFinding[] = [];
		const { milliamps: ratedMa, volts, centre } = output;
		if (usedMilliamps !== null && ratedMa !== null && usedMilliamps > DERATING * ratedMa) {
			const isOver = usedMilliamps > ratedMa;
			const severity = isOver ? 'risk' : 'note';
			all.push({ code: 'supply-load', severity, ...at, usedMa: usedMilliamps, ratedMa, isOver });
		}
		for (const { player, id, power } of on) {
			const who = { player, id, ...at } as const;
			if (power.volts !== null && volts !== null && power.volts !== volts) {
				const wants = power.volts;
				all.push({ code: 'supply-volts', severity: 'risk', ...who, wants, gives: volts });
			}
			const [needed, given] = [currentOf(power), currentOf(output)];
			if (needed !== null && given !== null && needed !== given) {
				all.push({ code: 'supply-current', severity: 'risk', ...who, wants: needed, gives: given });
			}
			if (power.centre !== null && centre !== null && power.centre !== centre) {
				const wants = power.centre;
				all.push({ code: 'supply-centre', severity: 'risk', ...who, wants, gives: centre });
			}
		}
		if (on.length > 1) {
			const chain = on.map(({ player, id }) => ({ player, id }));
			all.push({ code: 'daisy-chain', severity: 'note', ...at, on: chain });
		}
		return all;
	});
}

/** Where only a pole is given there are poles. */
function currentOf({ current, centre }: Pick<SupplyOutput, 'current' | 'centre'>): Current | null {
	return current ?? (centre === null ? null : 'dc');
}

function batteries(show: Show): RigFinding[] {
	const order = runningOrder(show);
	const hoursNeeded = (order.at(-1)?.endSeconds ?? 0) / 3600;
	const break_ = order.find(({ isAfterInterval }) => isAfterInterval);
	const toInterval = break_ === undefined ? null : break_.startSeconds / 3600;
	return batteriesLeft(show).flatMap(({ what, player, id, hoursLeft }): RigFinding[] => {
		if (hoursLeft === null || !isShort({ hoursLeft }, hoursNeeded)) return [];
		const change =
			toInterval !== null && !isShort({ hoursLeft }, toInterval) ? 'interval' : 'before-doors';
		const about = { what, player, id, hoursLeft, hoursNeeded, change } as const;
		return [{ code: 'battery-short', severity: 'risk', ...about }];
	});
}

function channels({ packs }: Show): RigFinding[] {
	const byChannel = Map.groupBy(
		packs.filter(({ channel }) => channel !== null),
		({ channel }) => channel ?? '',
	);
	return [...byChannel].flatMap(([channel, all]): RigFinding[] =>
		all.length < 2
			? []
			: [
					{
						code: 'shared-channel',
						severity: 'risk',
						channel,
						packs: all.map(({ id }) => id),
					},
				],
	);
}

function scenes({ songs, boards }: Show): RigFinding[] {
	return songs.flatMap((song) =>
		[song.board, ...song.cues.map((cue) => cue.boards)].flatMap((states) =>
			Object.entries(states).flatMap(([player, board]) =>
				Object.entries(board).flatMap(([pedal, { settings }]): RigFinding[] => {
					const scene = settings?.scene;
					const midi = boards[player]?.find(({ id }) => id === pedal)?.midi;
					if (scene === undefined || midi === undefined || Object.hasOwn(midi.scenes, scene)) {
						return [];
					}
					const about = { song: song.id, player, pedal, scene };
					return [{ code: 'unknown-scene', severity: 'risk', ...about }];
				}),
			),
		),
	);
}

function tempos(show: Show): RigFinding[] {
	return tempoTimes(show).flatMap(({ song, player, pedal, value, milliseconds }): RigFinding[] =>
		milliseconds === null
			? [{ code: 'no-tempo', severity: 'note', song, player, pedal, value }]
			: [],
	);
}

function corners(show: Show): RigFinding[] {
	return toneCorners(show).flatMap((corner): RigFinding[] => {
		const { player, instrument, kind, hertz, decibels } = corner;
		const about = { player, instrument, hertz } as const;
		if (kind === 'low-pass') {
			return hertz < DULL_HERTZ ? [{ code: 'dull-cord', severity: 'note', ...about }] : [];
		}
		return decibels !== null && decibels < THIN_DECIBELS
			? [{ code: 'thin-piezo', severity: 'note', ...about, decibels }]
			: [];
	});
}

/** Hertz of the lowest and the highest note of an instrument, or of all that a player may have. */
function playedRange(show: Show, { player, instrument }: TwoSources) {
	const all =
		player === null
			? show.instruments.filter(({ id }) => id === instrument)
			: instrumentsOf(show, player);
	const ranges = all.flatMap((one) => rangeOf(one, show.referenceHertz) ?? []);
	return ranges.length === 0 ? null : ([Math.min(...ranges), Math.max(...ranges)] as const);
}

function sources(show: Show): RigFinding[] {
	return twoSources(show).flatMap((two): RigFinding[] => {
		const { offset } = two;
		const range = playedRange(show, two);
		if (range === null || offset === null) return [];
		const [lowest, highest] = range;
		const about = { code: 'sources-cancel', ...two, offset } as const;
		if (offset.isOpposed && lowest < lowsLostBelow(offset.milliseconds)) {
			return [{ ...about, severity: 'risk', isLows: true }];
		}
		const { cancelledHertz: hertz } = offset;
		return hertz === null || hertz < lowest || hertz > highest
			? []
			: [{ ...about, severity: 'note', isLows: false }];
	});
}
