// The bench's pages say first what hurts, set up in the order in which each step moves the next, and call the
// strings of a pair by their course.

import { expect, test } from 'vitest';
import { pageLines, setUpPage } from '../../src/bench/set-up-page.ts';
import { tuningCard } from '../../src/bench/tuning-card.ts';
import { tuningPageJson, tuningPageLines } from '../../src/bench/tuning-page.ts';
import { readTuning } from '../../src/tuning/tuning.ts';
import { incidentCautions, SHEET_CAUTIONS } from '../../src/words/cautions.ts';
import { showFrom } from '../plan/show-from.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, scale: 25.5 in, strings: [10, 13, 17, 26w, 36w, 46w], setup: {relief: 0.2, action: [1.9, 1.6]}}
  - {id: D1, name: Dozen, slot: "2", kind: electric-12, tuning: E standard}
songs: [{id: one, hands: {ash: A1}}]
set: [one]
`);
const [a1, d1] = show.instruments as [(typeof show.instruments)[0], (typeof show.instruments)[0]];

const card = (instrument: typeof a1, to: string) => {
	const reading = readTuning(to, instrument.kind, {});
	if (!reading.ok) throw new Error(to);
	const { tuning } = reading;
	const asked = { instrument, from: instrument.tuning, to: tuning, capo: 0, player: null };
	return tuningCard(show, { ...asked, referenceHertz: 440 });
};
const page = (instrument: typeof a1, to: string) => ({
	show,
	card: card(instrument, to),
	chord: null,
	songShapes: [],
});

test('a pitch that a string does not live to see: said first, and no steps', () => {
	// Plain steel at E4 on 25.5 in is 5.48 semitones from breaking (the tension and strength laws, computed);
	// seven up is past it.
	const up = 'B2 E3 A3 D4 F#4 B4';
	const lines = tuningPageLines(page(a1, up));
	expect(lines[1]).toBe('String 1 breaks before this pitch. Do not tune up to it.');
	expect(lines.join('\n')).not.toMatch(/Steps|up from/);
	expect(tuningPageJson(page(a1, up)).steps).toEqual([]);
	expect(tuningPageLines(page(a1, 'drop D')).join('\n')).toContain('Steps, about 1:00');
});

test('a pair is called by its course, and the octave is told from the low one', () => {
	const lines = tuningPageLines(page(d1, 'half-step down')).join('\n');
	expect(lines).toMatch(/^6 low +Eb2/m);
	expect(lines).toMatch(/^6 octave +Eb3/m);
	expect(lines).toMatch(/^1 +Eb4/m);
	expect(lines).toContain('course 6 octave: down from E3 to Eb3');
});

const past = [
	{
		at: 0,
		gauges: [],
		tuning: 'E standard',
		measures: { relief: [0.35], actionLast: [2, 1.7] },
		at12: [0, 0, 0, 0, 0, 5],
	},
];

test('relief, then action, then intonation, with a warning where relief is off', () => {
	const lines = pageLines(
		setUpPage(a1, {
			past: past as never,
			findings: [],
			cents: null,
			hasFrets: false,
			laid: null,
			feedback: 110,
			referenceHertz: 440,
			isoTime: (ms) => new Date(ms).toISOString(),
		}),
		{ unit: 'mm', name: '1 Amber' },
	);
	const at = (words: string) => lines.findIndex((line) => line.includes(words));
	expect(at('relief: target')).toBeLessThan(at('tighten a quarter turn'));
	expect(at('tighten a quarter turn')).toBeLessThan(at('action: target'));
	expect(at('action: target')).toBeLessThan(at('Relief is off: set it first'));
	expect(at('Relief is off: set it first')).toBeLessThan(at('string 1: +5.0 c'));
	expect(lines[at('tighten')]).toContain("on most clockwise; check the maker's word");
	// 25.5 in, 5 cents sharp: 1.88 mm, derived in tests/published.
	expect(lines[at('string 1: +5.0 c')]).toContain('saddle 1.88 mm back, longer');
	expect(lines[at('Feedback')]).toContain('slowly');
	expect(lines[at('Feedback')]).toContain('ears protected, warn the stage');
	expect(lines.join(' ')).toContain('Wear eye protection at strings');
});

test('cautions stand where the work is, a line each', () => {
	expect(incidentCautions('amp').join(' ')).toContain('lethal charge unplugged');
	expect(incidentCautions('hum').join(' ')).toContain('A tingle can mean a lost earth');
	expect(incidentCautions('string-break').join(' ')).toContain('eye protection at strings');
	expect(incidentCautions('jack').join(' ')).toContain('Solder in an aired room');
	expect(incidentCautions('feedback').join(' ')).toContain('warn the stage');
	expect(incidentCautions('hum').join(' ')).toContain('never lift the safety earth');
	expect(incidentCautions('burning smell')[0]).toContain('power off at the wall, stand clear');
	expect(incidentCautions('zap').join(' ')).toContain('qualified electrician');
	expect(incidentCautions('amp').join(' ')).toContain('never without a speaker load');
	expect(incidentCautions('dropped').join(' ')).toContain('check the locks');
	expect(incidentCautions('battery').join(' ')).toContain('swollen battery');
	expect(incidentCautions('tuning')).toEqual([]);
	for (const line of SHEET_CAUTIONS) expect(line.length).toBeLessThanOrEqual(80);
	expect(SHEET_CAUTIONS.join(' ')).toContain('Local codes and licensed people');
});
