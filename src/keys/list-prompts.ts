// The prompts of the list view: a song taken hold of and moved, one put in, one dropped. Nothing changes
// before enter, and what it would come to is shown until then.

import { NEW } from '../journal/record.ts';
import { whatIf } from '../plan/what-if/what-if.ts';
import type { Command } from '../session/command.ts';
import { whyFixed } from '../session/decide-set.ts';
import type { ListItem } from '../session/session.ts';
import { placeBeside, placeNow, placesFor, type SetPlace } from '../session/set-places.ts';
import { beginWords, changeLines, dropWords, itemTitle } from '../words/list-words.ts';
import {
	ANSWERS,
	AS_IT_STANDS_NOW,
	addTitle,
	dropSong,
	dropTitle,
	songAtPlace,
	UP_DOWN,
} from '../words/questions.ts';
import { refusalWords } from '../words/refusals.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import { choicePrompt } from './prompts.ts';
import { songPrompt } from './song-prompt.ts';

/** Takes hold of a song, where it can be moved. */
export function holdPrompt({ key }: ListItem, context: KeyContext): Outcome {
	const { session } = context;
	const places = placesFor(session, key);
	const now = placeNow(session, key);
	const at = now === null ? 0 : Math.max(0, placeIndex(places, now));
	const why = whyFixed(session, key);
	return why === null
		? { kind: 'prompt', prompt: heldPrompt(key, at) }
		: { kind: 'say', words: refusalWords(session.show, why) };
}

function placeIndex(places: readonly SetPlace[], wanted: SetPlace): number {
	return places.findIndex(
		({ before, isEncore }) => before === wanted.before && isEncore === wanted.isEncore,
	);
}

/** A song in hand, at one of the places that it can have. */
function heldPrompt(key: string, at: number): Prompt {
	const commandAt = ({ session }: KeyContext): Command => {
		const places = placesFor(session, key);
		const place = places[Math.min(at, places.length - 1)] ?? { before: null, isEncore: false };
		return { do: 'move-song', item: key, ...place };
	};
	return {
		...choicePrompt(
			(context) => {
				const after = whatIf(context, commandAt(context));
				const { session, plan } = after.ok ? after : context;
				return {
					title: songAtPlace(itemTitle(session, key), beginWords(context, { session, plan }, key)),
					lines: after.ok ? changeLines(context, after, key) : [AS_IT_STANDS_NOW],
					tonight: { session, plan, item: key },
					choices: [
						{ key: UP_DOWN, words: ANSWERS.move },
						{ key: 'enter', words: ANSWERS.putHere },
						{ key: 'esc', words: ANSWERS.cancel },
					],
				};
			},
			(pressed, context) => {
				const last = placesFor(context.session, key).length - 1;
				if (pressed === 'up' || pressed === 'down') {
					const next = Math.min(Math.max(0, at + (pressed === 'up' ? -1 : 1)), last);
					return { kind: 'prompt', prompt: heldPrompt(key, next) };
				}
				return pressed === 'enter'
					? { kind: 'command', command: commandAt(context), follows: key }
					: { kind: 'pass' };
			},
		),
		isList: true,
	};
}

/** A song of the catalogue beside the picked item. */
export function insertPrompt(
	beside: string,
	side: 'before' | 'after' = 'after',
	field = { picked: 0, text: '' },
): Prompt {
	const commandFor = (song: string, { session }: KeyContext): Command => ({
		do: 'insert-song',
		song,
		...placeBeside(session, beside, side),
	});
	const other = side === 'after' ? 'before' : 'after';
	return songPrompt(
		{
			title: ({ session }) => addTitle(side, itemTitle(session, beside), other),
			about: (song, context) => {
				const after = whatIf(context, commandFor(song.id, context));
				if (!after.ok) return { lines: [refusalWords(context.session.show, after.why)] };
				const { session, plan } = after;
				const item = NEW;
				return {
					lines: [beginWords(context, after, item), ...changeLines(context, after, item)],
					tonight: { session, plan, item },
				};
			},
			chosen: (song, context) => ({
				kind: 'command',
				command: commandFor(song.id, context),
				follows: NEW,
			}),
			also: (key, at) =>
				key === 'tab' ? { kind: 'prompt', prompt: insertPrompt(beside, other, at) } : null,
		},
		field,
	);
}

/** Asks whether a song is to be dropped, with what comes of it. */
export function dropPrompt({ key }: ListItem, context: KeyContext): Outcome {
	const command: Command = { do: 'drop-song', item: key };
	const trial = whatIf(context, command);
	if (!trial.ok) return { kind: 'say', words: refusalWords(context.session.show, trial.why) };
	return {
		kind: 'prompt',
		prompt: choicePrompt(
			(now) => {
				const after = whatIf(now, command);
				const title = itemTitle(now.session, key);
				if (!after.ok) return { title: refusalWords(now.session.show, after.why) };
				const { follows, lines } = dropWords(now, after, key);
				return {
					title: dropTitle(title, follows),
					lines,
					tonight: { session: after.session, plan: after.plan, item: key },
					choices: [
						{ key: 'enter', words: dropSong(title) },
						{ key: 'esc', words: ANSWERS.keep },
					],
				};
			},
			(pressed) =>
				pressed === 'enter' ? { kind: 'command', command, follows: key } : { kind: 'pass' },
		),
	};
}
