// The picture of a night in characters.

import { describe, expect, test } from 'vitest';
import { displayWidth } from '../../src/base/display-width.ts';
import { timelineFor } from '../../src/report/timeline-of-night.ts';
import { timelineText } from '../../src/report/timeline-text.ts';
import { CLUB_NIGHT, pages, scriptReport, TECH } from './looked-at-nights.ts';

const club = scriptReport(CLUB_NIGHT);

describe.each(pages())('of %s', (_, report, reader) => {
	test.each([true, false])('fits 80 columns (in ASCII: %s)', (isAscii) => {
		const lines = timelineText(timelineFor(report, reader), isAscii);
		for (const line of lines) {
			expect(displayWidth(line)).toBeLessThanOrEqual(80);
			if (isAscii) expect(line).toMatch(/^[\x20-\x7e]*$/);
		}
	});
});

test('an instrument is drawn in hands while its player has it, and a break stands where it was', () => {
	const lines = timelineText(timelineFor(club, TECH), true);
	const { fromMs, toMs } = timelineFor(club, TECH);
	const cellAt = (atMs: number): number =>
		14 + Math.floor(((atMs - fromMs) / (toMs - fromMs)) * 66);
	const lane = (name: string): string => lines.find((line) => line.trimStart().startsWith(name))!;
	for (const { instrument, at } of club.incidents) {
		expect(lane(instrument!)[cellAt(at.atMs)]).toBe('!');
	}
	const [coal] = club.instruments.filter(({ instrument }) => instrument === '8 Coal');
	for (const { fromMs: from, toMs: to, place } of club.lanes.instruments[coal!.id]!) {
		const middle = cellAt((from + to) / 2);
		if (to - from > 300_000 && from >= fromMs) {
			expect(lane('8 Coal')[middle] === '#').toBe(place === 'hands');
		}
	}
});

test('a name of any length or kind moves nothing', () => {
	const players = club.players.map((one) => ({
		...one,
		name: `\u202e\u001b[2J${'wide 宽'.repeat(90)}`,
	}));
	for (const line of timelineText(timelineFor({ ...club, players }, TECH), false)) {
		expect(displayWidth(line)).toBeLessThanOrEqual(80);
		expect(line).not.toMatch(/[\u202e]|\p{Cc}/u);
	}
});
