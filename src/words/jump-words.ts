// What another next song would mean, in words for the prompt: a line for each player who changes.

import { minutesSeconds } from '../base/duration.ts';
import type { Later, Section } from '../plan/plan.ts';
import type { PlayerPreview, SongPreview } from '../plan/what-if/change-preview.ts';
import type { ChangeCost } from '../plan/what-if/what-if.ts';
import { findInstrument, findSongItem, songOnNow } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { comingItems } from '../session/set-places.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { asBackup } from './backup-for.ts';
import { capoAct } from './capo-words.ts';
import { allWords, laterWords } from './later-costs.ts';
import { unplayableWords } from './unplayable.ts';

/** More titles than this are counted instead. */
const MOST_NAMED = 2;
/** More would fill the screen; the views themselves show the rest. */
const MOST_WORSE = 2;

const CONDITIONS: Readonly<Record<PlayerPreview['condition'], string>> = {
	ready: 'READY',
	stale: 'RECHECK',
	'not-ready': 'NOT READY',
	'in-hands': 'in hands',
};

/** One line for each player who would change hands, or one saying that nobody does; `session` has the list as it would be. */
export function jumpWords(
	preview: SongPreview | null,
	{ session, nowMs }: { session: Session; nowMs: number },
): readonly string[] {
	if (preview === null) return ['It is next already.'];
	const { section } = preview;
	const before = titleBefore(session, preview);
	const lines = preview.players.flatMap((one): readonly string[] => {
		if (one.isHandOver || one.why !== null) {
			return [playerLine(one, { session, nowMs, section, before })];
		}
		return keptLine(one, session);
	});
	return lines.length === 0 ? ['No hand-over for it.'] : lines;
}

/**
 * What a jump leaves out, in one line or none. The list goes on after the song jumped to, so one far
 * ahead costs all that stands between: that is to be seen before enter.
 */
export function skippedWords(session: Session, after: Session): readonly string[] {
	const skipped = skippedTitles(session, after);
	return skipped.length === 0 ? [] : [`SKIPS ${allWords(skipped)}`];
}

/** The same as titles, the most of them counted. */
export function skippedTitles(session: Session, after: Session): readonly string[] {
	const still = new Set(comingItems(after).map(({ key }) => key));
	const skipped = comingItems(session).filter(({ key }) => !still.has(key));
	const songs = skipped.flatMap((item) =>
		item.kind === 'song' ? [songTitle(session.show, item.song)] : [],
	);
	return [
		...(songs.length > MOST_NAMED ? [`${songs.length} songs`] : songs),
		...(skipped.some(({ kind }) => kind === 'interval') ? ['the interval'] : []),
	];
}

/** What the change costs the songs to come, then what it mends; the first few of each. `nowSeconds`: the present show time. */
export function costLines(
	show: Show,
	{ worse, mended }: ChangeCost,
	nowSeconds: number,
): readonly string[] {
	const words = (cost: Later) => laterWords(show, cost, { nowSeconds });
	return [
		...worse.slice(0, MOST_WORSE).map((cost) => `Later: ${words(cost)}`),
		...(worse.length > MOST_WORSE ? [`and ${worse.length - MOST_WORSE} more`] : []),
		...mended.slice(0, 1).map((cost) => `Fixes: ${words(cost)}`),
	];
}

function playerLine(
	one: PlayerPreview,
	{ session, nowMs, ...placed }: { session: Session; nowMs: number } & Placed,
): string {
	const who = playerName(session.show, one.player);
	if (one.why !== null) return `${who}: NO BACKUP, ${unplayableWords(session.show, one.why)}`;
	if (one.instrument === null) return `${who}: hands empty`;
	const capo = one.capo === 0 ? '' : `, capo ${one.capo}`;
	const said = [
		// That there is work says that it is not ready.
		...(one.condition === 'not-ready' && one.workSeconds > 0 ? [] : [CONDITIONS[one.condition]]),
		...(one.workSeconds === 0 ? [] : [`work ${minutesSeconds(one.workSeconds)}`]),
		...(one.inHandsMs === null
			? []
			: [`handed in ${minutesSeconds((one.inHandsMs - nowMs) / 1000)}`]),
		...marginWords(one, placed),
	].join(', ');
	const what = `${shownInstrument(session.show, one.instrument)}${tuningWords(one, session)}${capo}`;
	// When it is in hands decides: whose place it takes may be cut at the end of a narrow row.
	return `${who}: ${what}: ${said}${asBackup(session.show, one.for)}`;
}

/** Where the song stands, and what ends before it; null where that has ended. */
type Placed = { readonly section: Section; readonly before: string | null };

/** How long after the song before, whose end calls for it; in an interval, how long before the song. */
function marginWords(
	{ inHandsMs, afterEndSeconds }: PlayerPreview,
	{ section, before }: Placed,
): readonly string[] {
	if (inHandsMs === null || afterEndSeconds === null) return [];
	if (!section.isAfterInterval) {
		return before === null ? [] : [`${minutesSeconds(afterEndSeconds)} after ${before} ends`];
	}
	const seconds = (section.startMs - inHandsMs) / 1000;
	if (seconds === 0) return ['as it begins'];
	return [`${minutesSeconds(Math.abs(seconds))} ${seconds > 0 ? 'before' : 'after'} it begins`];
}

/** What ends before it on this list; null where that has ended. */
function titleBefore(session: Session, { section }: SongPreview): string | null {
	const coming = comingItems(session).filter(({ kind }) => kind === 'song');
	const at = coming.findIndex(({ key }) => key === section.item);
	if (at <= 0 && songOnNow(session) === null) return null;
	const before = at > 0 ? coming[at - 1] : findSongItem(session, session.current);
	return before?.kind === 'song' ? songTitle(session.show, before.song) : 'the song';
}

/** Who keeps what stands in for what the song names, or moves the capo on it; nothing for who just goes on. */
function keptLine(one: PlayerPreview, session: Session): readonly string[] {
	if (one.instrument === null) return [];
	const isCapoMoved = session.instruments[one.instrument]?.context.capo !== one.capo;
	if (one.for === null && !isCapoMoved) return [];
	const capo = isCapoMoved ? [capoAct(one.capo)] : [];
	const keeps = `keeps ${shownInstrument(session.show, one.instrument)}`;
	const words = [keeps, ...capo].join(', ');
	return [`${playerName(session.show, one.player)}: ${words}${asBackup(session.show, one.for)}`];
}

/** The tuning, but for a standard one that the instrument is in anyway. */
function tuningWords({ instrument, tuning }: PlayerPreview, session: Session): string {
	const own = instrument === null ? null : findInstrument(session, instrument)?.tuning;
	if (tuning === null || (tuning.name === own?.name && / standard$/.test(tuning.name))) return '';
	return `, ${tuning.name}`;
}
