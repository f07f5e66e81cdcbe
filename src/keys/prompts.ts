// The prompts that ask for a slot, a player or a choice. Each is a small reducer: a key in, an outcome
// out. Text and list fields stand in text-prompts.ts.

import type { Session } from '../session/session.ts';
import { wearersOf } from '../session/shared-packs.ts';
import type { Instrument, Player } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { FAULTS } from './incident-kinds.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import type { KeyWords, PromptView } from './prompt-view.ts';
import { instrumentAtSlot, playersFor } from './rack-slots.ts';

const CLOSE: Outcome = { kind: 'close' };

/** A prompt of single keys: esc leaves it, space steps the show. */
export function choicePrompt(
	view: (context: KeyContext) => Partial<PromptView> & { title: string },
	press: (key: string, context: KeyContext) => Outcome,
): Prompt {
	return {
		isText: false,
		isLasting: false,
		view: (context) => ({ lines: [], field: null, choices: [], ...view(context) }),
		press: (key, context) => {
			if (key === 'esc') return CLOSE;
			if (key === 'space' || key === 'pagedown') return { kind: 'pass' };
			return press(key, context);
		},
	};
}

const nothingThere = (key: string): Outcome => ({
	kind: 'say',
	words:
		key.length > 1
			? `${key} is no slot; esc leaves this question first.`
			: `Nothing on the rack has the slot ${key}.`,
});

/** Asks for a slot, then goes on with the instrument there. `others` are keys with a meaning of their own. */
export function slotPrompt(
	asked: string | { readonly title: string; readonly lines: readonly string[] },
	chosen: (instrument: Instrument, context: KeyContext) => Outcome,
	others: Readonly<
		Record<string, { words: string; outcome: (context: KeyContext) => Outcome }>
	> = {},
): Prompt {
	return choicePrompt(
		() => ({
			...(typeof asked === 'string' ? { title: asked } : asked),
			choices: Object.entries(others).map(([key, { words }]): KeyWords => ({ key, words })),
		}),
		(key, context) => {
			const other = others[key.toLowerCase()];
			if (other) return other.outcome(context);
			const instrument = instrumentAtSlot(context.session, key);
			return instrument ? chosen(instrument, context) : nothingThere(key);
		},
	);
}

function playerOfKey(session: Session, key: string, among: readonly string[]): Player | null {
	return (
		session.show.players.find((one) => one.key === key.toLowerCase() && among.includes(one.id)) ??
		null
	);
}

/** Asks which player, unless only one comes into question. */
export function withPlayer(
	context: KeyContext,
	title: string,
	ask: { among: readonly string[]; goOn: (player: string) => Outcome },
): Outcome {
	const [only, ...more] = ask.among;
	if (only !== undefined && more.length === 0) return ask.goOn(only);
	const players = context.session.show.players.filter((one) => ask.among.includes(one.id));
	return {
		kind: 'prompt',
		prompt: choicePrompt(
			() => ({ title, choices: players.map((one) => ({ key: one.key, words: one.name })) }),
			(key, now) => {
				const player = playerOfKey(now.session, key, ask.among);
				return player
					? ask.goOn(player.id)
					: { kind: 'say', words: `No player is called by ${key}.` };
			},
		),
	};
}

/** Another instrument is in hands: a slot, or a player's letter and then a slot or `-` for none. */
export function exchangePrompt(): Prompt {
	const give = (player: string, instrument: string | null): Outcome => ({
		kind: 'command',
		command: { do: 'exchange', player, instrument },
	});
	return choicePrompt(
		({ session }) => ({
			title: 'In hands now: slot, or a player and then - for none',
			choices: session.show.players.map((one) => ({ key: one.key, words: one.name })),
		}),
		(key, context) => {
			const instrument = instrumentAtSlot(context.session, key);
			if (instrument) {
				return withPlayer(context, `Who has ${instrument.name}?`, {
					among: playersFor(context.session, instrument),
					goOn: (player) => give(player, instrument.id),
				});
			}
			const all = context.session.show.players.map(({ id }) => id);
			const player = playerOfKey(context.session, key, all);
			if (!player) return nothingThere(key);
			return {
				kind: 'prompt',
				prompt: slotPrompt(
					`${player.name} has: slot, or - for none`,
					(one) => give(player.id, one.id),
					{
						'-': { words: 'none', outcome: () => give(player.id, null) },
					},
				),
			};
		},
	);
}

/** Faulty or out: after the slot, a letter says what is wrong; enter only puts it out. */
export function faultPrompt(instrument: Instrument): Prompt {
	return choicePrompt(
		() => ({
			title: `${instrument.name}: what is wrong? enter: out tonight`,
			choices: FAULTS.map(({ letter, words }) => ({ key: letter, words })),
		}),
		(key) => {
			const fault = FAULTS.find(({ letter }) => letter === key.toLowerCase());
			if (key !== 'enter' && !fault) return { kind: 'say', words: `No fault goes by ${key}.` };
			return {
				kind: 'command',
				command: { do: 'put-aside', instrument: instrument.id, fault: fault?.kind ?? null },
			};
		},
	);
}

/** The pedal to correct, by its number on the board. */
export function pedalPrompt(player: string): Prompt {
	return choicePrompt(
		({ session }) => ({
			title: `${playerName(session.show, player)}'s board: which pedal is otherwise?`,
			choices: (session.show.boards[player] ?? []).map((pedal, index) => ({
				key: String(index + 1),
				words: `${pedal.name} really ${session.boards[player]?.context.pedals[pedal.id]?.on ? 'off' : 'on'}`,
			})),
		}),
		(key, { session }) => {
			const pedal = /^[1-9]$/.test(key)
				? session.show.boards[player]?.[Number(key) - 1]
				: undefined;
			return pedal
				? { kind: 'command', command: { do: 'correct-pedal', player, pedal: pedal.id } }
				: { kind: 'say', words: `The board has no pedal ${key}.` };
		},
	);
}

/** The pack that a player wears now, by its number in the list; `-` marks the present one suspect. */
export function packPrompt(player: string): Prompt {
	return choicePrompt(
		({ session }) => ({
			title: `${playerName(session.show, player)} has pack ${session.players[player]?.pack ?? 'none'}; which now?`,
			choices: [
				...session.show.packs.map((pack, index) => ({
					key: String(index + 1),
					words: [
						pack.id,
						...wearersOf(session, pack.id).map(({ id }) => playerName(session.show, id)),
						...(session.suspectPacks.includes(pack.id) ? ['suspect'] : []),
					].join(' '),
				})),
				{ key: '-', words: 'the present one is suspect' },
			],
		}),
		(key, { session }) => {
			if (key === '-') return { kind: 'command', command: { do: 'suspect-pack', player } };
			const pack = /^[1-9]$/.test(key) ? session.show.packs[Number(key) - 1] : undefined;
			return pack
				? { kind: 'command', command: { do: 'change-pack', player, pack: pack.id } }
				: { kind: 'say', words: `There is no pack ${key} in the list.` };
		},
	);
}

/** Leaving: the choice that stays is first. */
export function leavePrompt(): Prompt {
	return choicePrompt(
		() => ({
			title: 'Leave?',
			choices: [
				{ key: 'enter', words: 'leave, the night stays open' },
				{ key: 'e', words: 'end the show' },
				{ key: 'esc', words: 'stay' },
			],
		}),
		(key) => {
			if (key === 'enter') return { kind: 'leave' };
			if (key.toLowerCase() === 'e') return { kind: 'command', command: { do: 'end-show' } };
			return CLOSE;
		},
	);
}
