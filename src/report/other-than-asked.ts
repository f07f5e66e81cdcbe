// Where a song was played on something else than the show file asked for: another instrument, another
// tuning or capo, whatever the reason. Followed from the song's begin to its end.

import { cleanText } from '../base/clean-text.ts';
import type { NightMs } from '../journal/entry.ts';
import { isAsAsked, partNow } from '../session/as-asked.ts';
import { findInstrument, songOnNow } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { soundsSo } from '../session/sounds-so.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { inTuning, sounding } from '../words/report.ts';
import type { NightStep } from './night-steps.ts';
import { secondsOf } from './report-time.ts';

export type OtherThanAsked = {
	readonly atMs: NightMs;
	/** Key of the night's list item. */
	readonly item: string;
	readonly song: string;
	readonly player: string;
	readonly playerId: string;
	readonly played: string;
	readonly playedId: string;
	readonly asked: string;
	/** The instrument that the song names; null where it leaves the choice open. */
	readonly askedId: string | null;
	/** The instrument that was named, where what was played is another that sounds as asked. */
	readonly backupFor: string | null;
	/** Null when the song was still on at the end of what is known. */
	readonly seconds: number | null;
};

type Stretch = Omit<OtherThanAsked, 'seconds'>;

/** Each stretch of a song that a player played on something else than asked for, in order of time. */
export function otherThanAsked(show: Show, steps: readonly NightStep[]): readonly OtherThanAsked[] {
	const all: OtherThanAsked[] = [];
	for (const { id } of show.players) {
		const found: OtherThanAsked[] = [];
		let open: Stretch | null = null;
		for (const { entry, before, after } of steps) {
			if (entry.k !== 'handed-over' && isAlike(before, after, id)) continue;
			// A correction says what was in hands since the hand-over that it corrects.
			const isCorrected = entry.k === 'hand-over-corrected' && entry.player === id;
			const sinceMs: number = isCorrected ? correctedSince(before, id, entry.at) : entry.at;
			const now = stretchNow(after, id, sinceMs);
			// Recorded as of when it was missed: what seemed to be played since then was not.
			if (entry.k === 'handed-over' && entry.player === id) {
				while ((found.at(-1)?.atMs ?? Number.NEGATIVE_INFINITY) >= entry.at) found.pop();
			}
			if (open && now && isSame(open, now)) continue;
			// Hand-overs of one moment follow one another: only what lasted was played.
			if (open && sinceMs > open.atMs) {
				found.push({ ...open, seconds: secondsOf(sinceMs - open.atMs) });
			}
			open = now;
		}
		if (open) found.push({ ...open, seconds: null });
		all.push(...found);
	}
	return all.sort((one, other) => one.atMs - other.atMs);
}

/** Nothing changed by which it is seen what the player plays, and on what. */
function isAlike(one: Session, other: Session, player: string): boolean {
	const holds = one.players[player]?.holds ?? '';
	return (
		one.phase === other.phase &&
		one.song === other.song &&
		one.list === other.list &&
		one.current === other.current &&
		one.show === other.show &&
		one.players[player] === other.players[player] &&
		one.instruments[holds] === other.instruments[holds]
	);
}

function correctedSince(before: Session, player: string, atMs: NightMs): NightMs {
	const handedMs = before.players[player]?.correctable?.atMs ?? atMs;
	const beganMs = songOnNow(before)?.item.runs.at(-1)?.beganAtMs ?? handedMs;
	return Math.max(handedMs, beganMs);
}

function stretchNow(session: Session, player: string, atMs: NightMs): Stretch | null {
	const on = songOnNow(session);
	const holds = session.players[player]?.holds ?? null;
	const state = holds === null ? undefined : session.instruments[holds];
	if (!on || holds === null || !state) return null;
	const part = partNow(session, player)?.part;
	if (!part || part.kind === 'none') return null;
	// What goes on from the song before may sound as asked and still be a backup for what was named there.
	const isOther = part.kind === 'named' && part.instrument !== holds;
	if (!isOther && isAsAsked(session, player)) return null;
	const { show } = session;
	const named = backedUp(session, player, part);
	const own = part.kind === 'named' ? findInstrument(session, part.instrument)?.tuning : undefined;
	const asked =
		part.kind === 'named'
			? inTuning(
					shownInstrument(show, part.instrument),
					(part.tuning ?? own)?.name ?? null,
					part.capo,
				)
			: sounding(part.instrumentKind, part.sounds.name);
	return {
		atMs,
		item: on.item.key,
		song: cleanText(on.song.title),
		player: cleanText(playerName(show, player)),
		playerId: player,
		playedId: holds,
		askedId: part.kind === 'named' ? part.instrument : null,
		played: cleanText(
			inTuning(shownInstrument(show, holds), state.context.tuning.name, state.context.capo),
		),
		asked: cleanText(asked),
		backupFor: named === null ? null : cleanText(shownInstrument(show, named)),
	};
}

/** The instrument that a part names, where what the player holds is another that sounds as asked; else null. */
function backedUp(
	session: Session,
	player: string,
	part: { readonly kind: string } & Parameters<typeof soundsSo>[2],
): string | null {
	const holds = session.players[player]?.holds ?? null;
	const instrument = holds === null ? null : findInstrument(session, holds);
	const state = holds === null ? undefined : session.instruments[holds];
	if (part.kind !== 'named' || instrument === null || state === undefined) return null;
	if (part.instrument === holds) return null;
	return soundsSo(session.show, { instrument, state }, part) ? part.instrument : null;
}

function isSame(one: Stretch, other: Stretch): boolean {
	return one.item === other.item && one.played === other.played && one.asked === other.asked;
}
