// What is given into hands: as planned, or otherwise.

import { firstSong } from '../plan/first-song.ts';
import type { PlannedHandOver } from '../plan/plan.ts';
import { nextSongItem, songOnNow } from '../session/find.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, slotAndName, songTitle } from '../showfile/shown-names.ts';
import type { Action } from './action.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { openPicked } from './open-picked.ts';
import { exchangePrompt, slotPrompt } from './prompts.ts';
import { asHandOver } from './step-commands.ts';

/** The planned hand-overs that enter records: what is open in the song on, else the first that come. */
function openHandOvers({ session, plan }: KeyContext): readonly PlannedHandOver[] {
	const overdue = plan.handOvers.filter((one) => one.section.hasBegun);
	if (overdue.length > 0) return overdue;
	const next = nextSongItem(session)?.key;
	const sectionsOn = songOnNow(session) === null ? [] : firstSong(plan.sections);
	const first = plan.handOvers.find(
		({ section }) => sectionsOn.includes(section) || (section.item === next && !section.hasBegun),
	);
	return first ? plan.handOvers.filter((one) => one.section === first.section) : [];
}

function handed(context: KeyContext, handOvers: readonly PlannedHandOver[]): Outcome {
	const recorded: Outcome = {
		kind: 'command',
		command: { do: 'hand-over', handOvers: handOvers.map(asHandOver) },
	};
	const { session, keyOf } = context;
	const on = songOnNow(session)?.item.key;
	const [first] = handOvers;
	// Starting a song has recorded its own: who confirms those with enter gives away the next ones.
	if (on === undefined || first === undefined || first.section.item === on) return recorded;
	const { show } = session;
	const who = handOvers.map(({ player }) => playerName(show, player)).join(' and ');
	const what =
		handOvers.length > 1
			? 'have theirs'
			: `has ${first.instrument === null ? 'empty hands' : slotAndName(show, first.instrument)}`;
	const title = songTitle(show, first.section.song);
	const says = `${who} ${what} now for ${title}, the next song; ${keyOf('take-back')} takes it back, ${keyOf('exchange')} corrects it.`;
	return { ...recorded, says };
}

function handOverOutcome(context: KeyContext): Outcome {
	const open = openHandOvers(context);
	// Taking away without giving asks nothing: it goes with the one that is given.
	if (open.filter(({ instrument }) => instrument !== null).length < 2) return handed(context, open);
	const { session } = context;
	return {
		kind: 'prompt',
		prompt: slotPrompt(
			{
				title: `In hands now: enter for all ${open.length}, or the slot of one`,
				lines: open.map((one) => handOverLine(session.show, one)),
			},
			(instrument, now) => {
				const one = open.find((each) => each.instrument === instrument.id);
				return one
					? handed(now, [one])
					: {
							kind: 'say',
							words: `${instrument.name} is not in these hand-overs; ${context.keyOf('exchange')} hands over anything.`,
						};
			},
			{ enter: { words: 'all of them', outcome: (now) => handed(now, open) } },
		),
	};
}

/** Who gets what, and what is to be checked before it leaves the rack. */
function handOverLine(show: Show, { player, instrument, tuning, capo, leave }: PlannedHandOver) {
	const what =
		instrument === null
			? 'hands empty'
			: `${slotAndName(show, instrument)}, ${tuning?.name ?? ''}, ${capo === 0 ? 'no capo' : `CAPO ${capo}`}`;
	return `${playerName(show, player)}: ${what}${leave === null ? '' : `, check ${leave}`}`;
}

export const handOver: Action = {
	id: 'hand-over',
	keys: ['enter'],
	words: 'the planned hand-overs are in hands now; in the other views it opens the picked row',
	footer: (context) => {
		if (context.view === 'settings') return 'change';
		if (openPicked(context) !== null) return 'open';
		return openHandOvers(context).length > 0 ? 'handed' : null;
	},
	whyNot: (context) =>
		openPicked(context) !== null || openHandOvers(context).length > 0
			? null
			: `No hand-over is coming; ${context.keyOf('exchange')} records one that was not planned.`,
	act: (context) => openPicked(context) ?? handOverOutcome(context),
};

export const exchange: Action = {
	id: 'exchange',
	keys: ['x'],
	words: 'another instrument is in hands: slot; or x, a player, - for none',
	act: () => ({ kind: 'prompt', prompt: exchangePrompt() }),
};
