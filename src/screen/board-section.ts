// What each board run from offstage is set to now, and what the next point of the song asks of it.

import { boardAfterCue } from '../../machines/rig.ts';
import { cuePoints } from '../../machines/song.ts';
import { displayWidth } from '../base/display-width.ts';
import { orderChange } from '../rig/rig-path.ts';
import type { Pedal, PedalStates } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { boardPresses } from '../words/board-presses.ts';
import { orderWords, settingWords } from '../words/rig.ts';
import {
	asCorrected,
	BOARD,
	BOARD_AT,
	BOARD_NEXT,
	BOARD_NOW,
	boardAt,
	boardThen,
	firstThen,
	listOff,
	listOn,
	NO_STOMP,
	PLACES,
	SET_ENDS,
	stompWords,
	stuckLabel,
	wantedOfStuck,
} from '../words/stage.ts';
import { playerLabel, songFrom, songOf } from './named-in-show.ts';
import { type Area, cutRow, fillRow, placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { pointNext, pointNow } from './song-points.ts';

/** Two lines for each board where there is room, else one, side by side where even that is too much. */
export function boardSection(state: ScreenState, { columns, rows }: Area): Row[] {
	const boards = Object.entries(state.session.show.boards);
	if (boards.length === 0 || rows < 1) return [];
	if (rows >= boards.length * 2) {
		return boards.flatMap(([player, pedals]) => twoLines(state, { player, pedals }, columns));
	}
	const across = Math.ceil(boards.length / rows);
	const width = Math.floor(columns / across);
	const lines = boards.map(([player, pedals]) =>
		oneLine(state, { player, pedals }, width - (across > 1 ? 2 : 1)),
	);
	return Array.from({ length: Math.ceil(lines.length / across) }, (_, row) =>
		cutRow(
			lines.slice(row * across, row * across + across).flatMap((one) => fillRow(one, width)),
			columns,
		),
	);
}

type Board = { readonly player: string; readonly pedals: readonly Pedal[] };

const LABEL_COLUMNS = 10;

function twoLines(state: ScreenState, board: Board, columns: number): Row[] {
	const label = span(playerLabel(state.session.show, board.player), 'title');
	const next = nextBoard(state, board.player);
	const at = columns < 60 ? 18 : columns < 100 ? 26 : 34;
	return [
		placeAt(columns, [
			[0, [label]],
			[LABEL_COLUMNS, [span(BOARD_NOW, 'dim'), span(pointNow(state)?.at ?? '')]],
			[at, [span(nowWords(state, board, columns - at))]],
		]),
		placeAt(columns, [
			[0, [span(PLACES.board, 'title')]],
			[LABEL_COLUMNS, [span(BOARD_AT, 'dim'), span(next.at)]],
			[at, [span(nextWords(state, { board, next }, columns - at))]],
		]),
	];
}

/** Below this what the next point asks has no place of its own. */
const LEAST_NEXT_COLUMNS = 50;

function oneLine(state: ScreenState, board: Board, columns: number): Row {
	const next = nextBoard(state, board.player);
	const name = playerLabel(state.session.show, board.player);
	const whole = `${name} ${PLACES.board}`;
	const label: Row = [span(displayWidth(whole) < LABEL_COLUMNS ? whole : name, 'title')];
	if (columns < LEAST_NEXT_COLUMNS) {
		return placeAt(columns, [
			[0, label],
			[LABEL_COLUMNS, [span(shortWords(state, { board, next }, columns - LABEL_COLUMNS))]],
		]);
	}
	const place = LABEL_COLUMNS + Math.floor((columns - LABEL_COLUMNS) * 0.42);
	const now = nowWords(state, board, place - LABEL_COLUMNS - 1);
	// Words that fill their place push what is asked next on, or both would read as one sentence.
	const at = Math.max(place, LABEL_COLUMNS + displayWidth(now) + 2);
	const room = columns - at;
	const askedAfter = (label: string) =>
		nextWords(state, { board, next }, room - displayWidth(label));
	// The point's name stands in the row of the cue, too.
	const long = boardAt(next.at);
	const isWhole = displayWidth(long) + displayWidth(askedAfter(long)) <= room;
	const point = isWhole ? long : BOARD_NEXT;
	const asked = askedAfter(point);
	return placeAt(columns, [
		[0, label],
		[LABEL_COLUMNS, [span(now)]],
		[at, [span(point, 'dim'), span(asked)]],
	]);
}

/**
 * `all off; at Ch2: DRIVE, DELAY on` where the next point asks something else and both fit; else how it is now, since
 * what is to be pressed is said with the cue.
 */
function shortWords(
	state: ScreenState,
	{ board, next }: { readonly board: Board; readonly next: NextBoard },
	columns: number,
): string {
	const now = nowTexts(state, board);
	const then = next.board === null ? [] : nextTexts(state, { board, next });
	if (then.length === 0 || then[0] === now[0]) return fitting(now, columns);
	const texts = then.flatMap((asked) => now.flatMap((is) => boardThen(is, next.at, asked)));
	return texts.find((text) => displayWidth(text) <= columns) ?? fitting(now, columns);
}

function nowWords(state: ScreenState, board: Board, columns: number): string {
	return fitting(nowTexts(state, board), columns);
}

function nowTexts(state: ScreenState, { player, pedals }: Board): readonly string[] {
	const board = state.session.boards[player];
	if (board === undefined) return [''];
	const isCorrected = board.value === 'corrected';
	const { pedals: states, stuck } = board.context;
	const tempo = tempoOf(state, state.session.current);
	return pedalWords(pedals, { states, stuck, tempo }).map((words) =>
		asCorrected(words, isCorrected),
	);
}

type NextBoard = {
	readonly at: string;
	readonly board: PedalStates | null;
	/** Of the song that it is in. */
	readonly tempo: number | null;
	/** What of that song's order of pedals is another one than now. */
	readonly order: readonly string[];
};

function nextWords(
	state: ScreenState,
	asked: { readonly board: Board; readonly next: NextBoard },
	columns: number,
): string {
	return fitting(nextTexts(state, asked), columns);
}

/** The board that will stand there: what is stuck does not follow what the point asks, and both are said. */
function nextTexts(
	{ session }: ScreenState,
	{ board: { player, pedals }, next }: { readonly board: Board; readonly next: NextBoard },
): readonly string[] {
	const now = session.boards[player]?.context;
	if (now === undefined) return [''];
	// Where the point says nothing of this board, it stays: the whole of it is said again.
	const then = next.board === null ? now.pedals : boardAfterCue(now, next.board);
	const { stuck } = now;
	return pedalWords(pedals, { states: then, asked: next.board, stuck, tempo: next.tempo });
}

/** Beats a minute of the song at an item of the list; null where it has none. */
function tempoOf({ session }: ScreenState, item: string | null): number | null {
	const song = songFrom(session, item);
	return song === null ? null : (songOf(session.show, song.song)?.tempo ?? null);
}

/** The board that the next point asks for; null where it says nothing of this one. */
function nextBoard(state: ScreenState, player: string): NextBoard {
	const cue = pointNext(state);
	const { show, current, next } = state.session;
	const tempo = tempoOf(state, cue === null ? next : current);
	if (cue !== null) return { at: cue.at, board: cue.boards[player] ?? null, tempo, order: [] };
	const item = songFrom(state.session, next);
	const song = item === null ? null : songOf(show, item.song);
	if (song === null) return { at: SET_ENDS, board: null, tempo, order: [] };
	const on = songFrom(state.session, current)?.song ?? null;
	const changed = orderChange(show, { player, from: on, to: song.id });
	const order = changed === null ? [] : [orderWords(changed)];
	return { at: song.title, board: cuePoints(song)[0]?.boards[player] ?? null, tempo, order };
}

/**
 * What is to be pressed for the next point, as much as fits: `STOMP +DELAY −BOOST`, with several boards each
 * player's name before theirs; empty where the show has no board.
 */
export function actsAhead(state: ScreenState, columns: number): string {
	const { boards } = state.session.show;
	const players = Object.keys(boards);
	if (players.length === 0) return '';
	const texts = ([true, false] as const).map((hasSettings) => {
		const acts = players.flatMap((player) => {
			const one = boardActs(state, { player, pedals: boards[player] ?? [] }, hasSettings);
			if (one.length === 0) return [];
			const name = players.length > 1 ? [playerName(state.session.show, player)] : [];
			return [[...name, ...one].join(' ')];
		});
		return acts.length === 0 ? NO_STOMP : stompWords(acts.join(', '));
	});
	return fitting(texts, columns);
}

/** Each pedal that is pressed, or set to something else. */
function boardActs(
	state: ScreenState,
	{ player, pedals }: Board,
	hasSettings: boolean,
): readonly string[] {
	const now = state.session.boards[player]?.context;
	const { board: next, tempo, order } = nextBoard(state, player);
	if (now === undefined) return order;
	const from = tempoOf(state, state.session.current);
	const acts = boardPresses(
		pedals,
		{
			was: now.pedals,
			is: next === null ? now.pedals : boardAfterCue(now, next),
			stuck: now.stuck,
			tempo: { from, to: tempo },
		},
		hasSettings,
	);
	return acts.length === 0 ? order : [...order.map(firstThen), ...acts];
}

/** The whole board in words, from all that is known to the names of what is on and what is stuck. */
function pedalWords(
	pedals: readonly Pedal[],
	{
		states: board,
		asked = null,
		stuck,
		tempo,
	}: {
		readonly states: PedalStates;
		/** What a point asks for; null where nothing is asked. */
		readonly asked?: PedalStates | null;
		readonly stuck: readonly string[];
		readonly tempo: number | null;
	},
): readonly string[] {
	const isOn = ({ id }: Pedal) => board[id]?.on === true;
	const isStuck = ({ id }: Pedal) => stuck.includes(id);
	const on = pedals.filter((pedal) => isOn(pedal) && !isStuck(pedal));
	const still = pedals.filter(isStuck);
	if (on.length + still.length === 0) return [BOARD.allOff];
	const withSettings = (some: readonly Pedal[], wordsOf: WordsOf) =>
		some.map((pedal) => {
			const label = stuckLabel(pedal.name, isStuck(pedal));
			const settings = isOn(pedal) ? Object.entries(board[pedal.id]?.settings ?? {}) : [];
			// What does not switch keeps the time that it has, whatever the song's tempo.
			const at = isStuck(pedal) ? null : tempo;
			const words = settings
				.map(([key, value]) => wordsOf(key, value, at))
				.filter((one) => one !== '');
			return words.length === 0 ? label : `${label} (${words.join(', ')})`;
		});
	const rest = on.length + still.length < pedals.length ? [BOARD.restOff] : [];
	const listed = (some: readonly string[]) => (some.length === 0 ? [] : [listOn(some.join(', '))]);
	// Each with its own word: a list that ends in "off" would be read as off from its beginning.
	const stuckWords = (wordsOf: WordsOf) =>
		still.map((pedal) => {
			const wanted = asked === null ? isOn(pedal) : asked[pedal.id]?.on === true;
			const isAsWanted = wanted === isOn(pedal);
			const words = isAsWanted
				? withSettings([pedal], wordsOf).join('')
				: stuckLabel(pedal.name, false);
			const said = wanted ? listOn(words) : listOff(words);
			return isAsWanted ? said : wantedOfStuck(said, isOn(pedal));
		});
	const parts = (wordsOf: WordsOf) => ({
		on: withSettings(on, wordsOf),
		stuck: stuckWords(wordsOf),
	});
	const whole = parts((key, value, at) => `${key} ${settingWords(value, at)}`);
	// `dotted eighth 433 ms` alone still says what a name without it does not.
	const values = parts((_, value, at) => settingWords(value, at));
	const names = parts(() => '');
	return [
		...[whole, values].flatMap((said) => [
			[...listed(said.on), ...said.stuck, ...rest],
			[...listed(said.on), ...said.stuck],
		]),
		...(still.length === 0 ? [values.on] : []),
		[...listed(names.on), ...names.stuck, ...rest],
		[...listed(names.on), ...names.stuck],
		// Where not all fits, what does not switch is read first.
		still.length === 0 ? names.on : [...names.stuck, ...listed(names.on)],
	].map((one) => one.join(', '));
}

type WordsOf = (key: string, value: string, tempo: number | null) => string;

/** The first of these texts that fits, else the last. */
function fitting(texts: readonly string[], columns: number): string {
	return texts.find((text) => displayWidth(text) <= columns) ?? texts.at(-1) ?? '';
}
