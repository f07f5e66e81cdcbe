// The questions that name another instrument for a player in one song of the list, tonight: who, which slot,
// and enter once what it comes to was seen.

import type { TonightPart } from '../journal/entry.ts';
import { whatIf } from '../plan/what-if/what-if.ts';
import type { Command } from '../session/command.ts';
import { whyFixed } from '../session/decide-set.ts';
import { findSongItem } from '../session/find.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { LIST_EMPTY } from '../words/actions.ts';
import { capoSaid } from '../words/capo-words.ts';
import { changeLines, itemTitle } from '../words/list-words.ts';
import {
	ANSWERS,
	anotherFor,
	NOBODY_IN_INTERVAL,
	TONIGHT,
	tonightSlotTitle,
	tonightTitle,
} from '../words/questions.ts';
import { refusalWords } from '../words/refusals.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import { namedTonight } from './named-tonight.ts';
import { choicePrompt, slotPrompt, withPlayer } from './prompts.ts';

/** Asks for the player, unless there is one only, then for the slot. */
export function nameTonight(context: KeyContext): Outcome {
	const { session, picked } = context;
	const item = session.list[Math.min(picked, session.list.length - 1)];
	if (item === undefined) return { kind: 'say', words: LIST_EMPTY };
	const { key } = item;
	if (item.kind === 'interval') return { kind: 'say', words: NOBODY_IN_INTERVAL };
	const why = whyFixed(session, key);
	if (why !== null) return { kind: 'say', words: refusalWords(session.show, why) };
	const title = itemTitle(session, key);
	return withPlayer(context, anotherFor(title), {
		among: session.show.players.map(({ id }) => id),
		goOn: (player) => ({ kind: 'prompt', prompt: tonightSlotPrompt(context, key, player) }),
	});
}

function tonightSlotPrompt({ session }: KeyContext, key: string, player: string): Prompt {
	const item = findSongItem(session, key);
	const isNamed = item !== null && Object.hasOwn(item.tonight, player);
	const ask = (part: TonightPart | null): Outcome => ({
		kind: 'prompt',
		prompt: confirmPrompt({ do: 'name-tonight', item: key, player, part }),
	});
	return slotPrompt(
		tonightSlotTitle(itemTitle(session, key), playerName(session.show, player)),
		(instrument, now) => {
			const song = findSongItem(now.session, key);
			return song === null
				? { kind: 'close' }
				: ask(namedTonight(now.session, instrument, { item: song, player }));
		},
		{
			'-': { words: ANSWERS.none, outcome: () => ask({ kind: 'none' }) },
			...(isNamed ? { '0': { words: ANSWERS.asSongSays, outcome: () => ask(null) } } : {}),
		},
	);
}

type NameTonight = Extract<Command, { do: 'name-tonight' }>;

function confirmPrompt(command: NameTonight): Prompt {
	const { item: key, player, part } = command;
	return choicePrompt(
		(context) => {
			const { session } = context;
			const after = whatIf(context, command);
			const who = playerName(session.show, player);
			return {
				title: tonightTitle(itemTitle(session, key), who, partWords(context, part)),
				lines: after.ok
					? changeLines(context, after, key)
					: [refusalWords(session.show, after.why)],
				choices: [
					{ key: 'enter', words: ANSWERS.tonight },
					{ key: 'esc', words: ANSWERS.cancel },
				],
			};
		},
		(pressed) =>
			pressed === 'enter' ? { kind: 'command', command, follows: key } : { kind: 'pass' },
	);
}

function partWords({ session }: KeyContext, part: TonightPart | null): string {
	if (part === null) return TONIGHT.asSongSays;
	if (part.kind === 'none') return TONIGHT.empty;
	const named = shownInstrument(session.show, part.instrument);
	return TONIGHT.on(named, part.tuning.name, capoSaid(part.capo));
}
