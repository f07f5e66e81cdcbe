// What would mend a night, as it is said: worked out by hand from 15 s for a hand-over and 270 s, 45 s and
// the rest of the default times, which are common practice, no source.

import { expect, test } from 'vitest';
import { mendOf } from '../../../src/plan/advice/mend.ts';
import { isWorking, shortfallOf } from '../../../src/plan/advice/shortfall.ts';
import { planBeforeDoors } from '../../../src/plan/plan-before-doors.ts';
import type { Show } from '../../../src/showfile/show.ts';
import { changeWords } from '../../../src/words/advice.ts';
import { clubShow } from '../club-gear.ts';
import { showFrom } from '../show-from.ts';

function mended(show: Show) {
	const mend = mendOf(show, planBeforeDoors(show));
	if (mend === null) throw new Error('it works');
	const { changes, isEachEnough } = mend;
	const shows = (isEachEnough ? changes : changes.slice(-1)).map((change) => change.show);
	expect(shows.every((one) => isWorking(shortfallOf(one, planBeforeDoors(one))))).toBe(true);
	return { words: changes.map((change) => changeWords(show, change)), isEachEnough };
}

test('where a song goes straight on, a gap is said to be the end of that', () => {
	const show = clubShow(`
songs:
  - {id: one, title: One, length: "4:00", ends: segue, hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4}}}
set: [one, two]
`);
	expect(mended(show)).toEqual({
		words: ['0:15 between One and Two, no segue'],
		isEachEnough: true,
	});
});

test('a song that is played twice is said with which time', () => {
	const show = clubShow(`
songs:
  - {id: one, title: One, length: "10:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "10:00", hands: {ash: {instrument: A4}}}
set: [{song: one, gap: 15s}, {song: two, gap: 15s}, {song: one, gap: 5s}]
`);
	expect(mended(show).words[0]).toBe('0:10 more before One (the second)');
});

test('what has to be in two tunings within a song is kept in the other one, or another one is taken', () => {
	// A floating bridge stays in what it is in, so Gravel has nothing; in half-step down from before the
	// doors it is what Gravel asks for. Aspen is in that tuning already.
	const show = clubShow(`
songs:
  - {id: gravel, title: Gravel, length: "4:00", hands: {ash: {instrument: A3, tuning: half-step down}}}
set: [gravel]
`);
	// Left to itself Gravel is played on Aspen; here the file says that nothing stands in for Argent.
	const alone = {
		...show,
		instruments: show.instruments.map((one) => (one.id === 'A3' ? { ...one, instead: [] } : one)),
	};
	const { words } = mended(alone);
	expect(words).toContain('3 Argent in half-step down before the doors');
	expect(words).toContain('2 Aspen for Ash in Gravel');
});

test('a longer interval, where the work for the song after it is late', () => {
	// Amber is back 15 s after One, 4:15; three strings: 15 s of wiping and 120 s are done 6:30. Two begins
	// 1 minute after One's end, 5:00, its 15 s of hand-over at 4:45; those are not for the work: 6:45.
	// Wanted at 4:45 and done 6:45 or, with the interval longer, at once after 6:30: 1:45 more.
	const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments: [{id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard}]
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A, tuning: open D}}}
set: [one, {interval: 60s}, two]
`);
	expect(mended(show).words).toContain('1:45 more of interval before Two');
});

test("songs that both have no trouble are tried in each other's place, however far apart", () => {
	// Amber is wanted for Three in open D 45 s after it came back from One, and takes 135 s. Three goes
	// straight on into Four and stays where it is; in the place of Two there is time enough in Nine alone.
	const quiet = (id: string, length: string) =>
		`  - {id: ${id.toLowerCase()}, title: ${id}, length: "${length}", hands: {ash: {instrument: B}}}`;
	const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "2:00", hands: {ash: {instrument: A}}}
${quiet('Two', '0:30')}
  - {id: three, title: Three, length: "2:00", ends: segue, hands: {ash: {instrument: A, tuning: open D}}}
${['Four', 'Five', 'Six', 'Seven', 'Eight'].map((id) => quiet(id, '0:30')).join('\n')}
${quiet('Nine', '5:00')}
set: [one, two, three, four, five, six, seven, eight, nine]
`);
	expect(mended(show).words).toContain('swap Two and Nine');
});

test('two gaps, each too short by itself, are both said', () => {
	const show = clubShow(`
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4}, bo: {instrument: B2}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
set: [one, {song: two, gap: 20s}, {song: three, gap: 25s}]
`);
	expect(mended(show)).toEqual({
		words: expect.arrayContaining(['0:10 more before Two', '0:05 more before Three']),
		isEachEnough: false,
	});
});

test('of two songs to leave out, the pair that takes least from the set', () => {
	// 25 minutes and four gaps of 15 s are 26:00; until 22:16 are 16. Ten minutes are too much: Five and
	// Four are 12:00 and their two gaps; Five and Three 10:00 and 0:30, which is enough, and no pair is
	// shorter: Four and Three take 9:00, Five and Two 9:30.
	const song = (id: string, length: string) =>
		`  - {id: ${id.toLowerCase()}, title: ${id}, length: "${length}", hands: {ash: {instrument: A1}}}`;
	const show = clubShow(`
show: {title: Late, start: "22:00", curfew: "22:16"}
songs:
${song('One', '4:00')}
${song('Two', '3:00')}
${song('Three', '3:30')}
${song('Four', '5:30')}
${song('Five', '6:30')}
${song('Six', '2:30')}
set: [one, two, three, four, five, six]
`);
	expect(mended(show)).toEqual({
		words: ['drop Five (6:30)', 'drop Three (3:30)'],
		isEachEnough: false,
	});
});

test('what a song needs and nothing gives is kept in that tuning, or is had besides', () => {
	const needing = (instruments: string) =>
		showFrom(`
players: [{id: ash, name: Ash}]
instruments:
${instruments}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {needs: {kind: acoustic-6, sounds: DADGAD}}}}
set: [one]
`);
	const floating =
		'  - {id: A, name: Amber, slot: "1", kind: acoustic-6, tuning: E standard, bridge: floating}';
	expect(mended(needing(floating)).words).toEqual([
		'1 Amber in DADGAD before the doors',
		'one more six-string acoustic guitar in DADGAD for Ash in One',
	]);
	const electric = '  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard}';
	expect(mended(needing(electric)).words).toEqual([
		'one more six-string acoustic guitar in DADGAD for Ash in One',
	]);
});
