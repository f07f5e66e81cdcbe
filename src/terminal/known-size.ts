// The terminal's size as the renderer may see it: never 0, as a terminal says that does not know its
// own, since the renderer would then look for the size by starting other programs at every frame; and
// changing no faster than anybody can look, since it draws everything at every change.

import type { Clock } from './clock.ts';

/** What of standard output is looked at and set. */
export type SizedStream = {
	columns: number;
	rows: number;
	readonly on: (name: 'resize', listener: () => void) => unknown;
	/** Asks for the size, at every SIGWINCH. Undocumented in Node, and may be missing. */
	_refreshSize?: () => void;
};

/** The size taken for one that is not known: that of the first terminals (DEC VT100). */
const USUAL = { columns: 80, rows: 24 } as const;

/** Thirty changes a second. */
const BETWEEN_CHANGES_MS = 34;

/** Keeps the size so from now on; to be called before others listen. */
export function keepSizeKnown(stream: SizedStream, clock: Pick<Clock, 'after'>): void {
	const know = (): void => {
		if (!(stream.columns > 0 && stream.rows > 0)) {
			Object.assign(stream, USUAL);
		}
	};
	know();
	stream.on('resize', know);
	const refresh = stream._refreshSize?.bind(stream);
	if (refresh === undefined) {
		return;
	}
	let isResting = false;
	let isWanted = false;
	stream._refreshSize = () => {
		isWanted = isResting;
		if (isResting) {
			return;
		}
		isResting = true;
		clock.after(BETWEEN_CHANGES_MS, () => {
			isResting = false;
			if (isWanted) {
				stream._refreshSize?.();
			}
		});
		refresh();
	};
}
