// Tonight's list as it stands: what was played, what is on, when the rest is due and who changes for it.

import { displayWidth } from '../base/display-width.ts';
import { minutesSeconds } from '../base/duration.ts';
import type { Section } from '../plan/plan.ts';
import type { ListItem, SongItem } from '../session/session.ts';
import type { Part, Show } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { capoAct, capoWords } from '../words/capo-words.ts';
import {
	encoreTitle,
	fileChanged,
	forNamed,
	HEADINGS,
	HOW_WORDS,
	intervalRow,
	keepsRow,
	LIST,
	tonightPart,
} from '../words/views.ts';
import { backupUnplanned } from './coming.ts';
import { slotLabel, songPlace } from './named-in-show.ts';
import { placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { showClock, wallClock } from './show-clock-words.ts';
import { gapSeconds } from './song-times.ts';

/** Three players who change beside each other fit at 80 columns. */
const [STATE_AT, CLOCK_AT, GAP_AT, CHANGES_AT] = [32, 42, 53, 59];

/** Names of the columns, and whether the show file has changed. */
export function listHeading(
	columns: number,
	{ showChangedAtMs, dayOffsetMinutes }: ScreenState,
): Row {
	const changed =
		showChangedAtMs === null
			? []
			: [span(fileChanged(wallClock({ dayOffsetMinutes }, showChangedAtMs)), 'bright')];
	return placeAt(columns, [
		[2, [span(HEADINGS.list, 'title'), ...changed]],
		[STATE_AT, [span(HEADINGS.state, 'dim')]],
		[CLOCK_AT, [span(HEADINGS.showClock, 'dim')]],
		[GAP_AT, [span(HEADINGS.gap, 'dim')]],
		[CHANGES_AT, [span(HEADINGS.handOvers, 'dim')]],
	]);
}

/** The state with tonight's list as a question about it would have it, and the row that it is about. */
export function asAsked(state: ScreenState): ScreenState {
	const tonight = state.prompt?.tonight;
	if (tonight === undefined) return state;
	const { session, plan, item } = tonight;
	const row = session.list.findIndex(({ key }) => key === item);
	return { ...state, session, plan, picked: row < 0 ? state.picked : row };
}

/** One row for each item of the list. */
export function listRows(state: ScreenState, columns: number): Row[] {
	return state.session.list.map((item) => listRow(state, item, columns));
}

function listRow(state: ScreenState, item: ListItem, columns: number): Row {
	const { session, plan } = state;
	const { show } = session;
	if (item.kind === 'interval') {
		const isOn = session.phase.value === 'interval' && session.next === item.key;
		return placeAt(columns, [
			[5, [span(intervalRow(minutesSeconds(item.seconds)), isOn ? 'bright' : 'dim')]],
		]);
	}
	const section = plan.sections.find((one) => one.item === item.key);
	const atMs = item.runs[item.runs.length - 1]?.beganAtMs ?? section?.startMs ?? null;
	const named = show.players.flatMap(({ id }) => {
		const part = Object.hasOwn(item.tonight, id) ? item.tonight[id] : undefined;
		return part === undefined ? [] : [tonightPart(playerName(show, id), partWords(show, part))];
	});
	const changes = show.players
		.filter(({ id }) => !Object.hasOwn(item.tonight, id))
		.flatMap(({ id, name }) =>
			changeWords(state, { item: item.key, player: id }, columns >= LEAST_NAMED_COLUMNS).map(
				(words) => `${name} ${words}`,
			),
		);
	const words = stateOf(state, item);
	const isOut = item.isPassedOver;
	const isAsked = item.key === state.prompt?.tonight?.item;
	const isNext = item.key === session.next;
	const gap = (isNext ? gapSeconds(state) : null) ?? section?.gapSeconds ?? null;
	const { place } = songPlace(session, item.key);
	const title = songTitle(show, item.song);
	const number = place === 0 ? '' : String(place);
	return placeAt(columns, [
		[
			2,
			[
				span(
					`${number.padStart(2)} ${item.isEncore ? encoreTitle(title) : title}`,
					isOut ? 'dim' : 'plain',
				),
			],
		],
		[STATE_AT, [span(words, words === LIST.now || isAsked ? 'bright' : isOut ? 'dim' : 'plain')]],
		[CLOCK_AT, [span(atMs === null ? '' : showClock(state, atMs).padStart(8), 'dim')]],
		[GAP_AT, [span(gap === null ? '' : minutesSeconds(gap).padStart(4), 'dim')]],
		[CHANGES_AT, [span(countedAfter([...named, ...changes], columns - CHANGES_AT))]],
	]);
}

/** As many of them as there is room for, each whole, and how many more there are: `Wren 1, Tove 5, +2`. */
function countedAfter(words: readonly string[], columns: number): string {
	const counted = words.map((_, at) =>
		[...words.slice(0, words.length - at), ...(at === 0 ? [] : [`+${at}`])].join(', '),
	);
	return counted.find((text) => displayWidth(text) <= columns) ?? counted.at(-1) ?? '';
}

/** From this width on instruments are named too. */
const LEAST_NAMED_COLUMNS = 100;

/** What the player gets for this song, what they stay on or that there is nothing; none where they just go on. */
function changeWords(
	state: ScreenState,
	{ item, player }: { readonly item: string; readonly player: string },
	isNamed: boolean,
): readonly string[] {
	const {
		session: { show },
		plan,
	} = state;
	const label = (id: string) => (isNamed ? shownInstrument(show, id) : slotLabel(show, id));
	const isThis = (one: { readonly section: Section; readonly player: string }) =>
		one.section.item === item && one.player === player;
	const backup = (named: string | null) => (named === null ? '' : forNamed(label(named)));
	const given = plan.handOvers
		.filter(isThis)
		.map(({ instrument, for: named }) =>
			instrument === null ? LIST.empty : `${label(instrument)}${backup(named)}`,
		);
	if (given.length > 0) return given;
	const slot = plan.slots.find(isThis);
	if (slot === undefined) return [];
	if (slot.isMissing) {
		return [backupUnplanned(state, slot) === undefined ? LIST.noBackup : LIST.nothingPlanned];
	}
	const move = plan.capoMoves.find(isThis);
	if (slot.instrument === null || (slot.for === null && move === undefined)) return [];
	const kept = label(slot.instrument);
	if (move === undefined) return [`${keepsRow(kept)}${backup(slot.for)}`];
	// In a narrow list the capo says that it is kept.
	return isNamed
		? [`${keepsRow(kept)}${backup(slot.for)}, ${capoAct(move.capo)}`]
		: [`${kept} ${capoWords(move.capo)}${backup(slot.for)}`];
}

function partWords(show: Show, part: Part): string {
	return part.kind === 'named' ? shownInstrument(show, part.instrument) : LIST.none;
}

function stateOf({ session, prompt }: ScreenState, item: SongItem): string {
	if (item.key === session.current && session.song !== null) return LIST.now;
	if (item.key === prompt?.tonight?.item) return item.isDropped ? LIST.askedDrop : LIST.askedHere;
	if (item.isDropped) return LIST.dropped;
	if (item.key === session.next) return LIST.next;
	if (item.isPassedOver) return LIST.skipped;
	const how = item.runs.findLast((run) => run.how !== null)?.how;
	if (how != null) return HOW_WORDS[how];
	// A jump left it behind.
	const nextAt = session.list.findIndex(({ key }) => key === session.next);
	return session.list.indexOf(item) < nextAt ? LIST.skipped : '';
}
