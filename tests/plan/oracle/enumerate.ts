// All that could be played in a small show, one after the other: for holding the planner's choice against.

import type { Show } from '../../../src/showfile/show.ts';
import type { Judged, Plays } from './judge.ts';
import { judge, whyNot } from './judge.ts';
import type { Held, Line } from './lines.ts';
import { linesOf, partIn, whatWouldDo } from './lines.ts';

/** Everything that may be played, judged; null where it is more than `most`. */
export function everyChoice(show: Show, most: number): readonly Judged[] | null {
	const lines = linesOf(show);
	const all: Plays[] = [];
	const open = lines.flatMap(({ parts }) =>
		Object.entries(parts).map(([player, part]) => whatWouldDo(show, player, part).length),
	);
	if (open.reduce((product, ways) => product * Math.max(1, ways), 1) > most * 8) return null;
	const go = (soFar: Plays, hands: readonly (Held | null)[]): boolean => {
		const line = lines[soFar.length];
		if (line === undefined) {
			all.push(soFar);
			return all.length <= most;
		}
		return everyLine(show, line, hands).every((plays) => go([...soFar, plays], plays));
	};
	if (
		!go(
			[],
			show.players.map(() => null),
		)
	)
		return null;
	return all.map((plays) => judge(show, lines, plays));
}

/** Who keeps over an interval takes the same again, so hands go on here as if it were none. */
function everyLine(
	show: Show,
	line: Line,
	before: readonly (Held | null)[],
): readonly (readonly (Held | null)[])[] {
	let ways: readonly (readonly (Held | null)[])[] = [[]];
	for (const [index, { id }] of show.players.entries()) {
		const part = partIn(line, id, before[index] ?? null);
		const options =
			part === undefined
				? [before[index] ?? null]
				: [...whatWouldDo(show, id, part).map(({ held }) => held), null];
		ways = ways.flatMap((way) => options.map((option) => [...way, option]));
	}
	return ways.filter((plays) => whyNot(show, line, { before, plays }) === null);
}
