// What another next song would mean, in words for the prompt: a line for each player who changes.

import { minutesSeconds } from '../base/duration.ts';
import type { PlayerPreview, SongPreview } from '../plan/change-preview.ts';
import type { Session } from '../session/session.ts';
import { instrumentName, playerName } from '../showfile/shown-names.ts';
import { slotOf } from './rack-slots.ts';

const CONDITIONS: Readonly<Record<PlayerPreview['condition'], string>> = {
	ready: 'READY',
	stale: 'STALE',
	'not-ready': 'NOT READY',
	'in-hands': 'in hands',
};

/** One line for each player who would change hands, or one saying that nobody does. */
export function jumpWords(
	preview: SongPreview | null,
	{ session, zeroMs }: { session: Session; zeroMs: number },
): readonly string[] {
	if (preview === null) return ['It is next already.'];
	const changing = preview.players.filter((one) => one.isHandOver || one.why !== null);
	return changing.length === 0
		? ['Nobody changes.']
		: changing.map((one) => playerLine(one, { session, zeroMs }));
}

function playerLine(
	one: PlayerPreview,
	{ session, zeroMs }: { session: Session; zeroMs: number },
): string {
	const who = playerName(session.show, one.player);
	if (one.instrument === null) return `${who}: ${one.why ?? 'hands empty'}`;
	const name = instrumentName(session.show, one.instrument);
	const capo = one.capo === 0 ? '' : `, capo ${one.capo}`;
	const work = one.workSeconds === 0 ? '' : ` work ${minutesSeconds(one.workSeconds)},`;
	const inHands =
		one.inHandsMs === null ? '' : ` in hands ${minutesSeconds((one.inHandsMs - zeroMs) / 1000)}`;
	const after =
		one.afterEndSeconds === null ? '' : `, ${minutesSeconds(one.afterEndSeconds)} after the song`;
	return `${who}: ${slotOf(session, one.instrument).toUpperCase()} ${name}${capo}: ${CONDITIONS[one.condition]},${work}${inHands}${after}`;
}
