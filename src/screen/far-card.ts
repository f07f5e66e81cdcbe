// What of a hand-over is read from afar, as pieces of tall letters: who, from which slot, in what, what is
// to be done with the capo, ready or what is missing.

import { minutesSeconds } from '../base/duration.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { withoutAge } from '../words/instrument-state.ts';
import {
	JOB_WORDS,
	NO_BACKUP,
	NO_BACKUP_PLAY_ON,
	TALL,
	tallCapo,
	tallCapoMove,
} from '../words/stage.ts';
import { tuningNames, withSigns } from '../words/tuning-names.ts';
import type { Card } from './cards.ts';
import { type TallPiece, tallPiece } from './far-lines.ts';
import { instrumentOf } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';
import { readinessStyle } from './what-comes.ts';
import { isTouchedUp } from './work-words.ts';

export type FarCard = {
	readonly player: TallPiece;
	/** Slot, tuning, capo: what has to be read first. */
	readonly main: readonly TallPiece[];
	/** Ready or not as a mark, with the work that is left; null where nothing is handed. */
	readonly status: TallPiece | null;
	/** The same in small letters. */
	readonly words: string;
};

/** Names longer than these are known by so many of their first letters. */
const LONG_NAMES = [6, 4];

/**
 * `isShort`: with shorter names than the usual ones too. Null where the face lacks a letter that is needed.
 */
export function farCard(state: ScreenState, card: Card, isShort: boolean): FarCard | null {
	const { show } = state.session;
	const bright = card.isUrgent ? 'accent' : 'bright';
	const plain = card.isUrgent ? 'accent' : 'plain';
	const usual = (texts: readonly string[]) => (isShort ? texts : texts.slice(0, 1));
	const key = show.players.find(({ id }) => id === card.player)?.key ?? '';
	const { label } = card;
	const begun = LONG_NAMES.flatMap((most) => (label.length > most ? [label.slice(0, most)] : []));
	const player = tallPiece([label, ...begun], bright) ?? tallPiece([key], bright);
	const main = [
		tallPiece(usual(whatTexts(state, card)), bright),
		...inTexts(state, card).map((texts) => tallPiece(usual(texts), plain)),
		...capoTexts(card).map((texts) => tallPiece(usual(texts), card.isCapoToDo ? bright : plain)),
	].filter((piece) => piece !== null);
	const wanted = 1 + inTexts(state, card).length + capoTexts(card).length;
	if (player === null || main.length < wanted) return null;
	const status = tallPiece(statusTexts(state, card), readinessStyle(card));
	return { player, main, status, words: card.mark === null ? '' : `${card.mark} ${card.status}` };
}

/** What to take, by its slot; or that there is nothing to take. */
function whatTexts({ session: { show } }: ScreenState, card: Card): readonly string[] {
	const { kind, instrument, status } = card;
	if (instrument === null) {
		if (kind === 'missing') return status === NO_BACKUP ? TALL.noBackup : TALL.nothingPlanned;
		if (kind !== 'break') return [TALL.nothing];
		// Where a backup would come too late nothing is said of it.
		return [status === NO_BACKUP_PLAY_ON ? TALL.noBackup[0] : TALL.playOn];
	}
	const slot = instrumentOf(show, instrument)?.slot ?? shownInstrument(show, instrument);
	if (kind === 'break') return [`${TALL.take} ${slot}`];
	if (kind === 'wrong') return [`${TALL.wrong} ${slot}`];
	return [kind === 'stays' ? `${TALL.keeps} ${slot}` : slot];
}

/** What it is in; where there is no backup, what to do then. */
function inTexts({ session: { show } }: ScreenState, card: Card): readonly (readonly string[])[] {
	const { kind, instrument, tuning } = card;
	if (instrument === null) {
		return kind === 'break' && card.status === NO_BACKUP_PLAY_ON ? [[TALL.playOn]] : [];
	}
	if (kind === 'stays' || tuning === null) return [];
	return [tuningNames(show, tuning).map(withSigns)];
}

function capoTexts(card: Card): readonly (readonly string[])[] {
	const { instrument, capo, capoWords, isCapoToDo } = card;
	if (instrument === null) return [];
	if (isCapoToDo) return [[capoWords, tallCapoMove(capo)]];
	return capo > 0 ? [[tallCapo(capo)]] : [];
}

/** In ever fewer words, the last the mark alone. */
function statusTexts(state: ScreenState, card: Card): readonly string[] {
	const { mark, kind, status, due } = card;
	if (mark === null) return [];
	const said = (words: string) => `${mark} ${words}`;
	if (kind === 'break') return [said(mark === '+' ? TALL.ready : TALL.notReady), mark];
	if (mark === '+' || due.length === 0) {
		const [first = ''] = status.split(', ');
		return [said(withoutAge(first)), mark];
	}
	const left = minutesSeconds(due.reduce((sum, { seconds }) => sum + seconds, 0));
	const jobs = due.map((one) => JOB_WORDS[isTouchedUp(state, one) ? 'touch-up' : one.job]);
	return [said(`${jobs.join(' + ')} ${left}`), said(`${jobs[0]} ${left}`), said(left), mark];
}
