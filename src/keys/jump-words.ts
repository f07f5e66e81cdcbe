// What another next song would mean, in words for the prompt: a line for each player who changes.

import { minutesSeconds } from '../base/duration.ts';
import type { PlayerPreview, SongPreview } from '../plan/change-preview.ts';
import type { ChangeCost } from '../plan/what-if.ts';
import type { Session } from '../session/session.ts';
import { instrumentName, playerName, songTitle } from '../showfile/shown-names.ts';
import { slotOf } from './rack-slots.ts';

/** More titles than this are counted instead. */
const MOST_NAMED = 2;
/** More would fill the screen; the views themselves show the rest. */
const MOST_WORSE = 2;

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

/**
 * What a jump leaves out, in one line or none. The list goes on after the song jumped to, so one far
 * ahead costs all that stands between: that is to be seen before enter.
 */
export function passedOverWords(session: Session, preview: SongPreview | null): readonly string[] {
	const { list, next, show } = session;
	const from = list.findIndex(({ key }) => key === next);
	if (preview === null || from < 0) return [];
	const to = list.findIndex(({ key }) => key === preview.section.item);
	// A song from off the list takes the place of the one that was next.
	const passed = to < 0 ? list.slice(from, from + 1) : list.slice(from, Math.max(from, to));
	const songs = passed.flatMap((item) =>
		item.kind === 'song' && !item.isPassedOver ? [songTitle(show, item.song)] : [],
	);
	const parts = [
		...(songs.length > MOST_NAMED ? [`${songs.length} songs`] : songs),
		...(to >= 0 && passed.some(({ kind }) => kind === 'interval') ? ['the interval'] : []),
	];
	return parts.length === 0 ? [] : [`PASSES OVER ${parts.join(', ')}`];
}

/** What the change costs the songs to come, then what it mends; the first few of each. */
export function costLines({ worse, mended }: ChangeCost): readonly string[] {
	return [
		...worse.slice(0, MOST_WORSE).map((words) => `Then: ${words}`),
		...(worse.length > MOST_WORSE ? [`and ${worse.length - MOST_WORSE} more`] : []),
		...mended.slice(0, 1).map((words) => `No longer: ${words}`),
	];
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
