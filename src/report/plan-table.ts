// The plan as it is read on a phone held sideways: whether the night works, where it is tight, then song
// by song who gets what, whether the hand-overs fit, and the work for them.

import { cleanText } from '../base/clean-text.ts';
import { fitWidth } from '../base/display-width.ts';
import { minutesSeconds } from '../base/duration.ts';
import { tightPlaces } from '../plan/advice/tight-places.ts';
import type { SlotStandIns } from '../plan/backups/slot-stand-ins.ts';
import type { Plan, Section, Slot, StandIn, Work } from '../plan/plan.ts';
import { offsetWords } from '../showfile/instrument-strings.ts';
import type { Show } from '../showfile/show.ts';
import { instrumentName, playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { firstWithoutLength } from '../showfile/song-length.ts';
import { placeWords } from '../words/advice.ts';
import { backupFor } from '../words/backup-for.ts';
import { standInWords } from '../words/backup-reasons.ts';
import { findingWords } from '../words/findings.ts';
import { laterWords } from '../words/later-costs.ts';
import { mendOfRisk } from '../words/mends.ts';
import {
	BACKUP_TABLE,
	CUE,
	expectedClock,
	HANDS_EMPTY,
	keepsIt,
	MAYBE_BETTER,
	NO_BACKUP,
	nothingFor,
	PARTS,
	READY,
	roomWords,
	withCapo,
	workOnPaper,
} from '../words/paper.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { leftOutInShort, unplayableWords } from '../words/unplayable.ts';
import { warningWords } from '../words/warnings.ts';
import { assumedGap, isAssumed } from './assumed-gap.ts';
import { PAPER_COLUMNS, paperTable, wrapped } from './paper.ts';

/** Of the tight places these are worth reading before the rest. */
const MOST_TIGHT = 5;
/** With more left a place is not tight: common practice, no source. */
const TIGHT_SECONDS = 60;
const TITLE_COLUMNS = 24;
const CLOCK_COLUMNS = 8;
const ABOUT_COLUMNS = 4;
const PLAYER_COLUMNS = 8;
const THING_COLUMNS = 33;

export type PlanTold = {
	readonly plan: Plan;
	/** Whether the night works. */
	readonly sentence: string;
	readonly standIns: readonly SlotStandIns[];
};

/** Lines of at most 80 columns, the last one ended too. */
export function planTable(show: Show, { plan, sentence, standIns }: PlanTold): string {
	return [
		...wrapped(cleanText(sentence), PAPER_COLUMNS, ''),
		...(plan.isProved ? [] : [MAYBE_BETTER]),
		'',
		...wrapped(cleanText(show.title), PAPER_COLUMNS, ''),
		'',
		...part(PARTS.tight, tightLines(show, plan)),
		...plan.sections.flatMap((section) => sectionLines(show, { plan, standIns }, section)),
		'',
		...part(PARTS.backups, standInLines(show, standIns)),
		...part(PARTS.warnings, warningLines(show, plan)),
	]
		.map((line) => `${line.trimEnd()}\n`)
		.join('')
		.replace(/\n+$/, '\n');
}

function part(name: string, lines: readonly string[]): readonly string[] {
	return lines.length === 0 ? [] : [name, ...lines, ''];
}

function tightLines(show: Show, plan: Plan): readonly string[] {
	return tightPlaces(plan)
		.filter(({ spareSeconds }) => spareSeconds < TIGHT_SECONDS)
		.slice(0, MOST_TIGHT)
		.map((place) => cleanText(`  ${placeWords(show, place)}`))
		.flatMap((line) => wrapped(line.trim(), PAPER_COLUMNS, '  '));
}

/** A song, when it begins, the room before it; then a line for each player whose hands change. */
function sectionLines(
	show: Show,
	{ plan, standIns }: Pick<PlanTold, 'plan' | 'standIns'>,
	section: Section,
): readonly string[] {
	const slots = plan.slots.filter((slot) => slot.section === section);
	const changes = slots
		.filter(
			(slot) =>
				slot.isHandOver ||
				slot.isMissing ||
				slot.for !== null ||
				plan.capoMoves.some((move) => isOf(slot, move)),
		)
		.flatMap((slot) => [
			...changeLines(show, { plan, standIns }, slot),
			...offsetLines(show, slot),
		]);
	const emptied = plan.handOvers
		.filter((one) => one.section === section && one.instrument === null)
		.map(({ player }) => `     ${nameCell(show, player)} ${HANDS_EMPTY}`);
	const cue = section.point === 0 ? null : cueName(show, section);
	const wider = columnsForAbout(show, plan);
	const head = [
		fitWidth(cue === null ? String(section.position) : '', 3, { align: 'right' }),
		fitWidth(cleanText(cue ?? songTitle(show, section.song)), TITLE_COLUMNS - wider),
		fitWidth(
			expectedClock(show, {
				seconds: section.startMs / 1000,
				isAbout: isAbout(show, plan, section),
			}),
			CLOCK_COLUMNS + wider,
			{ align: 'right' },
		),
		roomOf(plan, section),
	].join(' ');
	return [head, ...changes, ...emptied];
}

/** `about` takes its room from the titles and from what is played, of all lines alike. */
function columnsForAbout(show: Show, plan: Plan): number {
	return firstWithoutLength(show, plan.sections) === null ? 0 : ABOUT_COLUMNS;
}

/** Whether it comes behind a song whose length nobody gave. */
function isAbout(show: Show, plan: Plan, { position }: Section): boolean {
	const first = firstWithoutLength(show, plan.sections);
	return first !== null && position > first;
}

function isOf(slot: Slot, move: { readonly section: Section; readonly player: string }): boolean {
	return move.section === slot.section && move.player === slot.player;
}

function cueName(show: Show, { song, point }: Section): string {
	return show.songs.find(({ id }) => id === song)?.cues[point - 1]?.at ?? CUE;
}

function nameCell(show: Show, player: string): string {
	return fitWidth(cleanText(playerName(show, player).toUpperCase()), PLAYER_COLUMNS);
}

/** The gap, and what its hand-overs leave of it. */
function roomOf({ handOvers }: Plan, section: Section): string {
	const given = handOvers.filter((one) => one.section === section && one.instrument !== null);
	return roomWords({
		gapSeconds: section.gapSeconds,
		handOvers: given.length,
		unfit: given.filter(({ fits }) => !fits).length,
		takenSeconds: given.reduce((sum, one) => sum + one.seconds, 0),
		place: section.point > 0 ? 'cue' : section.isAfterInterval ? 'after-interval' : null,
	});
}

/** Who has what, a line for each piece of work that is left for it, and what it stands in for. */
function changeLines(
	show: Show,
	{ plan, standIns }: Pick<PlanTold, 'plan' | 'standIns'>,
	slot: Slot,
): readonly string[] {
	const { section, player, instrument, tuning, capo, why } = slot;
	const who = `     ${nameCell(show, player)}`;
	if (instrument === null) {
		const [best] = standIns.find((one) => one.slot === slot)?.standIns ?? [];
		const other = best === undefined ? null : shownInstrument(show, best.instrument);
		return [
			`${who} ${cleanText(nothingFor(other, why === null ? '' : unplayableWords(show, why)))}`,
		];
	}
	const thing = `${shownInstrument(show, instrument)} ${shortTuning(show, tuning)}${withCapo(capo)}`;
	const work = plan.work.filter((one) => one.section === section && one.player === player);
	const move = plan.capoMoves.find((one) => isOf(slot, one));
	const [first = READY, ...more] = slot.isHandOver
		? work.map((one) => workWords(show, plan, one))
		: [keepsIt(move === undefined ? null : capo)];
	const columns = THING_COLUMNS - columnsForAbout(show, plan);
	const under = (words: string) =>
		`     ${fitWidth('', PLAYER_COLUMNS)} ${fitWidth(cleanText(words), columns)}`;
	const backup = slot.for === null ? [] : [backupFor(show, slot.for)];
	const below = Array.from({ length: Math.max(more.length, backup.length) }, (_, at) =>
		`${under(backup[at] ?? '')} ${more[at] ?? ''}`.trimEnd(),
	);
	return [`${who} ${fitWidth(cleanText(thing), columns)} ${first}`, ...below];
}

function offsetLines(show: Show, { instrument: id, tuning, player }: Slot): readonly string[] {
	const instrument = show.instruments.find((one) => one.id === id);
	const off = instrument ? offsetWords(show, { instrument, tuning, player }) : '';
	return off === '' ? [] : [`     ${fitWidth('', PLAYER_COLUMNS)} ${off}`];
}

function workWords(show: Show, plan: Plan, work: Work): string {
	const { job, seconds, beginByMs, shortSeconds } = work;
	return workOnPaper(show, {
		...{ job, seconds, shortSeconds, startBySeconds: beginByMs / 1000 },
		isAbout: isAbout(show, plan, work.section),
	});
}

/** The best for each hand-over, and how many more there are. */
function standInLines(show: Show, all: readonly SlotStandIns[]): readonly string[] {
	const rows = all.map(({ slot, standIns: [best, ...more], leftOut }) => [
		`${slot.section.position}`,
		playerName(show, slot.player),
		nameOf(show, slot.instrument ?? slot.named),
		best === undefined ? NO_BACKUP : nameOf(show, best.instrument),
		best === undefined ? '' : minutesSeconds(best.readyInSeconds),
		more.length === 0 ? '' : `+${more.length}`,
		best === undefined ? leftOutInShort(show, leftOut) : backupWords(show, best),
	]);
	return rows.length === 0 ? [] : paperTable(BACKUP_TABLE, rows);
}

function backupWords(show: Show, { later, why }: StandIn): string {
	return [...later.map((cost) => laterWords(show, cost)), standInWords(show, why)].join('; ');
}

function nameOf(show: Show, id: string | null): string {
	const slot = show.instruments.find((one) => one.id === id)?.slot?.toUpperCase() ?? '-';
	return id === null ? '' : `${slot} ${instrumentName(show, id)}`;
}

function warningLines(show: Show, plan: Plan): readonly string[] {
	const gaps = plan.warnings.flatMap((one) => (one.code === 'tight-gap' ? [one] : []));
	const noGap = assumedGap(show, gaps);
	const each = plan.warnings
		.filter((one) => noGap === null || one.code !== 'tight-gap' || !isAssumed(show, one))
		.map((one) => warningWords(show, one));
	const all =
		noGap === null ? each : [`${findingWords(show, noGap)} ${mendOfRisk(noGap)}`, ...each];
	return all.flatMap((words) => wrapped(cleanText(words), PAPER_COLUMNS, '  '));
}
