// Which part of a long list is in sight, so that the picked row always is.

/** The first row to draw; the list stays put until the picked row would leave it, then it is centred. */
export function firstInSight(count: number, picked: number, rows: number): number {
	if (count <= rows || picked < rows) return 0;
	return Math.max(0, Math.min(count - rows, picked - Math.floor(rows / 2)));
}

/** The first row to draw where nobody picks one: that before the one concerned, since what comes after is looked for. */
export function firstBefore(count: number, concerned: number, rows: number): number {
	return Math.max(0, Math.min(count - rows, concerned - 1));
}
