// What enter names is what the rows say, however long the question stands: before the doors nothing was told yet, and
// the plan is made anew while it is read.

import { expect, test } from 'vitest';
import { comingHandOvers } from '../../src/screen/coming.ts';
import { showFrom } from '../plan/show-from.ts';
import { pressedNight, START_MS } from './pressed-night.ts';

const show = showFrom(`
players:
  - {id: p1, name: Ash, key: x}
  - {id: p2, name: Bo, key: o}
instruments:
  - {id: i1, slot: "1", kind: electric-6, tuning: half-step down, spare: true}
  - {id: i2, slot: "2", kind: electric-6, tuning: E standard, features: [arm]}
  - {id: i3, slot: "3", kind: electric-6, tuning: half-step down, times: {hand-over: 12s}}
  - {id: i4, slot: "4", kind: electric-6, tuning: half-step down, features: [arm]}
songs:
  - {id: s1, length: 150s, hands: {p1: {instrument: i4}, p2: {needs: {kind: electric-6, sounds: half-step down, prefer: i3}}}, cues: [{at: bridge, hand: {p1: {instrument: i1, tuning: half-step down}}}]}
  - {id: s2, length: 300s, hands: {p2: {instrument: i1}}, cues: [{at: bridge, hand: {p2: {instrument: i2}}}]}
  - {id: s3, length: 300s, hands: {p1: {needs: {kind: electric-6, sounds: E standard}}, p2: {needs: {kind: electric-6, sounds: E standard, prefer: i3}}}}
  - {id: s4, length: 60s, hands: {p1: {needs: {kind: electric-6, sounds: drop D, prefer: i4}}, p2: {instrument: i3}}}
  - {id: s5, length: 180s, hands: {p1: {instrument: i4}, p2: none}}
set: [s1, {song: s2, gap: 45s}, s3, {song: s4, gap: 20s}, {song: s5, gap: 45s}]
`);

test('enter records what the rows and the question say when it is pressed', () => {
	const { night, press, pass } = pressedNight(show, { plannedZeroMs: START_MS + 60_000 });
	const said = () =>
		Object.fromEntries(
			comingHandOvers(night.screen()).map(({ player, instrument }) => [player, instrument]),
		);
	press('enter');
	const first = said();
	for (let seconds = 0; seconds < 3; seconds += 1) {
		pass(1000);
		night.tick();
	}
	const last = said();
	// The plan was made otherwise meanwhile: without that this night shows nothing.
	expect(last).not.toEqual(first);
	const { show: file } = night.session();
	for (const { id, name } of file.players) {
		const slot = file.instruments.find((one) => one.id === last[id])?.slot;
		expect(night.screen().prompt?.lines.join('\n')).toContain(`${name}: ${slot} `);
	}
	night.press('enter');
	const held = Object.entries(night.session().players).map(([id, { holds }]) => [id, holds]);
	expect(Object.fromEntries(held)).toEqual(last);
});
