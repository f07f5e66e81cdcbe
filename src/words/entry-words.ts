// What happened, as a sentence a person reads in the log and in the report: one for each kind of
// entry. Apart from the report because the screen's log says the same words.

import { cleanText } from '../base/clean-text.ts';
import { minutesSeconds } from '../base/duration.ts';
import type { Entry } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import type { Session } from '../session/session.ts';
import { showDifferences } from '../session/show-differences.ts';
import type { Show } from '../showfile/show.ts';
import { keptShow } from '../showfile/show-record.ts';
import {
	packName,
	pedalName,
	playerName,
	shownInstrument,
	songTitle,
} from '../showfile/shown-names.ts';
import { backupWords } from './backup-for.ts';
import { faultEntryWords } from './fault.ts';
import {
	byWords,
	doneWords,
	earlyWords,
	handedWords,
	namedWords,
	packWornWords,
	tuningWords,
} from './given-words.ts';
import { ownTimeWords } from './own-times.ts';
import { batteryOf } from './rig.ts';
import { differenceWords } from './show-differences.ts';
import { toldWords } from './told-words.ts';

/** Before what a memo says, where it does not stand among memos. */
export const MEMO = 'memo: ';

/**
 * One sentence without its full stop for what the entry says; empty for what nobody needs to read. `session` is how things stood when it
 * was written: it knows the songs put into the list tonight, and the show as it was then.
 */
export function entryWords(entry: Entry, show: Show, session?: Session): string {
	return cleanText(wordsOf(entry, session?.show ?? show, session));
}

function wordsOf(entry: Entry, show: Show, session: Session | undefined): string {
	switch (entry.k) {
		case 'song-began':
			return `${itemWords(entry.item, show, session)} began`;
		case 'cue-reached':
			return `at ${pointWords(entry.index, show, session)}`;
		case 'song-ended':
			return endedWords(entry, show, session);
		case 'next-chosen':
			return nextWords(entry, show, session);
		case 'show-read-again':
			return readAgainWords(entry, session);
		case 'song-moved':
			return `${itemWords(entry.item, show, session)} moved ${placeWords(entry, show, session).replace(/^at the end/, 'to the end')}`;
		case 'song-inserted':
			return `${songTitle(show, entry.song)} added ${placeWords(entry, show, session)}`;
		case 'song-dropped':
			return `${itemWords(entry.item, show, session)} dropped`;
		case 'song-restored':
			return `${itemWords(entry.item, show, session)} added again`;
		case 'named-tonight':
			return `${itemWords(entry.item, show, session)} tonight: ${namedWords(entry, show)}`;
		case 'stayed':
			return stayedWords(entry, show, session);
		case 'handed-over':
			return `${handedWords(entry, show)}${packWornWords(entry, show, session)}${byWords(entry, session)}`;
		case 'hand-over-corrected':
			return `corrected: ${handedWords(entry, show)} all along${packWornWords(entry, show, session)}`;
		case 'came-back':
			return `${shownInstrument(show, entry.instrument)} back on the rack`;
		case 'made-ready':
			return `${shownInstrument(show, entry.instrument)}${entry.isEarly ? earlyWords(entry) : ` ready${doneWords(entry)}`}`;
		case 'string-broke':
			return `string break on ${shownInstrument(show, entry.instrument)}${entry.player === null ? '' : `, ${playerName(show, entry.player)}`}`;
		case 'played-on':
			return 'played on';
		case 'incident-noted':
			return `incident ${(session?.incidents.length ?? 0) + 1} noted`;
		case 'incident-described':
			return `incident ${incidentNumber(entry.incident, session)}: ${describedWords(entry)}`;
		case 'memo-written':
			return `${MEMO}${entry.words}`;
		case 'found-as':
			return (
				inHandsWords(entry, show, session) ??
				`${shownInstrument(show, entry.instrument)}${tuningWords(entry, entry.tuning ? ' is in ' : ' has ')} (corrected)`
			);
		case 'put-aside':
			return `${shownInstrument(show, entry.instrument)} out tonight${entry.fault === null ? '' : `: ${entry.fault}`}`;
		case 'brought-back':
			return `${shownInstrument(show, entry.instrument)} back on the rack`;
		case 'staged':
			return `${shownInstrument(show, entry.instrument)} staged at the player's place`;
		case 'all-doubted':
			return `the whole rack to be checked again${entry.celsius === undefined ? '' : `, stage at ${entry.celsius} °C`}`;
		case 'pedal-corrected':
			return `${playerName(show, entry.player)}'s ${pedalName(show, entry.player, entry.pedal)} is ${entry.on ? 'on' : 'off'} (corrected)`;
		case 'pedal-stuck':
			return `${playerName(show, entry.player)}'s ${pedalName(show, entry.player, entry.pedal)} is stuck${stuckWords(entry, session)}`;
		case 'pedal-freed':
			return `${playerName(show, entry.player)}'s ${pedalName(show, entry.player, entry.pedal)} works again`;
		case 'pack-changed':
			return `${playerName(show, entry.player)} wears pack ${packName(show, entry.pack)}`;
		case 'pack-suspected':
			return `${playerName(show, entry.player)}'s pack ${packName(show, entry.pack)} is suspect`;
		case 'pack-cleared':
			return `pack ${packName(show, entry.pack)} is fine again`;
		case 'battery-changed':
			return `fresh battery in ${batteryOf(show, entry)}`;
		case 'fault-sought':
		case 'fault-tested':
		case 'fault-found':
		case 'fault-left':
			return faultEntryWords(entry, show, session);
		case 'time-changed':
			return `own time, ${ownTimeWords(entry.time, entry.seconds)}`;
		case 'show-ended':
			return 'the show was closed';
		case 'plan-told':
			return toldWords(entry, session);
		case 'night-opened':
			return 'the night was opened';
		case 'resumed':
			return `resumed after up to ${minutesSeconds(entry.seconds)} off`;
		case 'slept':
			return `the laptop slept for ${minutesSeconds(entry.seconds)}`;
		case 'clock-set':
			return `the laptop's clock was set ${entry.bySeconds < 0 ? 'back' : 'forward'} by ${minutesSeconds(Math.abs(entry.bySeconds))}`;
		case 'taken-back':
			return 'a step undone';
		case 'put-back':
			return 'a step redone';
	}
	// A new kind without words does not compile; this is one that a newer version of the program wrote.
	entry satisfies never;
	return `an entry that this version does not know (${(entry as { readonly k: string }).k})`;
}

/** Its place among all, from 1; `?` where it is not known what came before. */
function incidentNumber(id: RecordId, session: Session | undefined): string {
	const place = session?.incidents.findIndex((one) => one.id === id) ?? -1;
	return place < 0 ? '?' : String(place + 1);
}

const KIND_WORDS: ReadonlyMap<string, string> = new Map(
	Object.entries({
		'string-break': 'string break',
		'no-sound': 'no sound',
		'cuts-out': 'cuts out',
	}),
);

/** An incident's kind as a person says it: `string break`, never the record's own word. */
export function incidentKindWords(kind: string): string {
	return KIND_WORDS.get(kind) ?? kind;
}

/** A capo on what a player has in hands, which they moved themselves: nobody found anything. */
function inHandsWords(
	{ instrument, tuning, capo }: Extract<Entry, { k: 'found-as' }>,
	show: Show,
	session: Session | undefined,
): string | null {
	const holder = show.players.find(({ id }) => session?.players[id]?.holds === instrument);
	if (holder === undefined || tuning !== undefined || capo === undefined) return null;
	const fret = capo === 0 ? 'no capo' : `capo ${capo}`;
	return `${playerName(show, holder.id)} has ${fret} on ${shownInstrument(show, instrument)}`;
}

function itemWords(item: string, show: Show, session: Session | undefined): string {
	const listed = session?.list.find((one) => one.key === item);
	const found = listed ?? (session ? undefined : show.set[Number(item) - 1]);
	if (!found) return 'a song';
	return found.kind === 'interval' ? 'the interval' : songTitle(show, found.song);
}

function readAgainWords(
	{ show }: Extract<Entry, { k: 'show-read-again' }>,
	session: Session | undefined,
): string {
	const read = keptShow(show);
	const differences = session && read ? showDifferences(session, read) : [];
	return ['the show file was reloaded', ...differences.map(differenceWords)].join('; ');
}

type Place = { readonly before: string | null; readonly isEncore: boolean };

function placeWords({ before, isEncore }: Place, show: Show, session: Session | undefined): string {
	if (before === null) return isEncore ? 'at the end of the encore' : 'at the end';
	return `${isEncore ? 'in the encore, ' : ''}before ${itemWords(before, show, session)}`;
}

function pointWords(index: number, show: Show, session: Session | undefined): string {
	if (index === 0) return 'the start of the song';
	const item = session?.list.find((one) => one.key === session.current);
	const song = item?.kind === 'song' ? show.songs.find((one) => one.id === item.song) : undefined;
	return song?.cues[index - 1]?.at ?? `cue ${index}`;
}

function nextWords(
	{ item, inserted }: Extract<Entry, { k: 'next-chosen' }>,
	show: Show,
	session: Session | undefined,
): string {
	if (inserted === undefined) return `${itemWords(item ?? '', show, session)} is next`;
	const title = songTitle(show, inserted.song);
	return inserted.gapSeconds === undefined && inserted.before !== null
		? `${title} added in place of ${itemWords(inserted.before, show, session)}`
		: `${title} added as the next song`;
}

function stayedWords(
	{ item, player, instrument, capo }: Extract<Entry, { k: 'stayed' }>,
	show: Show,
	session: Session | undefined,
): string {
	const what =
		instrument === null ? 'keeps hands empty' : `keeps ${shownInstrument(show, instrument)}`;
	const forWhat = item === null ? '' : ` for ${itemWords(item, show, session)}`;
	const withCapo = tuningWords(capo === undefined ? {} : { capo }, ', ');
	const backup = session ? backupWords(session, { item, player, instrument }) : '';
	return `${playerName(show, player)} ${what}${forWhat}${withCapo}${backup}`;
}

function endedWords(
	{ how }: Extract<Entry, { k: 'song-ended' }>,
	show: Show,
	session: Session | undefined,
): string {
	const title = session?.current == null ? 'the song' : itemWords(session.current, show, session);
	return `${title} ${{ played: 'ended', 'cut-short': 'cut short', skipped: 'skipped' }[how]}`;
}

function describedWords(entry: Extract<Entry, { k: 'incident-described' }>): string {
	const string = entry.string === undefined ? [] : [`string ${entry.string}`];
	const kind = entry.kind === undefined ? [] : [incidentKindWords(entry.kind)];
	const words = entry.words ? [entry.words] : [];
	return [...string, ...kind, ...words].join(', ') || 'no details';
}

/** What it stays at, where it is known how the board was. */
function stuckWords(
	{ player, pedal }: Extract<Entry, { k: 'pedal-stuck' }>,
	session: Session | undefined,
): string {
	const believed = session?.boards[player]?.context.pedals[pedal];
	return believed === undefined ? '' : ` ${believed.on ? 'on' : 'off'}`;
}
