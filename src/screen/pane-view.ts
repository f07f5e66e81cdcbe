// Rack, list and log at full size: the coming hand-over and the song stay in sight above the list.

import { moreAbove, moreBelow, OLDER_BELOW } from '../words/views.ts';
import { handOverCards } from './cards.ts';
import { firstLine } from './hand-over-lines.ts';
import { helpRows } from './help-view.ts';
import { asAsked, listHeading, listRows } from './list-view.ts';
import { logHeading, logRows } from './log-view.ts';
import { firstBefore, firstInSight } from './pane-window.ts';
import { promptHeight } from './prompt-rows.ts';
import { rackHeading, rackRows } from './rack-view.ts';
import { rigPane } from './rig-view.ts';
import { type Area, fillRows, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { settingsHeading, settingsRows } from './settings-view.ts';
import { songSection } from './song-section.ts';
import { warningsPane } from './storage.ts';

/** The log's newest lines are looked for beside the rack and the list. */
const LEAST_LOG_ROWS = 6;

export type PaneName = 'rack' | 'list' | 'log' | 'settings';

const HEADINGS: Readonly<Record<PaneName, (columns: number, state: ScreenState) => Row>> = {
	rack: rackHeading,
	list: listHeading,
	log: logHeading,
	settings: settingsHeading,
};
const ROWS = { rack: rackRows, list: listRows, log: logRows, settings: settingsRows } as const;

/** A heading and the list, with a mark before the picked row where one is given. */
function namedPane(
	state: ScreenState,
	{ name, picked }: { readonly name: PaneName; readonly picked: number | null },
	{ columns, rows }: Area,
): Row[] {
	const room = Math.max(0, rows - 1);
	const focus = picked ?? (name === 'list' ? currentRow(state) : 0);
	const all = ROWS[name](state, columns, focus + room + 1);
	// What is out of sight is counted in a row of its own, where there are rows for it.
	const hasCount = all.length > room && room >= 3;
	const height = hasCount ? room - 1 : room;
	const first =
		name === 'list' && picked === null
			? firstBefore(all.length, focus, height)
			: firstInSight(all.length, focus, height);
	const below = all.length - first - height;
	const shown = all.slice(first, first + height).map((row, index) => {
		const [lead, ...rest] = row;
		if (first + index !== picked || lead === undefined) return row;
		return [span('>'), { ...lead, text: lead.text.slice(1) }, ...rest];
	});
	const counted = [
		...(first > 0 ? [moreAbove(first)] : []),
		// Of the log no more rows are made than are needed, so nobody knows how many there are.
		...(below > 0 ? [name === 'log' ? OLDER_BELOW : moreBelow(below)] : []),
	].join(', ');
	const count: Row[] = hasCount ? [[span(`  ${counted}`, 'dim')]] : [];
	return fillRows([HEADINGS[name](columns, state), ...shown, ...count], rows);
}

function currentRow({ session }: ScreenState): number {
	const key = session.song === null ? session.next : session.current;
	return Math.max(
		0,
		session.list.findIndex((one) => one.key === key),
	);
}

/** The rows of a view other than the stage, above message and footer, below `given` or two lines in its place; `keptRows` stay in sight under a question. */
export function paneView(
	state: ScreenState,
	area: Area,
	given: readonly Row[] | null,
): { readonly rows: Row[]; readonly keptRows: number } {
	const { columns, rows } = area;
	const head = given ?? [
		...firstLine(state, handOverCards(state), columns),
		...songSection(state, { columns, rows: 1, boardRows: 0 }),
		...(rows >= 12 ? [[]] : []),
	];
	const kept = rows >= 6 ? head : head.slice(0, Math.max(0, rows - 2));
	const body: Area = { columns, rows: Math.max(0, rows - kept.length) };
	const { view, picked } = state;
	if (view === 'help') return done(kept, helpRows(state.help, picked, body), rows);
	if (view === 'warnings') return done(kept, warningsPane(state, body), rows);
	if (view === 'rig') return done(kept, rigPane(state, body), rows);
	const name: PaneName = view === 'stage' || view === 'far' ? 'rack' : view;
	if (name !== 'list') return done(kept, namedPane(state, { name, picked }, body), rows);
	// The row that a question is about is never under the question.
	const under = state.prompt === null ? 0 : promptHeight(state.prompt, body);
	const asked = asAsked(state);
	const pane = namedPane(
		asked,
		{ name, picked: asked.picked },
		{ columns, rows: Math.max(0, body.rows - under) },
	);
	return done(kept, pane, rows);
}

function done(kept: readonly Row[], body: readonly Row[], rows: number) {
	return { rows: fillRows([...kept, ...body], rows), keptRows: kept.length };
}

/** Rack, list and log under one another, for the right side of a very large screen. */
export function sidePanes(state: ScreenState, { columns, rows }: Area): Row[] {
	const { show, list } = state.session;
	const most = Math.max(0, rows - LEAST_LOG_ROWS);
	const set = Math.min(
		list.length + 2,
		Math.max(Math.floor(most / 2), most - show.instruments.length - 2),
	);
	const rack = Math.min(show.instruments.length + 2, most - set);
	const pane = (name: PaneName, height: number) =>
		namedPane(state, { name, picked: null }, { columns, rows: height });
	return [...pane('rack', rack), ...pane('list', set), ...pane('log', rows - rack - set)];
}
