// How many rows each place of the stage view has. It depends on the size and the show alone, never on
// what happens, so that the eye learns the places.

export type StagePlace =
	| 'handOver'
	| 'now'
	| 'work'
	| 'boards'
	| 'hands'
	| 'rack'
	| 'warnings'
	| 'curfew'
	| 'last'
	| 'message'
	| 'footer';

export type StageHeights = Readonly<Record<StagePlace, number>> & {
	/** Hand-overs in tall letters. */
	readonly tallBlocks: number;
	/** Places that are followed by a blank row. */
	readonly spaced: readonly StagePlace[];
};

/** How much there is to show, and how high tall letters are. */
export type StageCounts = {
	readonly players: number;
	readonly boards: number;
	/** 0 where the rack stands elsewhere on the screen. */
	readonly instruments: number;
	readonly tallRows: number;
	/** The most that the keys need. */
	readonly footerRows: number;
};

type Step = {
	readonly place: StagePlace;
	readonly rows: number;
	readonly gives?: 'tall' | 'space';
};

/** Rows are given out in order of need; a step that does not fit is passed over. */
export function stageHeights(rows: number, counts: StageCounts): StageHeights {
	const heights: Record<StagePlace, number> = {
		handOver: 0,
		now: 0,
		work: 0,
		boards: 0,
		hands: 0,
		rack: 0,
		warnings: 0,
		curfew: 0,
		last: 0,
		message: 0,
		footer: 0,
	};
	let left = rows;
	let tallBlocks = 0;
	const spaced: StagePlace[] = [];
	for (const { place, rows: needed, gives } of steps(counts)) {
		if (needed > left || needed < 1) continue;
		left -= needed;
		if (gives === 'space') spaced.push(place);
		else heights[place] += needed;
		if (gives === 'tall') tallBlocks += 1;
	}
	return { ...heights, tallBlocks, spaced };
}

function steps(counts: StageCounts): readonly Step[] {
	const { players, boards, instruments, tallRows, footerRows } = counts;
	const others = Math.max(0, players - 1);
	const hasBoards = boards > 0 ? 1 : 0;
	const hasRack = instruments > 0 ? 1 : 0;
	const add = (place: StagePlace, rows: number): Step => ({ place, rows });
	const tall = (isThere: boolean): Step => ({
		place: 'handOver',
		rows: isThere ? tallRows : 0,
		gives: 'tall',
	});
	const space = (place: StagePlace): Step => ({ place, rows: 1, gives: 'space' });
	const each = (place: StagePlace, count: number) =>
		Array.from({ length: Math.max(0, count) }, () => add(place, 1));
	return [
		...(['handOver', 'message', 'now', 'work', 'footer'] as const).map((place) => add(place, 1)),
		add('handOver', Math.min(1, others)),
		add('now', 1),
		add('last', 1),
		add('boards', hasBoards),
		add('hands', 1),
		add('rack', hasRack),
		...(['warnings', 'curfew'] as const).map((place) => add(place, 1)),
		tall(true),
		add('handOver', others > 1 ? 1 : 0),
		add('work', 1),
		...each('handOver', Math.min(others - 2, 3)),
		add('hands', players > 4 ? 1 : 0),
		add('rack', instruments > 3 ? 1 : 0),
		add('boards', hasBoards),
		add('rack', instruments > 6 ? 1 : 0),
		add('work', 1),
		space('handOver'),
		space('work'),
		...each('handOver', others - 5),
		add('footer', footerRows - 1),
		tall(players > 1),
		space('now'),
		space('boards'),
		tall(players > 2),
		add('now', 1),
		...each('work', 2),
		...each('warnings', 1),
		...each('boards', boards * 2 - 2),
		space('rack'),
		...each('warnings', 1),
		...each('work', 1),
		...each('rack', Math.ceil(instruments / 4) - 3),
		space('last'),
		...each('work', 3),
		...each('warnings', 3),
		...each('work', 6),
		...each('warnings', 6),
		...each('work', 12),
	];
}
