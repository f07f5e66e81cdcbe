// What is in hands otherwise than planned: asked for by slot or player, as of now or since the song began that
// it was missed for.

import type { NightMs } from '../journal/entry.ts';
import { findSongItem, isAfterInterval, nextSongItem, songOnNow } from '../session/find.ts';
import { missedHandOver } from '../session/missed-hand-over.ts';
import { packHanded } from '../session/packs-handed.ts';
import type { Session } from '../session/session.ts';
import type { Instrument } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { allSideBySide } from '../words/line-columns.ts';
import { packWords } from '../words/pack-words.ts';
import {
	ANSWERS,
	keepsIfChosen,
	keptWords,
	noneMissed,
	swapSlotTitle,
	swapTitle,
	whoHas,
} from '../words/questions.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import { choicePrompt, nothingThere, playerOfKey, slotPrompt, withPlayer } from './prompts.ts';
import { instrumentAtSlot, playersFor, slotOf } from './rack-slots.ts';

/** When the song began for which this player's hand-over was not recorded; null where none was missed. */
function missedSince({ session, plan }: KeyContext, player: string): NightMs | null {
	const isOverdue = plan.handOvers.some(
		({ section, player: who }) => who === player && section.hasBegun && section.point === 0,
	);
	const on = songOnNow(session);
	if (on && isOverdue) return on.item.runs.at(-1)?.beganAtMs ?? null;
	return missedHandOver(session, player)?.beganAtMs ?? null;
}

/** What they stay on what they have for: the song on while its own hand-over is open, else the coming one, unless an interval stands before it. */
function itemFor({ session, plan }: KeyContext, player: string): string | undefined {
	const on = songOnNow(session)?.item.key;
	const isOverdue = plan.handOvers.some(
		({ section, player: who }) => who === player && section.hasBegun,
	);
	const next = nextSongItem(session)?.key;
	return isOverdue || (next !== undefined && isAfterInterval(session, next)) ? on : next;
}

type Given = {
	readonly player: string;
	readonly instrument: string | null;
	readonly isSinceBegin: boolean;
};

function given(context: KeyContext, { player, instrument, isSinceBegin }: Given): Outcome {
	const since = isSinceBegin ? missedSince(context, player) : null;
	if (isSinceBegin && since === null) {
		const who = playerName(context.session.show, player);
		return { kind: 'say', words: noneMissed(who) };
	}
	const item = itemFor(context, player);
	return {
		kind: 'command',
		command: {
			do: 'exchange',
			player,
			instrument,
			...(item === undefined ? {} : { item }),
			...(since === null ? {} : { sinceMs: since }),
		},
	};
}

type Swap = { readonly player: string; readonly instrument: string; readonly name: string };

/** The pack that goes on with each of these, where that is not just what is worn: `4 Anchor PACK P2`. */
function packLines(session: Session, swaps: readonly Swap[]): readonly string[] {
	const named = swaps.flatMap(({ player, instrument, name }) => {
		if (session.players[player]?.holds === instrument) return [];
		const handed = packHanded(session, player, instrument);
		const words = packWords(session, player, { pack: handed.pack, handed });
		return words === '' ? [] : [{ name, words }];
	});
	return allSideBySide((cut) => named.map(({ name, words }) => `${cut(name)} ${words}`));
}

/** The same for every slot whose instrument this player may have, or for null where only one player may. */
function packsBySlot(session: Session, asked: string | null): readonly string[] {
	const swaps = session.show.instruments.flatMap((one): Swap[] => {
		const able = playersFor(session, one).filter((id) => asked === null || id === asked);
		const [player] = able;
		return one.slot === null || player === undefined || able.length > 1
			? []
			: [{ player, instrument: one.id, name: shownInstrument(session.show, one.id) }];
	});
	return packLines(session, swaps);
}

/** Whose answer would be no swap. */
function keptLines(
	{ players, show }: Session,
	instrument: string,
	among: readonly string[],
): readonly string[] {
	return show.players
		.filter(({ id }) => among.includes(id) && players[id]?.holds === instrument)
		.map(({ name, key }) => keepsIfChosen(name, key));
}

/** The same, with what it comes to where they had it in hands already: whoever typed its slot may have meant somebody else. */
function sayingKept(
	{ session, keyOf }: KeyContext,
	{ player, instrument }: { readonly player: string; readonly instrument: Instrument },
	outcome: Outcome,
): Outcome {
	if (outcome.kind !== 'command' || session.players[player]?.holds !== instrument.id) {
		return outcome;
	}
	const { command } = outcome;
	const key = command.do === 'exchange' ? command.item : undefined;
	const song = key === undefined ? undefined : findSongItem(session, key)?.song;
	const says = keptWords({
		player: playerName(session.show, player),
		instrument: shownInstrument(session.show, instrument.id),
		song: song === undefined ? null : songTitle(session.show, song),
		slot: slotOf(session, instrument.id),
		undoKey: keyOf('take-back'),
		swapKey: keyOf('exchange'),
	});
	return { ...outcome, says };
}

/** Another instrument is in hands: a slot, or a player's letter and then a slot or `-` for none; enter first for since the song began. */
export function exchangePrompt(isSinceBegin = false): Prompt {
	const isMissed = (context: KeyContext) =>
		!isSinceBegin &&
		context.session.show.players.some(({ id }) => missedSince(context, id) !== null);
	return choicePrompt(
		(context) => ({
			title: swapTitle(isSinceBegin),
			lines: packsBySlot(context.session, null),
			choices: [
				...context.session.show.players.map((one) => ({ key: one.key, words: one.name })),
				...(isMissed(context) ? [{ key: 'enter', words: ANSWERS.sinceBegin }] : []),
			],
		}),
		(key, context) => {
			if (key === 'enter' && isMissed(context)) {
				return { kind: 'prompt', prompt: exchangePrompt(true) };
			}
			const { session } = context;
			const instrument = instrumentAtSlot(session, key);
			if (instrument) {
				const among = playersFor(session, instrument);
				const goOn = (player: string) =>
					given(context, { player, instrument: instrument.id, isSinceBegin });
				return withPlayer(context, whoHas(shownInstrument(session.show, instrument.id)), {
					among,
					lines: [
						...keptLines(session, instrument.id, among),
						...packLines(
							session,
							among.map((player) => {
								const name = playerName(session.show, player);
								return { player, instrument: instrument.id, name };
							}),
						),
					],
					goOn: (player) =>
						among.length === 1
							? sayingKept(context, { player, instrument }, goOn(player))
							: goOn(player),
				});
			}
			const all = session.show.players.map(({ id }) => id);
			const player = playerOfKey(session, key, all);
			if (!player) return nothingThere(key);
			return {
				kind: 'prompt',
				prompt: slotPrompt(
					{
						title: swapSlotTitle(player.name, isSinceBegin),
						lines: packsBySlot(session, player.id),
					},
					(one, now) => given(now, { player: player.id, instrument: one.id, isSinceBegin }),
					{
						'-': {
							words: ANSWERS.none,
							outcome: (now) => given(now, { player: player.id, instrument: null, isSinceBegin }),
						},
					},
				),
			};
		},
	);
}
