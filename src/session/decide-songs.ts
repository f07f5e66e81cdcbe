// Commands about songs: stepping through one, ending it, going to another.

import { cueIndex } from '../../machines/song.ts';
import { advanceSong } from '../../machines/song-machine.ts';
import type { Entry, SongEnd } from '../journal/entry.ts';
import { songSeconds } from '../showfile/song-length.ts';
import type { Command } from './command.ts';
import { impliedHandOvers } from './decide-hands.ts';
import { stayEntries } from './decide-stays.ts';
import { type Decision, no, yes } from './decision.ts';
import { findSongItem, nextSongItem, songOnNow } from './find.ts';
import { withIntervalBegun } from './interval-begun.ts';
import { segueItem } from './segue.ts';
import type { Session, SongItem } from './session.ts';

/** A song left within this many seconds of being reached was skipped: common practice, no source. */
const SKIPPED_WITHIN_SECONDS = 5;
/** A song left in its last so many seconds was played: common practice, no source. */
const PLAYED_WITHIN_SECONDS = 20;
/** What a plan proposes for the point or song that a command reaches. */
type Proposed = Pick<Extract<Command, { do: 'step' }>, 'handOvers' | 'capoMoves' | 'stays'>;

/** The song's end, and what goes with it. */
export function endOfSong(session: Session, how: SongEnd, atMs: number): readonly Entry[] {
	return withIntervalBegun(session, [endedEntry(session, how, atMs)]);
}

function endedEntry(session: Session, how: SongEnd, at: number): Entry {
	const item = songOnNow(session)?.item.key;
	return { k: 'song-ended', at, ...(item === undefined ? {} : { item }), how };
}

/** The next cue point, the end of the song, or the next song. */
export function step(session: Session, asked: Proposed, atMs: number): Decision {
	const { handOvers } = asked;
	const on = songOnNow(session);
	if (on && session.song) {
		const next = advanceSong(on.song, session.song, { type: 'stepped' });
		if (next !== null) {
			const index = cueIndex(next);
			const reached = { item: on.item.key, point: index, atMs };
			const handed = impliedHandOvers(session, handOvers, reached);
			return yes(...handed, ...capoEntries(session, asked, atMs), {
				k: 'cue-reached',
				at: atMs,
				item: on.item.key,
				index,
			});
		}
		return finishSong(session, asked, atMs);
	}
	const next = nextSongItem(session);
	if (next === null) return no({ code: 'set-over' });
	return yes(...beginning(session, next, { asked, atMs }));
}

/** The song is done; a segue goes straight on into the next one, with its hand-overs. */
export function finishSong(session: Session, asked: Proposed, atMs: number): Decision {
	const on = songOnNow(session);
	if (on === null) return no({ code: 'no-song-on' });
	const ending = endOfSong(session, 'played', atMs);
	const next = segueItem(session, on.item);
	if (next === null) return yes(...ending);
	return yes(...ending, ...beginning(session, next, { asked, atMs }));
}

/** The capos that players move themselves, on what they really have in hands. */
function capoEntries(
	session: Session,
	{ capoMoves = [] }: Proposed,
	atMs: number,
): readonly Entry[] {
	return capoMoves
		.filter(({ player, instrument }) => session.players[player]?.holds === instrument)
		.filter(({ instrument, capo }) => session.instruments[instrument]?.context.capo !== capo)
		.map(({ instrument, capo }): Entry => ({ k: 'found-as', at: atMs, instrument, capo }));
}

function beginning(
	session: Session,
	item: SongItem,
	start: { asked: Proposed; atMs: number },
): readonly Entry[] {
	return [
		{ k: 'song-began', at: start.atMs, item: item.key },
		...impliedHandOvers(session, start.asked.handOvers, {
			item: item.key,
			point: 0,
			atMs: start.atMs,
		}),
		...capoEntries(session, start.asked, start.atMs),
		...stayEntries(session, start.asked.stays ?? [], start.atMs),
	];
}

/** One cue point back. */
export function stepBack(session: Session, atMs: number): Decision {
	const on = songOnNow(session);
	if (!on || !session.song) return no({ code: 'no-song-to-step-back' });
	const before = advanceSong(on.song, session.song, { type: 'steppedBack' });
	return before === null
		? no({ code: 'at-song-start' })
		: yes({ k: 'cue-reached', at: atMs, item: on.item.key, index: cueIndex(before) });
}

/** How the song on now counts when it is left at `atMs`. */
export function endedHow(session: Session, atMs: number): SongEnd {
	const on = songOnNow(session);
	const run = on?.item.runs.at(-1);
	if (!on || !run) return 'played';
	const elapsed = (atMs - run.beganAtMs) / 1000;
	if (elapsed <= SKIPPED_WITHIN_SECONDS) return 'skipped';
	return elapsed >= songSeconds(session.show, on.song) - PLAYED_WITHIN_SECONDS
		? 'played'
		: 'cut-short';
}

/** Into another song at once, with no hand-over. */
export function goToSong(
	session: Session,
	asked: { readonly item: SongItem | null; readonly side: 'before' | 'after' },
	atMs: number,
): Decision {
	const { item, side } = asked;
	if (item === null) return no({ code: 'no-song-beside', side, isOn: songOnNow(session) !== null });
	return yes(...(songOnNow(session) ? [endedEntry(session, endedHow(session, atMs), atMs)] : []), {
		k: 'song-began',
		at: atMs,
		item: item.key,
	});
}

/** The song before the one on now; between songs, the one just ended. */
export function previousSongItem(session: Session): SongItem | null {
	const current = findSongItem(session, session.current);
	if (current === null || session.phase.value !== 'song') return current;
	return (
		session.list
			.slice(0, session.list.indexOf(current))
			.findLast((item): item is SongItem => item.kind === 'song' && !item.isPassedOver) ?? null
	);
}
