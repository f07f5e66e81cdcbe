// The questions about boards and wireless packs: each thing goes by its number in the list, past the ninth by
// a letter, as slots on the rack do.

import type { BatteryIn } from '../journal/entry.ts';
import { batteriesOf } from '../rig/battery-hours.ts';
import { batteriesNow } from '../rig/battery-now.ts';
import { isSameBattery } from '../session/apply-batteries.ts';
import type { Command } from '../session/command.ts';
import { wearersOf } from '../session/shared-packs.ts';
import type { Pack, Show } from '../showfile/show.ts';
import { packName, playerName } from '../showfile/shown-names.ts';
import { allSideBySide } from '../words/line-columns.ts';
import {
	ANSWERS,
	boardTitle,
	CLEAR_WHICH_PACK,
	FRESH_WHERE,
	NO_PACK_SUSPECT,
	NO_PEDAL_STUCK,
	noSuchBattery,
	noSuchPack,
	noSuchPedal,
	packTitle,
	pedalOf,
	pedalShown,
	pedalStuck,
	SUSPECT,
	stillSuspect,
	WHICH_PEDAL,
	WHOSE_BOARD,
	WHOSE_PACK,
} from '../words/questions.ts';
import { batteryOf, hourWords } from '../words/rig.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import { choicePrompt, type OtherKeys, playerPrompt, withPlayer } from './prompts.ts';

/** The keys of a list's things, in their order. */
const LISTED = [...'123456789abcdefghijklmnopqrstuvwxyz'];

/** The thing of a list that a key names; case does not matter. */
function listed<Thing>(things: readonly Thing[], key: string): Thing | undefined {
	return things[LISTED.indexOf(key.toLowerCase())];
}

type PedalAsk = {
	readonly title: string;
	/** What the key does to a pedal, in a few words; null where it does nothing. */
	readonly words: (pedal: string, is: { isOn: boolean; isStuck: boolean }) => string | null;
	readonly command: (player: string, pedal: string) => Command;
};

/** Whose board, where several have one, and then which pedal. */
function askPedal(context: KeyContext, ask: PedalAsk): Outcome {
	return withPlayer(context, WHOSE_BOARD, {
		among: Object.keys(context.session.boards),
		goOn: (player) => ({ kind: 'prompt', prompt: pedalPrompt(player, ask) }),
	});
}

function pedalPrompt(player: string, { title, words, command }: PedalAsk): Prompt {
	return choicePrompt(
		({ session }) => {
			const { pedals, stuck } = session.boards[player]?.context ?? { pedals: {}, stuck: [] };
			return {
				title: boardTitle(playerName(session.show, player), title),
				lines: allSideBySide((cut) =>
					(session.show.boards[player] ?? []).flatMap(({ id, name }, place) => {
						const is = { isOn: pedals[id]?.on === true, isStuck: stuck.includes(id) };
						const said = words(cut(name), is);
						return said === null ? [] : [`${LISTED[place] ?? ''} ${said}`];
					}),
				),
			};
		},
		(key, { session }) => {
			const pedal = listed(session.show.boards[player] ?? [], key);
			return pedal
				? { kind: 'command', command: command(player, pedal.id) }
				: { kind: 'say', words: noSuchPedal(key) };
		},
	);
}

/** Which pedal is set otherwise than we believe. */
export function correctPedalAsked(context: KeyContext): Outcome {
	return askPedal(context, {
		title: WHICH_PEDAL.otherwise,
		words: (pedal, { isOn }) => pedalShown(pedal, isOn),
		command: (player, pedal) => ({ do: 'correct-pedal', player, pedal }),
	});
}

/** `0` where a show has boards: a pedal that does not switch. */
export function stuckPedalKey({ session }: KeyContext): OtherKeys {
	if (Object.keys(session.boards).length === 0) return {};
	const outcome = (context: KeyContext): Outcome =>
		askPedal(context, {
			title: WHICH_PEDAL.stuck,
			words: (pedal, { isOn, isStuck }) => pedalStuck(pedal, isOn, isStuck),
			command: (player, pedal) => ({ do: 'mark-pedal-stuck', player, pedal }),
		});
	return { '0': { words: ANSWERS.pedal, outcome } };
}

/** `0` where a show has boards: a pedal that switches again. */
export function freedPedalKey({ session }: KeyContext): OtherKeys {
	if (Object.keys(session.boards).length === 0) return {};
	const outcome = (context: KeyContext): Outcome =>
		isAnyStuck(context)
			? askPedal(context, {
					title: WHICH_PEDAL.freed,
					words: (pedal, { isOn, isStuck }) => (isStuck ? pedalOf(pedal, isOn) : null),
					command: (player, pedal) => ({ do: 'free-pedal', player, pedal }),
				})
			: { kind: 'say', words: NO_PEDAL_STUCK };
	return { '0': { words: ANSWERS.pedal, outcome } };
}

function isAnyStuck({ session }: KeyContext): boolean {
	return Object.values(session.boards).some(({ context }) => context.stuck.length > 0);
}

/** All that runs on a battery: every pack, in the order of the list, then what else says so in the file. */
export function withBattery(show: Show): readonly BatteryIn[] {
	const packs = show.packs.map(({ id }): BatteryIn => ({ what: 'pack', player: null, id }));
	const others = batteriesOf(show).filter(({ what }) => what !== 'pack');
	return [...packs, ...others.map(({ what, player, id }) => ({ what, player, id }))];
}

/** Whose pack is another one now; `-` for one that can be trusted again, `0` for a fresh battery. */
export function packAsked(context: KeyContext): Outcome {
	if (context.session.show.packs.length === 0) return freshBatteryAsked();
	return {
		kind: 'prompt',
		prompt: playerPrompt(context, WHOSE_PACK, {
			among: context.session.show.players.map(({ id }) => id),
			goOn: (player) => ({ kind: 'prompt', prompt: packPrompt(player) }),
			others: {
				'-': { words: ANSWERS.clearSuspect, outcome: clearAsked },
				'0': { words: ANSWERS.freshBattery, outcome: freshBatteryAsked },
			},
		}),
	};
}

/** What a fresh battery went into, with the hours that are left where they are known. */
function freshBatteryAsked(): Outcome {
	return {
		kind: 'prompt',
		prompt: choicePrompt(
			({ session, nowMs }) => {
				const zeroMs = session.zeroAtMs ?? nowMs;
				const left = batteriesNow(session, { nowMs, zeroMs });
				return {
					title: FRESH_WHERE,
					lines: allSideBySide((cut) =>
						withBattery(session.show).map((one, place) => {
							const hours = left.find((other) => isSameBattery(one, other))?.hoursLeft ?? null;
							const name = `${LISTED[place] ?? ''} ${cut(batteryOf(session.show, one))}`;
							return hours === null ? name : `${name}  ${hourWords(hours)}`;
						}),
					),
				};
			},
			(key, context) => {
				const battery = listed(withBattery(context.session.show), key);
				return battery
					? freshBattery(context, battery)
					: { kind: 'say', words: noSuchBattery(key) };
			},
		),
	};
}

/** A suspect pack stays so: what was wrong with it may be something else. */
function freshBattery({ session, keyOf }: KeyContext, battery: BatteryIn): Outcome {
	const command = { do: 'change-battery', ...battery } as const;
	const isSuspect = battery.what === 'pack' && session.suspectPacks.includes(battery.id);
	return {
		kind: 'command',
		command,
		...(isSuspect ? { says: stillSuspect(packName(session.show, battery.id), keyOf('pack')) } : {}),
	};
}

/** The pack that a player wears now; `-` marks the present one suspect, `0` says that its battery is fresh. */
function packPrompt(player: string): Prompt {
	return choicePrompt(
		({ session }) => {
			const worn = session.players[player]?.pack ?? null;
			return {
				title: packTitle(
					playerName(session.show, player),
					worn === null ? null : packName(session.show, worn),
				),
				lines: allSideBySide((cut) =>
					session.show.packs.map((pack) => packWords({ session }, pack, cut)),
				),
				choices:
					worn === null
						? []
						: [
								...(session.suspectPacks.includes(worn)
									? []
									: [{ key: '-', words: ANSWERS.suspect }]),
								{ key: '0', words: ANSWERS.freshBattery },
							],
			};
		},
		(key, context) => {
			const { session } = context;
			if (key === '-') return { kind: 'command', command: { do: 'suspect-pack', player } };
			const worn = session.players[player]?.pack ?? null;
			if (key === '0' && worn !== null) {
				return freshBattery(context, { what: 'pack', player: null, id: worn });
			}
			const pack = listed(session.show.packs, key);
			return pack
				? { kind: 'command', command: { do: 'change-pack', player, pack: pack.id } }
				: noPack(key);
		},
	);
}

function clearAsked({ session: { suspectPacks } }: KeyContext): Outcome {
	if (suspectPacks.length === 0) return { kind: 'say', words: NO_PACK_SUSPECT };
	return {
		kind: 'prompt',
		prompt: choicePrompt(
			({ session }) => ({
				title: CLEAR_WHICH_PACK,
				lines: allSideBySide((cut) =>
					session.show.packs.flatMap((pack) =>
						session.suspectPacks.includes(pack.id) ? [packWords({ session }, pack, cut)] : [],
					),
				),
			}),
			(key, { session }) => {
				const pack = listed(session.show.packs, key);
				return pack
					? { kind: 'command', command: { do: 'clear-pack', pack: pack.id } }
					: noPack(key);
			},
		),
	};
}

const noPack = (key: string): Outcome => ({
	kind: 'say',
	words: noSuchPack(key),
});

/** `1 P1  11  Ash  SUSPECT`: its key in the list, its name, channel, who wears it. */
function packWords(
	{ session }: Pick<KeyContext, 'session'>,
	{ id, channel }: Pack,
	cut: (name: string) => string,
): string {
	const place = session.show.packs.findIndex((one) => one.id === id);
	return [
		`${LISTED[place] ?? ''} ${cut(packName(session.show, id))}`,
		...(channel === null ? [] : [cut(channel)]),
		...wearersOf(session, id).map((one) => cut(one.name)),
		...(session.suspectPacks.includes(id) ? [SUSPECT] : []),
	].join('  ');
}
