// Which presses count. A key held down, a wet finger that bounces and a towel on the space bar are one
// press each. Key repeat begins late, so its first repeat looks like a second press until two more
// follow fast: then it is taken back.

/** The same key again within this time of its last press counts once. */
const BOUNCE_MS = 300;
/** Key repeat begins within this time of the press. */
const REPEAT_BEGINS_MS = 700;
/** Repeats follow each other within this time. */
const REPEAT_MS = 100;
/** So many presses must follow a suspect before it is taken back; a single bounce is not enough. */
const FOLLOWERS = 2;

export type Presses = {
	/** When each key was last pressed, whether it counted or not. */
	readonly lastMs: Readonly<Record<string, number>>;
	/** A press that counted and may turn out to be the beginning of a repeat. */
	readonly suspect: { readonly key: string; readonly followers: number } | null;
};

export const NO_PRESSES: Presses = { lastMs: {}, suspect: null };

/** `take-back`: the last press that counted was the beginning of a repeat; this one does not count either. */
export type Verdict = 'count' | 'ignore' | 'take-back';

/** What one more press is worth, and what to remember of it. */
export function judgePress(
	presses: Presses,
	key: string,
	atMs: number,
): { presses: Presses; verdict: Verdict } {
	const since = atMs - (presses.lastMs[key] ?? Number.NEGATIVE_INFINITY);
	const lastMs = { ...presses.lastMs, [key]: atMs };
	if (since >= BOUNCE_MS) {
		const suspect = since <= REPEAT_BEGINS_MS ? { key, followers: 0 } : null;
		return { presses: { lastMs, suspect }, verdict: 'count' };
	}
	if (presses.suspect?.key !== key || since > REPEAT_MS) {
		return { presses: { lastMs, suspect: null }, verdict: 'ignore' };
	}
	const followers = presses.suspect.followers + 1;
	return followers >= FOLLOWERS
		? { presses: { lastMs, suspect: null }, verdict: 'take-back' }
		: { presses: { lastMs, suspect: { key, followers } }, verdict: 'ignore' };
}
