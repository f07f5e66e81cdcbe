// The moments in which a string breaks.

import { standInsWithCosts } from '../plan/backups/stand-in-costs.ts';
import { samePitches } from '../plan/demand/same-pitches.ts';
import type { StandIn } from '../plan/plan.ts';
import type { Session } from '../session/session.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { breakHappens, breakRight } from '../words/drill.ts';
import { LED_BY } from '../words/walk.ts';
import { LIMIT_SECONDS } from './moment.ts';
import { breakKeys } from './right-keys.ts';
import { type Happening, hands, type Stage, type Staged } from './stage.ts';
import type { TrialNight } from './trial-night.ts';

/** Time for somebody to take the backup. */
const TAKEN_MS = 20_000;

/** The backups for what a player has in hands, best first, as they are offered so many seconds from now. */
function backups({ night }: TrialNight, player: string, inSeconds = 0): readonly StandIn[] {
	const session = night.session();
	return standInsWithCosts({
		session,
		plan: night.plan(),
		nowMs: night.nowMs() + inSeconds * 1000,
		plannedZeroMs: session.zeroAtMs ?? night.nowMs(),
		player,
	});
}

function isRetuned({ instruments }: Session, { instrument, tuning }: StandIn): boolean {
	const state = instruments[instrument];
	return state !== undefined && !samePitches(state.context.tuning, tuning);
}

/** A string breaks on what somebody has in hands; right is that it is logged, and the first backup in hands. */
function breaks(staged: Staged, isFit: (best: StandIn) => boolean): Happening | null {
	const { trial, by, keyOf } = staged;
	const session = trial.night.session();
	const { show } = session;
	for (const { player, instrument } of hands(staged)) {
		const [best] = backups(trial, player);
		if (best === undefined || !isFit(best)) continue;
		// Towards the end of its time another may come first.
		const [later] = backups(trial, player, LIMIT_SECONDS);
		const first = [best.instrument, ...(later ? [later.instrument] : [])];
		const count = session.incidents.length;
		return {
			words: {
				happens: breakHappens(
					1 + by.below(4),
					playerName(show, player),
					shownInstrument(show, instrument),
				),
				right: breakRight(shownInstrument(show, best.instrument)),
			},
			keys: breakKeys(keyOf, session, instrument),
			isAnswered: ({ incidents, players }) =>
				incidents
					.slice(count)
					.some((one) => one.kind === 'string-break' && one.instrument === instrument) &&
				first.includes(players[player]?.holds ?? ''),
		};
	}
	return null;
}

/** A string breaks, and the first backup is in another tuning. */
export const breakRetune: Stage = {
	isBetweenSongs: false,
	happens: (staged) => breaks(staged, (best) => isRetuned(staged.trial.night.session(), best)),
};

/** A string breaks while another instrument is being restrung. */
export const secondBreak: Stage = {
	isBetweenSongs: false,
	before: (staged) => {
		const { night, clock } = staged.trial;
		for (const { player, instrument } of hands(staged)) {
			const [best] = backups(staged.trial, player);
			if (best === undefined) continue;
			night.submit({ do: 'report-break', instrument }, LED_BY);
			clock.leap(TAKEN_MS);
			const { tuning, capo } = best;
			night.submit({ do: 'stand-in', instrument: best.instrument, tuning, capo }, LED_BY);
			return true;
		}
		return false;
	},
	happens: (staged) => breaks(staged, () => true),
};
