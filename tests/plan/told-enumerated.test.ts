// Small shows in which people have been told something by chance: of all that is equally late, the plan
// changes least of it.

import { expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readyAtZero } from '../../src/plan/plan-before-doors.ts';
import type { Session } from '../../src/session/session.ts';
import { slotName, toldAt } from '../../src/session/told.ts';
import type { Show } from '../../src/showfile/show.ts';
import { withEntries } from './night-at.ts';
import { chance } from './oracle/chance.ts';
import type { Judged } from './oracle/judge.ts';
import { sameHeld } from './oracle/judge.ts';
import type { Held } from './oracle/lines.ts';
import { linesOf, semitones } from './oracle/lines.ts';
import { CRITERIA, figure, leastOf, provedPlan, smallShows } from './oracle/small-shows.ts';

const NAMES = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];

const NOTHING: Held = { instrument: '', strings: [], capo: 0 };

type Open = {
	readonly name: string;
	readonly line: number;
	readonly player: number;
};

/** The slots that leave a choice. Each song is once in these shows. */
function openSlots(show: Show): readonly Open[] {
	const keys = new Map(
		readyAtZero(show).list.map((one) => [one.kind === 'song' ? one.song : '', one.key]),
	);
	return linesOf(show).flatMap(({ song, point, parts, handed }, line) =>
		show.players.flatMap(({ id }, player) =>
			parts[id]?.kind === 'needs' && handed?.includes(id) !== false
				? [{ name: slotName({ item: keys.get(song)!, point, player: id }), line, player }]
				: [],
		),
	);
}

function toldOf({ instrument, strings, capo }: Held) {
	const notes = strings.map((one) => `${NAMES[one % 12]}${Math.floor(one / 12)}`);
	return { instrument, tuning: { name: 'as told', notes }, capo };
}

/** The night before its doors, half of what is open told as in one of the choices there are. */
function withSomeTold(show: Show, all: readonly Judged[], seed: number): Session {
	const by = chance(seed);
	const { plays } = by.of(all);
	const some = openSlots(show).filter(() => by.is(0.5));
	const hands = some.map(({ line, player }) => plays[line]![player]!);
	const entry: Entry = {
		k: 'plan-told',
		at: 0,
		hands: hands.map((held) => toldOf(held ?? NOTHING)),
		slots: Object.fromEntries(
			some.map(({ name }, place) => [name, hands[place] === null ? null : place]),
		),
	};
	return withEntries(readyAtZero(show), entry);
}

function heldIn(told: Session['told'][string]): Held | null {
	return (
		told && { instrument: told.instrument, strings: semitones(told.tuning.notes), capo: told.capo }
	);
}

function changesOf({ plays }: Pick<Judged, 'plays'>, session: Session): number {
	return openSlots(session.show).filter(({ name, line, player }) => {
		const told = session.told[name];
		return told !== undefined && !sameHeld(plays[line]![player]!, heldIn(told));
	}).length;
}

/** What the plan changes of what was told, slot by slot of its own. */
function changedIn({ slots }: Plan, session: Session): number {
	return slots.filter(({ section, player, instrument, tuning, capo }) => {
		const told = toldAt(session, { ...section, player });
		const held = instrument && { instrument, strings: semitones(tuning.notes), capo };
		return told !== undefined && !sameHeld(held || null, heldIn(told));
	}).length;
}

test('no choice that is equally late changes less of what was told', () => {
	let decided = 0;
	for (const { seed, show, all } of smallShows()) {
		const session = withSomeTold(show, all, seed);
		const plan = provedPlan(show, session);
		const criteria = CRITERIA.map((criterion) => (one: Judged) => figure(one, criterion));
		const changes = (one: Judged) => changesOf(one, session);
		const [best] = leastOf(all, criteria.toSpliced(3, 0, changes));
		expect({
			seed,
			isProved: plan.isProved,
			changes: changedIn(plan, session),
			figures: CRITERIA.map((one) => plan.cost[one]),
		}).toEqual({
			seed,
			isProved: true,
			changes: changes(best!),
			figures: criteria.map((figureOf) => figureOf(best!)),
		});
		if (leastOf(all, criteria).some((one) => changes(one) > changes(best!))) decided += 1;
	}
	expect(decided).toBeGreaterThanOrEqual(20);
}, 120_000);
