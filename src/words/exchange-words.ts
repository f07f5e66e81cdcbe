// What is to be said when another instrument is in hands than was planned: that it sounds wrong for the
// song, and what the night to come pays for it.

import type { Plan } from '../plan/plan.ts';
import { laterCost } from '../plan/what-if/later-cost.ts';
import { partNow } from '../session/as-asked.ts';
import type { Session } from '../session/session.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { asSentence } from './as-sentence.ts';
import { laterWords } from './later-costs.ts';
import { warningWords } from './warnings.ts';

/** What puts right what is wrong in hands, and the keys that log it. */
export const putRight = {
	in: (tuned: string): string => `wants ${tuned}`,
	hand: (instrument: string, keys: readonly string[]): string =>
		`HAND ${instrument}, then ${keys.join(' ')}`,
	takeFrom: (holder: string, instrument: string): string => `${holder} has ${instrument}`,
} as const;

export type Exchanged = {
	readonly player: string;
	readonly session: Session;
	readonly zeroMs: number;
	/** Who had in hands what the player was given; null for nobody. */
	readonly takenFrom: string | null;
	/** The plan before the exchange, and the one with it. */
	readonly before: Plan;
	readonly after: Plan;
};

/** One or more sentences as they are to be read at a show time in seconds; null when it is right and costs nothing. */
export function exchangeWords(exchanged: Exchanged): ((nowSeconds: number) => string) | null {
	const { session, zeroMs, before, after } = exchanged;
	const { later } = laterCost({ show: session.show, zeroMs, without: before, with: after });
	const wrong = wrongNow(exchanged);
	const taken = takenWords(exchanged);
	if (taken.length + wrong.length + later.length === 0) return null;
	return (nowSeconds) => {
		const costs = later.map((one) => laterWords(session.show, one, { nowSeconds }));
		return [...wrong, ...taken, ...costs].map(asSentence).join(' ');
	};
}

/** Whoever typed the slot may have meant another. */
function takenWords({ player, session, takenFrom }: Exchanged): readonly string[] {
	const { show } = session;
	const holds = session.players[player]?.holds ?? null;
	if (takenFrom === null || takenFrom === player || holds === null) return [];
	return [`${playerName(show, takenFrom)} no longer has ${shownInstrument(show, holds)}`];
}

function wrongNow({ player, session, after }: Exchanged): readonly string[] {
	const { show } = session;
	const holds = session.players[player]?.holds ?? null;
	const wanted = partNow(session, player);
	if (holds !== null && wanted?.part.kind === 'none') {
		const has = `${playerName(show, player)} has ${shownInstrument(show, holds)}`;
		return [`${has}, but ${wanted.title} wants hands empty`];
	}
	return after.warnings
		.filter((one) => one.code === 'wrong-tuning' && one.player === player)
		.map((one) => warningWords(show, one));
}
