// Hand-overs and work of a night of which the journal holds how long they took, beside what the plan takes for them.

import { cleanText } from '../base/clean-text.ts';
import type { Piece } from '../history/night-facts.ts';
import type { NightMs } from '../journal/entry.ts';
import { workNeeded } from '../plan/schedule/work-needed.ts';
import { findInstrument, findSongItem, itemConcerned } from '../session/find.ts';
import type { OwnTimeName } from '../showfile/own-times.ts';
import type { Instrument, WorkTimes } from '../showfile/show.ts';
import { shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { retuneKind } from '../tuning/retune.ts';
import type { NightReport } from './night-report.ts';
import type { NightStep } from './night-steps.ts';
import { workTaken } from './work-taken.ts';

/** What is rounded to tenths of a second is at most so far apart. */
const ROUNDED_MS = 100;

/** Every piece that was measured, hand-overs first. */
export function measuredPieces(report: NightReport, steps: readonly NightStep[]): readonly Piece[] {
	return [...handOverPieces(report, steps), ...workPieces(steps)];
}

/**
 * Hand-overs between songs that were noted by themselves, from the song's end. Of several in one gap, however many keys
 * noted them, each has an equal share of the time to the last key: when the second was begun is not in the journal.
 */
function handOverPieces({ handOvers }: NightReport, steps: readonly NightStep[]): Piece[] {
	const last = steps.at(-1)?.after;
	const timed = handOvers.filter(
		({ noted, wantedSeconds, takenSeconds, correctedFrom }) =>
			noted === 'by-itself' &&
			wantedSeconds !== null &&
			takenSeconds !== null &&
			correctedFrom === null,
	);
	const gaps: (typeof timed)[] = [];
	for (const one of timed) {
		const gap = gaps.at(-1);
		const [first] = gap ?? [];
		if (gap !== undefined && first !== undefined && isOfOneGap(first, one)) gap.push(one);
		else gaps.push([one]);
	}
	return gaps.flatMap((together): Piece[] => {
		const longest = Math.max(...together.map(({ takenSeconds }) => takenSeconds ?? 0));
		const given = together.flatMap(({ instrumentId, instrument: shown, song: title }) => {
			const found = instrumentId === null ? null : last && findInstrument(last, instrumentId);
			return found && shown !== null ? [{ times: found.times, shown, title }] : [];
		});
		return given.map(({ times, shown, title }) => ({
			...{ work: 'hand-over', shown, title },
			usedSeconds: times.handOver,
			plannedSeconds: times.handOver,
			seconds: longest / given.length,
		}));
	});
}

/** Whether both are for the same song and counted from the same moment; what they took is to the tenth. */
function isOfOneGap(
	one: NightReport['handOvers'][number],
	other: NightReport['handOvers'][number],
): boolean {
	const fromMs = ({ atMs, takenSeconds }: typeof one): NightMs => atMs - (takenSeconds ?? 0) * 1000;
	return one.item === other.item && Math.abs(fromMs(one) - fromMs(other)) <= ROUNDED_MS;
}

/** Early parts and whole sets have no time of their own in the plan and are left out. */
function workPieces(steps: readonly NightStep[]): Piece[] {
	return [...workTaken(steps)].flatMap(([{ entry, before, after }, seconds]): Piece[] => {
		if (entry.k !== 'made-ready' || entry.isEarly === true) return [];
		const instrument = findInstrument(before, entry.instrument);
		const state = before.instruments[entry.instrument];
		const done = after.instruments[entry.instrument]?.context;
		if (instrument === null || state === undefined || done === undefined) return [];
		const { context } = state;
		if (entry.isRestrung === true && context.stringsDown.length === 0) return [];
		const work = mainWork(instrument, context, done);
		const asked = { instrument, state, to: { tuning: done.tuning, capo: done.capo } };
		const coming = findSongItem(before, itemConcerned(before));
		return [
			{
				work,
				shown: cleanText(shownInstrument(before.show, instrument.id)),
				title: coming && cleanText(songTitle(before.show, coming.song)),
				usedSeconds: usedSeconds(instrument.times, work),
				plannedSeconds: workNeeded(asked).seconds,
				seconds,
			},
		];
	});
}

type Stood = NightStep['before']['instruments'][string]['context'];

/** What a piece is named for: new strings before another tuning, that before a touch-up. */
function mainWork({ kind, bridge }: Instrument, before: Stood, after: Stood): OwnTimeName {
	if (before.stringsDown.length > 0) {
		return bridge === 'floating' ? 'restring-floating' : 'restring';
	}
	switch (retuneKind(before.tuning.notes, after.tuning.notes, kind)) {
		case 'one-string':
			return 'one-string-more';
		case 'two-strings':
			return 'two-strings-more';
		case 'all-same-interval':
			return 'all-strings-more';
		case 'other':
			return 'other-tuning-more';
		case 'none':
			return `touch-up.${kind}`;
	}
}

function usedSeconds(times: WorkTimes, work: OwnTimeName): number {
	switch (work) {
		case 'restring':
		case 'restring-floating':
			return times.restring;
		case 'one-string-more':
			return times.oneString - times.touchUp;
		case 'two-strings-more':
			return times.twoStrings - times.touchUp;
		case 'all-strings-more':
			return times.allStrings - times.touchUp;
		case 'other-tuning-more':
			return times.otherTuning - times.touchUp;
		default:
			return times.touchUp;
	}
}
