// The fold: what a session becomes with one more entry. Never refuses and never throws for what a
// journal holds: an entry that no longer makes sense (after damage) changes as much as it can.

import type { Entry } from '../journal/entry.ts';
import { NEW, type RecordId } from '../journal/record.ts';
import { ownTimesWith, withOwnTimes } from '../showfile/own-times.ts';
import { keptShow } from '../showfile/show-record.ts';
import { changeBattery } from './apply-batteries.ts';
import {
	endSilence,
	findCause,
	leaveAllFaults,
	leaveFault,
	seekFault,
	testFault,
} from './apply-faults.ts';
import {
	correctHandOver,
	emptyHandsOf,
	handOver,
	stay,
	takeBack,
	unsettle,
} from './apply-hands.ts';
import {
	blankIncident,
	changeIncident,
	describeIncident,
	noteIncident,
} from './apply-incidents.ts';
import { changePack, clearPack, suspectPack, timePacks } from './apply-packs.ts';
import { dropSong, insertSong, moveSong, nameTonight, restoreSong } from './apply-set.ts';
import { beginSong, chooseNext, endSong, reachCue } from './apply-songs.ts';
import { holderOf, songOnNow } from './find.ts';
import { changePlayer, moveBoard, moveInstrument } from './move-parts.ts';
import { readAgain } from './read-again.ts';
import type { Session } from './session.ts';
import { divided, moveShow } from './show-phase.ts';
import { tellPlan } from './told.ts';

/** The session with one more entry, of the record with this identity. */
export function apply(session: Session, entry: Entry, of: RecordId = NEW): Session {
	const now = applied(BESIDE_STEPS.has(entry.k) ? session : withoutNews(session, of), entry, of);
	return timePacks(session, divided(session, now, entry.at), entry.at);
}

/** The session without what is only said until something else is recorded. */
function withoutNews(session: Session, of: RecordId): Session {
	const { packChange, unmarked } = session;
	const isStill = unmarked === null || unmarked.of === of;
	if (packChange === null && isStill) return session;
	return { ...session, packChange: null, unmarked: isStill ? unmarked : null };
}

/** The session with these entries of one record. */
export function applyAll(session: Session, entries: readonly Entry[], of: RecordId = NEW): Session {
	return entries.reduce((now, entry) => apply(now, entry, of), session);
}

/** What is written beside a step or between two, and is none of its own. */
const BESIDE_STEPS: ReadonlySet<Entry['k']> = new Set([
	'plan-told',
	'night-opened',
	'resumed',
	'slept',
	'clock-set',
]);

function applied(session: Session, entry: Entry, of: RecordId): Session {
	switch (entry.k) {
		case 'song-began':
			return beginSong(session, entry.item, entry.at);
		case 'cue-reached':
			return reachCue(session, entry);
		case 'song-ended':
			return endSong(endSilence(session, entry.at), entry);
		case 'next-chosen':
			return chooseNext(session, entry, of);
		case 'show-read-again': {
			const read = keptShow(entry.show);
			return read === null ? session : readAgain(session, read, entry.isCounted ? null : of);
		}
		case 'song-moved':
			return moveSong(session, entry);
		case 'song-inserted':
			return insertSong(session, entry, of);
		case 'song-dropped':
			return dropSong(session, entry.item);
		case 'song-restored':
			return restoreSong(session, entry.item);
		case 'named-tonight':
			return nameTonight(session, entry);
		case 'stayed':
			return stay(session, entry);
		case 'handed-over':
			return handOver(session, entry, of);
		case 'hand-over-corrected':
			return correctHandOver(session, entry);
		case 'came-back': {
			const holder = holderOf(session, entry.instrument);
			const back = takeBack(session, entry.instrument, entry.at);
			if (holder === null) return back;
			return changePlayer(back, holder, { putDown: entry.instrument });
		}
		case 'made-ready':
			return markReady(session, entry);
		case 'string-broke': {
			// Between songs what to play the next one on is asked anew; in a song the break asks by itself.
			const isAhead = entry.player !== null && songOnNow(session) === null;
			const open = isAhead && entry.player !== null ? unsettle(session, entry.player) : session;
			return noteIncident(moveInstrument(open, entry.instrument, { type: 'stringBroke' }), {
				...blankIncident(entry.incident ?? of, entry.at),
				kind: 'string-break',
				player: entry.player,
				instrument: entry.instrument,
				isOpen: entry.player !== null,
			});
		}
		case 'played-on':
			return changeIncident(session, entry.incident, (incident) => ({
				...incident,
				isOpen: false,
			}));
		case 'incident-noted':
			return noteIncident(session, blankIncident(entry.incident ?? of, entry.at));
		case 'incident-described':
			return describeIncident(session, entry);
		case 'found-as':
			return moveInstrument(session, entry.instrument, {
				type: 'foundAs',
				...(entry.tuning ? { tuning: entry.tuning } : {}),
				...(entry.capo === undefined ? {} : { capo: entry.capo }),
			});
		case 'put-aside':
			return moveInstrument(
				emptyHandsOf(session, entry.instrument, entry.at),
				entry.instrument,
				entry.fault === null
					? { type: 'putOut', atMs: entry.at }
					: { type: 'foundFaulty', atMs: entry.at, fault: entry.fault },
			);
		case 'brought-back':
			return moveInstrument(session, entry.instrument, { type: 'broughtBack' });
		case 'staged':
			return moveInstrument(session, entry.instrument, { type: 'staged' });
		case 'all-doubted':
			return Object.keys(session.instruments).reduce(
				(now, id) => moveInstrument(now, id, { type: 'doubted' }),
				{ ...session, stageCelsius: entry.celsius ?? session.stageCelsius },
			);
		case 'pedal-corrected':
			return moveBoard(session, entry.player, {
				type: 'pedalFound',
				pedal: entry.pedal,
				on: entry.on,
			});
		case 'pedal-stuck':
			return noteIncident(
				moveBoard(session, entry.player, { type: 'pedalStuck', pedal: entry.pedal }),
				{
					...blankIncident(entry.incident ?? of, entry.at),
					kind: 'pedal',
					player: entry.player,
					pedal: entry.pedal,
				},
			);
		case 'pedal-freed':
			return moveBoard(session, entry.player, { type: 'pedalFreed', pedal: entry.pedal });
		case 'pack-changed':
			return changePack(session, entry);
		case 'battery-changed':
			return changeBattery(session, entry);
		case 'pack-suspected':
			return suspectPack(session, entry.pack);
		case 'pack-cleared':
			return clearPack(session, entry.pack);
		case 'fault-sought':
			return seekFault(session, entry, of);
		case 'fault-tested':
			return testFault(session, entry);
		case 'fault-found':
			return findCause(session, entry);
		case 'fault-left':
			return leaveFault(session, entry.fault);
		case 'time-changed': {
			const own = ownTimesWith(session.show.ownTimes ?? {}, entry.time, entry.seconds);
			return { ...session, show: withOwnTimes(session.show, own) };
		}
		case 'show-ended':
			return moveShow(
				Object.values(session.players).reduce<Session>(
					(now, player) => (player.holds === null ? now : takeBack(now, player.holds, entry.at)),
					{ ...leaveAllFaults(session), phaseSinceMs: entry.at },
				),
				{ type: 'showEnded' },
			);
		case 'plan-told':
			return tellPlan(session, entry);
		// Notes of the program, and what is the timeline's.
		case 'memo-written':
		case 'night-opened':
		case 'resumed':
		case 'slept':
		case 'clock-set':
		case 'taken-back':
		case 'put-back':
			return session;
	}
	// A new kind that is forgotten here does not compile; one that a newer version of the program wrote is kept
	// in the journal and passed over.
	entry satisfies never;
	return session;
}

function markReady(session: Session, entry: Extract<Entry, { k: 'made-ready' }>): Session {
	const { instrument, at, tuning, capo, isRestrung, isEarly } = entry;
	const ready = moveInstrument(session, instrument, {
		type: 'madeReady',
		atMs: at,
		...(tuning ? { tuning } : {}),
		...(capo === undefined ? {} : { capo }),
		...(isRestrung ? { isRestrung } : {}),
		...(isEarly ? { isEarly } : {}),
	});
	if (ready === session) return session;
	const mark = { atMs: at, celsius: session.stageCelsius };
	return { ...ready, readyMarks: { ...session.readyMarks, [instrument]: mark } };
}
