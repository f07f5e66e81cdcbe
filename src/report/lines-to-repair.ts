// What is to be mended before the next show, with who had it when that was found.

import { brokenStrings } from '../history/broken-strings.ts';
import { isShort } from '../rig/battery-hours.ts';
import { batteriesNow } from '../rig/battery-now.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { packName, pedalName, playerName } from '../showfile/shown-names.ts';
import { incidentKindWords } from '../words/entry-words.ts';
import { batteryOf, hourWords } from '../words/rig.ts';
import { REPAIR } from '../words/tomorrow.ts';
import type { NightStep } from './night-steps.ts';
import { lineAbout, lineOn, type TomorrowLine, type TomorrowParts } from './tomorrow-line.ts';

/** What is to be mended, each with who had it and when: instruments, pedals, packs, then whatever else happened. */
export function linesToRepair(parts: TomorrowParts): readonly TomorrowLine[] {
	const { show, last, steps, momentOf } = parts;
	const ofInstruments = show.instruments.flatMap((instrument) => {
		const state = last.instruments[instrument.id];
		if (state === undefined) return [];
		const aside = (fault: string | null) =>
			steps.findLast(
				({ entry }) =>
					entry.k === 'put-aside' && entry.instrument === instrument.id && entry.fault === fault,
			);
		const whyOf = (step: NightStep | undefined) =>
			step === undefined
				? REPAIR.before
				: REPAIR.found(momentOf(step), holderName(step, instrument.id));
		const { faults } = state.context;
		return [
			...faults.map((fault) =>
				lineOn('repair', instrument, { text: REPAIR.fault(fault), why: whyOf(aside(fault)) }),
			),
			...(state.value === 'out' && faults.length === 0
				? [lineOn('repair', instrument, { text: REPAIR.out, why: whyOf(aside(null)) })]
				: []),
			...burrLines(parts, instrument),
		];
	});
	return [
		...ofInstruments,
		...pedalLines(parts),
		...packLines(parts),
		...batteryLines(parts),
		...incidentLines(parts),
	];
}

function holderName({ before }: NightStep, instrument: string): string | null {
	const player = before.show.players.find(({ id }) => before.players[id]?.holds === instrument);
	return player?.name ?? null;
}

/** Two breaks of the same string, or of the same instrument in one night: something cuts them (common practice, no source). */
function burrLines({ nights, gearOf }: TomorrowParts, instrument: Instrument): TomorrowLine[] {
	const gear = gearOf(instrument);
	const tonight = nights.at(-1)?.breaks.filter((one) => one.gear === gear) ?? [];
	if (tonight.length === 0) return [];
	const often = brokenStrings(nights).filter(
		(one) => one.gear === gear && one.string !== null && one.breaks > 1,
	);
	if (often.length > 0) {
		return often.map(({ string, breaks, nightsUsed }) =>
			lineOn('repair', instrument, {
				text: REPAIR.burr(string),
				why: REPAIR.burrWhy(breaks, nightsUsed),
			}),
		);
	}
	if (tonight.length < 2) return [];
	const why = REPAIR.burrWhy(tonight.length, 1);
	return [lineOn('repair', instrument, { text: REPAIR.burr(null), why })];
}

function pedalLines({ show, last, steps, momentOf }: TomorrowParts): TomorrowLine[] {
	return Object.entries(last.boards).flatMap(([player, { context }]) =>
		context.stuck.map((pedal) => {
			const step = steps.findLast(
				({ entry }) =>
					entry.k === 'pedal-stuck' && entry.player === player && entry.pedal === pedal,
			);
			const name = pedalName(show, player, pedal);
			const when = step === undefined ? REPAIR.before : momentOf(step);
			return lineAbout('repair', name, {
				text: REPAIR.pedal(`${name}, ${playerName(show, player)}`),
				why: REPAIR.pedalWhy(context.pedals[pedal]?.on === true, when),
			});
		}),
	);
}

/** Suspect packs, by whom they were worn. */
export function packLines({ show, last, steps, momentOf }: TomorrowParts): TomorrowLine[] {
	return last.suspectPacks.map((pack) => {
		const step = steps.findLast(({ entry }) => entry.k === 'pack-suspected' && entry.pack === pack);
		const player = step?.entry.k === 'pack-suspected' ? step.entry.player : null;
		const when = step === undefined ? REPAIR.before : momentOf(step);
		return lineAbout('repair', packName(show, pack), {
			text: REPAIR.pack(packName(show, pack)),
			why: REPAIR.suspect(when, player === null ? null : playerName(show, player)),
		});
	});
}

/** Batteries that would not last another such show, nor the next where it is known, with a margin. */
function batteryLines({ show, last, steps, next }: TomorrowParts): TomorrowLine[] {
	const { zeroAtMs } = last;
	const nowMs = steps.at(-1)?.entry.at;
	if (zeroAtMs === null || nowMs === undefined) return [];
	const hours = showHours(next?.show ?? show);
	return batteriesNow(last, { nowMs, zeroMs: zeroAtMs })
		.filter((one) => isShort(one, hours))
		.map((one) => {
			const name = batteryOf(show, one);
			return lineAbout('repair', name, {
				text: REPAIR.battery(name),
				why: REPAIR.batteryWhy(hourWords(one.hoursLeft), hourWords(hours)),
			});
		});
}

function showHours(show: Show): number {
	return (runningOrder(show).at(-1)?.endSeconds ?? 0) / 3600;
}

/** Whatever was said of an incident that is neither a string nor a pedal. */
function incidentLines({ last, show, steps, momentOf }: TomorrowParts): TomorrowLine[] {
	return last.incidents.flatMap((one): TomorrowLine[] => {
		if (one.kind === null || one.kind === 'string-break' || one.pedal !== null) return [];
		const step = steps.find(({ of }) => of === one.id);
		const kind = incidentKindWords(one.kind);
		const player = one.player === null ? null : playerName(show, one.player);
		const when = step === undefined ? REPAIR.before : momentOf(step);
		return [
			lineAbout('repair', kind, {
				text: REPAIR.incident(kind),
				why: [REPAIR.found(when, player), ...one.words].join('; '),
			}),
		];
	});
}
