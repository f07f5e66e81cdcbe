// All of one instrument that hands at the rack need, as lines: its strings, the steps, set-up, what the ear
// will say.

import { wrapWords } from '../base/wrap-words.ts';
import type { Measured } from '../gear/gear-entry.ts';
import { samePitches } from '../plan/demand/same-pitches.ts';
import type { Plan } from '../plan/plan.ts';
import { findSong } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { driftOn } from '../session/warmth.ts';
import { onlyPlayer } from '../showfile/instrument-strings.ts';
import type { Instrument } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { KINDS } from '../tuning/kind.ts';
import { LEAST_STRENGTH_LEFT } from '../tuning/string-set.ts';
import { breaksOrNear } from '../words/bench-pages.ts';
import { exposedLine, openStringsBlock, shapeBlock } from '../words/by-ear-words.ts';
import { capoSaid } from '../words/capo-words.ts';
import { STRING_CAUTION } from '../words/cautions.ts';
import {
	checkWords,
	faultWords,
	moveWords,
	pageTitle,
	soundsAs,
	stepsWords,
	stringsWords,
	tensionWords,
	tunedTo,
} from '../words/instrument-page.ts';
import { LINE_COLUMNS } from '../words/line-columns.ts';
import { historyBlock, rodBlock, setUpLines } from '../words/set-up-words.ts';
import { shortStringLabel, stringLabel } from '../words/string-labels.ts';
import { stageDriftWords } from '../words/warmth.ts';
import { type SongShape, shapesOfSong } from './song-shapes.ts';
import {
	breaking,
	type CardString,
	isTunedFarUp,
	type TuningCard,
	tuningCard,
} from './tuning-card.ts';

/** What a page is made from beside the instrument. */
export type PageFrom = {
	readonly session: Session;
	readonly plan: Plan;
	readonly nowMs: number;
	/** What was measured on it at the bench, the newest first. */
	readonly past: readonly Measured[];
};

export type InstrumentPage = {
	readonly title: string;
	readonly lines: readonly string[];
	/** Blocks of lines that are good to know, the first one most. */
	readonly more: readonly (readonly string[])[];
};

/** The page of an instrument as it stands now; null where the session does not know it. */
export function instrumentPage(from: PageFrom, instrument: Instrument): InstrumentPage | null {
	const { session, plan, nowMs, past } = from;
	const { show } = session;
	const state = session.instruments[instrument.id];
	if (!state) return null;
	const { tuning, capo, stringHours, faults, stringsDown } = state.context;
	const work = plan.work.find((one) => one.instrument === instrument.id);
	const next = plan.handOvers.find((one) => one.instrument === instrument.id);
	const to = work?.to ?? next?.tuning ?? tuning;
	const wantedCapo = work?.capo ?? next?.capo ?? capo;
	const player = work?.player ?? next?.player ?? onlyPlayer(instrument);
	const card = tuningCard(show, {
		instrument,
		from: tuning,
		to,
		capo: wantedCapo,
		player,
		referenceHertz: show.referenceHertz,
	});
	const song = work?.section.song;
	const forWhom =
		work === undefined || song === undefined
			? null
			: { player: playerName(show, work.player), song: songTitle(show, song) };
	const drift = driftOn(session, instrument);
	const warmth = drift && stageDriftWords(drift);
	const isAsWanted = wantedCapo === capo && samePitches(tuning, to);
	const shapes = shapesNext(from, instrument);
	const strung = { kind: instrument.kind, notes: card.strings.map(({ note }) => note) };
	const labelOf = (string: number) => shortStringLabel(strung, string);
	return {
		title: pageTitle({
			instrument: shownInstrument(show, instrument.id),
			is: tunedTo(tuning.name, capoSaid(capo)),
			wanted: isAsWanted ? null : tunedTo(to.name, capoSaid(wantedCapo)),
			forWhom,
		}),
		lines: [
			...breaking(card.strings).map((string) => breaksOrNear(string, -1)),
			...stringLines(card),
			...stepLines(card),
			...[
				stringsWords({
					hours: stringHours,
					putOn: instrument.strung.on,
					tension: tensionOf(card),
				}),
				...(stringsDown.length > 0 || faults.length > 0
					? [faultWords(stringsDown.length > 0, faults)]
					: []),
				...(stringsDown.length > 0 || work?.job === 'restring' || isTunedFarUp(card)
					? [STRING_CAUTION]
					: []),
				...(instrument.leave === null ? [] : [checkWords(instrument.leave)]),
				...(warmth === null ? [] : [warmth]),
				...shapes.map((shape) => exposedLine(shape, labelOf)),
				...setUpLines(instrument.setUp, past, nowMs),
				...(instrument.notes === null ? [] : [instrument.notes]),
			].flatMap((line) => wrapWords(line, LINE_COLUMNS)),
		],
		more: [
			openStringsBlock(card.byEar),
			...shapes.map(shapeBlock),
			rodBlock(instrument.setUp, past),
			historyBlock(past, nowMs),
		].filter((block) => block.length > 1),
	};
}

/** The shapes of the next song that it is played in, else of the one on now. */
function shapesNext({ session, plan }: PageFrom, instrument: Instrument): readonly SongShape[] {
	const slots = plan.slots.filter((one) => one.instrument === instrument.id);
	const slot = slots.find(({ section }) => !section.hasBegun) ?? slots[0];
	const song = slot && findSong(session, slot.section.song);
	if (!slot || !song?.shapes?.[slot.player]) return [];
	const { tuning, capo, player } = slot;
	const { show } = session;
	const asked = { instrument, from: tuning, to: tuning, capo, player };
	return shapesOfSong(tuningCard(show, { ...asked, referenceHertz: show.referenceHertz }), song);
}

/** A line a string, or a course where strings are paired, so that twelve fit where six do. */
function stringLines({ strings, capo, instrument: { kind } }: TuningCard): readonly string[] {
	const strung = { kind, notes: strings.map(({ note }) => note) };
	const isPaired = KINDS[kind].stringsPerCourse === 2;
	if (strings.length <= MOST_SINGLE && !isPaired) {
		return strings.map((one) => {
			const bears = one.bearing ? `  ${one.bearing.newtons.toFixed(0).padStart(4)} N` : '';
			return `${stringCells(one, String(one.string).padStart(2), capo)}${bears}`.trimEnd();
		});
	}
	return strings.flatMap((one, index) => {
		const other = strings[index + 1];
		if (index % 2 === 1) return [];
		const label = ({ string }: CardString) => shortStringLabel(strung, string).padEnd(4);
		const left = stringCells(one, label(one), capo);
		return [
			other === undefined ? left : `${left}  ${stringCells(other, label(other), capo)}`.trimEnd(),
		];
	});
}

/** More strings than these stand in pairs. */
const MOST_SINGLE = 6;

function stringCells(one: CardString, label: string, capo: number): string {
	const cells = [
		label,
		one.note.padEnd(4),
		one.hertz.toFixed(2).padStart(7),
		`${one.cents > 0 ? '+' : ''}${one.cents} c`.padStart(5),
		moveWords(one.move).padEnd(6),
		...(capo > 0 ? [soundsAs(one.sounds)] : []),
	];
	return cells.join(' ');
}

function stepLines({ steps, strings, instrument: { kind } }: TuningCard): readonly string[] {
	if (steps.length === 0) return [];
	const strung = { kind, notes: strings.map(({ note }) => note) };
	const first = steps
		.filter(({ round }) => round === 1)
		.map((step) => ({ ...step, string: stringLabel(strung, step.string) }));
	return wrapWords(
		stepsWords(first, {
			isTwice: first.length < steps.length,
			isPaired: KINDS[kind].stringsPerCourse === 2,
		}),
		LINE_COLUMNS,
	);
}

function tensionOf({ total, changeNewtons, strings }: TuningCard): string {
	if (total === null) return '';
	const least = strings.reduce((one, { bearing }) => Math.min(one, bearing?.strengthLeft ?? 1), 1);
	return tensionWords({
		...total,
		changeNewtons: Math.round(changeNewtons ?? 0),
		isNearBreaking: least < LEAST_STRENGTH_LEFT,
	});
}
