// What a command comes to: the entries it makes, or why it cannot be.

import { advance } from '../../machines/advance.ts';
import { type InstrumentEvent, instrumentLaw } from '../../machines/instrument.ts';
import type { Entry } from '../journal/entry.ts';
import type { Command } from './command.ts';
import { findCause, leaveFault, seekFault, takeSpare, testFault } from './decide-faults.ts';
import {
	changeBattery,
	changePack,
	clearPack,
	correctPedal,
	freePedal,
	markPedalStuck,
	suspectPack,
} from './decide-gear.ts';
import { exchange, handOver, standIn } from './decide-hands.ts';
import { chooseNext } from './decide-jump.ts';
import {
	dropSong,
	insertSong,
	moveSong,
	nameTonight,
	playInEncore,
	readShowAgain,
	restoreSong,
} from './decide-set.ts';
import {
	endedHow,
	endOfSong,
	finishSong,
	goToSong,
	previousSongItem,
	step,
	stepBack,
} from './decide-songs.ts';
import { type Decision, no, yes } from './decision.ts';
import { holderOf, nextSongItem, openBreak, songOnNow } from './find.ts';
import type { Session } from './session.ts';

/** The entries that a command makes at `atMs`, all for one record, or why it makes none. */
export function decide(session: Session, command: Command, atMs: number): Decision {
	if (session.phase.value === 'packed') return no({ code: 'show-closed' });
	switch (command.do) {
		case 'step':
			return step(session, command, atMs);
		case 'step-back':
			return stepBack(session, atMs);
		case 'finish-song':
			return finishSong(session, command, atMs);
		case 'go-to-next-song':
			return goToSong(session, { item: nextSongItem(session), side: 'after' }, atMs);
		case 'go-to-previous-song':
			return goToSong(session, { item: previousSongItem(session), side: 'before' }, atMs);
		case 'choose-next':
			return chooseNext(session, command, atMs);
		case 'read-show-again':
			return readShowAgain(session, command.show, atMs);
		case 'move-song':
			return moveSong(session, command, atMs);
		case 'insert-song':
			return insertSong(session, command, atMs);
		case 'drop-song':
			return dropSong(session, command.item, atMs);
		case 'restore-song':
			return restoreSong(session, command.item, atMs);
		case 'play-in-encore':
			return playInEncore(session, command.item, atMs);
		case 'name-tonight':
			return nameTonight(session, command, atMs);
		case 'hand-over':
			return handOver(session, command, atMs);
		case 'exchange':
			return exchange(session, command, atMs);
		case 'make-ready':
			return makeReady(session, command, atMs);
		case 'make-all-ready':
			return makeAllReady(session, atMs);
		case 'report-break':
			return reportBreak(session, command.instrument, atMs);
		case 'stand-in':
			return standIn(session, command, atMs);
		case 'play-on': {
			const open = openBreak(session);
			return open
				? yes({ k: 'played-on', at: atMs, incident: open.id })
				: no({ code: 'no-break-open' });
		}
		case 'note-incident':
			return yes({ k: 'incident-noted', at: atMs });
		case 'describe-incident':
			return describeIncident(session, command, atMs);
		case 'write-memo':
			return command.words.trim() === ''
				? no({ code: 'empty-memo' })
				: yes({ k: 'memo-written', at: atMs, words: command.words.trim() });
		case 'correct-instrument':
			return yes({
				k: 'found-as',
				at: atMs,
				instrument: command.instrument,
				...(command.tuning ? { tuning: command.tuning } : {}),
				...(command.capo === null ? {} : { capo: command.capo }),
			});
		case 'put-aside':
			return session.instruments[command.instrument]?.value === 'out' && command.fault === null
				? no({ code: 'out-already', instrument: command.instrument })
				: yes({ k: 'put-aside', at: atMs, instrument: command.instrument, fault: command.fault });
		case 'bring-back':
			return canTake(session, command.instrument, { type: 'broughtBack' })
				? yes({ k: 'brought-back', at: atMs, instrument: command.instrument })
				: no({ code: 'not-put-aside', instrument: command.instrument });
		case 'stage':
			return canTake(session, command.instrument, { type: 'staged' })
				? yes({ k: 'staged', at: atMs, instrument: command.instrument })
				: no({ code: 'not-on-rack', instrument: command.instrument });
		case 'doubt-all':
			return yes({
				k: 'all-doubted',
				at: atMs,
				...(command.celsius === null ? {} : { celsius: command.celsius }),
			});
		case 'correct-pedal':
			return correctPedal(session, command, atMs);
		case 'mark-pedal-stuck':
			return markPedalStuck(session, command, atMs);
		case 'free-pedal':
			return freePedal(session, command, atMs);
		case 'change-pack':
			return changePack(session, command, atMs);
		case 'suspect-pack':
			return suspectPack(session, command.player, atMs);
		case 'clear-pack':
			return clearPack(session, command.pack, atMs);
		case 'change-battery':
			return changeBattery(session, command, atMs);
		case 'seek-fault':
			return seekFault(session, command, atMs);
		case 'test-fault':
			return testFault(session, command, atMs);
		case 'take-spare':
			return takeSpare(session, command, atMs);
		case 'find-cause':
			return findCause(session, command, atMs);
		case 'leave-fault':
			return leaveFault(session, command.fault, atMs);
		case 'change-time':
			return (session.show.ownTimes?.[command.time] ?? null) === command.seconds
				? no({ code: 'time-already' })
				: yes({ k: 'time-changed', at: atMs, time: command.time, seconds: command.seconds });
		case 'end-show':
			return yes(...(songOnNow(session) ? endOfSong(session, endedHow(session, atMs), atMs) : []), {
				k: 'show-ended',
				at: atMs,
			});
	}
}

function canTake(session: Session, instrument: string, event: InstrumentEvent): boolean {
	const state = session.instruments[instrument];
	return state !== undefined && advance(instrumentLaw, state, event) !== null;
}

function makeReady(
	session: Session,
	command: Extract<Command, { do: 'make-ready' }>,
	atMs: number,
): Decision {
	const { instrument, due } = command;
	const state = session.instruments[instrument];
	if (!state) return no({ code: 'unknown-instrument' });
	const isBroken = state.context.stringsDown.length > 0;
	const isRestrung = isBroken && due !== null;
	if (isBroken && due === null) return no({ code: 'not-ready-as-it-stands', instrument });
	if (!canTake(session, instrument, { type: 'madeReady', atMs, isRestrung })) {
		const holder = holderOf(session, instrument);
		return no(
			holder === null
				? { code: 'out', instrument }
				: { code: 'worked-in-hands', instrument, player: holder },
		);
	}
	return yes({
		k: 'made-ready',
		at: atMs,
		instrument,
		...(due ? { tuning: due.tuning, capo: due.capo } : {}),
		...(isRestrung ? { isRestrung } : {}),
		...(due?.isEarly ? { isEarly: true } : {}),
	});
}

function makeAllReady(session: Session, atMs: number): Decision {
	const entries = session.show.instruments
		.filter((one) => {
			const state = session.instruments[one.id];
			return state?.value === 'racked' && canTake(session, one.id, { type: 'madeReady', atMs });
		})
		.map((one): Entry => ({ k: 'made-ready', at: atMs, instrument: one.id }));
	return entries.length === 0 ? no({ code: 'nothing-to-mark-ready' }) : yes(...entries);
}

function reportBreak(session: Session, instrument: string, atMs: number): Decision {
	if (!session.instruments[instrument]) return no({ code: 'unknown-instrument' });
	return yes({
		k: 'string-broke',
		at: atMs,
		instrument,
		player: holderOf(session, instrument),
	});
}

function describeIncident(
	session: Session,
	command: Extract<Command, { do: 'describe-incident' }>,
	atMs: number,
): Decision {
	const last = session.incidents.at(-1);
	if (!last) return no({ code: 'no-incident' });
	const words = command.words.trim();
	if (command.string === null && command.kind === null && words === '')
		return no({ code: 'nothing-added' });
	return yes({
		k: 'incident-described',
		at: atMs,
		incident: last.id,
		...(command.string === null ? {} : { string: command.string }),
		...(command.kind === null ? {} : { kind: command.kind }),
		...(words === '' ? {} : { words }),
	});
}
