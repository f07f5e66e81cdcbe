// What a drill says: what one hears or sees, how long it has been going on, what would have been right; and the
// table of who was how fast.

import { minutesSeconds } from '../base/duration.ts';

/** The kinds of moments, as the table names them. */
export const DRILL_KINDS = {
	'break-retune': 'string break, backup in another tuning',
	audible: 'song called out of order',
	skip: 'song left out',
	'two-players': 'two players change at once',
	pack: 'wireless pack fails',
	'second-break': 'second break during a restring',
	'wrong-guitar': 'wrong instrument in hands',
	'stuck-pedal': 'pedal does not switch',
} as const;

export type DrillKind = keyof typeof DRILL_KINDS;

/** What happens, and what is right then. */
export type DrillWords = { readonly happens: string; readonly right: string };

/** `string`: its number. */
export const breakHappens = (string: number, player: string, instrument: string): string =>
	`String ${string} goes on ${player}'s ${instrument}.`;
export const breakRight = (best: string): string => `break logged, ${best} in hands`;

export const audibleWords = (caller: string, song: string): DrillWords => ({
	happens: `${caller} shouts across: ${song} next!`,
	right: `${song} chosen as next`,
});

export const skipWords = (left: string, begun: string): DrillWords => ({
	happens: `They leave out ${left} and start ${begun}.`,
	right: `${begun} is the song on, ${left} skipped`,
});

export const twoPlayersWords = (
	players: readonly string[],
	song: string,
	given: readonly string[],
): DrillWords => ({
	happens: `${players.slice(0, -1).join(', ')} and ${players.at(-1)} put theirs down for ${song}.`,
	right: `${given.join(', ')} in hands`,
});

export const packWords = (player: string, pack: string, other: string | null): DrillWords => ({
	happens: `${player}'s sound comes and goes: pack ${pack} is failing.`,
	right: `${pack} marked suspect${other === null ? '' : `, ${player} on ${other}`}`,
});

export const wrongGuitarWords = (player: string, has: string, planned: string): DrillWords => ({
	happens: `You look up: ${player} has ${has} on, not ${planned}.`,
	right: `${has} logged as in hands`,
});

export const stuckPedalWords = (player: string, pedal: string): DrillWords => ({
	happens: `${player} stamps on ${pedal} and it does not switch.`,
	right: `${pedal} logged as stuck`,
});

const seconds = (count: number): string => `${count.toFixed(1)} s`;
const best = (fastest: number | null): string =>
	fastest === null ? 'no time of yours yet' : `your best ${seconds(fastest)}`;

export const DRILL = {
	label: (number: number, of: number): string => `${number}/${of}`,
	leaves: 'esc esc: leave the drill',
	looksOn: (song: string): string => `${song} is on. Watch and listen, something will happen.`,
	speed: (times: number): string => `the clock runs ${times} times as fast until then`,
	running: (passed: number, limit: number, fastest: number | null): string =>
		`${minutesSeconds(passed)} of ${minutesSeconds(limit)}   ${best(fastest)}`,
	answered: (taken: number, fastest: number | null): string =>
		fastest === null
			? `Right in ${seconds(taken)}, your first time on the clock.`
			: taken < fastest
				? `Right in ${seconds(taken)}, your best by ${seconds(fastest - taken)}.`
				: `Right in ${seconds(taken)}. Your best is ${seconds(fastest)}.`,
	missed: (right: string): string => `Missed. Right: ${right}`,
	/** The keys that would have done it. */
	byKeys: (keys: readonly string[]): string => `keys  ${keys.join('  ')}`,
	goOn: 'enter: go on',
	ends: 'enter: the end',
	nothing: 'This show has nothing to drill: it has no hand-overs and no backups.',
	who: (user: string): string => `Whose results are these? (enter: ${user}) `,
	/** `words`: what was typed after the command. */
	again: (words: readonly string[]): string =>
		`The same moments again:\nrackside ${['drill', ...words].join(' ')}`,
	kept: (who: string, path: string): string => `Kept for ${who} on this laptop, in ${path}.`,
	notKept: 'The results of this drill are not kept.',
	drawing: 'Setting up the moments,',
	/** Where the system has no name for the user. */
	somebody: 'me',
	needsName: '--name needs a name',
	nameExpected: (most: number): string => `1 to ${most} letters`,
	noResults: 'No drill was done yet. rackside drill starts one.',
	headings: ['moment', 'best', 'last', 'right', 'missed'],
	ofNow: ['moment', 'now', 'best before'],
	none: '-',
	missedCell: 'missed',
	secondsCell: seconds,
} as const;
