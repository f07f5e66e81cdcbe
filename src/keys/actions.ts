// Every action of the live screen: its keys, its words, why it cannot act now, and what it does. The
// keys, the footer, the help and the table in the README are all made from these records.

import type { PlannedHandOver } from '../plan/plan.ts';
import type { Command } from '../session/command.ts';
import { nextSongItem, openBreak, songOnNow } from '../session/find.ts';
import type { Show } from '../showfile/show.ts';
import { instrumentName, playerName, slotAndName } from '../showfile/shown-names.ts';
import type { Action } from './action.ts';
import type { KeyContext, Outcome, ViewName } from './key-context.ts';
import { openPicked } from './open-picked.ts';
import {
	exchangePrompt,
	faultPrompt,
	leavePrompt,
	packPrompt,
	pedalPrompt,
	slotPrompt,
	withPlayer,
} from './prompts.ts';
import { slotOf } from './rack-slots.ts';
import { SET_ACTIONS } from './set-actions.ts';
import { jumpPrompt } from './song-prompt.ts';
import { asHandOver, finishCommand, stepCommand, stepWords } from './step-commands.ts';
import {
	asItIsPrompt,
	describePrompt,
	doubtAllPrompt,
	memoPrompt,
	narrowPrompt,
} from './text-prompts.ts';

const command = (one: Command): Outcome => ({ kind: 'command', command: one });
const always = () => null;
const silent = () => null;

/** The planned hand-overs that enter records: what is open in the song on, else the first that come. */
function openHandOvers({ session, plan }: KeyContext): readonly PlannedHandOver[] {
	const overdue = plan.handOvers.filter((one) => one.section.hasBegun);
	if (overdue.length > 0) return overdue;
	const next = nextSongItem(session)?.key;
	const current = songOnNow(session)?.item.key;
	const first = plan.handOvers.find(
		(one) => one.section.item === current || one.section.item === next,
	);
	return first ? plan.handOvers.filter((one) => one.section === first.section) : [];
}

function handedAll(handOvers: readonly PlannedHandOver[]): Outcome {
	return command({ do: 'hand-over', handOvers: handOvers.map(asHandOver) });
}

function handOverOutcome(context: KeyContext): Outcome {
	const open = openHandOvers(context);
	// Taking away without giving asks nothing: it goes with the one that is given.
	if (open.filter(({ instrument }) => instrument !== null).length < 2) return handedAll(open);
	const { session } = context;
	return {
		kind: 'prompt',
		prompt: slotPrompt(
			{
				title: `In hands now: enter for all ${open.length}, or the slot of one`,
				lines: open.map((one) => handOverLine(session.show, one)),
			},
			(instrument) => {
				const one = open.find((each) => each.instrument === instrument.id);
				return one
					? handedAll([one])
					: {
							kind: 'say',
							words: `${instrument.name} is not in these hand-overs; ${context.keyOf('exchange')} hands over anything.`,
						};
			},
			{ enter: { words: 'all of them', outcome: () => handedAll(open) } },
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

/** The work that marking this instrument ready records as done. */
function readyOutcome({ plan }: KeyContext, instrument: string): Outcome {
	const work = plan.work.find((one) => one.instrument === instrument);
	return command({
		do: 'make-ready',
		instrument,
		due: work ? { tuning: work.to, capo: work.capo } : null,
	});
}

function canMarkAll({ session }: KeyContext): boolean {
	return session.phase.value === 'before' || session.phase.value === 'interval';
}

function readyPrompt(context: KeyContext): Outcome {
	const first = context.plan.work.find(
		(one) => context.session.instruments[one.instrument]?.value !== 'inHands',
	);
	const name = first ? instrumentName(context.session.show, first.instrument) : null;
	const title = first
		? `Ready: enter for slot ${slotOf(context.session, first.instrument)} ${name}, or another slot`
		: 'Ready: which slot?';
	return {
		kind: 'prompt',
		prompt: slotPrompt(title, (instrument, now) => readyOutcome(now, instrument.id), {
			enter: {
				words: first ? `slot ${slotOf(context.session, first.instrument)}` : 'nothing is due',
				outcome: (now) =>
					first
						? readyOutcome(now, first.instrument)
						: { kind: 'say', words: 'No work is due; press a slot.' },
			},
			...(canMarkAll(context)
				? { '0': { words: 'all on the rack', outcome: () => command({ do: 'make-all-ready' }) } }
				: {}),
		}),
	};
}

function breakOutcome({ session }: KeyContext): Outcome {
	const held = Object.values(session.players).flatMap(({ holds }) =>
		holds === null ? [] : [holds],
	);
	const [only, ...more] = held;
	if (only !== undefined && more.length === 0)
		return command({ do: 'report-break', instrument: only });
	return {
		kind: 'prompt',
		prompt: slotPrompt('String break: which slot?', (one) =>
			command({ do: 'report-break', instrument: one.id }),
		),
	};
}

function slotAction(
	title: string,
	then: (instrument: string, context: KeyContext) => Outcome,
): () => Outcome {
	return () => ({
		kind: 'prompt',
		prompt: slotPrompt(title, (one, context) => then(one.id, context)),
	});
}

const nextView = {
	live: 'rack',
	rack: 'set',
	set: 'log',
	log: 'live',
	help: 'live',
	settings: 'live',
} as const;

/** Every action, most needed first. */
export const ACTIONS: readonly Action[] = [
	{
		id: 'step',
		keys: ['space', 'pagedown'],
		words: 'next: the cue point, the end of the song, the next song with its hand-overs',
		footer: stepWords,
		whyNot: always,
		act: (context) => command(stepCommand(context)),
		isForDark: true,
	},
	{
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
	},
	{
		id: 'ready',
		keys: ['t'],
		words:
			'ready: the first in the do-next list, or a slot; before the show and in an interval 0 for all',
		footer: () => 'ready',
		whyNot: always,
		act: readyPrompt,
	},
	{
		id: 'break',
		keys: ['b'],
		words: 'string break: stand-ins at once, best first',
		footer: (context) => (openBreak(context.session) ? 'stand-ins' : 'break'),
		whyNot: always,
		act: breakOutcome,
	},
	{
		id: 'finish',
		keys: ['d'],
		words: 'the song is done, whatever cue points were left',
		footer: ({ session }) => (songOnNow(session) ? 'done' : null),
		whyNot: ({ session }) => (songOnNow(session) ? null : 'No song is on.'),
		act: (context) => command(finishCommand(context)),
	},
	{
		id: 'jump',
		keys: ['j'],
		words: 'jump: any song, on the list or not, becomes the next',
		footer: () => 'jump',
		whyNot: ({ session }) =>
			session.phase.value === 'packed' ? 'The show is over and packed.' : null,
		act: () => ({ kind: 'prompt', prompt: jumpPrompt() }),
	},
	{
		id: 'take-back',
		keys: ['u'],
		words: 'take back the last step, as far back as the start of the night',
		footer: ({ canTakeBack }) => (canTakeBack ? 'undo' : null),
		whyNot: ({ canTakeBack }) =>
			canTakeBack ? null : 'This is the start of the night; there is nothing to take back.',
		act: () => ({ kind: 'take-back' }),
	},
	{
		id: 'dark',
		keys: ['z'],
		words: 'dark, and back',
		footer: () => 'dark',
		whyNot: always,
		act: () => ({ kind: 'dark' }),
		isForDark: true,
	},
	{
		id: 'help',
		keys: ['?', 'f1'],
		words: 'all keys',
		footer: () => 'all',
		whyNot: always,
		act: ({ view }) => ({ kind: 'view', view: view === 'help' ? 'live' : 'help' }),
	},
	{
		id: 'step-back',
		keys: ['backspace', 'pageup'],
		words: 'one cue point back',
		footer: silent,
		whyNot: always,
		act: () => command({ do: 'step-back' }),
		isForDark: true,
	},
	{
		id: 'next-song',
		keys: ['right'],
		words: 'next song at once, no hand-over recorded',
		footer: silent,
		whyNot: always,
		act: () => command({ do: 'go-to-next-song' }),
	},
	{
		id: 'previous-song',
		keys: ['left'],
		words: 'previous song at once, no hand-over recorded',
		footer: silent,
		whyNot: always,
		act: () => command({ do: 'go-to-previous-song' }),
	},
	{
		id: 'exchange',
		keys: ['x'],
		words: 'another instrument is in hands: slot; or x, a player, - for none',
		footer: silent,
		whyNot: always,
		act: () => ({ kind: 'prompt', prompt: exchangePrompt() }),
	},
	{
		id: 'incident',
		keys: ['i'],
		words: 'incident: stamped now, nothing asked',
		footer: silent,
		whyNot: always,
		act: () => command({ do: 'note-incident' }),
	},
	{
		id: 'describe',
		keys: ['e'],
		words: 'add to the last incident: string by digit, kind by letter, words',
		footer: ({ session }) => (openBreak(session) ? 'which string' : null),
		whyNot: ({ session, keyOf }) =>
			session.incidents.length > 0
				? null
				: `There is no incident to add to; ${keyOf('incident')} marks one.`,
		act: (context) => ({ kind: 'prompt', prompt: describePrompt(context) }),
	},
	{
		id: 'memo',
		keys: ['m'],
		words: 'memo',
		footer: silent,
		whyNot: always,
		act: (context) => ({ kind: 'prompt', prompt: memoPrompt(context) }),
	},
	{
		id: 'as-it-is',
		keys: ['c'],
		words: 'capo or tuning as it really is: slot, then a fret or a name',
		footer: silent,
		whyNot: always,
		act: () => ({
			kind: 'prompt',
			prompt: slotPrompt('Capo or tuning of which slot?', (one) => ({
				kind: 'prompt',
				prompt: asItIsPrompt(one),
			})),
		}),
	},
	{
		id: 'put-aside',
		keys: ['f'],
		words: 'faulty or out tonight: slot, then what, or enter',
		footer: silent,
		whyNot: always,
		act: () => ({
			kind: 'prompt',
			prompt: slotPrompt('Faulty or out: which slot?', (one) => ({
				kind: 'prompt',
				prompt: faultPrompt(one),
			})),
		}),
	},
	{
		id: 'bring-back',
		keys: ['r'],
		words: 'back from the bench or from outside: slot',
		footer: silent,
		whyNot: always,
		act: slotAction('Back on the rack: which slot?', (instrument) =>
			command({ do: 'bring-back', instrument }),
		),
	},
	{
		id: 'stage',
		keys: ['s'],
		words: "staged at the player's place: slot",
		footer: silent,
		whyNot: always,
		act: slotAction("At the player's place: which slot?", (instrument) =>
			command({ do: 'stage', instrument }),
		),
	},
	{
		id: 'doubt-all',
		keys: ['a'],
		words: 'everything on the rack is to be checked again (light, heat, rain): enter',
		footer: silent,
		whyNot: always,
		act: () => ({ kind: 'prompt', prompt: doubtAllPrompt() }),
	},
	{
		id: 'correct-pedal',
		keys: ['o'],
		words:
			"a pedal is otherwise than we believe: player's letter where several have boards, pedal's number",
		footer: silent,
		whyNot: ({ session }) =>
			Object.keys(session.boards).length > 0 ? null : 'No player has a board in this show.',
		act: (context) =>
			withPlayer(context, 'Whose board?', {
				among: Object.keys(context.session.boards),
				goOn: (player) => ({ kind: 'prompt', prompt: pedalPrompt(player) }),
			}),
	},
	{
		id: 'pack',
		keys: ['w'],
		words: "pack: player's letter, then its number; - marks the present one suspect",
		footer: silent,
		whyNot: ({ session }) => (session.show.packs.length > 0 ? null : 'This show lists no packs.'),
		act: (context) =>
			withPlayer(context, 'Whose pack?', {
				among: context.session.show.players.map(({ id }) => id),
				goOn: (player) => ({ kind: 'prompt', prompt: packPrompt(player) }),
			}),
	},
	{
		id: 'put-back',
		keys: ['y'],
		words: 'put back what was taken back',
		footer: ({ canPutBack }) => (canPutBack ? 'put back' : null),
		whyNot: ({ canPutBack }) =>
			canPutBack ? null : 'Nothing was taken back that could be put back.',
		act: () => ({ kind: 'put-back' }),
	},
	{
		id: 'lock',
		keys: ['l'],
		words: 'lock; l then esc within 2 s unlocks',
		footer: silent,
		whyNot: always,
		act: () => ({ kind: 'lock' }),
	},
	{
		id: 'view',
		keys: ['tab'],
		words: 'next view: live, rack, set, log; esc returns to live',
		footer: silent,
		whyNot: always,
		act: ({ view }) => ({ kind: 'view', view: nextView[view] }),
	},
	{
		id: 'live',
		keys: ['esc'],
		words: 'back to the live view',
		footer: ({ view }) => (view === 'live' ? null : 'live'),
		whyNot: always,
		act: () => ({ kind: 'view', view: 'live' }),
	},
	{
		id: 'pick-up',
		keys: ['up'],
		words: 'in a list: pick the one above',
		footer: silent,
		whyNot: always,
		act: () => ({ kind: 'pick', by: -1 }),
		isEachCounted: true,
	},
	{
		id: 'pick-down',
		keys: ['down'],
		words: 'in a list: pick the one below',
		footer: silent,
		whyNot: always,
		act: () => ({ kind: 'pick', by: 1 }),
		isEachCounted: true,
	},
	{
		id: 'narrow',
		keys: ['/'],
		words: 'in the log view: only lines with the words typed',
		footer: ({ view }) => (view === 'log' ? 'only some' : null),
		whyNot: ({ view }) => (view === 'log' ? null : 'That is for the log view; tab goes there.'),
		act: (context) => ({ kind: 'prompt', prompt: narrowPrompt(context) }),
	},
	{
		id: 'settings',
		keys: [','],
		words: 'settings: looks, your own times for work, keys',
		footer: silent,
		whyNot: always,
		act: ({ view }) => ({ kind: 'view', view: view === 'settings' ? 'live' : 'settings' }),
	},
	{
		id: 'leave',
		keys: ['q'],
		words: 'leave (the night stays open) or end the show',
		// Once the last song is over there is nothing left that is needed more.
		footer: ({ session }) => (session.phase.value === 'over' ? 'end the show' : null),
		whyNot: always,
		act: () => ({ kind: 'prompt', prompt: leavePrompt() }),
	},
	...SET_ACTIONS,
];

/** The same for the footer of a view: what can be done only there comes right after the first two. */
export function actionsIn(view: ViewName): readonly Action[] {
	if (view !== 'set') return ACTIONS;
	const [step, open, ...others] = ACTIONS.filter((one) => !SET_ACTIONS.includes(one));
	return [step, open, ...SET_ACTIONS, ...others].filter((one) => one !== undefined);
}

/** The action that a key does, with the keys that the user has set in place of the defaults (action id to key). */
export function actionOf(
	key: string,
	remapped: Readonly<Record<string, string>> = {},
): Action | null {
	const pressed = key.length === 1 ? key.toLowerCase() : key;
	const own = ACTIONS.find(({ id }) => remapped[id] === pressed);
	return (
		own ??
		ACTIONS.find(({ id, keys }) => remapped[id] === undefined && keys.includes(pressed)) ??
		null
	);
}
