// What is given into hands: as planned, or otherwise.

import { cuePoints } from '../../machines/song.ts';
import { firstSong } from '../plan/demand/first-song.ts';
import type { PlannedHandOver, Stay } from '../plan/plan.ts';
import { nextSongItem, songOnNow } from '../session/find.ts';
import { openFromPoint } from '../session/settled.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { ACTION_WORDS, FOOTER, keepsFooter, noHandOver } from '../words/actions.ts';
import { asBackup } from '../words/backup-for.ts';
import { capoWords } from '../words/capo-words.ts';
import {
	ANSWERS,
	checkFirst,
	HANDS_EMPTY,
	handOverLine,
	handOverTitle,
	type Later,
	loggedWords,
	notInHandOver,
	stayLine,
} from '../words/questions.ts';
import type { Action } from './action.ts';
import { exchangePrompt } from './exchange-prompt.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import { nameTonight } from './name-tonight-prompt.ts';
import { notDone, saysNotDone } from './not-done.ts';
import { openPicked } from './open-picked.ts';
import { slotPrompt } from './prompts.ts';
import { slotOf } from './rack-slots.ts';
import { asHandOver, asStaying } from './step-commands.ts';

/** What enter records. */
type Open = {
	readonly handOvers: readonly PlannedHandOver[];
	/** Who keeps what for the song on or the next one. */
	readonly stays: readonly Stay[];
};

const NOTHING_OPEN: Open = { handOvers: [], stays: [] };

/** What is open in the song on, else what comes first for the next one. */
function openNow({ session, plan }: KeyContext): Open {
	const isBegun = ({ section }: PlannedHandOver | Stay) => section.hasBegun;
	// A skip moves no capo of what a player keeps: that is open like what was to be handed.
	const overdue = {
		handOvers: plan.handOvers.filter(isBegun),
		stays: plan.capoMoves.filter(isBegun),
	};
	if (isAnyOpen(overdue)) return overdue;
	const next = nextSongItem(session)?.key;
	const sectionsOn = songOnNow(session) === null ? [] : firstSong(plan.sections);
	const isOwn = ({ section }: PlannedHandOver) => sectionsOn.includes(section);
	// Who has nothing to play before that is said to lack it, and is given nothing for later yet.
	const isAfterLack = ({ player, section }: PlannedHandOver) =>
		plan.slots.some(
			(one) =>
				one.player === player &&
				one.isMissing &&
				!one.section.hasBegun &&
				one.section.startMs < section.startMs,
		);
	// What a cue of the next song hands over waits for that song: a second press in the gap is no word of it.
	const isAtNextStart = ({ section }: PlannedHandOver) =>
		section.item === next && section.point === 0 && !section.hasBegun;
	const ahead = plan.handOvers.filter(
		(one) => (isOwn(one) || isAtNextStart(one)) && !isAfterLack(one),
	);
	const stays = ahead.some(isOwn) ? [] : openStays(next);
	const first = stays[0] ?? ahead[0];
	return first
		? { handOvers: ahead.filter(({ section }) => section === first.section), stays }
		: NOTHING_OPEN;

	function openStays(item: string | undefined): readonly Stay[] {
		if (item === undefined) return [];
		return plan.stays.filter(
			({ section, player }) => section.item === item && openFromPoint(session, item, player) === 0,
		);
	}
}

function isAnyOpen({ handOvers, stays }: Open): boolean {
	return handOvers.length + stays.length > 0;
}

/** What enter records, for the footer: `handed`, `keeps S, capo on 2`; null where nothing is open. */
function openWords({ session }: KeyContext, { handOvers, stays }: Open): string | null {
	const kept = stays.map(({ instrument, capo }) => {
		const slot = slotOf(session, instrument).toUpperCase();
		const isMoved = session.instruments[instrument]?.context.capo !== capo;
		return keepsFooter(slot, isMoved ? capo : null);
	});
	const all = [...(handOvers.length > 0 ? [FOOTER.handed] : []), ...kept];
	return all.length === 0 ? null : all.join(', ');
}

/** A cue in the song on is known to be this far off: whoever presses enter means something else, or presses too early. Common practice, no source. */
const LATER_CUE_SECONDS = 60;

/** The song that they are for, where another one is on, or the cue, where that is still far off; null for what is handed now. */
function laterOf({ session, nowMs }: KeyContext, { handOvers, stays }: Open): Later | null {
	const on = songOnNow(session);
	const section = (handOvers[0] ?? stays[0])?.section;
	if (on === null || section === undefined) return null;
	if (section.item !== on.item.key) {
		return { title: songTitle(session.show, section.song), isCue: false };
	}
	const cue = section.hasBegun ? undefined : cuePoints(on.song)[section.point];
	const wantedMs = handOvers[0]?.wantedMs ?? section.startMs;
	// Without a `near` nobody knows how far off it is.
	const isFar = cue?.nearSeconds != null && wantedMs - nowMs > LATER_CUE_SECONDS * 1000;
	return isFar ? { title: cue.at, isCue: true } : null;
}

function recorded(context: KeyContext, open: Open): Outcome {
	const { handOvers, stays } = open;
	const command: Outcome = {
		kind: 'command',
		command: {
			do: 'hand-over',
			handOvers: handOvers.map((one) => ({ ...asHandOver(one), item: one.section.item })),
			stays: stays.map(asStaying),
		},
	};
	const later = laterOf(context, open);
	if (later === null) return command;
	const { session, keyOf } = context;
	const { show } = session;
	const all = [...handOvers, ...stays];
	const given = all[0]?.instrument ?? null;
	const says = loggedWords({
		players: all.map(({ player }) => playerName(show, player)),
		instrument: given === null ? null : shownInstrument(show, given),
		later,
		undoKey: keyOf('take-back'),
		swapKey: keyOf('exchange'),
	});
	// It was named by the first press and is so since the second.
	return { ...command, isStampedNow: true, says };
}

/** Taking away without giving asks nothing: it goes with the one that is given. */
function givenOf({ handOvers }: Open): readonly PlannedHandOver[] {
	return handOvers.filter(({ instrument }) => instrument !== null);
}

function givenCount(open: Open): number {
	return givenOf(open).length + open.stays.length;
}

function handOverOutcome(context: KeyContext): Outcome {
	const open = openNow(context);
	const later = laterOf(context, open);
	const count = givenCount(open);
	if (later === null && count < 2) {
		const says = saysNotDone(context, givenOf(open));
		const outcome = recorded(context, open);
		return says !== undefined && outcome.kind === 'command' ? { ...outcome, says } : outcome;
	}
	return { kind: 'prompt', prompt: handOverPrompt() };
}

/**
 * Names what is open as the rows beside it do: the plan may be made anew while the question stands, and what is recorded
 * is what is read then.
 */
function handOverPrompt(): Prompt {
	return slotPrompt(
		(context) => {
			const open = openNow(context);
			return {
				title: isAnyOpen(open)
					? handOverTitle(laterOf(context, open), givenCount(open))
					: noHandOver(context.keyOf('exchange')),
				lines: [
					...open.handOvers.map((one) => lineOf(context, one)),
					...open.stays.map((one) => stayLineOf(context.session.show, one)),
				],
			};
		},
		(instrument, now) => {
			const open = openNow(now);
			const isThis = (one: { readonly instrument: string | null }) =>
				one.instrument === instrument.id;
			const one: Open = {
				handOvers: open.handOvers.filter(isThis),
				stays: open.stays.filter(isThis),
			};
			return isAnyOpen(one)
				? recorded(now, one)
				: {
						kind: 'say',
						words: notInHandOver(
							shownInstrument(now.session.show, instrument.id),
							now.keyOf('exchange'),
						),
					};
		},
		{
			enter: {
				words: (now) => (givenCount(openNow(now)) < 2 ? ANSWERS.inHands : ANSWERS.all),
				outcome: (now) => {
					const open = openNow(now);
					return isAnyOpen(open)
						? recorded(now, open)
						: { kind: 'say', words: noHandOver(now.keyOf('exchange')) };
				},
			},
		},
	);
}

/** Who gets what, and what is to be checked before it leaves the rack. */
function lineOf(context: KeyContext, planned: PlannedHandOver): string {
	const { show } = context.session;
	const { player, instrument, tuning, capo, leave, for: named } = planned;
	const what =
		instrument === null
			? HANDS_EMPTY
			: `${shownInstrument(show, instrument)}, ${tuning?.name ?? ''}, ${capoWords(capo)}${asBackup(show, named)}`;
	const check = leave === null ? '' : checkFirst(leave);
	const left = notDone(context.plan, planned)
		.map((words) => `, ${words}`)
		.join('');
	return handOverLine(playerName(show, player), what, `${left}${check}`);
}

function stayLineOf(show: Show, { player, instrument, capo, for: named }: Stay): string {
	const what = `${shownInstrument(show, instrument)}, ${capoWords(capo)}${asBackup(show, named)}`;
	return stayLine(playerName(show, player), what);
}

export const handOver: Action = {
	id: 'hand-over',
	keys: ['enter'],
	words: ACTION_WORDS['hand-over'].help,
	footer: (context) => {
		if (context.view === 'settings') return FOOTER.change;
		if (context.view === 'rig') return FOOTER.rings;
		if (openPicked(context) !== null) return FOOTER.open;
		return openWords(context, openNow(context));
	},
	whyNot: (context) =>
		openPicked(context) !== null || isAnyOpen(openNow(context))
			? null
			: noHandOver(context.keyOf('exchange')),
	act: (context) => openPicked(context) ?? handOverOutcome(context),
};

export const exchange: Action = {
	id: 'exchange',
	keys: ['x'],
	words: ACTION_WORDS.exchange.help,
	act: (context) =>
		context.view === 'list' ? nameTonight(context) : { kind: 'prompt', prompt: exchangePrompt() },
};
