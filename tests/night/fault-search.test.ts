// A fault sought in the live night: a guitar silent in the middle of a song, played by script, and all that a
// search may meet on its way. Which part is really at fault is the test's own; the answers follow from it.

import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { displayWidth } from '../../src/base/display-width.ts';
import { parseScript } from '../../src/cli/rehearsal/parse-script.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import type { Night } from '../../src/night/night.ts';
import { openPast } from '../../src/night/night-past.ts';
import { nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import { reportMarkdown } from '../../src/report/report-markdown.ts';
import { faultNow } from '../../src/rig/fault-now.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { rowText, screenText } from '../../src/screen/row.ts';
import { openSession } from '../../src/session/open-session.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';
import { RUNS } from '../session/walk.ts';
import { pressedNight } from './pressed-night.ts';

const show = loadShow(join(import.meta.dirname, '../rig/silent.yaml'));
const SMALL = { columns: 80, rows: 24 };

/** A night played by a script, of which the records are there too. */
function rehearsed(script: string): Night {
	const reading = parseScript(script, 'script');
	if (!reading.ok) throw new Error('the script cannot be read');
	const { night, pass } = pressedNight(show);
	let atMs = reading.steps[0]?.atMs ?? 0;
	for (const step of reading.steps) {
		pass(step.atMs - atMs);
		atMs = step.atMs;
		night.tick();
		if (step.act.do === 'press') night.press(step.act.key);
	}
	return night;
}

function reportOf(night: Night) {
	return nightReport({
		show,
		night: 'n1',
		isRehearsal: true,
		...nightSteps(show, night.records()),
		plannedZeroMs: null,
		dayOffsetMinutes: 0,
		damage: [],
	});
}

/** Sorrel stands ready. */
const SPARE = { instrument: 'B2', tuning: null, capo: null, seconds: 10 };

const drawn = (night: Night): string =>
	screenText(drawScreen(night.screen(), SMALL, { isAscii: false }));
const kindsOf = (night: Night): readonly string[] =>
	night.records().flatMap(({ e }) => e.map(({ k }) => k));

const OPENED = `-02:00 t 0
-00:10 enter enter
00:00 space
`;
/** Bo's delay is dead: one good cord past the board brings the sound back, and after the song each is tried. */
const SILENT = `${OPENED}01:00 n b s
01:22 1
04:00 d
04:20 2
04:30 2
04:40 1
`;

describe('a silent guitar in the middle of a song', () => {
	const KEYS_TO_SOUND = 4;
	const KEYS_TO_CAUSE = 3;

	test('is heard again after so many keys and seconds, and the cause is found after the song', () => {
		const { states, screen } = playShow(
			show,
			`${OPENED}01:00 n b s !screen\n01:22 1\n01:23 !state !screen\n04:00 d !screen\n04:20 2\n04:30 2\n04:40 1\n04:41 !state`,
		);
		const [heard, found] = states;
		expect(['n', 'b', 's', '1']).toHaveLength(KEYS_TO_SOUND);
		expect(heard.incidents).toMatchObject([{ kind: 'no-sound', player: 'bo', silence: 22 }]);
		expect(heard.faults).toMatchObject([{ heard: '00:01:22', cause: null, open: true }]);
		expect(screen).toMatch(/NOW {2}One good cord, instrument to amp head\. .*20 s/);
		expect(screen).toContain('Sound is back. The cause is looked for when the song is over.');
		expect(screen).toMatch(/FIND THE CAUSE/);
		expect(found.faults).toMatchObject([{ cause: 'delay', open: false }]);
		expect(found.faults[0].tests).toHaveLength(1 + KEYS_TO_CAUSE);
	});

	test('stands in the report with what was tried, the cause and the silence, and for tomorrow', () => {
		const report = reportOf(rehearsed(SILENT));
		expect(report.incidents).toMatchObject([
			{ player: 'Bo', instrument: '1 Coal', silenceSeconds: 22, song: 'One' },
		]);
		const words = report.incidents[0]?.words.join(', ');
		expect(words).toContain('one good cord, instrument to amp head: right');
		expect(words).toContain('bypass Drive: the same');
		expect(words).toContain('cause: Delay');
		expect(report.tomorrow).toEqual(["Bo's rig: Delay to the bench, repair (no sound)"]);
		expect(reportMarkdown(report)).toMatch(
			/no sound, Bo, 1 Coal, down for 0:22, tried one good cord/,
		);
	});

	test('whose board was passed by is believed off, written down once', () => {
		const night = rehearsed(`${OPENED}01:00 n b s\n01:22 1`);
		expect(night.state()).toMatchObject({ boards: { bo: { drive: { on: false } } } });
		expect(kindsOf(night).filter((k) => k === 'pedal-corrected')).toHaveLength(1);
	});

	test.each(['B1', 'lead', 'drive', 'delay', 'boost', 'return', 'head', 'cab'])(
		'whatever is at fault: %s',
		(cause) => {
			const { night, press, pass } = pressedNight(show);
			press('t', '0', 'enter', 'enter', 'space');
			pass(60_000);
			press('n', 'b', 's');
			/** The answer that a rig with this part dead gives. */
			const answer = (): void => {
				const { next } = faultNow(night.session(), night.session().faults[0]!, SPARE);
				pass((next?.seconds ?? 0) * 1000);
				press(next?.clears.includes(cause) ? '1' : '2');
			};
			const state = () => night.state() as { faults: [{ heard: string | null; cause: string }] };
			for (let tests = 0; state().faults[0].heard === null; tests += 1) {
				expect(tests).toBeLessThan(8);
				answer();
			}
			expect(night.session().phase.value).toBe('song');
			press('d');
			for (let tests = 0; night.session().faults[0]?.isOpen; tests += 1) {
				expect(tests).toBeLessThan(8);
				answer();
			}
			expect(state().faults[0].cause).toBe(cause);
		},
	);
});

describe('the panel', () => {
	const SOUGHT = `${OPENED}01:00 n b s\n`;

	test('stays through space and time, with the cautions in sight', () => {
		const night = rehearsed(`${SOUGHT}01:40 space\n`);
		const screen = drawn(night);
		expect(screen).toContain('FIND THE CAUSE');
		expect(screen).toContain('Never lift the safety earth, never open an amp.');
		expect(drawn(rehearsed(`${SOUGHT}02:30 t\n`))).not.toContain('DOWN');
		expect(drawn(rehearsed(`${SOUGHT}02:30 t esc\n`))).toContain('DOWN 1:30');
	});

	test('goes away by esc and is taken up again by its key, where it was', () => {
		const night = rehearsed(`${SOUGHT}01:20 2\n01:25 esc\n`);
		const away = drawn(night);
		expect(away).not.toContain('NO SOUND');
		expect(away).toContain('n find the fault');
		night.press('n');
		expect(drawn(night)).toContain('Swap 1 Coal for 2 Sorrel');
	});

	test('is left by 0, and the report says that nothing was found', () => {
		const night = rehearsed(`${SOUGHT}01:25 0\n01:26 0\n`);
		expect(drawn(night)).not.toContain('NO SOUND');
		expect(reportOf(night).incidents[0]?.words.at(-1)).toBe('cause not found');
	});

	test('offers the backup that is sooner than the search; that is handed once, then listened to', () => {
		expect(drawn(rehearsed(SOUGHT))).toMatch(/TAKE {2}2 Sorrel, 0:10, sooner than the search/);
		const night = rehearsed(`${SOUGHT}01:12 enter\n`);
		expect(night.session().players.bo?.holds).toBe('B2');
		expect(drawn(night)).toContain('2 Sorrel is on: is it right now?');
		night.press('1');
		expect(kindsOf(night).filter((k) => k === 'handed-over')).toHaveLength(3);
		expect(night.state()).toMatchObject({
			incidents: [{ standIn: 'B2', silence: 12 }],
			instruments: { B1: { place: 'bench' } },
			faults: [{ cause: 'B1', open: false }],
		});
		expect(reportOf(night).tomorrow).toEqual(['1 Coal: repair: electronics']);
	});

	test('takes what was done without it: a swap by x only has to be listened to', () => {
		const night = rehearsed(`${SOUGHT}01:12 x 2\n01:14 2\n`);
		const handed = kindsOf(night).filter((k) => k === 'handed-over').length;
		expect(night.session().faults[0]?.tests).toMatchObject([{ test: 'swap-B1', answer: 'same' }]);
		expect(drawn(night)).not.toContain('TAKE');
		expect(handed + kindsOf(night).filter((k) => k === 'hand-over-corrected').length).toBe(3);
	});

	test('asks again after the song for what could not be done in it', () => {
		const night = rehearsed(`${SOUGHT}01:10 3\n`);
		expect(drawn(night)).not.toContain('One good cord');
		const tests = () => faultNow(night.session(), night.session().faults[0]!, null).step;
		expect(tests().next?.id).not.toBe('straight');
		night.press('d');
		expect(night.session().faults[0]?.tests).toMatchObject([
			{ test: 'straight', answer: 'not-now', isInSong: true },
		]);
	});

	test('takes a cause that somebody sees by its number', () => {
		const night = rehearsed(`${SOUGHT}01:10 5\n`);
		expect(night.state()).toMatchObject({ faults: [{ cause: 'lead', open: false }] });
		expect(reportOf(night).tomorrow).toEqual([
			"Bo's rig: cord lead into the bin, a new one into stock (no sound)",
		]);
	});

	test('says that answers contradict each other', () => {
		const night = rehearsed(`${SOUGHT}01:20 2\n01:30 2\n01:40 2\n01:50 2\n`);
		expect(drawn(night)).toContain('These answers fit no single fault');
		expect(night.session().faults[0]?.isOpen).toBe(true);
	});

	test('takes a test back by u and puts it back by y', () => {
		const night = rehearsed(`${SOUGHT}01:20 2\n`);
		const told = drawn(night).split('\n')[12];
		night.press('u');
		expect(drawn(night)).toContain('One good cord');
		night.press('y');
		expect(night.session().faults[0]?.tests).toHaveLength(1);
		expect(drawn(night).split('\n')[12]).toBe(told);
	});

	test('ends the silence with the song where no sound came, and names what is likeliest', () => {
		const night = rehearsed(`${SOUGHT}01:20 2\n01:40 d 0\n`);
		expect(night.session().incidents[0]?.silenceSeconds).toBe(40);
		expect(reportOf(night).incidents[0]?.words.at(-1)).toBe(
			'cause not found, likeliest 1 Coal, 67 %',
		);
	});

	test('has the caution of a tube amp in sight at an amp and at a cabinet', () => {
		const night = rehearsed(`${SOUGHT}01:20 2\n01:30 2\n`);
		expect(drawn(night)).toMatch(/NOW {2}(Swap|Listen behind) (amp|cabinet)/);
		expect(drawn(night)).toContain('A tube amp never plays without its speaker load.');
		expect(drawn(night)).toContain('Never lift the safety earth, never open an amp.');
	});

	test('is over once the show is closed', () => {
		const night = rehearsed(`${SOUGHT}02:00 q e\n`);
		expect(night.session().faults[0]?.isOpen).toBe(false);
		expect(drawn(night)).not.toContain('NO SOUND');
	});

	test('is the same after the program was killed in the middle of a search', () => {
		const look = `01:30 !screen !state\n`;
		const went = playShow(show, `${SOUGHT}01:20 2\n01:25 1\n${look}`);
		const killed = playShow(show, `${SOUGHT}01:20 2\n01:22 !kill\n01:25 1\n${look}`);
		expect(killed.states[0]).toEqual({ ...went.states[0] });
		const open = playShow(show, `${SOUGHT}01:20 2\n01:22 !kill\n01:24 !screen`);
		expect(open.screen).toContain('Swap 1 Coal for 2 Sorrel');
	});
});

describe('packs', () => {
	test('the next free pack goes on as w says it, the old one is suspect and on the list', () => {
		const night = rehearsed(`${OPENED}01:00 n a w 3\n01:20 1\n04:00 d\n04:20 1\n`);
		expect(kindsOf(night).filter((k) => k === 'pack-changed')).toHaveLength(1);
		expect(night.session().players.ash?.pack).toBe('P2');
		expect(night.session().suspectPacks).toEqual(['P1']);
		expect(night.state()).toMatchObject({ faults: [{ cause: 'radio', open: false }] });
		expect(reportOf(night).tomorrow).toEqual(['Pack P1: suspect, check battery and channel']);
	});

	test('one that was changed by w meanwhile only has to be listened to', () => {
		const night = rehearsed(`${OPENED}01:00 n a s\n01:05 w a 2\n`);
		expect(drawn(night)).toContain('P2 is on: is it right now?');
		night.press('1');
		expect(kindsOf(night).filter((k) => k === 'pack-changed')).toHaveLength(1);
	});

	test('a backup with a pack of its own leaves open which of both it was', () => {
		const night = rehearsed(`${OPENED}01:00 n a s\n01:12 enter\n01:15 1\n`);
		expect(night.session().players.ash).toMatchObject({ holds: 'A2', pack: 'P2' });
		expect(night.state()).toMatchObject({
			faults: [{ tests: [{ test: 'swap-A1+radio', answer: 'sound' }], cause: null, open: true }],
			incidents: [{ standIn: 'A2', silence: 15 }],
		});
	});

	test('after a backup with a pack of its own, either is tried on the instrument that was silent', () => {
		const night = rehearsed(`${OPENED}01:00 n a s\n01:12 enter\n01:15 1\n04:00 d\n`);
		expect(drawn(night)).toContain('Swap pack radio for P2 on 5 Fern.');
		night.press('2');
		// It is on already, and no test puts another on.
		expect(kindsOf(night)).not.toContain('pack-changed');
		expect(night.session().suspectPacks).toEqual([]);
		expect(night.state()).toMatchObject({ faults: [{ cause: 'A1', open: false }] });
	});

	test('a backup whose own pack somebody else plays on is tried with the pack that stays on', () => {
		const night = rehearsed(`${OPENED}00:30 w b 2\n01:00 n a s\n01:12 enter\n01:15 1\n`);
		expect(night.session().players.ash).toMatchObject({ holds: 'A2', pack: 'P1' });
		expect(night.state()).toMatchObject({
			faults: [{ tests: [{ test: 'swap-A1', answer: 'sound' }], cause: 'A1', open: false }],
		});
		expect(reportOf(night).incidents[0]?.words.join(', ')).not.toContain('pack too');
	});

	test('one that brings back the pack that was on clears only itself', () => {
		const back = rehearsed(`${OPENED}01:00 n a s\n`);
		const [fault] = back.session().faults;
		const session = {
			...back.session(),
			players: { ...back.session().players, ash: { ...back.session().players.ash!, pack: 'P3' } },
			suspectPacks: ['P2'],
		};
		const heard = faultNow(session, { ...fault!, pack: 'P3' }, { ...SPARE, instrument: 'A2' });
		expect(heard.spareTest?.id).toBe('swap-A1');
	});

	test('a suspect one is the likeliest from the start', () => {
		const likeliest = (script: string) => {
			const night = rehearsed(script);
			return faultNow(night.session(), night.session().faults[0]!, null)
				.step.causes.toSorted((one, other) => other.chance - one.chance)
				.map(({ suspect }) => suspect.id)[0];
		};
		expect(likeliest(`${OPENED}01:00 n a o\n`)).toBe('A1');
		expect(likeliest(`${OPENED}00:30 w a -\n01:00 n a o\n`)).toBe('radio');
	});
});

describe('how a search begins', () => {
	test('from an incident: it belongs to that, and the silence counts from it', () => {
		const night = rehearsed(`${OPENED}01:00 i\n01:04 e n enter\n01:06 n b\n01:30 1\n`);
		expect(night.state()).toMatchObject({
			incidents: [{ id: 1, kind: 'no-sound', player: 'bo', silence: 30 }],
			faults: [{ incident: 1, symptom: 'silent' }],
		});
		expect(drawn(rehearsed(`${OPENED}01:00 i\n`))).toContain('n find the fault');
		expect(drawn(rehearsed(`${OPENED}01:00 i e n enter\n`))).toContain('n looks for the fault');
	});

	test('from a fault marked on what a player has in hands', () => {
		const night = rehearsed(`${OPENED}01:00 f 1\n`);
		expect(drawn(night)).toContain('0 find the fault');
		night.press('0');
		night.press('h');
		expect(night.session().faults).toMatchObject([{ player: 'bo', symptom: 'hum' }]);
		expect(drawn(night)).toContain('never open an amp');
	});

	test('anew for the same player: what was sought before is left', () => {
		const night = rehearsed(`${OPENED}01:00 n b h\n01:10 n b s\n`);
		expect(night.session().faults).toMatchObject([
			{ symptom: 'hum', isOpen: false },
			{ symptom: 'silent', isOpen: true },
		]);
	});

	test('what was found once is likelier the next time', () => {
		const night = rehearsed(`${OPENED}01:00 n b s\n01:10 5\n01:30 n b s\n`);
		const chance = (fault: number) =>
			faultNow(
				night.session(),
				{ ...night.session().faults[fault]!, tests: [] },
				null,
			).step.causes.find(({ suspect }) => suspect.id === 'lead')!.chance;
		expect(chance(1)).toBeGreaterThan(chance(0));
	});

	test('of a hum no silence is told', () => {
		const night = rehearsed(`${OPENED}01:00 n b h\n01:20 1\n`);
		expect(night.session().incidents[0]?.silenceSeconds).toBe(null);
	});
});

const KEYS = [
	...['n', 'n', 'n', 'a', 'b', 's', 'h', 'w', '1', '1', '2', '2', '3', '4', '5', '6', '0', 'esc'],
	...['enter', 'space', 'd', 'u', 'y', 'x', 'i', 'e', 'f', 'r', 'o', 'q', 'z', 'l', 'tab', 'right'],
];

test('any keys and any answers: nothing throws, what is drawn fits, and the journal tells the same night', () => {
	fc.assert(
		fc.property(
			fc.array(fc.tuple(fc.constantFrom(...KEYS), fc.constantFrom(400, 2000, 90_000)), {
				maxLength: 40,
				size: 'max',
			}),
			(pressed) => {
				const { night, press, pass } = pressedNight(show);
				press('t', '0', 'enter', 'enter', 'space', 'n', 'b', 's');
				for (const [key, ms] of pressed) {
					pass(ms);
					night.tick();
					night.press(key);
					for (const row of drawScreen(night.screen(), SMALL, { isAscii: false }))
						expect(displayWidth(rowText(row))).toBeLessThanOrEqual(SMALL.columns);
					for (const fault of night.session().faults) {
						const { causes } = faultNow(night.session(), fault, null).step;
						expect(causes.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9);
					}
				}
				reportMarkdown(reportOf(night));
				const again = openPast(
					openSession(show),
					memoryJournal(sampleHeader(), {
						records: JSON.parse(JSON.stringify(night.records())),
						checkpoint: null,
					}),
				);
				expect(JSON.stringify(again.session())).toBe(JSON.stringify(night.session()));
			},
		),
		{ numRuns: Math.ceil(RUNS / 3) },
	);
}, 120_000);

describe('the backup that a search names', () => {
	const searched = (rest: string) => rehearsed(`${OPENED}01:00 n b s\n${rest}`);
	const card = (night: Night) => drawn(night).replace(/\s+/g, ' ');
	test('stands on the tall card as that of a break does, and enter records just that', () => {
		const night = searched('01:04 m esc\n');
		const [first] =
			night.screen().prompt?.backup === undefined ? [] : [night.screen().prompt!.backup!];
		expect(first).toMatchObject({ player: 'bo', forWhat: 'NO SOUND', isSilent: true });
		expect(first?.standIn.instrument).toBe('B2');
		expect(card(night)).toMatch(/BO DOWN 0:0\d NO SOUND/);
		expect(card(night)).toMatch(/TAKE \S+ Sorrel/);
		night.press('enter');
		expect(night.session().players.bo?.holds).toBe('B2');
		expect(card(night)).not.toContain('NO SOUND Sorrel');
	});
	test('is on no card where a test comes first and it is no more than a way out', () => {
		const night = rehearsed(`${OPENED}01:00 n b h\n`);
		expect(card(night)).toMatch(/ or 2 Sorrel/);
		expect(night.screen().prompt?.backup).toBeUndefined();
		expect(card(night)).not.toMatch(/TAKE 2 Sorrel/);
	});
	test('is on no card once the search is put off, or the song is over', () => {
		expect(searched('01:05 esc\n').screen().prompt).toBeNull();
		expect(card(searched('01:05 esc\n'))).not.toMatch(/TAKE \S+ Sorrel/);
		expect(card(searched('04:00 d\n04:05 m esc\n'))).not.toMatch(/TAKE \S+ Sorrel/);
	});
});
