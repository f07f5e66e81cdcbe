// A show written out again is the same show: nothing that a file says is lost on the way into an earlier night
// and out of it.

import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { draftOfShow } from '../../src/setlist/draft-of-show.ts';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';
import { loadShow } from '../scenarios/load-show.ts';

const folder = join(import.meta.dirname, '../../shows');
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));
const usable = files.filter((name) => {
	try {
		return loadShow(join(folder, name)).set.length > 0;
	} catch {
		// Gear and songs that others include are no shows.
		return false;
	}
});

function readAgain(show: Show): Show {
	const text = writeShowFile(draftOfShow(show));
	const { show: again, problems } = readShow(() => Buffer.from(text), 'again.yaml');
	if (again === null) throw new Error(`${JSON.stringify(problems)}\n${text}`);
	return again;
}

describe('a show written out', () => {
	test('there are shows to write', () => expect(usable.length).toBeGreaterThan(3));

	test.each(usable)('%s is the same show when it is read again', (name) => {
		const show = loadShow(join(folder, name));
		expect(readAgain(show)).toEqual(show);
	});

	test('says everything that a file can say', () => {
		const text = `format: rackside/1
show: {title: All of it, venue: Tern Hall, date: 2026-06-12, start: "21:00", curfew: "00:30", reference: 442, recheck-after: 8m, recheck-new: 4m, notes: outdoors}
techs: [{id: lou, name: Lou}]
players:
  - {id: ash, name: Ash, plays: guitar, tech: lou, key: h}
  - {id: bo, name: Bo, plays: bass}
instruments:
  - id: A1
    name: Amber
    slot: "1"
    kind: electric-6
    for: [ash]
    tuning: E standard
    scale: 25.5 in
    strings: [10, 13, 17, 26w, 36w, 46w]
    bridge: floating
    features: [arm]
    pickups: two
    pack: P1
    case: "3"
    spare: true
    instead: [A2, {instrument: A2, tuning: drop D, capo: 1}]
    gear: quay-amber
    recheck-after: 10m
    strung: {on: 2026-06-10, hours: 3.5}
    times: {touch-up: 45s, restring: 4m30s}
    leave: volume 7
    notes: buzz at the ninth fret
    output: {ohms: 10 k}
    power: {battery: 500 mAh, ma: 1}
    unit-mass: {46w: 5.1}
    setup: {action: [1.6, 1.2], action-first: 0.5, relief: 0.2, pickup: [2, 1.5], nut: 0.4, saddle-screw: 0.7}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: D2 A2 D3 G3 A3 E4, scale: 648 mm, strings: [0.25 mm, 9.5, 0.4 mm, 0.6 mm w, 36w, 46w]}
  - {id: B1, name: Cove, slot: "3", kind: bass-5, tuning: B standard, output: [{pf: 500, delay: 0.5 ms}, {name: microphone, distance: 30 cm, polarity: inverted}]}
boards:
  bo: [{id: drive, name: Drive}, {id: boost, input: 500 k, output: 1 k, controls: [level], switched: feet, power: {supply: S1, output: a, ma: 35, volts: 9, centre: negative}, chance: 2, test: 20s, swap: 30s, spare: the blue one, tape: red}, {id: delay, power: {battery: 500 mAh, ma: 12, hours-used: 10, current: dc}, midi: {channel: 2, on: [{note: 60, velocity: 1}], off: [{cc: 1, value: 0}], scenes: {wide: [{bank: 300, program: 11}]}, tempo: {cc: 93, value: 100}}}, {id: tremolo, midi: {channel: 3, tempo: clock}}]
rigs:
  bo: [{id: lead, kind: cord, length: 6 m, pf-per-m: 100}, {id: board, kind: board}, {id: head, name: Head, kind: amp, watts: 30, tap: 4, taps: [4, 8], tube: true, input: 1 M}, {id: cab, kind: cab, ohms: 8, watts: 60, wired: series, switched: tech, distance: 1 ft, delay: 1.5 ms, polarity: inverted}]
supplies: [{id: S1, name: left, outputs: [{id: a, volts: 9, ma: 100, centre: negative}, {id: b, current: ac}]}]
packs: [{id: P1, name: One, channel: G1, battery: {hours: 6, used: 2.5}}, {id: P2, battery: {hours: 4}}]
times: {all: {walk: 8s}, bass-5: {touch-up: 30s}}
stock: [{gauge: "10", count: 12}]
gauges: ["9.5", 11w]
unit-mass: {26w: 2.1}
offsets: [{player: ash, instrument: A1, tuning: drop D, cents: {3: -4, 6: 2.5}}]
stage: {temperature: 28, soundcheck: 20, humidity: 60}
abbreviations: {OPG: open G}
songs:
  - id: one
    title: One
    length: "3:30"
    tempo: 104
    hands: {ash: {instrument: A1, tuning: drop D, capo: 2, leave: neck pickup, pack: P1}, bo: none}
    shapes: {ash: [x32010, 10 12 12 11 10 10]}
    board: {bo: {drive: off, boost: {level: high}}}
    cues:
      - {at: Ch1, near: "1:32", say: loud, bo: {drive: on}, hand: {bo: B1, ash: {instrument: A2, capo: 1}}}
      - {at: end, bo: off}
    starts: bo
    count: 4
    ends: segue
    notes: slow
  - id: two
    hands: {ash: {needs: {kind: electric-6, sounds: E standard, features: [arm], prefer: A1}, leave: tone 3}, bo: B1}
set: [one, interval: 20m, {song: two, gap: 30s}, encore: [{song: one, gap: 90s}]]
`;
		const { show, problems } = readShow(() => Buffer.from(text), 'all.yaml');
		expect(problems).toEqual([]);
		if (show === null) throw new Error('it is no show');
		expect(readAgain(show)).toEqual(show);
	});
});
