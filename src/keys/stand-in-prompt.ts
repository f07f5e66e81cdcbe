// The question of a broken string: what could take over, what each choice costs later, and what playing
// on means. It stays until it is answered or put off.

import { displayWidth, fitWidth } from '../base/display-width.ts';
import { minutesSeconds } from '../base/duration.ts';
import { rackNow } from '../plan/backups/stand-ins.ts';
import { leftOutOf } from '../plan/backups/take-over.ts';
import { endsFirst, songEndMs } from '../plan/demand/first-song.ts';
import { showSeconds } from '../plan/demand/sections-ahead.ts';
import type { Later, StandIn } from '../plan/plan.ts';
import { findInstrument, openBreak } from '../session/find.ts';
import type { Incident, Session } from '../session/session.ts';
import { instrumentName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import { differenceAndRest, differenceFirst, whyBesideCapo } from '../words/backup-reasons.ts';
import { laterInShort } from '../words/later-costs.ts';
import {
	ANSWERS,
	BEST,
	breakTitle,
	isBrokenOne,
	moreLater,
	NO_BACKUP_KEYS,
	noBackupFits,
	OR,
	playOnLeft,
	TAKE,
	WHICH_SLOT,
} from '../words/questions.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { leftOutWords } from '../words/unplayable.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import type { PromptView } from './prompt-view.ts';
import { slotPrompt, withWayOut } from './prompts.ts';
import { instrumentAtSlot, slotOf } from './rack-slots.ts';

/** With the line of playing on they fill the rows there are at 80 by 24; any other goes by its slot. */
const MOST_LINES = 4;

/** The stand-ins for the break that waits for its answer; `broken` is swallowed when its slot is typed after all. */
export function standInPrompt(): Prompt {
	const give = (instrument: string, offered: readonly StandIn[]): Outcome => {
		const offer = offered.find((one) => one.instrument === instrument);
		const { tuning = null, capo = null } = offer ?? {};
		return {
			kind: 'command',
			command: { do: 'stand-in', instrument, tuning, capo },
			isStampedNow: true,
		};
	};
	return {
		isText: false,
		isLasting: true,
		view: (context) => standInView(context),
		press: (key, context) => {
			const open = openBreak(context.session);
			if (!open || open.player === null) return { kind: 'pass' };
			const offered = context.standInsFor(open.player);
			const [first] = offered;
			if (key === 'esc') return { kind: 'decide-later', of: open.id };
			if (key === '0') return { kind: 'command', command: { do: 'play-on' }, isStampedNow: true };
			if (key === 'enter') {
				return first
					? give(first.instrument, offered)
					: {
							kind: 'say',
							words: NO_BACKUP_KEYS,
						};
			}
			const instrument = instrumentAtSlot(context.session, key);
			if (!instrument && key.toLowerCase() === context.keyOf('break')) return nextBreak();
			if (!instrument) return { kind: 'pass' };
			if (instrument.id === open.instrument)
				return {
					kind: 'say',
					words: isBrokenOne(shownInstrument(context.session.show, instrument.id)),
				};
			return give(instrument.id, offered);
		},
	};
}

/** Another player's string while this one is undecided. The slot is always asked: a key pressed twice is no break. */
function nextBreak(): Outcome {
	const prompt = slotPrompt(WHICH_SLOT.secondBreak, ({ id }, { session }) =>
		(session.instruments[id]?.context.stringsDown.length ?? 0) > 0
			? { kind: 'say', words: isBrokenOne(shownInstrument(session.show, id)) }
			: { kind: 'command', command: { do: 'report-break', instrument: id } },
	);
	return { kind: 'prompt', prompt };
}

function standInView(context: KeyContext): PromptView {
	const { session, standInsFor, nowMs, keyOf } = context;
	const open = openBreak(session);
	const player = open?.player ?? null;
	const standIns = player === null ? [] : standInsFor(player).slice(0, MOST_LINES);
	const [first] = standIns;
	const who = player === null ? '' : playerName(session.show, player);
	const isOver = isOverFirst(context, first);
	const backups =
		standIns.length === 0
			? [noneLine(context, player)]
			: standInLines(context, { standIns, player });
	const playOn = open === null ? [] : [playOnLine(context, { open, isBest: isOver })];
	const playOnKey = { key: '0', words: ANSWERS.playOn };
	const silent = open ? Math.max(0, (nowMs - open.atMs) / 1000) : 0;
	return {
		title: breakTitle(
			who,
			shownInstrument(session.show, open?.instrument ?? ''),
			minutesSeconds(silent),
		),
		// What is best stands first.
		lines: isOver ? [...playOn, ...backups] : [...backups, ...playOn],
		field: null,
		choices: withWayOut([
			...(isOver ? [playOnKey] : []),
			...(first === undefined
				? []
				: [
						{
							key: 'enter',
							words: (isOver ? ANSWERS.firstAnyway : ANSWERS.firstInHands)(
								slotOf(session, first.instrument).toUpperCase(),
							),
						},
					]),
			{ key: 'slot', words: ANSWERS.another },
			...(isOver ? [] : [playOnKey]),
			{ key: keyOf('break'), words: ANSWERS.nextBreak },
			{ key: 'esc', words: ANSWERS.decideLater },
		]),
	};
}

/** Whether the song is over before the first backup is in hands. */
function isOverFirst({ plan, nowMs }: KeyContext, first: StandIn | undefined): boolean {
	return first !== undefined && endsFirst(first, plan.sections, nowMs) !== null;
}

/** That nothing fits, and why not, of each that seems to. */
function noneLine({ session, plan, nowMs }: KeyContext, player: string | null): string {
	const rack = player === null ? null : rackNow({ session, plan, nowMs, player });
	return noBackupFits(rack === null ? '' : leftOutWords(session.show, leftOutOf(rack)));
}

/** What to take, in how long it is in hands, what it is to be in, in what it differs and how it stands, and what it costs later: in columns, since it is read in a hurry. */
function standInLines(
	context: KeyContext,
	{ standIns, player }: { readonly standIns: readonly StandIn[]; readonly player: string | null },
): readonly string[] {
	const { session } = context;
	const rows = standIns.map((one, index) => ({
		take: index === 0 && !isOverFirst(context, one) ? TAKE : OR,
		slot: slotOf(session, one.instrument).toUpperCase(),
		name: fitWidth(instrumentName(session.show, one.instrument), NAME_COLUMNS).trimEnd(),
		inHands: minutesSeconds(Math.round(one.readyInSeconds)),
		// Short: the words follow, of which the end may be cut.
		tuning: [
			shortTuning(session.show, one.tuning),
			...(one.capo === 0 ? [] : [`capo ${one.capo}`]),
		].join(', '),
		words: whyWords(session, one, costWords(context, one.later, player)),
	}));
	const widest = (texts: readonly string[]) => Math.max(...texts.map(displayWidth));
	const names = widest(rows.map(({ name }) => name));
	const tunings = widest(rows.map(({ tuning }) => tuning));
	return rows.map(({ take, slot, name, inHands, tuning, words }) =>
		[
			take,
			fitWidth(slot, 2, { align: 'right' }),
			fitWidth(name, names),
			fitWidth(inHands, 5, { align: 'right' }),
			// Two cells after it, or the reason would be read on from the tuning.
			fitWidth(tuning, tunings + 1),
			words,
		].join(' '),
	);
}

/**
 * In what it differs, what it costs later, and why it would do, but the capo, which stands beside the tuning already:
 * the end may be cut.
 */
function whyWords({ show }: Session, standIn: StandIn, cost: readonly string[]): string {
	const why = whyBesideCapo(standIn);
	if (cost.length === 0) return differenceFirst(show, why);
	const { difference, rest } = differenceAndRest(show, why);
	return [difference, ...cost, rest].filter((one) => one !== '').join('; ');
}

const NAME_COLUMNS = 12;

/** The first thing that it costs, and how many more there are; nothing where it costs nothing. */
function costWords(
	context: KeyContext,
	[first, ...more]: readonly Later[],
	player: string | null,
): readonly string[] {
	if (first === undefined || player === null) return [];
	const about = { nowSeconds: showSeconds(context), player };
	return [moreLater(laterInShort(context.session.show, first, about), more.length)];
}

/** What playing on means: how much of the song is still to be played on the strings that are left. */
function playOnLine(
	context: KeyContext,
	{ open, isBest }: { readonly open: Incident; readonly isBest: boolean },
): string {
	const { session, plan, nowMs, playOnLater } = context;
	const leftSeconds = ((songEndMs(plan.sections) ?? nowMs) - nowMs) / 1000;
	const words =
		leftSeconds > 0
			? playOnLeft(stringsLeft(session, open.instrument), minutesSeconds(leftSeconds))
			: ANSWERS.playOn;
	const later = open.player === null ? [] : playOnLater(open.player);
	const label = `${isBest ? BEST : OR}  0`;
	return [label, [words, ...costWords(context, later, open.player)].join('; ')].join(' ');
}

function stringsLeft(session: Session, id: string | null): number {
	const instrument = id === null ? null : findInstrument(session, id);
	const down = id === null ? 0 : (session.instruments[id]?.context.stringsDown.length ?? 0);
	return (instrument?.tuning.notes.length ?? 0) - down;
}
