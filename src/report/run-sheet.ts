// The run sheet to tape to the case: plain text that works on paper when the screen does not. A line
// a song, and only what changes, because the eye has a second.

import { cleanText } from '../base/clean-text.ts';
import { displayWidth, fitWidth } from '../base/display-width.ts';
import { minutesSeconds } from '../base/duration.ts';
import { filterAt, ringsAt } from '../bench/ringing.ts';
import type { Plan, Slot } from '../plan/plan.ts';
import { offsetWords } from '../showfile/instrument-strings.ts';
import type { SetSong } from '../showfile/running-order.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { Instrument, Show, Song } from '../showfile/show.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { asBackup } from '../words/backup-for.ts';
import { capoAct } from '../words/capo-words.ts';
import { SHEET_CAUTIONS } from '../words/cautions.ts';
import { sheetRings } from '../words/feedback.ts';
import {
	atCue,
	dayText,
	HANDS_EMPTY,
	NO_BACKUP,
	nothingFor,
	SHEET,
	sheetBoard,
	sheetCurfew,
	sheetReference,
	sheetStart,
	withCapo,
} from '../words/paper.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { warningWords } from '../words/warnings.ts';
import { PAPER_COLUMNS, wrapped } from './paper.ts';
import { songBoards } from './song-boards.ts';

const TITLE_WIDTH = 20;
const BOARD_INDENT = 4;
/** Number, title, how the song ends and the gap before it; the players' changes come after. */
const LEFT_WIDTH = 3 + 1 + TITLE_WIDTH + 1 + 5 + 1 + 5 + 2;
const CHANGES_WIDTH = PAPER_COLUMNS - LEFT_WIDTH;

/**
 * The sheet as lines of at most 80 columns, the last one ended too: who gets which slot in which
 * tuning and capo where that changes, in the order of the set. A song that the plan no longer has is done.
 * `backupOf`: what could be handed by hand where a slot has nothing, an instrument's id. `hasBoards`: with what every
 * board is at each point. What an instrument rang at stands below, with what was done about it.
 */
export function runSheet(
	show: Show,
	plan: Plan,
	{ backupOf = () => null, hasBoards = false, ringsOn = () => [] }: SheetAsked = {},
): string {
	const order = runningOrder(show);
	const body = order.flatMap((playing, index): string[] => {
		const interval = playing.isAfterInterval ? [SHEET.interval] : [];
		const isEncoreBegin = playing.isEncore && !order[index - 1]?.isEncore;
		const encore = isEncoreBegin ? [SHEET.encore] : [];
		const boards = hasBoards ? boardLines(show, playing.song) : [];
		return [...interval, ...encore, ...songLines(show, { plan, backupOf }, playing), ...boards];
	});
	return [
		...title(show),
		'',
		...players(show, plan),
		`${fitWidth('', 3)} ${fitWidth(SHEET.song, TITLE_WIDTH)} ${fitWidth(SHEET.ends, 5)} ${fitWidth(SHEET.gap, 5, { align: 'right' })}  ${SHEET.handOvers}`,
		'-'.repeat(PAPER_COLUMNS),
		...body,
		'-'.repeat(PAPER_COLUMNS),
		...ringLines(show, ringsOn),
		...otherWarnings(show, plan),
		...SHEET_CAUTIONS.flatMap((text) => wrapped(text, PAPER_COLUMNS, '')),
	]
		.map((line) => `${line.trimEnd()}\n`)
		.join('');
}

export type SheetAsked = {
	readonly backupOf?: (slot: Slot) => string | null;
	readonly hasBoards?: boolean;
	/** Hertz that an instrument rang at, the newest first. */
	readonly ringsOn?: (instrument: Instrument) => readonly number[];
};

/** One player's board after the other, its points in one line where they fit. */
function boardLines(show: Show, song: Song): string[] {
	const boards = songBoards(show, song);
	return show.players.flatMap(({ id, name }) => {
		const own = boards.filter(({ player }) => player === id);
		if (own.length === 0) return [];
		const label = `${' '.repeat(BOARD_INDENT)}${name.toUpperCase()} ${SHEET.board} `;
		const points = own.map(({ at, words }) => sheetBoard(at, words));
		const lines = flowed(points.map(cleanText), PAPER_COLUMNS - displayWidth(label));
		return lines.map((line, at) => `${at === 0 ? label : ' '.repeat(displayWidth(label))}${line}`);
	});
}

type Planned = { readonly plan: Plan; readonly backupOf: (slot: Slot) => string | null };

function songLines(
	show: Show,
	{ plan, backupOf }: Planned,
	{ song, position, gapSeconds }: SetSong,
): string[] {
	const slots = plan.slots.filter((slot) => slot.section.position === position);
	const isAhead = plan.sections.some((section) => section.position === position);
	const changes = isAhead
		? [
				...slots
					.filter((slot) => isToDo(plan, slot))
					.map((slot) => ({
						point: slot.section.point,
						texts: changeTexts(show, song, {
							slot,
							backupOf,
							isCapoMoved: isCapoMoved(plan, slot),
						}),
					})),
				...plan.handOvers
					.filter((one) => one.instrument === null && one.section.position === position)
					.map(({ section, player }) => ({
						point: section.point,
						texts: [cleanText(`${whoAt(show, song, { section, player })} ${HANDS_EMPTY}`)],
					})),
			]
				// The song's start first, then its cues.
				.toSorted((one, other) => one.point - other.point)
				.flatMap(({ texts }) => texts)
		: [SHEET.done];
	const left = [
		fitWidth(String(position), 3, { align: 'right' }),
		fitWidth(cleanText(song.title), TITLE_WIDTH),
		fitWidth(song.ends === 'segue' ? SHEET.segue : song.ends, 5),
		fitWidth(gapSeconds === null ? '' : minutesSeconds(gapSeconds), 5, { align: 'right' }),
	].join(' ');
	const [first = '', ...more] = flowed(changes, CHANGES_WIDTH);
	const cautions = plan.warnings
		.filter(
			(warning) =>
				warning.song === song.id && slots.length > 0 && isFirstTime(plan, song, position),
		)
		.flatMap((warning) =>
			wrapped(`! ${cleanText(warningWords(show, warning))}`, PAPER_COLUMNS, '    '),
		);
	return [`${left}  ${first}`, ...more.map((line) => ' '.repeat(LEFT_WIDTH) + line), ...cautions];
}

/** A song played twice gets its warnings once: they do not say which time is meant. */
function isFirstTime(plan: Plan, song: Song, position: number): boolean {
	return plan.sections.find((section) => section.song === song.id)?.position === position;
}

/** A hand-over, nothing where something was wanted; of what is kept a moved capo, or that it stands in for another now. */
function isToDo(plan: Plan, slot: Slot): boolean {
	if (slot.isHandOver || (slot.instrument === null && !slot.isKept)) return true;
	if (slot.instrument === null) return false;
	if (slot.for !== null && slot.for !== slotBefore(plan, slot)?.for) return true;
	return isCapoMoved(plan, slot);
}

/** The capo on what is kept has to be put on, moved or taken off. */
function isCapoMoved(plan: Plan, slot: Slot): boolean {
	const before = slotBefore(plan, slot);
	return !slot.isHandOver && before !== undefined && before.capo !== slot.capo;
}

function slotBefore({ slots }: Plan, slot: Slot): Slot | undefined {
	return slots.slice(0, slots.indexOf(slot)).findLast((one) => one.player === slot.player);
}

/** The change, and what its strings stand off equal temperament: on a line with it where there is room. */
function changeTexts(
	show: Show,
	song: Song,
	{
		slot,
		backupOf,
		isCapoMoved,
	}: Pick<Planned, 'backupOf'> & { readonly slot: Slot; readonly isCapoMoved: boolean },
): readonly string[] {
	const who = whoAt(show, song, slot);
	if (slot.instrument === null) {
		const other = slot.isMissing ? backupOf(slot) : null;
		const none = other === null ? NO_BACKUP : nothingFor(shownInstrument(show, other), '');
		return [cleanText(`${who} ${slot.isMissing ? none : HANDS_EMPTY}`)];
	}
	const { player, tuning } = slot;
	const instrument = show.instruments.find((one) => one.id === slot.instrument);
	const place = shownInstrument(show, slot.instrument);
	const backup = asBackup(show, slot.for);
	const what = slot.isHandOver
		? `${place} ${shortTuning(show, tuning)}${withCapo(slot.capo)}`
		: `${SHEET.keeps}${place}${isCapoMoved ? `, ${capoAct(slot.capo)}` : ''}`;
	const change = cleanText(`${who} ${what}${backup}`);
	const off = instrument ? offsetWords(show, { instrument, tuning, player }) : '';
	if (off === '') return [change];
	const whole = `${change}, ${off}`;
	return displayWidth(whole) <= CHANGES_WIDTH
		? [whole]
		: [`${change},`, ...wrapped(off, CHANGES_WIDTH, '')];
}

/** The player in capitals, after the cue where it is not the song's start. */
function whoAt(show: Show, song: Song, { section, player }: Pick<Slot, 'section' | 'player'>) {
	const cue = section.point === 0 ? null : song.cues[section.point - 1]?.at;
	return `${cue ? atCue(cue) : ''}${playerName(show, player).toUpperCase()}`;
}

function title(show: Show): string[] {
	const { startMinutes, curfewMinutes } = show;
	const facts = [
		show.venue,
		show.date,
		startMinutes === null ? null : sheetStart(dayText(startMinutes)),
		curfewMinutes === null ? null : sheetCurfew(dayText(curfewMinutes)),
		show.referenceHertz === 440 ? null : sheetReference(show.referenceHertz),
	].filter((fact) => fact !== null);
	const notes = show.notes === undefined ? [] : wrapped(cleanText(show.notes), PAPER_COLUMNS, '');
	return [...phrases([show.title, ...facts]), ...notes];
}

/** Every slot of the rack by whose it is; what nobody owns comes last, since anybody may get it. */
function players(show: Show, plan: Plan): string[] {
	const isAnybodys = ({ for: owners }: Instrument): boolean => (owners?.length ?? 0) === 0;
	const own = show.players.flatMap((player) => {
		const has = (one: Instrument): boolean =>
			(one.for?.includes(player.id) ?? false) ||
			(!isAnybodys(one) &&
				plan.slots.some((slot) => slot.player === player.id && slot.instrument === one.id));
		const places = show.instruments.filter(has).map(placeText);
		return legend(player.name.toUpperCase(), places.length > 0 ? places : [SHEET.anyKind]);
	});
	const shared = show.instruments.filter(isAnybodys);
	return [
		...own,
		...legend(SHEET.any, shared.filter((one) => !one.spare).map(placeText)),
		...legend(SHEET.spares, shared.filter((one) => one.spare).map(placeText)),
	];
}

function placeText({ slot, name }: Instrument): string {
	return `${slot?.toUpperCase() ?? '-'} ${name}`;
}

function legend(who: string, places: readonly string[]): string[] {
	const [first, ...more] = places;
	return first === undefined ? [] : phrases([`${who}: ${first}`, ...more]);
}

/** Phrases with commas between, a line broken only between two of them unless one is wider than paper. */
function phrases(texts: readonly string[]): string[] {
	const lines: string[] = [];
	for (const [index, text] of texts.map(cleanText).entries()) {
		const phrase = index < texts.length - 1 ? `${text},` : text;
		const last = lines.at(-1);
		if (last !== undefined && displayWidth(last) + 1 + displayWidth(phrase) <= PAPER_COLUMNS) {
			lines[lines.length - 1] = `${last} ${phrase}`;
		} else lines.push(...wrapped(phrase, PAPER_COLUMNS, lines.length === 0 ? '' : '  '));
	}
	return lines;
}

/** No more of one instrument than these: what rang long ago rings no more. */
const MOST_RINGS = 3;

function ringLines(show: Show, ringsOn: NonNullable<SheetAsked['ringsOn']>): string[] {
	const { referenceHertz } = show;
	return show.instruments.flatMap((one) =>
		ringsOn(one)
			.slice(0, MOST_RINGS)
			.flatMap((hertz) =>
				wrapped(
					cleanText(
						sheetRings(
							shownInstrument(show, one.id),
							ringsAt({ hertz, referenceHertz }),
							filterAt(hertz),
						),
					),
					PAPER_COLUMNS,
					'',
				),
			),
	);
}

function otherWarnings(show: Show, plan: Plan): string[] {
	const listed = new Set(plan.sections.map((section) => section.song));
	return plan.warnings
		.filter((warning) => warning.song === undefined || !listed.has(warning.song))
		.flatMap((warning) =>
			wrapped(cleanText(`! ${warningWords(show, warning)}`), PAPER_COLUMNS, '  '),
		);
}

/** Whole items on lines of at most `width` cells, two spaces between; an item too long is cut. */
function flowed(items: readonly string[], width: number): string[] {
	const lines: string[] = [];
	for (const item of items.map((one) => fitWidth(one, Math.min(width, displayWidth(one))))) {
		const last = lines.at(-1);
		if (last !== undefined && displayWidth(last) + 2 + displayWidth(item) <= width) {
			lines[lines.length - 1] = `${last}  ${item}`;
		} else lines.push(item);
	}
	return lines;
}
