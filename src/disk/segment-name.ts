// How the files of a night are named: `<id>.journal`, then `<id>.2.journal` and so on when the night
// had to go on in another file.

const pattern = /^([a-z0-9][a-z0-9-]*)(?:\.([1-9]\d{0,5}))?\.journal$/;

/** A file of a night: 1 is the file it began in. */
export type SegmentName = { readonly id: string; readonly number: number };

/** The file name of a night's file. */
export function segmentFileName({ id, number }: SegmentName): string {
	return number === 1 ? `${id}.journal` : `${id}.${number}.journal`;
}

/** The night and number that a file name tells; null when it is no night's file. */
export function parseSegmentName(fileName: string): SegmentName | null {
	const [, id, number = '1'] = pattern.exec(fileName) ?? [];
	return id === undefined ? null : { id, number: Number(number) };
}
