// The live screen: every place in its order of prominence, from the coming hand-over down to the keys.

import { boardSection } from './board-section.ts';
import { comingHandOvers } from './coming.ts';
import { handOverSection } from './hand-over-section.ts';
import { type LivePlace, liveHeights } from './live-heights.ts';
import { nowSection } from './now-section.ts';
import { handsSection, rackSection } from './rack-section.ts';
import { type Area, fillRows, type Row } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { curfewSection, lastSection, warningSection } from './status-section.ts';
import { workSection } from './work-section.ts';

const ORDER: readonly LivePlace[] = [
	'handOver',
	'now',
	'work',
	'boards',
	'hands',
	'rack',
	'warnings',
	'curfew',
	'last',
];

export type LiveScreen = {
	/** Everything above the message and the footer, exactly as many rows as are left for it. */
	readonly rows: Row[];
	/** So many of them must stay in sight whatever is asked: hand-over and now. */
	readonly keptRows: number;
	readonly messageRows: number;
	readonly footerRows: number;
};

/** The live view for a size. */
export function liveScreen(state: ScreenState, area: Area, isAscii: boolean): LiveScreen {
	const { show } = state.session;
	const heights = liveHeights(area, {
		players: show.players.length,
		boards: Object.keys(show.boards).length,
		instruments: show.instruments.length,
	});
	const { columns } = area;
	const sized = (place: LivePlace): Area => ({ columns, rows: heights[place] });
	const draw: Record<LivePlace, () => Row[]> = {
		handOver: () =>
			handOverSection(state, comingHandOvers(state), {
				...sized('handOver'),
				tallBlocks: heights.tallBlocks,
				isAscii,
			}),
		now: () => nowSection(state, sized('now')),
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
	const rows = ORDER.flatMap((place) => [
		...(heights[place] > 0 ? fillRows(draw[place](), heights[place]) : []),
		...(heights.spaced.includes(place) ? [[]] : []),
	]);
	const above = (place: LivePlace) => heights[place] + (heights.spaced.includes(place) ? 1 : 0);
	return {
		rows: fillRows(rows, area.rows - heights.message - heights.footer),
		keptRows: above('handOver') + above('now'),
		messageRows: heights.message,
		footerRows: heights.footer,
	};
}
