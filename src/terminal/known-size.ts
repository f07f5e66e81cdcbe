// A terminal that does not know its size says 0. The renderer would then look for the size by
// starting other programs, at every frame.

/** What of standard output is looked at and set. */
export type SizedStream = {
	columns: number;
	rows: number;
	readonly on: (name: 'resize', listener: () => void) => unknown;
};

/** The size taken for one that is not known: that of the first terminals (DEC VT100). */
const USUAL = { columns: 80, rows: 24 } as const;

/** Puts the usual size in place of an unknown one, now and after every change; to be called before others listen. */
export function keepSizeKnown(stream: SizedStream): void {
	const know = (): void => {
		if (!(stream.columns > 0 && stream.rows > 0)) {
			Object.assign(stream, USUAL);
		}
	};
	know();
	stream.on('resize', know);
}
