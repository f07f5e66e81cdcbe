// What a player gets next, keeps or lacks, as every view shows it in some size.

import type { Work } from '../plan/plan.ts';
import type { Tuning } from '../tuning/tuning.ts';
import { withoutAge, workAlone } from '../words/instrument-state.ts';
import type { StateMark } from './instrument-marks.ts';
import type { SpanStyle } from './row.ts';

/** What a player gets next. */
export type Coming = {
	readonly player: string;
	/** `stays`: kept for a song that names another instrument or another capo; `missing`: what a song asks for cannot be had; `wrong`: in hands for a song that wants something else. */
	readonly kind: 'break' | 'hand-over' | 'stays' | 'missing' | 'wrong' | 'keeps';
	/** Null: nothing in hands. */
	readonly instrument: string | null;
	readonly tuning: Tuning | null;
	readonly capo: number;
	/** The named instrument that it stands in for; null where nothing does. */
	readonly for: string | null;
	/** For which song or point. */
	readonly forWhat: string;
	/** The same without the number of the song. */
	readonly forTitle?: string;
	/** The same for all who change together; null for a break and for who keeps what they have. */
	readonly moment: string | null;
	/** Until it is wanted, negative past it; for a break since when the sound has been gone; null where nothing is to come. */
	readonly seconds: number | null;
	/** `in    2:33`, `now   0:12`, the number always in the same cells; for a break how long the sound has been gone. */
	readonly when: string;
	/** Ready or not for this very hand-over, as a mark; null where nothing is handed. */
	readonly mark: StateMark | null;
	/** The same in words, with the work that is left. */
	readonly status: string;
	/** The work that is left for this very hand-over. */
	readonly due: readonly Work[];
	/** Why this backup, or why there is nothing; null where the song asks for it. */
	readonly why: string | null;
	/** To be checked before it leaves the rack. */
	readonly leave: string | null;
	readonly pack: string | null;
	/** Act now: its moment has come, or it is near and not ready. */
	readonly isUrgent: boolean;
};

/** How it is written whether it is ready. */
export function readinessStyle({ isUrgent, mark }: Coming): SpanStyle {
	if (isUrgent) return 'accent';
	return mark === null || mark === '+' ? 'plain' : 'unready';
}

/** How it stands, from all of it to the least: how long it has been ready goes first, then that it was, where there is work. */
export function statusTexts({ status }: Coming): readonly string[] {
	return [status, withoutAge(status), workAlone(status)];
}

/** What is coming, with the moment at which it is wanted. */
export type Dated = { readonly atMs: number; readonly coming: Coming };
