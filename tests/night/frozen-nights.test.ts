// Whole nights as an earlier version kept them, with beside each the facts that this version told of it.
// Neither is ever written anew: whatever the program becomes, it has to make the same of them, and to go
// on with a night that was left open.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { nightOnDisk } from '../../src/cli/nights/night-on-disk.ts';
import { nightState } from '../../src/night/night-state.ts';
import { makePlan } from '../../src/plan/make-plan.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { openBreak } from '../../src/session/find.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { effectiveRecords, extend, openTimeline, sessionOf } from '../../src/session/timeline.ts';
import { runCommand } from '../cli/run-command.ts';
import {
	begin,
	dataWith,
	type Facts,
	factsOf,
	JOURNALS,
	keptOf,
	kindsOf,
	type Named,
	soonAfter,
	takenUp,
} from './frozen-night.ts';

/** What each version of the records kept, an ended night and one left open; kinds that came later, in a night of their own. */
const KEPT: readonly (readonly [ended: string, ...open: string[]])[] = [
	['2026-11-club', '2026-11-club-open'],
	['2026-11-30-club', '2026-12-01-club-open'],
	['2026-12-02-silent'],
];
const ALL = KEPT.flat();

/** The facts with each text that stands among other words to be found in them. */
function amongWords(all: readonly Named[], ...fields: readonly string[]): readonly unknown[] {
	return all.map((one) =>
		expect.objectContaining({
			...one,
			...Object.fromEntries(
				fields
					.filter((field) => typeof one[field] === 'string')
					.map((field) => [field, expect.stringContaining(String(one[field]))]),
			),
		}),
	);
}

function pitchesOf({ instruments }: Session): Facts['pitches'] {
	return Object.fromEntries(
		Object.entries(instruments).map(([id, { context }]) => [id, context.tuning.notes]),
	);
}

test('between them the nights have every kind of entry that there was, and a state kept whole', () => {
	for (const [name] of KEPT) {
		const whole = factsOf(name);
		expect([...new Set(kindsOf(keptOf(dataWith(name), whole.night)))].sort()).toEqual(
			[...whole.kinds].sort(),
		);
	}
	for (const name of ALL) {
		const bytes = readFileSync(join(JOURNALS, `${name}.journal`), 'latin1');
		expect(bytes.match(/"k":"checkpoint"/g)).toHaveLength(1);
	}
});

test.each(ALL)('%s reads and reports as it did', async (name) => {
	const facts = factsOf(name);
	const data = dataWith(name);
	const records = keptOf(data, facts.night);
	expect(records).toHaveLength(facts.records);
	const kinds = kindsOf(records);
	expect(
		Object.fromEntries(facts.kinds.map((kind) => [kind, kinds.filter((k) => k === kind).length])),
	).toEqual(facts.entries);
	const { code, out } = await runCommand({ cwd: data, data }, 'report', facts.night, '--json');
	expect(code).toBe(facts.code);
	const report = JSON.parse(out);
	const { handOvers, incidents, memos, ...others } = facts.report;
	expect(report).toMatchObject(others);
	expect(report.handOvers).toEqual(
		amongWords(
			handOvers.map(({ at: _, ...one }) => one),
			'instrument',
			'correctedFrom',
		),
	);
	expect(report.handOvers).toMatchObject(handOvers.map(({ at }) => ({ at })));
	expect(report.incidents).toEqual(
		amongWords(
			incidents.map(({ at: _, ...one }) => one),
			'instrument',
			'standIn',
		),
	);
	expect(report.incidents).toMatchObject(incidents.map(({ at }) => ({ at })));
	expect(report.memos).toEqual(
		amongWords(
			memos.map(({ words }) => ({ words })),
			'words',
		),
	);
	expect(report.memos).toMatchObject(memos.map(({ at }) => ({ at })));
});

test('the open night is taken up where it stood, and goes on', async () => {
	const facts = factsOf('2026-11-club-open');
	const data = dataWith('2026-11-club-open');
	const { night, press, begun } = await takenUp(data);
	expect(begun).toMatchObject({ id: facts.night, findings: [] });
	expect(night.state()).toMatchObject(facts.state);
	expect(pitchesOf(night.session())).toEqual(facts.pitches);
	const since = () => kindsOf(night.records().slice(facts.records));
	expect(since()).toEqual(['resumed']);
	press('space');
	expect(night.state()).toMatchObject({ phase: 'changeover', song: { id: 'quarry' } });
	press('x', '1');
	expect(night.state()).toMatchObject({ players: { ash: { holds: 'A1' } } });
	press('space');
	expect(night.state()).toMatchObject({ phase: 'song', song: { id: 'nightbus' } });
	press('b', '5');
	expect(night.state()).toMatchObject({
		instruments: { B1: { stringsDown: [null] } },
		incidents: expect.arrayContaining([
			expect.objectContaining({ id: 5 }),
			expect.objectContaining({ kind: 'string-break', player: 'bo', instrument: 'B1' }),
		]),
	});
	press('0', 'u', 'u');
	expect(night.state()).toMatchObject({ instruments: { B1: { stringsDown: [] } } });
	expect(since()).toEqual(
		expect.arrayContaining(['song-ended', 'handed-over', 'song-began', 'string-broke']),
	);
	const session = JSON.stringify(night.session().players);
	await night.close();
	const again = await takenUp(data);
	expect(JSON.stringify(again.night.session().players)).toBe(session);
	await again.night.close();
});

test('so is that of the next version, with its next undo and step', async () => {
	const name = '2026-12-01-club-open';
	const facts = factsOf(name);
	const data = dataWith(name);
	const { night, press, begun } = await takenUp(data, name);
	expect(begun).toMatchObject({ id: facts.night, findings: [] });
	expect(night.state()).toMatchObject(facts.state);
	expect(pitchesOf(night.session())).toEqual(facts.pitches);
	press('u', 'u');
	expect(night.session().phase.value).toBe('changeover');
	press('y');
	expect(night.state()).toMatchObject({ phase: 'song', song: facts.state.song });
	await night.close();
});

test('every view of it is drawn from the copy of the show that it has', async () => {
	const { night, press } = await takenUp(dataWith('2026-11-club-open'));
	const rows = () =>
		drawScreen(night.screen(), { columns: 120, rows: 40 }, { isAscii: false }).map((row) =>
			row.map(({ text }) => text).join(''),
		);
	const drawnWith = (...keys: readonly string[]) => {
		press(...keys);
		return rows().join('\n');
	};
	expect(drawnWith()).toContain('Quarry');
	expect(drawnWith('tab')).toContain('Amber');
	// The page of an instrument, of which a later version may ask what this copy does not say.
	expect(drawnWith('enter')).toContain('Amber');
	expect(drawnWith('esc', 'tab')).toContain('Slipway');
	expect(drawnWith('tab')).toContain('Quarry');
	expect(drawnWith('esc', '?')).toContain('space');
	await night.close();
});

test('what was taken back before the night was left can be put back', async () => {
	const { night, press } = await takenUp(dataWith('2026-11-club-open'));
	const memo = () =>
		effectiveRecords(night.records())
			.filter(({ record }) => record.e.some(({ k }) => k === 'memo-written'))
			.at(-1);
	expect(memo()).toMatchObject({ isTakenBack: true });
	press('y');
	expect(memo()).toMatchObject({ isTakenBack: false });
	await night.close();
});

test.each(ALL)('%s stands as it did, told from its first record', (name) => {
	const facts = factsOf(name);
	const { show, records } = nightOnDisk([join(dataWith(name), 'nights')], facts.night);
	const session = sessionOf(records.reduce(extend, openTimeline(openSession(show!))));
	expect(pitchesOf(session)).toEqual(facts.pitches);
	expect(openBreak(session)).toBe(null);
	const moment = { session, nowMs: records.at(-1)!.e[0]!.at, plannedZeroMs: 0 };
	const state = nightState({
		...moment,
		plan: makePlan(moment),
		zeroMs: session.zeroAtMs!,
		isSaved: true,
		standInsFor: () => [],
	});
	expect(state).toMatchObject(facts.state);
});

test('the finished night is not taken up', async () => {
	const data = dataWith('2026-11-club');
	const { clock } = soonAfter(data, factsOf('2026-11-club').night);
	// For want of the file no other night begins either.
	expect(await begin(data, clock)).toMatchObject({ problems: [expect.anything()] });
});
