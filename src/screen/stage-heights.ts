// How many rows each place of the stage view has. It depends on the size and the show alone, never on
// what happens, so that the eye learns the places.

export type StagePlace =
	| 'cards'
	| 'rack'
	| 'work'
	| 'song'
	| 'boards'
	| 'warnings'
	| 'curfew'
	| 'last'
	| 'message'
	| 'footer';

export type StageHeights = Readonly<Record<StagePlace, number>> & {
	/** Places that are followed by a blank row. */
	readonly spaced: readonly StagePlace[];
};

/** How much there is to show, and how high tall letters are. */
export type StageCounts = {
	readonly players: number;
	readonly boards: number;
	/** Rows of pegs. */
	readonly tiers: number;
	/** The height of a card as wide as the screen, and of one beside others. */
	readonly wideCard: number;
	readonly narrowCard: number;
	/** The most that the keys need. */
	readonly footerRows: number;
};

type Step = { readonly place: StagePlace; readonly rows: number; readonly isSpace?: true };

/** Rows are given out in order of need; a step that does not fit is passed over. */
export function stageHeights(rows: number, counts: StageCounts): StageHeights {
	const heights: Record<StagePlace, number> = {
		cards: 0,
		rack: 0,
		work: 0,
		song: 0,
		boards: 0,
		warnings: 0,
		curfew: 0,
		last: 0,
		message: 0,
		footer: 0,
	};
	let left = rows;
	const spaced: StagePlace[] = [];
	for (const { place, rows: wanted, isSpace } of steps(counts)) {
		const needed = isSpace ? 1 : wanted - heights[place];
		if (needed > left || needed < 1) continue;
		left -= needed;
		if (isSpace) spaced.push(place);
		else heights[place] = wanted;
	}
	return { ...heights, spaced };
}

function steps(counts: StageCounts): readonly Step[] {
	const { players, boards, tiers, wideCard, narrowCard, footerRows } = counts;
	const to = (place: StagePlace, rows: number): Step => ({ place, rows });
	const space = (place: StagePlace): Step => ({ place, rows: 1, isSpace: true });
	const some = Math.min(boards, 1);
	// As many beside one another as fit, under them who keeps what they have.
	const allTall = players > 1 ? narrowCard + Math.min(players - 2, 2) : wideCard;
	// Two as wide as the screen, and all; of many, two rows of those beside one another.
	const two = Math.max(allTall, players > 1 ? 2 * wideCard + Math.min(players - 2, 1) : 0);
	const all = Math.max(two, players > 3 ? 2 * narrowCard + 2 : players * wideCard);
	return [
		...(['cards', 'message', 'work', 'song', 'footer'] as const).map((place) => to(place, 1)),
		to('cards', Math.min(players, 2)),
		to('song', 2),
		to('last', 1),
		to('rack', Math.min(tiers, 1)),
		...(['warnings', 'curfew'] as const).map((place) => to(place, 1)),
		to('cards', wideCard),
		// Too low for tall letters: a line for each.
		...Array.from({ length: players }, (_, index) => to('cards', Math.min(index + 1, wideCard))),
		to('rack', tiers),
		to('cards', Math.min(narrowCard, allTall)),
		// Of a rack of many tiers the list says what is due.
		to('rack', tiers > 2 ? tiers : tiers * 2),
		to('work', 2),
		to('boards', some),
		to('cards', allTall),
		to('song', 3),
		to('boards', boards),
		to('work', 3),
		to('footer', footerRows),
		to('rack', tiers * 2),
		to('cards', two),
		space('rack'),
		to('warnings', 2),
		space('boards'),
		to('rack', tiers * 3),
		to('cards', all),
		to('work', 6),
		to('work', 8),
		space('cards'),
		to('boards', boards * 2),
		space('work'),
		to('song', 4),
		to('warnings', 4),
		space('last'),
		to('work', 12),
		to('warnings', 10),
		to('work', 24),
	];
}
