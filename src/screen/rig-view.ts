// The rig as it stands: each player's sound path with what of it is not to be trusted, boards now and next and
// what lies between, batteries by hours left, who wears which pack, and what is wrong with the loads.

import { boardAfterCue } from '../../machines/rig.ts';
import { cuePoints } from '../../machines/song.ts';
import { amplifierLoads } from '../rig/amplifier-loads.ts';
import { type BatteryLeft, isShort } from '../rig/battery-hours.ts';
import { batteriesNow } from '../rig/battery-now.ts';
import { checkRig } from '../rig/check-rig.ts';
import {
	type Doubt,
	orderChange,
	type PathPiece,
	pathOf,
	playersWithRig,
	songOrder,
} from '../rig/rig-path.ts';
import { outputLoads } from '../rig/supply-loads.ts';
import { wearersOf } from '../session/shared-packs.ts';
import type { PedalStates, Show } from '../showfile/show.ts';
import { packName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import {
	batteryOf,
	boardDifference,
	drivenWords,
	hourWords,
	milliampWords,
	ohmWords,
	orderWords,
	PART_WORDS,
	partInWords,
	partWords,
	RIG_VIEW,
	settingWords,
	suppliedWords,
	wirelessWords,
} from '../words/rig.ts';
import { rigFindingInShort, rigFindingWords } from '../words/rig-findings.ts';
import { BOARD, listOff, listOn, SET_ENDS, stuckLabel, wantedOfStuck } from '../words/stage.ts';
import { helpPart } from '../words/views.ts';
import { playerLabel, songFrom, songOf } from './named-in-show.ts';
import {
	type Area,
	beside,
	cutRow,
	fillRows,
	placeAt,
	type Row,
	rowWidth,
	type Span,
	span,
	wrapWords,
} from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { pointNext, pointNow } from './song-points.ts';

const INDENT = 2;
const LABEL_COLUMNS = 10;
/** From this width on batteries, packs and loads stand beside the players. */
const BESIDE_COLUMNS = 150;
const BESIDE_PLAYERS = 64;
const HOUR_MS = 3_600_000;
/** A sentence of what is wrong on so many rows at most. */
const SENTENCE_ROWS = 3;

/** What is wrong with what drives what: a fact of the show file, not of the night. */
const LOADS = new Set([
	'amp-load',
	'amp-no-load',
	'cab-power',
	'supply-load',
	'supply-volts',
	'supply-centre',
	'supply-current',
	'shared-channel',
]);

/** No more rows than these, however narrow the screen. */
export function mostRigRows(show: Show): number {
	return 5 * playersWithRig(show).length + 2 * checkRig(show).length + show.packs.length + 6;
}

/** The view; from the picked row on where not all fits. */
export function rigPane(state: ScreenState, { columns, rows }: Area): Row[] {
	const room = Math.max(1, rows - 1);
	const spaced = rigLines(state, columns, true);
	const lines = spaced.length <= room ? spaced : rigLines(state, columns, false);
	const first = Math.min(state.picked, Math.max(0, lines.length - room));
	const isPart = lines.length > room;
	const how = isPart
		? helpPart(first + 1, Math.min(lines.length, first + room), lines.length).trim()
		: '';
	const heading = placeAt(columns, [
		[INDENT, [span(RIG_VIEW.rig, 'title')]],
		[INDENT + LABEL_COLUMNS, [span(how, 'dim')]],
	]);
	return fillRows([heading, ...lines.slice(first, first + room)], rows);
}

function rigLines(state: ScreenState, columns: number, isSpaced: boolean): readonly Row[] {
	const batteries = batteriesNow(state.session, state);
	const endsInHours = Math.max(
		0,
		((state.plan.sections.at(-1)?.endMs ?? state.nowMs) - state.nowMs) / HOUR_MS,
	);
	const power = { batteries, endsInHours };
	const joined = (parts: readonly (readonly Row[])[]): readonly Row[] =>
		parts
			.filter((rows) => rows.length > 0)
			.flatMap((rows, at) => (at > 0 && isSpaced ? [[], ...rows] : rows));
	if (columns < BESIDE_COLUMNS) {
		return joined([
			...playerParts(state, power, columns),
			...gearParts(state, power, { columns, isListed: false }),
		]);
	}
	const left = columns - BESIDE_PLAYERS;
	return beside(
		joined(playerParts(state, power, left - INDENT)),
		joined(gearParts(state, power, { columns: BESIDE_PLAYERS, isListed: true })),
		left,
	);
}

type PowerNow = { readonly batteries: readonly BatteryLeft[]; readonly endsInHours: number };

function labelled(label: Span | null, words: Row, columns: number): Row {
	return placeAt(columns, [
		[INDENT, label === null ? [] : [label]],
		[INDENT + LABEL_COLUMNS, words],
	]);
}

// Players: the way, then the board.

function playerParts(
	state: ScreenState,
	power: PowerNow,
	columns: number,
): readonly (readonly Row[])[] {
	const { show } = state.session;
	return playersWithRig(show).map((player) => [
		labelled(
			span(playerLabel(show, player), 'title'),
			pathRow(state, { player, power, columns: columns - INDENT - LABEL_COLUMNS }),
			columns,
		),
		...boardLines(state, player, columns),
	]);
}

/** The song whose order the pedals are to stand in: the one that is on, else the next. */
function songNow({ session }: ScreenState): string | null {
	const key = session.song === null ? session.next : session.current;
	return songFrom(session, key)?.song ?? null;
}

function pathRow(
	state: ScreenState,
	{
		player,
		power,
		columns,
	}: { readonly player: string; readonly power: PowerNow; readonly columns: number },
): Row {
	const { session } = state;
	const order = songOrder(session.show, songNow(state), player);
	const pieces = pathOf(session, { player, order, ...power });
	const rows = (['whole', 'named', 'short', 'bare'] as const).map((how) =>
		pieces
			// A cord that nothing is wrong with is missed least.
			.filter((one) => how !== 'bare' || !isSoundCord(one))
			.flatMap(
				(piece, at): Row => [
					...(at === 0 ? [] : [span(' > ', 'dim')]),
					...pieceSpans(session.show, piece, how),
				],
			),
	);
	return rows.find((row) => rowWidth(row) <= columns) ?? cutRow(rows.at(-1) ?? [], columns);
}

type HowLong = 'whole' | 'named' | 'short' | 'bare';

function isSoundCord(piece: PathPiece): boolean {
	return piece.kind === 'part' && piece.part.kind === 'cord' && piece.doubts.length === 0;
}

function pieceSpans(show: Show, piece: PathPiece, how: HowLong): Row {
	if (piece.kind === 'board') {
		const isShort = how === 'short' || how === 'bare';
		const shown = piece.pedals.filter(({ doubts }) => !isShort || doubts.length > 0);
		if (shown.length === 0) return [span(PART_WORDS.board)];
		return shown.flatMap(
			({ pedal, doubts }, at): Row => [
				...(at === 0 ? [] : [span(' > ', 'dim')]),
				doubted(pedal.name, doubts),
			],
		);
	}
	return [doubted(pieceWords(show, piece, how), piece.doubts)];
}

function pieceWords(
	show: Show,
	piece: Exclude<PathPiece, { kind: 'board' }>,
	how: HowLong,
): string {
	if (piece.kind === 'instrument')
		return piece.instrument === null
			? RIG_VIEW.noInstrument
			: shownInstrument(show, piece.instrument);
	if (piece.kind === 'pack') return `${PART_WORDS.pack} ${packName(show, piece.pack)}`;
	const { part } = piece;
	return how === 'whole' ? partWords(part) : how === 'named' ? partInWords(part) : part.name;
}

function doubted(words: string, doubts: readonly Doubt[]): Span {
	if (doubts.length === 0) return span(words);
	return span([words, ...doubts.map((one) => RIG_VIEW.doubts[one])].join(' '), 'unready');
}

function boardLines(state: ScreenState, player: string, columns: number): readonly Row[] {
	const { session } = state;
	const { show } = session;
	const board = session.boards[player]?.context;
	if (board === undefined) return [];
	const on = session.current === null ? null : songFrom(session, session.current);
	const here = on === null ? null : songOf(show, on.song);
	const cue = pointNext(state);
	const nextItem = songFrom(session, session.next);
	const nextSong = nextItem === null ? null : songOf(show, nextItem.song);
	const goal = cue !== null ? here : nextSong;
	const asked =
		cue !== null
			? (cue.boards[player] ?? null)
			: nextSong === null
				? null
				: (cuePoints(nextSong)[0]?.boards[player] ?? null);
	const then = asked === null ? board.pedals : boardAfterCue(board, asked);
	const nextAt = cue?.at ?? nextSong?.title ?? SET_ENDS;
	const usual = show.boards[player] ?? [];
	// Between songs the board is as the last one left it.
	const order = orderChange(show, {
		player,
		from: here?.id ?? null,
		to: goal?.id ?? here?.id ?? null,
	});
	const changes = [
		...(order === null ? [] : [orderWords(order)]),
		...boardDifference(usual, {
			was: board.pedals,
			is: then,
			stuck: board.stuck,
			tempo: { from: here?.tempo ?? null, to: goal?.tempo ?? null },
		}),
	];
	const words = columns - INDENT - LABEL_COLUMNS;
	const line = (label: string, text: string, style: 'plain' | 'bright' = 'plain') =>
		labelled(span(`  ${label}`, 'dim'), cutRow([span(text, style)], words), columns);
	const stateOf = (states: PedalStates, asked: PedalStates | null, tempo: number | null) =>
		wholeBoard(usual, { states, asked, stuck: board.stuck, tempo });
	return [
		line(pointNow(state)?.at ?? RIG_VIEW.now, stateOf(board.pedals, null, here?.tempo ?? null)),
		line(nextAt, stateOf(then, asked, goal?.tempo ?? null)),
		line(
			RIG_VIEW.change,
			changes.length === 0 ? RIG_VIEW.noChange : changes.join(', '),
			changes.length === 0 ? 'plain' : 'bright',
		),
	];
}

function wholeBoard(
	pedals: readonly { readonly id: string; readonly name: string }[],
	{
		states,
		asked,
		stuck,
		tempo,
	}: {
		readonly states: PedalStates;
		/** What a point asks for; null where nothing is asked. */
		readonly asked: PedalStates | null;
		readonly stuck: readonly string[];
		readonly tempo: number | null;
	},
): string {
	const on = pedals.filter(({ id }) => states[id]?.on === true);
	const isWanted = (id: string) => (asked === null ? states : asked)[id]?.on === true;
	const isOther = (id: string) => stuck.includes(id) && isWanted(id) !== (states[id]?.on === true);
	const shown = pedals.filter((one) => on.includes(one) || isOther(one.id));
	if (shown.length === 0) return BOARD.allOff;
	const words = shown.map(({ id, name }) => {
		if (isOther(id)) {
			const wanted = stuckLabel(name, false);
			return wantedOfStuck(
				isWanted(id) ? listOn(wanted) : listOff(wanted),
				on.some((one) => one.id === id),
			);
		}
		const label = stuck.includes(id) ? stuckLabel(name, true) : name;
		const settings = Object.entries(states[id]?.settings ?? {}).map(
			([control, value]) =>
				// What does not switch keeps the time that it has, whatever the song's tempo.
				`${control} ${settingWords(value, stuck.includes(id) ? null : tempo)}`,
		);
		return settings.length === 0 ? label : `${label} (${settings.join(', ')})`;
	});
	return [...words, ...(shown.length < pedals.length ? [BOARD.restOff] : [])].join(', ');
}

// Gear: batteries, packs, what is wrong.

function gearParts(
	state: ScreenState,
	{ batteries, endsInHours }: PowerNow,
	{ columns, isListed }: { readonly columns: number; readonly isListed: boolean },
): readonly (readonly Row[])[] {
	const { session } = state;
	const { show, suspectPacks } = session;
	const ofBatteries = batteries.map((one) => {
		const words = `${batteryOf(show, one)} ${hourWords(one.hoursLeft)}`;
		return isShort(one, endsInHours) ? span(`${words} ${RIG_VIEW.short}`, 'unready') : span(words);
	});
	const ofPacks = show.packs.map(({ id, channel }) => {
		const wearers = wearersOf(session, id).map(({ name }) => name);
		const words = wirelessWords({ name: packName(show, id), channel, wearers });
		return suspectPacks.includes(id)
			? span(`${words} ${RIG_VIEW.doubts.suspect}`, 'unready')
			: span(words);
	});
	const wrong = checkRig(show).filter(({ code }) => LOADS.has(code));
	const room = columns - INDENT - LABEL_COLUMNS;
	const ofLoads = isListed
		? wrong.flatMap((one) =>
				wrapWords(rigFindingWords(show, one), { columns: room, rows: SENTENCE_ROWS }).map(
					(line): Row => [span(line, 'unready')],
				),
			)
		: inRows(
				wrong.map((one) => span(rigFindingInShort(show, one), 'unready')),
				room,
			);
	const place = isListed
		? (all: readonly Span[]) => all.map((one): Row => [one])
		: (all: readonly Span[]) => inRows(all, room);
	const parts: readonly (readonly [string, readonly Row[]])[] = [
		[RIG_VIEW.batteries, place(ofBatteries)],
		[RIG_VIEW.wireless, place(ofPacks)],
		...(isListed ? listedParts(show) : []),
		[RIG_VIEW.loads, ofLoads],
	];
	return parts.map(([label, rows]) =>
		rows.map((row, at) => labelled(at === 0 ? span(label, 'title') : null, row, columns)),
	);
}

/** What there is room for on a large screen: all that is fed and driven, whether anything is wrong or not. */
function listedParts(show: Show): readonly (readonly [string, readonly Row[]])[] {
	const supplies = outputLoads(show).map(({ supply, output, on, usedMilliamps }) =>
		suppliedWords({
			name: `${supply.name} ${output.id}`,
			used: milliampWords(usedMilliamps ?? (on.length === 0 ? 0 : null)),
			rated: milliampWords(output.milliamps),
		}),
	);
	const amps = amplifierLoads(show).map(({ player, amplifier, ohms, tapOhms }) =>
		drivenWords({
			name: `${playerName(show, player)} ${amplifier.name}`,
			load: ohms === null ? null : ohmWords(ohms),
			tap: tapOhms === null ? null : ohmWords(tapOhms),
		}),
	);
	const rows = (all: readonly string[]) => all.map((one): Row => [span(one)]);
	return [
		[RIG_VIEW.supplies, rows(supplies)],
		[RIG_VIEW.amps, rows(amps)],
	];
}

/** Pieces one after the other, as many in a row as fit. */
function inRows(pieces: readonly Span[], columns: number): readonly Row[] {
	const rows: Row[] = [];
	for (const piece of pieces) {
		const last = rows.at(-1);
		const longer: Row = last === undefined ? [piece] : [...last, span(', ', 'dim'), piece];
		if (last === undefined) rows.push([piece]);
		else if (rowWidth(longer) <= columns) rows[rows.length - 1] = longer;
		else rows.push([piece]);
	}
	return rows;
}
