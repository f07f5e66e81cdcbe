// Where we are and what comes next: song, cue point, time left; who starts the next one.

import { type CuePoint, cueIndex, cuePoints } from '../../machines/song.ts';
import { displayWidth, fitWidth } from '../base/display-width.ts';
import { dayTimeText } from '../base/show-clock.ts';
import { firstSong } from '../plan/demand/first-song.ts';
import { findItem, songOnNow } from '../session/find.ts';
import { segueItem } from '../session/segue.ts';
import type { SongItem } from '../session/session.ts';
import { playerName, songTitle } from '../showfile/shown-names.ts';
import { durationWords } from '../words/duration-words.ts';
import {
	atCue,
	CUE_THEN,
	elapsedWords,
	endsWords,
	leftWords,
	NOTHING,
	nextSongWords,
	PLACES,
	SEGUE,
	SET_ENDS,
	SONG_ENDS,
	START,
	showClockLabel,
	sinceWords,
	songPlaceWords,
	tempoWords,
} from '../words/stage.ts';
import { songFrom, songOf, songPlace } from './named-in-show.ts';
import { type Area, placeAt, type Row, rowWidth, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { showClock } from './show-clock-words.ts';

const LABEL_COLUMNS = 10;
const NARROW_LABEL_COLUMNS = 5;

/** Now, next, and with a third row what the song's notes say. */
export function nowSection(state: ScreenState, { columns, rows }: Area): Row[] {
	const isNarrow = columns < 60;
	const isNarrowest = columns < 30;
	const wordsAt = isNarrowest ? 0 : isNarrow ? NARROW_LABEL_COLUMNS : LABEL_COLUMNS;
	const row = (label: string, ...placed: readonly (readonly [number, Row])[]) =>
		placeAt(columns, [...(isNarrowest ? [] : [[0, [span(label, 'title')]] as const]), ...placed]);
	const clock = showClockLabel(showClock(state, state.nowMs));
	const isClockShown = columns >= 50;
	const { words, times } = nowParts(state, columns, wordsAt);
	return [
		row(PLACES.now, [wordsAt, words], [columns - times.length, [span(times)]]),
		row(
			PLACES.next,
			[wordsAt, nextWords(state, columns >= 100)],
			...(isClockShown ? [[columns - 14, [span(clock, 'dim')]] as const] : []),
		),
		row(PLACES.notes, [wordsAt, [span(notesText(state), 'dim')]]),
	].slice(0, rows);
}

/** The longest times beside which the words are whole; what to say now is needed more than how long it has gone on. */
function nowParts(state: ScreenState, columns: number, wordsAt: number) {
	const left = fitWidth(leftText(state), 12);
	const withClock = `${left} ${dayTimeText(state.nowMs, state.dayOffsetMinutes)}`;
	const allTimes =
		columns >= 70
			? [`${fitWidth(elapsedText(state), 14, { align: 'right' })} ${withClock}`, withClock]
			: [columns < 30 ? fitWidth(leftNumber(state), 6) : fitWidth(leftText(state), 11)];
	const parts = allTimes.map((times) => ({
		times,
		words: nowWords(state, columns - times.length - wordsAt - 1),
	}));
	const whole = parts.find(
		({ times, words }) => rowWidth(words) < columns - times.length - wordsAt,
	);
	const hasSay = pointNow(state)?.say != null;
	return (hasSay ? (whole ?? parts.at(-1)) : parts[0]) ?? { times: '', words: [] };
}

/** What is on, in words: the song and its cue point, or what stands between songs. */
function nowWords(state: ScreenState, columns: number): Row {
	const { session } = state;
	const song = session.song === null ? null : songFrom(session, session.current);
	if (song !== null) {
		return songWords(state, song, columns);
	}
	const since = session.phaseSinceMs === null ? 0 : (state.nowMs - session.phaseSinceMs) / 1000;
	const waited = span(sinceWords(since));
	switch (session.phase.value) {
		case 'before':
			return [span(START.before, 'bright')];
		case 'interval':
			return [span(START.interval, 'bright'), waited];
		case 'encore':
			return [span(START.encore, 'bright'), waited];
		case 'over':
			return [span(START.over, 'bright')];
		case 'packed':
			return [span(START.packed, 'bright')];
		default:
			return [span(START.between, 'bright'), waited];
	}
}

/** Where room is short, how many songs there are goes first, then what to say, then the end of the title. */
function songWords(state: ScreenState, { key, song }: SongItem, columns: number): Row {
	const { session } = state;
	const { place, of } = songPlace(session, key);
	const point = pointNow(state);
	const title = songTitle(session.show, song);
	const at = span(point?.at ?? '', 'bright');
	const say = span(point?.say == null ? '' : `  ${point.say}`);
	const whole: Row = [span(`${songPlaceWords(place, of)}  ${title}  `), at, say];
	// At its start, with nothing to say, the title is what there is to read.
	const isAtStart = session.song !== null && cueIndex(session.song) === 0;
	if (rowWidth(whole) <= columns || (isAtStart && point?.say == null)) return whole;
	const number = `${place} `;
	const room = Math.max(4, columns - number.length - 2 - rowWidth([at]));
	const cut = displayWidth(title) > room ? fitWidth(title, room) : title;
	return [span(`${number}${cut}  `), at, say];
}

/** What comes: the next cue point and the song after, or the next song with who starts it. */
function nextWords(state: ScreenState, hasSay: boolean): Row {
	const { session } = state;
	const { show } = session;
	const cue = pointNext(state);
	const coming = findItem(session, session.next);
	const song = songFrom(session, session.next);
	const isOn = session.song !== null;
	const on = songOnNow(session);
	// Straight on is one word; else what comes before the next song stands before it.
	const isSegue = cue === null && on !== null && segueItem(session, on.item) !== null;
	const ahead = isSegue ? [span(SEGUE)] : [span(cue?.at ?? SONG_ENDS), span(CUE_THEN, 'dim')];
	const cueWords = isOn ? ahead : [];
	const say = cue?.say == null || !hasSay ? [] : [span(atCue(cue.at, cue.say), 'dim')];
	if (song === null) {
		if (!isOn) return [span(NOTHING)];
		return cue === null ? [span(SET_ENDS)] : [...cueWords, span(SET_ENDS), ...say];
	}
	const { place } = songPlace(session, song.key);
	const known = songOf(show, song.song);
	const intervalSeconds = isOn && coming?.kind === 'interval' ? coming.seconds : null;
	const words = nextSongWords({
		place,
		title: songTitle(show, song.song),
		intervalSeconds,
		isEncore: song.isEncore && !isOn,
		starter: known?.starts == null ? null : playerName(show, known.starts),
		gapSeconds: intervalSeconds === null && !isSegue ? song.gapSeconds : null,
		count: known?.count ?? null,
	});
	return [...cueWords, span(words), ...say];
}

/** The cue point we are at, or null between songs. */
export function pointNow(state: ScreenState): CuePoint | null {
	return pointAt(state, 0);
}

/** The next cue point of the song that is on, or null when there is none. */
export function pointNext(state: ScreenState): CuePoint | null {
	return pointAt(state, 1);
}

function pointAt({ session }: ScreenState, ahead: number): CuePoint | null {
	const index = session.song === null ? null : cueIndex(session.song);
	const item = songFrom(session, session.current);
	const song = item === null ? null : songOf(session.show, item.song);
	if (index === null || song === null) return null;
	return cuePoints(song)[index + ahead] ?? null;
}

type Times = {
	readonly elapsed: number;
	readonly length: number | null;
	readonly left: number | null;
};

function songTimes(state: ScreenState): Times | null {
	const { session, plan, nowMs } = state;
	const item = session.song === null ? null : songFrom(session, session.current);
	const run = item?.runs[item.runs.length - 1];
	if (item === null || run === undefined) return null;
	const elapsed = (nowMs - run.beganAtMs) / 1000;
	const length = songOf(session.show, item.song)?.lengthSeconds ?? null;
	const last = firstSong(plan.sections).at(-1);
	const planned = last?.item === item.key ? (last.endMs - nowMs) / 1000 : null;
	return { elapsed, length, left: length === null ? planned : length - elapsed };
}

/** Seconds until what is on is over or begins: song, interval, the start of the show. */
function secondsLeft(state: ScreenState): number | null {
	const { session, nowMs } = state;
	if (session.song !== null) return songTimes(state)?.left ?? null;
	// Past it, nobody knows how long it has yet to go.
	if (session.phase.value === 'before') {
		return state.zeroMs < nowMs ? null : (state.zeroMs - nowMs) / 1000;
	}
	if (session.phase.value !== 'interval' || session.phaseSinceMs === null) return null;
	const at = session.list.findIndex((one) => one.key === session.next);
	const interval = [session.list[at], session.list[at - 1]].find((one) => one?.kind === 'interval');
	if (interval?.kind !== 'interval') return null;
	return interval.seconds - (nowMs - session.phaseSinceMs) / 1000;
}

function leftNumber(state: ScreenState): string {
	const left = secondsLeft(state);
	return left === null ? '' : fitWidth(durationWords(left), 6, { align: 'right' });
}

function leftText(state: ScreenState): string {
	const left = leftNumber(state);
	return left === '' ? '' : leftWords(left);
}

function elapsedText(state: ScreenState): string {
	const times = songTimes(state);
	return times === null ? '' : elapsedWords(times.elapsed, times.length);
}

function notesText({ session }: ScreenState): string {
	const item = songFrom(session, session.song === null ? session.next : session.current);
	const song = item === null ? null : songOf(session.show, item.song);
	if (song === null) return '';
	const tempo = song.tempo === null ? [] : [tempoWords(song.tempo)];
	return [...tempo, endsWords(song.ends), ...(song.notes === null ? [] : [song.notes])].join(', ');
}
