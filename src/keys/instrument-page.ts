// What enter opens on the rack: all of one instrument that hands at the rack need, while up and down go on
// to the next. It stays open until it is left.

import { wrapWords } from '../base/wrap-words.ts';
import { samePitches } from '../plan/demand/same-pitches.ts';
import { type SongShape, shapesOfSong } from '../plan/song-shapes.ts';
import type { CardString, TuningCard } from '../plan/tuning-card.ts';
import { tuningCard } from '../plan/tuning-card.ts';
import { findSong } from '../session/find.ts';
import { driftOn } from '../session/warmth.ts';
import { onlyPlayer } from '../showfile/instrument-strings.ts';
import type { Instrument } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { LEAST_STRENGTH_LEFT } from '../tuning/string-set.ts';
import { exposedLine, openStringsBlock, shapeBlock } from '../words/by-ear-words.ts';
import { capoSaid } from '../words/capo-words.ts';
import {
	checkWords,
	faultWords,
	moveWords,
	pageTitle,
	RACK_EMPTY,
	soundsAs,
	stepsWords,
	stringsWords,
	tensionWords,
	tunedTo,
} from '../words/instrument-page.ts';
import { LINE_COLUMNS } from '../words/line-columns.ts';
import { ANSWERS } from '../words/questions.ts';
import { historyBlock, rodBlock, setUpLines } from '../words/set-up-words.ts';
import { stageDriftWords } from '../words/warmth.ts';
import type { KeyContext, Prompt } from './key-context.ts';
import type { PromptView } from './prompt-view.ts';

/** The page of whatever is picked on the rack. */
export function instrumentPage(): Prompt {
	return {
		isText: false,
		isList: true,
		isLasting: true,
		view: (context) => {
			const page = pageOf(context);
			const choices = [
				{ key: 'up', words: ANSWERS.above },
				{ key: 'down', words: ANSWERS.below },
				{ key: 'esc', words: ANSWERS.close },
			];
			return { ...page, field: null, choices };
		},
		press: (key) => {
			if (key === 'up' || key === 'down') return { kind: 'pick', by: key === 'up' ? -1 : 1 };
			return key === 'esc' || key === 'enter' ? { kind: 'close' } : { kind: 'pass' };
		},
	};
}

/** The page of whatever is picked. */
function pageOf(context: KeyContext): Pick<PromptView, 'title' | 'lines' | 'more'> {
	const { session, plan, picked, nowMs } = context;
	const { show } = session;
	const instrument = show.instruments[Math.min(picked, show.instruments.length - 1)];
	const state = instrument && session.instruments[instrument.id];
	if (!instrument || !state) return { title: RACK_EMPTY, lines: [] };
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
	const past = context.measuredOn(instrument);
	const shapes = shapesNext(context, instrument);
	return {
		title: pageTitle({
			instrument: shownInstrument(show, instrument.id),
			is: tunedTo(tuning.name, capoSaid(capo)),
			wanted: isAsWanted ? null : tunedTo(to.name, capoSaid(wantedCapo)),
			forWhom,
		}),
		lines: [
			...stringLines(card),
			...stepLines(card),
			...[
				stringsWords({
					hours: stringHours,
					putOn: instrument.strung.on,
					tension: tensionOf(card),
				}),
				...(warmth === null ? [] : [warmth]),
				...shapes.map(exposedLine),
				...setUpLines(instrument.setUp, past, nowMs),
				...(stringsDown.length > 0 || faults.length > 0
					? [faultWords(stringsDown.length > 0, faults)]
					: []),
				...(instrument.leave === null ? [] : [checkWords(instrument.leave)]),
				...(instrument.notes === null ? [] : [instrument.notes]),
			].flatMap((line) => wrapWords(line, LINE_COLUMNS)),
		],
		more: [
			openStringsBlock(card),
			...shapes.map(shapeBlock),
			rodBlock(instrument.setUp, past),
			historyBlock(past, nowMs),
		].filter((block) => block.length > 1),
	};
}

/** The shapes of the next song that it is played in, else of the one on now. */
function shapesNext({ session, plan }: KeyContext, instrument: Instrument): readonly SongShape[] {
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
function stringLines({ strings, capo }: TuningCard): readonly string[] {
	if (strings.length <= MOST_SINGLE) {
		return strings.map((one) => {
			const bears = one.bearing ? `  ${one.bearing.newtons.toFixed(0).padStart(4)} N` : '';
			return `${stringCells(one, capo)}${bears}`.trimEnd();
		});
	}
	return strings.flatMap((one, index) => {
		const other = strings[index + 1];
		if (index % 2 === 1) return [];
		const left = stringCells(one, capo);
		return [other === undefined ? left : `${left}  ${stringCells(other, capo)}`.trimEnd()];
	});
}

/** More strings than these stand in pairs. */
const MOST_SINGLE = 6;

function stringCells(one: CardString, capo: number): string {
	const cells = [
		String(one.string).padStart(2),
		one.note.padEnd(4),
		one.hertz.toFixed(2).padStart(7),
		`${one.cents > 0 ? '+' : ''}${one.cents} c`.padStart(5),
		moveWords(one.move).padEnd(6),
		...(capo > 0 ? [soundsAs(one.sounds)] : []),
	];
	return cells.join(' ');
}

function stepLines({ steps }: TuningCard): readonly string[] {
	if (steps.length === 0) return [];
	const first = steps.filter(({ round }) => round === 1);
	return wrapWords(stepsWords(first, first.length < steps.length), LINE_COLUMNS);
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
