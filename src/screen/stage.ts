// The stage view: every place in its order of prominence, from the coming hand-over down to the last
// entry. On a very large screen rack, list and log stand beside the lower places.

import { boardSection } from './board-section.ts';
import { comingHandOvers } from './coming.ts';
import { blockRows } from './hand-over-block.ts';
import { handOverSection } from './hand-over-section.ts';
import { nowSection } from './now-section.ts';
import { sidePanes } from './pane-view.ts';
import { withPromptAmong } from './prompt-rows.ts';
import { handsSection, rackSection } from './rack-section.ts';
import { type Area, beside, fillRows, type Row } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { type StagePlace, stageHeights } from './stage-heights.ts';
import { curfewSection, lastSection, warningSection } from './status-section.ts';
import { workSection } from './work-section.ts';

/** What is first looked for, as wide as the screen; a question never covers it. */
const HEAD: readonly StagePlace[] = ['handOver', 'now'];
/** What a question may cover: who holds what and the rack are needed to answer it. */
const UNDER_PROMPT: readonly StagePlace[] = ['work', 'boards'];
const FOOT: readonly StagePlace[] = ['hands', 'rack', 'warnings', 'curfew', 'last'];

/** From this size on rack, list and log stand beside the stage view. */
const WITH_PANES: Area = { columns: 180, rows: 45 };
/** From this size on three rows are too low to be read at two metres; see tests/screen/legibility.test.ts. */
const WITH_LARGE_LETTERS: Area = { columns: 200, rows: 55 };
const PANE_COLUMNS = 88;
const WIDEST_ROW = 120;
/** From this width on one row has room for all the keys that are worth showing. */
const WIDE_FOOTER_COLUMNS = 100;

export type StageScreen = {
	/** The coming hand-overs and the song, as wide as the screen. */
	readonly head: readonly Row[];
	/** The places below, with the question over them if one is asked; with head, message and footer as high as the screen. */
	readonly body: () => Row[];
	readonly bodyRows: number;
	/** Where the night is kept has a row among the places below. */
	readonly hasStorageRow: boolean;
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
	const heights = stageHeights(area.rows, {
		players: show.players.length,
		boards: Object.keys(show.boards).length,
		instruments: hasPanes ? 0 : show.instruments.length,
		tallRows: blockRows(scale) - 1,
		footerRows: area.columns < WIDE_FOOTER_COLUMNS ? 2 : 1,
	});
	const columns = hasPanes ? area.columns - PANE_COLUMNS - 2 : area.columns;
	const sized = (place: StagePlace): Area => ({ columns, rows: heights[place] });
	const draw: Record<StagePlace, () => Row[]> = {
		handOver: () =>
			handOverSection(state, comingHandOvers(state), {
				columns: area.columns,
				rows: heights.handOver,
				tallBlocks: heights.tallBlocks,
				scale,
				isAscii,
			}),
		// The times stay near the song's name: on a very wide screen the eye would lose the row.
		now: () =>
			nowSection(state, { columns: Math.min(area.columns, WIDEST_ROW), rows: heights.now }),
		work: () => workSection(state, sized('work')),
		boards: () => boardSection(state, sized('boards')),
		hands: () => handsSection(state, sized('hands')),
		rack: () => rackSection(state, sized('rack')),
		warnings: () => warningSection(state, sized('warnings')),
		curfew: () => curfewSection(state, sized('curfew')),
		last: () => lastSection(state, sized('last')),
		message: () => [],
		footer: () => [],
	};
	const drawn = (places: readonly StagePlace[]): Row[] =>
		places.flatMap((place) => [
			...(heights[place] > 0 ? fillRows(draw[place](), heights[place]) : []),
			...(heights.spaced.includes(place) ? [[]] : []),
		]);
	const head = drawn(HEAD);
	const bodyRows = area.rows - heights.message - heights.footer - head.length;
	const body = (): Row[] => {
		const covered = drawn(UNDER_PROMPT);
		const places = fillRows([...covered, ...drawn(FOOT)], bodyRows);
		const { prompt } = state;
		const asked =
			prompt === null ? places : withPromptAmong(places, prompt, { columns, rows: covered.length });
		return hasPanes
			? beside(asked, sidePanes(state, { columns: PANE_COLUMNS, rows: bodyRows }), columns + 2)
			: asked;
	};
	return {
		head,
		body,
		bodyRows,
		hasStorageRow: heights.curfew > 0,
		messageRows: heights.message,
		footerRows: heights.footer,
	};
}

function hasAtLeast(area: Area, least: Area): boolean {
	return area.columns >= least.columns && area.rows >= least.rows;
}
