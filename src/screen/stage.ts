// The stage view: every place in its order of prominence, from the cards of the coming hand-overs down to the
// last entry. On a very large screen rack, list and log stand beside the lower places.

import { cardsSection } from './cards-section.ts';
import { curfewSection } from './curfew-section.ts';
import { lastSection } from './last-section.ts';
import { narrowCardRows } from './narrow-card.ts';
import { sidePanes } from './pane-view.ts';
import { rackSection, tiersFor } from './pegs.ts';
import { withPromptAmong } from './prompt-rows.ts';
import { type Area, beside, fillRows, type Row } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { songSection } from './song-section.ts';
import { type StagePlace, stageHeights } from './stage-heights.ts';
import { warningSection } from './watch-section.ts';
import { wideCardRows } from './wide-card.ts';
import { workSection } from './work-section.ts';

/** From this size on rack, list and log stand beside the stage view. */
const WITH_PANES: Area = { columns: 180, rows: 45 };
/** From this size on three rows are too low to be read at two metres; see tests/screen/legibility.test.ts. */
const WITH_LARGE_LETTERS: Area = { columns: 200, rows: 55 };
const PANE_COLUMNS = 88;
/** From this width on one row has room for all the keys that are worth showing. */
const WIDE_FOOTER_COLUMNS = 100;

export type StageScreen = {
	/** The cards, as wide as the screen; a question never covers them. */
	readonly head: readonly Row[];
	/** The places below, with the question over them if one is asked; with head, message and footer as high as the screen. */
	readonly body: () => Row[];
	readonly bodyRows: number;
	readonly messageRows: number;
	readonly footerRows: number;
};

/** Rows of the tall letters for a size: 3, or 6 where rows are low. */
export function tallLetterRows(area: Area): 3 | 6 {
	return hasAtLeast(area, WITH_LARGE_LETTERS) ? 6 : 3;
}

/** The stage view for a size, with the question over it if one is asked. */
export function stageScreen(state: ScreenState, area: Area, isAscii: boolean): StageScreen {
	const { show } = state.session;
	const hasPanes = hasAtLeast(area, WITH_PANES);
	const scale = tallLetterRows(area) === 6 ? 2 : 1;
	const columns = hasPanes ? area.columns - PANE_COLUMNS - 2 : area.columns;
	const heights = stageHeights(area.rows, {
		players: show.players.length,
		boards: Object.keys(show.boards).length,
		tiers: tiersFor(show.instruments.filter(({ slot }) => slot !== null).length, columns),
		wideCard: wideCardRows(scale),
		narrowCard: narrowCardRows(scale),
		footerRows: area.columns < WIDE_FOOTER_COLUMNS ? 2 : 1,
	});
	/** Exactly the rows of a place, and the blank one after it. */
	const placed = (place: StagePlace, drawn: (rows: number) => readonly Row[]): Row[] => [
		...(heights[place] > 0 ? fillRows(drawn(heights[place]), heights[place]) : []),
		...(heights.spaced.includes(place) ? [[]] : []),
	];
	const head = placed('cards', (rows) =>
		cardsSection(state, {
			columns: area.columns,
			rows,
			scale,
			isAscii,
			hasDetails: state.view === 'stage',
		}),
	);
	const bodyRows = area.rows - heights.message - heights.footer - head.length;
	const body = (): Row[] => {
		const rack = placed('rack', (rows) => rackSection(state, { columns, rows }));
		// Who holds what and the rack are needed to answer a question: it comes below them.
		const workIn = (rows: number) => workSection(state, { columns, rows, isAscii }).slice(0, rows);
		const song = [
			...fillRows(
				songSection(state, { columns, rows: heights.song, boardRows: heights.boards }),
				heights.song + heights.boards,
			),
			...(heights.spaced.includes('boards') ? [[]] : []),
		];
		const warnings = placed('warnings', (rows) => warningSection(state, { columns, rows }));
		const curfew = placed('curfew', (rows) => curfewSection(state, { columns, rows }));
		const last = placed('last', (rows) => lastSection(state, { columns, rows }));
		const { prompt } = state;
		const workRows = heights.work + (heights.spaced.includes('work') ? 1 : 0);
		const below =
			prompt === null
				? [...placed('work', workIn), ...song, ...warnings, ...curfew, ...last]
				: withPromptAmong({ workRows, workIn, song, warnings, curfew, last }, prompt, columns);
		const places = fillRows([...rack, ...below], bodyRows);
		return hasPanes
			? beside(places, sidePanes(state, { columns: PANE_COLUMNS, rows: bodyRows }), columns + 2)
			: places;
	};
	return {
		head,
		body,
		bodyRows,
		messageRows: heights.message,
		footerRows: heights.footer,
	};
}

function hasAtLeast(area: Area, least: Area): boolean {
	return area.columns >= least.columns && area.rows >= least.rows;
}
