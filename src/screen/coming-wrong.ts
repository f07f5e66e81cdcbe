// Who has something wrong in hands, or nothing, in the song that is on or about to begin. A swap has closed their
// hand-over, so no key would hand them anything: what puts it right is said in its place.

import { keyOfAction } from '../keys/key-choices.ts';
import type { Section, Warning } from '../plan/plan.ts';
import { holderOf } from '../session/find.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { capoAct } from '../words/capo-words.ts';
import { putRight } from '../words/exchange-words.ts';
import { stateWords } from '../words/instrument-state.ts';
import { whenWords } from '../words/stage.ts';
import { tunedWords } from '../words/warnings.ts';
import { forWords, momentOf } from './coming-words.ts';
import { slotLabel } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';
import type { Coming, Dated } from './what-comes.ts';

type Wrong = Extract<Warning, { code: 'wrong-tuning' | 'empty-hands' }>;

/** With less of the song left what is wrong is ridden out, and what comes next matters more: common practice, no source. */
const RIDDEN_OUT_SECONDS = 20;

/**
 * Null where what they have is right, or a key would put it right: something is still to be handed, or a capo moved, in
 * the song that is on. `atMs` is when it is to be right.
 */
export function wrongInHands(
	state: ScreenState,
	player: string,
	atMs: (section: Section) => number,
): Dated | null {
	const { session, plan, nowMs } = state;
	const section = plan.sections[0];
	const wrongOf = (whose: string | null) =>
		plan.warnings.find(
			(one): one is Wrong =>
				(one.code === 'wrong-tuning' || one.code === 'empty-hands') &&
				one.player === whose &&
				one.song === section?.song,
		);
	const wrong = wrongOf(player);
	if (section === undefined || wrong === undefined) return null;
	if (section.hasBegun) {
		const isOpen = (one: { readonly section: Section; readonly player: string }) =>
			one.section.hasBegun && one.player === player;
		if (plan.handOvers.some(isOpen) || plan.capoMoves.some(isOpen)) return null;
		if ((section.endMs - nowMs) / 1000 < RIDDEN_OUT_SECONDS) return null;
	}
	const wanted = wantedBy(wrong);
	const holder = wanted === null ? null : holderOf(session, wanted);
	// Who plays rightly on what is wanted keeps it.
	if (holder !== null && holder !== player && wrongOf(holder) === undefined) return null;
	const sinceMs = session.players[player]?.sinceMs ?? section.startMs;
	const wantedMs = section.hasBegun ? Math.max(section.startMs, sinceMs) : atMs(section);
	const untilSeconds = (wantedMs - nowMs) / 1000;
	return {
		atMs: wantedMs,
		coming: {
			player,
			kind: 'wrong',
			instrument: wrong.code === 'empty-hands' ? null : wrong.instrument,
			tuning: null,
			capo: 0,
			for: null,
			...forWords(state, section),
			moment: momentOf(section),
			seconds: untilSeconds,
			when: whenWords(untilSeconds, section.hasBegun),
			mark: null,
			...rightWords(state, wrong),
			due: [],
			leave: null,
			pack: null,
			isUrgent: true,
		},
	};
}

/** The instrument; null where it is the one in hands, or any would do. */
function wantedBy(wrong: Wrong): string | null {
	return (wrong.code === 'empty-hands' ? wrong.instrument : wrong.wants.instrument) ?? null;
}

/**
 * `HAND 1 Wren, then x a 1`, and who has that; what it is to be in where that is the same instrument, or any would do, or
 * it cannot be handed.
 */
function rightWords(
	{ session, preferences, nowMs }: ScreenState,
	wrong: Wrong,
): Pick<Coming, 'status' | 'why'> {
	const { show } = session;
	const wanted = wantedBy(wrong);
	const wants = putRight.in(wrong.code === 'empty-hands' ? wrong.tuning : tunedWords(wrong.wants));
	if (wanted === null) {
		const isCapo = wrong.code === 'wrong-tuning' && wrong.wrong === 'capo';
		return { status: isCapo ? capoAct(wrong.wants.capo) : wants, why: null };
	}
	const name = shownInstrument(show, wanted);
	const state = session.instruments[wanted];
	const { stringsDown = [], faults = [] } = state?.context ?? {};
	if (state?.value === 'out' || stringsDown.length + faults.length > 0) {
		return { status: wants, why: `${name} ${stateWords(session, wanted, nowMs)}` };
	}
	const holder = holderOf(session, wanted);
	const { key = '' } = show.players.find(({ id }) => id === wrong.player) ?? {};
	return {
		status: putRight.hand(name, [
			keyOfAction('exchange', preferences.keys),
			key,
			slotLabel(show, wanted).toLowerCase(),
		]),
		why: holder === null ? null : putRight.takeFrom(playerName(show, holder), name),
	};
}
