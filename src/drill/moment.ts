// One moment of a drill: where the show stands, what happens, and what counts as an answer.

import type { Session } from '../session/session.ts';
import type { DrillKind, DrillWords } from '../words/drill.ts';
import type { Keys } from './right-keys.ts';
import type { TrialPlace } from './trial-night.ts';

export type DrillMoment = {
	readonly kind: DrillKind;
	/** The song during which, or after which, it happens. */
	readonly song: string;
	/** From where one looks on before. */
	readonly lead: TrialPlace;
	/** Where it happens. */
	readonly strike: TrialPlace;
	readonly words: DrillWords;
	/** The keys that are right. */
	readonly keys: Keys;
	/** Whether the night holds the right answer. */
	readonly isAnswered: (session: Session) => boolean;
};

/** So long a moment waits for its answer: within it a show does not come to a halt (common practice). */
export const LIMIT_SECONDS = 30;

/** How fast the show runs up to a moment. */
export const LEAD_SPEED = 8;
