// A look at a rig before the doors: each fault found, at its line, in words that a stagehand understands.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkList } from '../../src/report/check-list.ts';
import { amplifierLoads, cabWatts } from '../../src/rig/amplifier-loads.ts';
import { checkRig } from '../../src/rig/check-rig.ts';
import { joinFiles } from '../../src/showfile/join-files.ts';
import { readYaml } from '../../src/showfile/read-yaml.ts';
import type { RigPart } from '../../src/showfile/rig.ts';
import { showFrom } from '../showfile/show-files.ts';
import { rigShow } from './example-rig.ts';

const FAULTY = readFileSync(new URL('faulty.yaml', import.meta.url), 'utf8');

test('a rig with one of each', () => {
	const bytes = new TextEncoder().encode(FAULTY);
	const { root } = joinFiles({ load: () => bytes, mainFile: 'faulty.yaml', readYaml });
	const risks = checkList(showFrom(FAULTY), { findings: [], warnings: [], root });
	expect(risks.map(({ where, words }) => `${where?.line}: ${words}`)).toEqual([
		"18: Bo's amp head is set to 16 ohms, but the cabinets on it are 4 ohms together. Switch the amp off, let it cool down, then set it to 4 ohms.",
		"23: Bo's Drive needs plus in the middle of its plug, and supply S1 output a has minus there. Do not plug it in like this, which can destroy it: use an output or an adapter that fits.",
		"24: In One, Bo's Delay is asked for the scene broad, which it does not have. Add the scene to the pedal, or correct its name.",
		"19: Bo's cabinet cab1 takes 10 W and can get 15 W. Use a cabinet that takes more, or an amp that gives less.",
		'26: Supply S1 output a: 115 mA are drawn, and it gives 100 mA. Move a pedal to another output.',
		'27: Pack P1 has 2 h left in its battery, but the show takes 3 h 5 min. Put a fresh one in before the doors, or in the interval at the latest.',
		"25: Bo's Boost has 2 h 10 min left in its battery, but the show takes 3 h 5 min. Put a fresh one in before the doors, or in the interval at the latest.",
		'27: Packs P1 and P2 are both on channel G1. Ask the radio coordinator for another channel for one of them.',
		"11: In Two, Bo's Delay goes by the tempo (quarter), and the song has none. Give the song its tempo.",
		"26: Bo's Drive and Bo's Delay share supply S1 output a: a chain can hum. If it hums, give each an output of its own.",
		"8: 4 Fern loses 18 dB at its lowest string in Bo's first input. Put a preamp with a higher input first.",
	]);
});

const GUITAR = 'instruments: [{id: B1, kind: electric-6, tuning: E standard}]';

test('a tube amp without its cabinet is said first, and never without the caution', () => {
	const tube = rigShow(`${GUITAR}\nrigs: {bo: [{id: head, kind: amp, tube: true}]}`);
	const [risk] = checkList(tube, { findings: [], warnings: [], root: null });
	expect(risk?.words).toMatch(/never plays without its speaker load/);
	expect(checkRig(rigShow(`${GUITAR}\nrigs: {bo: [{id: head, kind: amp}]}`))).toEqual([]);
});

test('what fits is not spoken of', () => {
	const show = rigShow(`${GUITAR}
rigs: {bo: [{id: head, kind: amp, watts: 30, tap: 8, tube: true}, {id: cab, kind: cab, ohms: 8, watts: 30}]}
supplies: [{id: S1, outputs: [{id: a, volts: 9, ma: 100, centre: negative}]}]
boards: {bo: [{id: drive, power: {supply: S1, output: a, ma: 80, volts: 9, centre: negative}}]}
packs: [{id: P1, channel: G1, battery: {hours: 6, used: 0}}, {id: P2, channel: G2}]`);
	expect(checkRig(show)).toEqual([]);
});

test('a battery that lasts past the interval may be changed there, another must be fresh before the doors', () => {
	const at = (used: number) =>
		checkRig(
			showFrom(`format: rackside/1
players: [{id: bo}]
${GUITAR}
songs: [{id: one, length: 1h, hands: {bo: B1}}, {id: two, length: 1h, hands: {bo: B1}}]
set: [one, interval: 20m, two]
packs: [{id: P1, battery: {hours: 6, used: ${used}}}]
`),
		).map((one) => (one.code === 'battery-short' ? one.change : one.code));
	// 2 h 20 min of show and half an hour of margin; the interval ends after 1 h 20 min.
	expect([at(3.1), at(3.2), at(4.1), at(4.2), at(6)]).toEqual([
		[],
		['interval'],
		['interval'],
		['before-doors'],
		['before-doors'],
	]);
});

test('a battery that lasts the show without its margin is said as that', () => {
	const text = `format: rackside/1
players: [{id: bo}]
${GUITAR}
songs: [{id: one, length: 1h, hands: {bo: B1}}]
set: [one]
packs: [{id: P1, battery: {hours: 6, used: 4.75}}]
`;
	const [risk] = checkList(showFrom(text), { findings: [], warnings: [], root: null });
	expect(risk?.words).toContain(
		'has 1 h 15 min left in its battery, too little to spare for a show of 1 h.',
	);
});

const ampAndCab = (tube: string, ohms: number) =>
	checkRig(
		rigShow(
			`${GUITAR}\nrigs: {bo: [{id: head, kind: amp, watts: 500, tap: 4${tube}}, {id: cab, kind: cab, ohms: ${ohms}, watts: 300}]}`,
		),
	).map(({ code }) => code);

test('an amp without tubes may drive more ohms than it is made for, and gives less into them; fewer it may not', () => {
	// Common practice. By Ohm's law 500 W into 4 ohms are 44.7 V, which are 250 W into 8 ohms.
	expect(ampAndCab(', tube: false', 8)).toEqual([]);
	expect(ampAndCab(', tube: false', 2)).toEqual(['amp-load', 'cab-power']);
	expect(ampAndCab(', tube: true', 8)).toEqual(['amp-load', 'cab-power']);
	expect(ampAndCab('', 8)).toEqual(['amp-load', 'cab-power']);
});

test('alternating current into what wants direct, and the other way round', () => {
	const found = (output: string, power: string) =>
		checkList(
			rigShow(`${GUITAR}
supplies: [{id: S1, outputs: [{id: a, volts: 9, ${output}}]}]
boards: {bo: [{id: delay, name: Delay, power: {supply: S1, output: a, volts: 9, ${power}}}]}`),
			{ findings: [], warnings: [], root: null },
		).map(({ words }) => words);
	expect(found('current: ac', 'centre: negative')).toEqual([
		"Bo's Delay needs DC, and supply S1 output a gives AC. Do not plug it in like this, which can destroy it: use an output or an adapter that fits.",
	]);
	expect(found('centre: negative', 'current: ac')[0]).toContain('needs AC');
	expect(found('current: ac', 'current: ac')).toEqual([]);
	expect(found('current: dc', 'centre: positive')).toEqual([]);
	expect(found('ma: 100', 'current: ac')).toEqual([]);
});

test('power splits by ohms: side by side the lower takes more, in a row the higher (Ohm)', () => {
	const amp: RigPart = { id: 'head', name: 'head', kind: 'amp', watts: 30 };
	const cab = (id: string, ohms: number, wired: 'parallel' | 'series' = 'parallel'): RigPart => ({
		...{ id, name: id, kind: 'cab', ohms, wired },
	});
	const watts = (...cabs: RigPart[]) =>
		amplifierLoads({ rigs: { bo: [amp, ...cabs] } })
			.flatMap((load) => cabWatts(load) ?? [])
			.map((one) => Math.round(one * 10) / 10);
	expect(watts(cab('a', 8), cab('b', 8))).toEqual([15, 15]);
	expect(watts(cab('a', 16), cab('b', 8))).toEqual([10, 20]);
	expect(watts(cab('a', 16), cab('b', 8, 'series'))).toEqual([20, 10]);
	// 8 and 8 in a row are 16, beside 16: a quarter each for the two, half for the third.
	expect(watts(cab('a', 8), cab('b', 8, 'series'), cab('c', 16))).toEqual([7.5, 7.5, 15]);
});
