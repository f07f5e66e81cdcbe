// A show's rig as data: what its loads, supplies, batteries and corners come to.

import { amplifierLoads } from '../rig/amplifier-loads.ts';
import { batteriesLeft } from '../rig/battery-hours.ts';
import { outputLoads } from '../rig/supply-loads.ts';
import { tempoTimes } from '../rig/tempo-times.ts';
import { toneCorners } from '../rig/tone-corners.ts';
import { twoSources } from '../rig/two-sources.ts';
import type { Show } from '../showfile/show.ts';
import { sourceWords } from '../words/rig.ts';

/** Figures as computed, not rounded; what the file does not say is null. */
export function rigJson(show: Show) {
	return {
		loads: amplifierLoads(show).map(({ player, amplifier, ohms, tapOhms }) => ({
			player,
			amplifier: amplifier.id,
			ohms,
			tapOhms,
		})),
		supplies: outputLoads(show).map(({ supply, output, usedMilliamps, on }) => ({
			id: supply.id,
			output: output.id,
			usedMa: usedMilliamps,
			ratedMa: output.milliamps,
			on: on.map(({ player, id }) => ({ player, id })),
		})),
		batteries: batteriesLeft(show).map(({ what, player, id, hoursLeft }) => ({
			id,
			what,
			player,
			hoursLeft,
		})),
		corners: toneCorners(show).map(({ hertz, decibels, inputDecibels, ...corner }) => ({
			...corner,
			hz: hertz,
			db: decibels,
			inputDb: inputDecibels,
		})),
		phase: twoSources(show).map(({ player, instrument, sources, offset }) => ({
			player,
			instrument,
			sources: sources.map(({ from, delayMilliseconds, isInverted }) => ({
				id: 'kind' in from ? from.id : sourceWords(from),
				delayMs: delayMilliseconds,
				inverted: isInverted,
			})),
			delayMs: offset?.milliseconds ?? null,
			cancelledHz: offset?.cancelledHertz ?? null,
			lowsCancel: offset?.isOpposed ?? null,
		})),
		tempo: tempoTimes(show).map(({ song, player, pedal, control, value, milliseconds }) => ({
			song,
			player,
			pedal,
			control,
			value,
			ms: milliseconds,
		})),
	};
}
