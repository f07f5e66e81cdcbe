// The questions that name another instrument for a player in one song of the list, tonight: who, which slot,
// and enter once what it comes to was seen.

import type { TonightPart } from '../journal/entry.ts';
import { whatIf } from '../plan/what-if/what-if.ts';
import type { Command } from '../session/command.ts';
import { whyFixed } from '../session/decide-set.ts';
import { findSongItem } from '../session/find.ts';
import { playerName, slotAndName } from '../showfile/shown-names.ts';
import { capoSaid } from '../tuning/capo-words.ts';
import { refusalWords } from '../words/refusals.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import { namedTonight } from './named-tonight.ts';
import { choicePrompt, slotPrompt, withPlayer } from './prompts.ts';
import { changeLines, itemTitle } from './set-words.ts';

/** Asks for the player, unless there is one only, then for the slot. */
export function nameTonight(context: KeyContext): Outcome {
	const { session, picked } = context;
	const item = session.list[Math.min(picked, session.list.length - 1)];
	if (item === undefined) return { kind: 'say', words: 'The set is empty.' };
	const { key } = item;
	if (item.kind === 'interval') return { kind: 'say', words: 'Nobody plays in an interval.' };
	const why = whyFixed(session, key);
	if (why !== null) return { kind: 'say', words: refusalWords(session.show, why) };
	const title = itemTitle(session, key);
	return withPlayer(context, `Another instrument in ${title}: for whom?`, {
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
		`${itemTitle(session, key)} tonight: ${playerName(session.show, player)} has which slot?`,
		(instrument, now) => {
			const song = findSongItem(now.session, key);
			return song === null
				? { kind: 'close' }
				: ask(namedTonight(now.session, instrument, { item: song, player }));
		},
		{
			'-': { words: 'none', outcome: () => ask({ kind: 'none' }) },
			...(isNamed ? { '0': { words: 'as the song says', outcome: () => ask(null) } } : {}),
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
				title: `${itemTitle(session, key)} tonight: ${who} ${partWords(context, part)}`,
				lines: after.ok
					? changeLines(context, after, key)
					: [refusalWords(session.show, after.why)],
				choices: [
					{ key: 'enter', words: 'so tonight' },
					{ key: 'esc', words: 'leave it' },
				],
			};
		},
		(pressed) =>
			pressed === 'enter' ? { kind: 'command', command, follows: key } : { kind: 'pass' },
	);
}

function partWords({ session }: KeyContext, part: TonightPart | null): string {
	if (part === null) return 'as the song says';
	if (part.kind === 'none') return 'with empty hands';
	return `on ${slotAndName(session.show, part.instrument)}, ${part.tuning.name}, ${capoSaid(part.capo)}`;
}
