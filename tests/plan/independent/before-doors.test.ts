// A show as sections and cells, worked out by hand.

import { expect, test } from 'vitest';
import { demandOf, recheckOf, stateBeforeDoors } from './before-doors.ts';
import { showOf } from './show-of.ts';
import { pitchesOf, waysToSound } from './sounding.ts';

const SHOW = showOf(`format: rackside/1
show: {title: By hand, recheck-after: 8m, recheck-new: 3m}
players: [{id: ash}, {id: bo}]
instruments:
  - {id: A1, kind: electric-6, tuning: E standard, recheck-after: 6m}
  - {id: A2, kind: electric-6, tuning: E standard}
  - {id: A3, kind: electric-6, tuning: E standard, bridge: floating}
  - {id: T1, kind: electric-12, tuning: E standard}
  - {id: C1, kind: bass-4, tuning: standard}
songs:
  - {id: one, length: "2:00", ends: segue, hands: {ash: A1}}
  - {id: two, hands: {}, cues: [{at: Ch1, near: "1:00", bo: off}, {at: bridge, hand: {ash: {instrument: A2, capo: 2}}}]}
  - {id: three, length: "5:00", hands: {bo: none}}
  - {id: four, length: "3:00", hands: {ash: {needs: {kind: electric-6, sounds: drop D}}}}
set: [one, two, {interval: 20m}, three, {encore: [four, {song: one, gap: 5s}]}]
`);

test('songs follow each other by lengths, gaps and intervals, split where a cue hands over', () => {
	const rows = stateBeforeDoors(SHOW).sections.map((one) => [
		one.key,
		one.start,
		one.previousEnd,
		one.gap,
		one.isAfterInterval,
		one.boardCues,
	]);
	expect(rows).toEqual([
		['0', 0, -3600, null, false, []],
		// The median of 2:00, 3:00 and 5:00 long.
		['1', 120, 120, 0, false, [180]],
		['1.1', 210, 210, null, false, []],
		['3', 1500, 300, null, true, []],
		['4', 1860, 1800, 60, false, []],
		['5', 2045, 2040, 5, false, []],
	]);
});

test('a cell repeats the one above, a cue included, through intervals and encores', () => {
	const { sections } = stateBeforeDoors(SHOW);
	const cells = (player: string) =>
		sections.map(({ cells: { [player]: cell } }) => {
			const { demand, isAsAbove } = cell!;
			const what = demand.kind === 'named' ? demand.instrument : demand.kind;
			return isAsAbove ? `(${what})` : what;
		});
	expect(cells('ash')).toEqual(['A1', '(A1)', 'A2', '(A2)', 'needs', 'A1']);
	expect(cells('bo')).toEqual(['(keep)', '(keep)', '(keep)', 'none', '(none)', '(none)']);
});

test('a part without tuning or capo means the own tuning and no capo', () => {
	const [song] = SHOW.songs;
	expect(demandOf(SHOW, song!.parts.ash!)).toEqual({
		kind: 'named',
		instrument: 'A1',
		open: [40, 45, 50, 55, 59, 64],
		capo: 0,
	});
});

test('ready lasts by new strings, the own figure, the figure of the show', () => {
	const [A1, A2] = SHOW.instruments;
	expect([recheckOf(SHOW, A1!, null), recheckOf(SHOW, A1!, 0.9)]).toEqual([360, 180]);
	expect([recheckOf(SHOW, A2!, 1), recheckOf(SHOW, A2!, 0)]).toEqual([480, 180]);
});

test('open tuning and capo make the sound, as far as strings bear it', () => {
	const ways = (id: string, up: number) => {
		const instrument = SHOW.instruments.find((one) => one.id === id)!;
		const own = pitchesOf(instrument.tuning);
		const sounds = own.map((note) => note + up);
		return waysToSound(instrument, own, sounds).map(({ open, capo }) => [open[0]! - own[0]!, capo]);
	};
	expect(ways('A1', 0)).toEqual([
		[0, 0],
		[-1, 1],
		[-2, 2],
	]);
	// All strings up by one is within reach, all up by two is not.
	expect(ways('A1', 2)).toEqual([
		[1, 1],
		[0, 2],
		[-1, 3],
		[-2, 4],
	]);
	expect(ways('A1', 8)).toEqual([[1, 7]]);
	expect(ways('A3', 2)).toEqual([[0, 2]]);
	expect(ways('C1', 1)).toEqual([[1, 0]]);
	expect(ways('C1', 2)).toEqual([]);
	// Three strings up by two are too many; a course counts as one string.
	const up = (id: string, strings: readonly number[]) => {
		const instrument = SHOW.instruments.find((one) => one.id === id)!;
		const own = pitchesOf(instrument.tuning);
		const sounds = own.map((note, i) => note + (strings.includes(i) ? 2 : 0));
		return waysToSound(instrument, own, sounds).some(({ capo }) => capo === 0);
	};
	expect([up('A1', [0, 1]), up('A1', [0, 1, 2])]).toEqual([true, false]);
	expect([up('T1', [0, 1, 2, 3]), up('T1', [0, 1, 2, 3, 4, 5])]).toEqual([true, false]);
});
