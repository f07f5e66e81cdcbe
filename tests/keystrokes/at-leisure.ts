// What is done in an afternoon, not in seconds: a first show by questions, the second night from the first. What is
// typed of names and titles does not count; how many are allowed is common practice, no source.

import { press, startNewShow } from '../../src/new-show/new-show.ts';
import { ALL, BEGINNING, keysOf, pressed, pressesBesidesNames } from '../new-show/lamplit.ts';

export type Work = {
	readonly moment: string;
	/** In words where it is long. */
	readonly keys: string;
	readonly pressed: number;
	readonly most: number;
	readonly isDone: () => boolean;
};

/** Title, day, start and curfew as offered, then written. */
const NEXT_NIGHT = ['enter', 'enter', 'enter', 'enter', 'enter'] as const;

/** The night of the invented act, as `--from` gives it. */
function nextNight() {
	const { draft } = pressed(keysOf(...ALL)).making;
	return startNewShow(
		{ ...BEGINNING, title: draft.title, earlier: { draft, carried: 0, toDo: [] } },
		null,
	);
}

export const AT_LEISURE: readonly Work[] = [
	{
		moment: 'a first show by questions, six on the rack and ten songs with their lengths: the file',
		keys: 'names, titles; enter, a letter or two',
		pressed: pressesBesidesNames(...ALL),
		most: 149,
		isDone: () => pressed(keysOf(...ALL)).end === 'done',
	},
	{
		moment: 'the second night from the first, `rackside new --from last`: the file',
		keys: NEXT_NIGHT.join(' '),
		pressed: NEXT_NIGHT.length,
		most: 12,
		isDone: () => NEXT_NIGHT.reduce(press, nextNight()).end === 'done',
	},
];
