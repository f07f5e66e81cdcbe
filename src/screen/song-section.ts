// The song: what is on and how long it has left, what is to be pressed at the next cue, the boards, and what comes
// after it.

import { cueIndex } from '../../machines/song.ts';
import { displayWidth, fitWidth } from '../base/display-width.ts';
import { findItem, songOnNow } from '../session/find.ts';
import { segueItem } from '../session/segue.ts';
import type { SongItem } from '../session/session.ts';
import { playerName, songTitle } from '../showfile/shown-names.ts';
import {
	AHEAD,
	endsWords,
	gapOverWords,
	lastedWords,
	NOTHING,
	nextSongWords,
	PHASE,
	PLACES,
	SET_ENDS,
	SONG_ENDS,
	songPlaceWords,
	startsIn,
	startsWords,
	tempoWords,
} from '../words/stage.ts';
import { actsAhead, boardSection } from './board-section.ts';
import { songFrom, songOf, songPlace } from './named-in-show.ts';
import { type Area, placeAt, type Row, rowWidth, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { wallClock } from './show-clock-words.ts';
import { pointNext, pointNow } from './song-points.ts';
import {
	elapsedText,
	gapSeconds,
	intervalSeconds,
	leftNumber,
	leftText,
	startSeconds,
} from './song-times.ts';

const LABEL_COLUMNS = 10;
const NARROW_LABEL_COLUMNS = 5;
/** The times stay near the song's name: on a very wide screen the eye would lose the row. */
const WIDEST_ROW = 120;

export type SongArea = Area & { readonly boardRows: number };

/** What is on; with more rows the next cue, the boards, what comes after, and what the song's notes say. */
export function songSection(state: ScreenState, { columns, rows, boardRows }: SongArea): Row[] {
	const width = Math.min(columns, WIDEST_ROW);
	const at = columns < 30 ? 0 : columns < 60 ? NARROW_LABEL_COLUMNS : LABEL_COLUMNS;
	const row = (label: string, words: Row): Row =>
		placeAt(width, [...(at === 0 ? [] : [[0, [span(label, 'title')]] as const]), [at, words]]);
	const ahead = aheadOf(state);
	const [now = [], ...below] = [
		nowRow(state, width, at),
		row(PLACES.cue, cueWords(state, width - at)),
		row(ahead.label, [span(ahead.words)]),
		row(PLACES.notes, [span(notesText(state), 'dim')]),
	].slice(0, rows);
	const [cue, ...after] = below;
	return [
		...(rows > 0 ? [now] : []),
		...(cue === undefined ? [] : [cue]),
		...boardSection(state, { columns, rows: boardRows }),
		...after,
	];
}

/** The longest times beside which the words are whole; what to say now is needed more than how long it has gone on, and than the wall clock. */
function nowRow(state: ScreenState, columns: number, at: number): Row {
	const left = fitWidth(leftText(state), 12);
	const withClock = `${left} ${wallClock(state, state.nowMs)}`;
	const allTimes =
		columns >= 70
			? [
					`${fitWidth(elapsedText(state), 14, { align: 'right' })} ${withClock}`,
					withClock,
					leftText(state),
				]
			: [columns < 30 ? fitWidth(leftNumber(state), 6) : fitWidth(leftText(state), 11)];
	const parts = allTimes.map((times) => ({
		times,
		...onNow(state, columns - times.length - at - 1),
	}));
	const whole = parts.find(({ times, words }) => rowWidth(words) < columns - times.length - at);
	const hasSay = pointNow(state)?.say != null;
	const { times, label, words } = (hasSay ? (whole ?? parts.at(-1)) : parts[0]) ?? {
		...{ times: '', label: '', words: [] },
	};
	return placeAt(columns, [
		...(at === 0 ? [] : [[0, [span(label, 'title')]] as const]),
		[at, words],
		[columns - times.length, [span(times)]],
	]);
}

/** What is on, by its name: the song with its cue, or what stands between songs. */
function onNow(state: ScreenState, columns: number): { label: string; words: Row } {
	const { session } = state;
	const song = session.song === null ? null : songFrom(session, session.current);
	if (song !== null) return { label: PLACES.song, words: songWords(state, song, columns) };
	const { label, words } = PHASE[session.phase.value as keyof typeof PHASE] ?? PHASE.changeover;
	const starts = startSeconds(state);
	if (starts !== null) return { label, words: [span(startsIn(starts), 'bright')] };
	const since = session.phaseSinceMs === null ? 0 : (state.nowMs - session.phaseSinceMs) / 1000;
	const isWaiting = session.phase.value !== 'before' && session.phase.value !== 'packed';
	const gap = gapSeconds(state);
	const lasted = isWaiting ? lastedWords(since, intervalSeconds(state) ?? gap) : '';
	const over = gap === null ? '' : gapOverWords(since, gap);
	return { label, words: [span(words, 'bright'), span(lasted), span(over)] };
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

/** Where the next press leads and what is to be pressed on the boards there; then what is to be said. */
function cueWords(state: ScreenState, columns: number): Row {
	const cue = pointNext(state);
	const at = cue?.at ?? (state.session.song === null ? startOfNext(state) : SONG_ENDS);
	const room = columns - displayWidth(at) - 2;
	// At the end of a song nothing is pressed, unless the next one follows straight on.
	const on = songOnNow(state.session);
	const isLast = songFrom(state.session, state.session.next) === null;
	const isEnd =
		cue === null && (isLast || (on !== null && segueItem(state.session, on.item) === null));
	const acts = isEnd ? '' : actsAhead(state, room);
	const say = cue?.say == null ? '' : cue.say;
	const isBoth = displayWidth(acts) + displayWidth(say) + 2 <= room;
	return [span(`${at}  `), span(acts), span(isBoth && say !== '' ? `  ${say}` : '', 'dim')];
}

/** Between songs the next step starts one. */
function startOfNext({ session }: ScreenState): string {
	const song = songFrom(session, session.next);
	return song === null ? NOTHING : startsWords(songTitle(session.show, song.song));
}

/** What comes after what is on: a song, straight on or after an interval, as an encore; with who starts it. */
function aheadOf({ session }: ScreenState): { readonly label: string; readonly words: string } {
	const { show } = session;
	const coming = findItem(session, session.next);
	const song = songFrom(session, session.next);
	const on = songOnNow(session);
	if (song === null) return { label: AHEAD.next, words: on === null ? NOTHING : SET_ENDS };
	const isSegue = on !== null && segueItem(session, on.item) !== null;
	const interval = on !== null && coming?.kind === 'interval' ? coming.seconds : null;
	const { place } = songPlace(session, song.key);
	const known = songOf(show, song.song);
	const words = nextSongWords({
		place,
		title: songTitle(show, song.song),
		intervalSeconds: interval,
		starter: known?.starts == null ? null : playerName(show, known.starts),
		gapSeconds: on === null || interval !== null || isSegue ? null : song.gapSeconds,
		count: known?.count ?? null,
	});
	const isEncore = on !== null && song.isEncore && !on.item.isEncore;
	if (isSegue) return { label: AHEAD.segue, words };
	if (interval !== null) return { label: AHEAD.interval, words };
	return { label: isEncore ? AHEAD.encore : AHEAD.next, words };
}

function notesText({ session }: ScreenState): string {
	const item = songFrom(session, session.song === null ? session.next : session.current);
	const song = item === null ? null : songOf(session.show, item.song);
	if (song === null) return '';
	const tempo = song.tempo === null ? [] : [tempoWords(song.tempo)];
	return [...tempo, endsWords(song.ends), ...(song.notes === null ? [] : [song.notes])].join(', ');
}
