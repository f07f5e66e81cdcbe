// The words beside a stand-in say what put it where it is, where nothing else in its line does.

import { expect, test } from 'vitest';
import { standIns } from '../../../src/plan/backups/stand-ins.ts';
import { standInWords } from '../../../src/words/backup-reasons.ts';
import { allReady, mark, nightAfter, planAt, withSongBegun } from '../night-at.ts';
import { showFrom } from '../show-from.ts';

/** What could take over from A, in E standard and in Ash's hands, where these are ready on the rack. */
function offered(rack: string): readonly string[] {
	const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: A, slot: "1", kind: electric-6, tuning: E standard, scale: 25.5 in, features: [arm]}
${rack}
songs:
  - {id: s1, title: S1, length: "2:00", hands: {ash: {instrument: A}}}
  - {id: s2, title: S2, length: "4:00", hands: {bo: {instrument: P}}}
set: [s1, s2]
`);
	const session = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
	const plan = planAt(session, '00:10');
	return standIns({ session, plan, nowMs: mark('00:10'), player: 'ash' }).map(
		({ instrument, why }) => `${instrument}: ${standInWords(show, why)}`,
	);
}

const one = (id: string, more: string) =>
	`  - {id: ${id}, name: ${id}, slot: ${id.toLowerCase()}, kind: electric-6, tuning: E standard, ${more}}`;
const alike = 'scale: 25.5 in, features: [arm]';

test('that it is for somebody else', () => {
	expect(
		offered([one('P', alike), one('T', `${alike}, for: [bo], spare: true`)].join('\n')),
	).toEqual(['P: same tuning, ready', 'T: same tuning, ready, for Bo']);
});

test('beside that it is ready, and of another kind', () => {
	const other = one('T', `${alike}, for: [bo]`).replace('electric-6', 'acoustic-6');
	expect(offered([one('P', alike), other].join('\n'))).toEqual([
		'P: same tuning, ready',
		'T: ready, acoustic, for Bo',
	]);
});

test('that somebody is to get it soon', () => {
	expect(offered([one('P', alike), one('Q', alike)].join('\n'))).toEqual([
		'Q: same tuning, ready',
		'P: same tuning, ready, Bo needs it',
	]);
});

test('what it lacks', () => {
	const rack = [
		one('P', `${alike}, bridge: floating`),
		one('Q', alike),
		one('R', 'scale: 24.75 in, features: [arm]'),
		one('S', 'scale: 25.5 in'),
	];
	// One difference each; P is to be Bo's besides, and comes last.
	expect(offered(rack.join('\n'))).toEqual([
		'Q: same tuning, ready',
		'R: same tuning, ready, other scale',
		'S: same tuning, ready, no arm',
		'P: same tuning, ready, floating bridge',
	]);
});

test('nothing where how long it takes says it', () => {
	const other = one('R', alike).replace('E standard', 'drop D');
	expect(offered([one('P', alike), other].join('\n'))).toEqual([
		'P: same tuning, ready',
		'R: retune one string',
	]);
});
