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
import { capoSaid } from '../tuning/capo-words.ts';
import { LEAST_STRENGTH_LEFT } from '../tuning/string-set.ts';
import { stageDriftWords } from '../words/warmth.ts';
import { exposedLine, openStringsBlock, shapeBlock } from './by-ear-words.ts';
import type { KeyContext, Prompt } from './key-context.ts';
import { LINE_COLUMNS } from './line-columns.ts';
import type { PromptView } from './prompt-view.ts';
import { historyBlock, rodBlock, setUpLines } from './set-up-words.ts';

/** The page of whatever is picked on the rack. */
export function instrumentPage(): Prompt {
	return {
		isText: false,
		isList: true,
		isLasting: true,
		view: (context) => {
			const page = pageOf(context);
			const choices = [
				{ key: 'up', words: 'the one above' },
				{ key: 'down', words: 'the one below' },
				{ key: 'esc', words: 'close' },
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
	if (!instrument || !state) return { title: 'Nothing is on the rack.', lines: [] };
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
			? ''
			: `, for ${playerName(show, work.player)} in ${songTitle(show, song)}`;
	const drift = driftOn(session, instrument);
	const warmth = drift && stageDriftWords(drift);
	const isAsWanted = wantedCapo === capo && samePitches(tuning, to);
	const age = stringHours === null ? 'of unknown age' : `${stringHours.toFixed(1)} h in hands`;
	const past = context.measuredOn(instrument.id);
	const shapes = shapesNext(context, instrument);
	return {
		title: `${shownInstrument(show, instrument.id)}: in ${tuning.name}, ${capoSaid(capo)}${isAsWanted ? ', as wanted' : `; wanted ${to.name}, ${capoSaid(wantedCapo)}`}${forWhom}`,
		lines: [
			...stringLines(card),
			...stepLines(card),
			...[
				`strings ${age}${instrument.strung.on === null ? '' : `, put on ${instrument.strung.on}`}${tensionWords(card)}`,
				...(warmth === null ? [] : [warmth]),
				...shapes.map(exposedLine),
				...setUpLines(instrument.setUp, past, nowMs),
				...(stringsDown.length > 0 || faults.length > 0
					? [`${stringsDown.length > 0 ? 'string broken; ' : ''}${faults.join(', ')}`]
					: []),
				...(instrument.leave === null ? [] : [`check ${instrument.leave}`]),
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
		...(capo > 0 ? [`as ${one.sounds.padEnd(3)}`] : []),
	];
	return cells.join(' ');
}

function moveWords(move: number): string {
	return move === 0 ? '' : `${move < 0 ? 'down' : 'up'} ${Math.abs(move)}`;
}

function stepLines({ steps }: TuningCard): readonly string[] {
	if (steps.length === 0) return [];
	const first = steps.filter(({ round }) => round === 1);
	const words = first.map(({ string, to, how }) =>
		how === 'check' ? `${string} check ${to}` : `${string} ${how} to ${to}`,
	);
	const isTwice = first.length < steps.length;
	const all = `steps: ${words.join(', ')}${isTwice ? '; then all once more' : ''}; end going up`;
	return wrapWords(all, LINE_COLUMNS);
}

function tensionWords({ total, changeNewtons, strings }: TuningCard): string {
	if (total === null) return '';
	const off = total.uncertainty > 0 ? ` ± ${(total.uncertainty * 100).toFixed(0)} %` : '';
	const change = Math.round(changeNewtons ?? 0);
	const more = change === 0 ? '' : `, ${change > 0 ? '+' : ''}${change} N`;
	const least = strings.reduce((one, { bearing }) => Math.min(one, bearing?.strengthLeft ?? 1), 1);
	const near = least < LEAST_STRENGTH_LEFT ? '; A STRING NEAR BREAKING' : '';
	return `; on the neck ${total.newtons.toFixed(0)} N${off}${more}${near}`;
}
