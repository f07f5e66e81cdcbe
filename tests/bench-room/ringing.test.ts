// An instrument that rings: which string or part of the body it may be, polarity before any filter, the notch, the
// band of the desk; typed while the show is on, kept with the instrument, printed on the sheet.

import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { ringingLines } from '../../src/bench/ringing.ts';
import { measuredOnGear } from '../../src/cli/bench/gear-journal.ts';
import { ringingNotes } from '../../src/cli/live/ringing-notes.ts';
import {
	hasRingingBody,
	nearestNote,
	readRinging,
	ringingStrings,
} from '../../src/tuning/ringing.ts';
import { runCommand } from '../cli/run-command.ts';
import { pressedNight } from '../night/pressed-night.ts';
import { loadShow } from '../scenarios/load-show.ts';

const SHOW = join(import.meta.dirname, '../rig/night-rig.yaml');
const folder = mkdtempSync(join(tmpdir(), 'rackside-ringing-'));
afterAll(() => rmSync(folder, { recursive: true }));

const guitar = {
	tuning: { name: 'E standard', notes: ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'] },
	referenceHertz: 440,
};

test('hertz and notes as they are typed', () => {
	expect(['147', '147Hz', ' 61,7 hz', 'A2', 'D3'].map((text) => readRinging(text, 440))).toEqual([
		147,
		147,
		61.7,
		110,
		// MIDI Tuning Standard: note 50 is 440 × 2^(−19/12).
		expect.closeTo(146.832, 3),
	]);
	for (const text of ['', 'loud', '12', '20001', 'H2', '1e3', '-147', 'D'])
		expect(readRinging(text, 440)).toBeNull();
	expect(nearestNote(147, 440)).toEqual({ note: 'D3', cents: expect.closeTo(1.98, 2) });
});

test('the string that it may be: itself first, then by a partial', () => {
	const at = (hertz: number) =>
		ringingStrings(hertz, { notes: guitar.tuning.notes, referenceHertz: 440 }).map(
			({ string, partial }) => `${string}/${partial}`,
		);
	expect(at(147)).toEqual(['4/1']);
	// Twice E2 is E3, three times A2 is an octave and a fifth over it, E4; four times E2 too.
	expect(at(329.6)).toEqual(['1/1', '5/3', '6/4']);
	expect(at(120)).toEqual([]);
});

test('what to do, in its order: what it is, polarity, then the filter', () => {
	const [what, polarity, filter] = ringingLines({
		...guitar,
		hertz: 100,
		instrument: { kind: 'acoustic-6' },
	});
	expect(what).toMatch(/^100 Hz \(G2 \+35 c\)\. It may be the air in the body/);
	expect(polarity).toMatch(/Flip the polarity first/);
	// ISO 266, R10: 100 Hz is a band of its own; 100 / 8 is 12.5.
	expect(filter).toBe('Notch 100 Hz, Q 8 (13 Hz wide), or the 100 Hz band down.');
	const electric = ringingLines({ ...guitar, hertz: 160, instrument: { kind: 'electric-6' } });
	expect(electric[0]).toMatch(/No open string/);
	// Table of ISO 266: 160 Hz, edges 141.3 and 177.8.
	expect(electric[2]).toMatch(/the 160 Hz band/);
	expect(hasRingingBody('electric-6')).toBe(false);
});

test('typed in the live screen, from the rig view or as words to an incident', () => {
	const kept: object[] = [];
	const { night, press } = pressedNight(loadShow(SHOW), {
		keepRinging: async (rang) => {
			kept.push(rang);
			return null;
		},
	});
	press('t', '0', 'space', 'tab', 'tab', 'tab', 'tab', 'tab', 'enter', '5', '6', '2');
	const { prompt } = night.screen();
	expect(prompt?.title).toBe('5 Fell rings at:');
	expect(prompt?.lines.join(' ')).toMatch(/62 Hz \(B1 \+7 c\).*polarity.*Notch 62 Hz.*63 Hz band/);
	press('enter');
	expect(night.screen().view).toBe('rig');
	const [last] = [...night.screen().log];
	expect(last?.words).toBe('memo: feedback: 5 Fell rings at 62 Hz (B1 +7 c)');
	press('i', 'e', ...'feedback a1');
	expect(night.screen().prompt?.lines.join(' ')).toMatch(/5 Fell 55 Hz \(A1\).*string 3 \(A1\)/);
	press('enter');
	expect(night.session().incidents.at(-1)?.words).toEqual(['feedback a1']);
	expect(kept).toEqual([
		{ instrument: 'F1', hertz: 62 },
		{ instrument: 'F1', hertz: 55 },
	]);
	press('enter', '5', 'x', 'enter');
	expect(night.screen().message).toMatch(/x is neither hertz/);
	expect(kept).toHaveLength(2);
});

test('kept with the instrument and printed on the run sheet, the newest first', async () => {
	const place = { cwd: folder, data: join(folder, 'data') };
	const before = await runCommand(place, 'plan', SHOW, '--sheet');
	expect(before.out).not.toContain('FEEDBACK');
	for (const hertz of ['62', '110', '62']) {
		const done = await runCommand(
			{ ...place, wallMs: Number(hertz) },
			...['setup', SHOW, 'F1', '--feedback', hertz, '--record', 'feedback'],
		);
		expect(done).toMatchObject({ code: 0, err: '' });
	}
	const { out } = await runCommand(place, 'plan', SHOW, '--sheet');
	const lines = out.split('\n').filter((line) => line.startsWith('! FEEDBACK'));
	expect(lines).toEqual([
		expect.stringMatching(/^! FEEDBACK 5 Fell 62 Hz \(B1 \+7 c\): polarity first/),
		expect.stringMatching(/^! FEEDBACK 5 Fell 110 Hz \(A2\): polarity first/),
	]);
	const other = await runCommand(place, 'setup', SHOW, 'F1', '--feedback', 'loud');
	expect(other).toMatchObject({ code: 2, err: expect.stringMatching(/a note with its octave/) });
});

test('undone, it is taken from the instrument too; redone, it is kept again; resumed, the same', async () => {
	const data = join(folder, 'undone');
	const places = { data, nights: join(data, 'nights'), settings: data };
	mkdirSync(join(data, 'gear'), { recursive: true, mode: 0o700 });
	const of = { places, folder: '/shows', night: 'n1', wallMs: () => 1000 };
	const night = loadShow(SHOW);
	const rings = () => {
		const fell = night.instruments.find(({ id }) => id === 'F1')!;
		return measuredOnGear(places, '/shows').ringsOn(fell);
	};
	const open = () => {
		const notes = ringingNotes({
			...of,
			noted: measuredOnGear(places, '/shows').noted,
			show: () => night,
		});
		const all: Promise<string | null>[] = [];
		const settled = async () =>
			expect((await Promise.all(all)).filter((one) => one !== null)).toEqual([]);
		return {
			settled,
			keepRinging: (...asked: Parameters<typeof notes.keepRinging>) =>
				all[all.push(notes.keepRinging(...asked)) - 1]!,
			ringingUndone: (...asked: Parameters<typeof notes.ringingUndone>) =>
				all[all.push(notes.ringingUndone(...asked)) - 1]!,
		};
	};
	const first = open();
	const { press } = pressedNight(night, first);
	press('t', '0', 'space', 'tab', 'tab', 'tab', 'tab', 'tab', 'enter', '5', '6', '2', 'enter');
	await first.settled();
	expect(rings()).toEqual([62]);
	press('u');
	await first.settled();
	expect(rings()).toEqual([]);
	press('y');
	await first.settled();
	expect(rings()).toEqual([62]);
	// Another start of the program knows what was noted in this night.
	const again = open();
	expect(await again.ringingUndone('no:1', false)).toBeNull();
	expect(rings()).toEqual([62]);
});
