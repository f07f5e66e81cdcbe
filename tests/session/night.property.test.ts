// Whatever is asked of a night: replay equals live, a cut anywhere resumes, what is taken back never
// happened, and the law of hands holds.

import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import {
	extend,
	openTimeline,
	puttableBack,
	sessionOf,
	takeableBack,
} from '../../src/session/timeline.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { RUNS, startWalk, walkOn, walks } from './walk.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const walk = walks(show);

function replay(records: ReturnType<typeof startWalk>['records']): Session {
	return sessionOf(records.reduce(extend, openTimeline(openSession(show))));
}

const EDITS = new Set(['move-song', 'insert-song', 'drop-song', 'restore-song', 'play-in-encore']);

/** Each time that a song was on, with its item's key, in the order of the list; those skipped left out, since they may be moved. */
function runsOf(session: Session) {
	return session.list.flatMap((item) =>
		item.kind === 'song'
			? item.runs.flatMap((run) => (run.how === 'skipped' ? [] : [{ key: item.key, run }]))
			: [],
	);
}

/** Who holds what, those with empty hands left out. */
function heldIn(session: Session) {
	return Object.fromEntries(
		Object.entries(session.players).flatMap(([id, { holds }]) =>
			holds === null ? [] : [[id, { holds }] as const],
		),
	);
}

describe('a night of anything', () => {
	test('read back from its journal is the night that was, from any cut', () => {
		fc.assert(
			fc.property(walk, fc.nat(), (steps, cut) => {
				const at = steps.length === 0 ? 0 : cut % steps.length;
				const before = steps.slice(0, at).reduce(walkOn, startWalk(show));
				expect(replay(before.records)).toEqual(sessionOf(before.timeline));
				const resumed = {
					timeline: before.records.reduce(extend, openTimeline(openSession(show))),
					records: before.records,
				};
				const live = steps.slice(at).reduce(walkOn, before);
				const after = steps.slice(at).reduce(walkOn, resumed);
				expect(sessionOf(after.timeline)).toEqual(sessionOf(live.timeline));
			}),
			{ numRuns: RUNS },
		);
	});

	test('taken back to its start has never happened, and put back is as it was', () => {
		fc.assert(
			fc.property(walk, (steps) => {
				const walked = steps.reduce(walkOn, startWalk(show));
				let back = walked;
				for (let i = 0; takeableBack(back.timeline) !== null; i++) {
					back = walkOn(back, { ask: { do: 'take-back' }, atMs: 2_000_000_000 + i });
				}
				expect(sessionOf(back.timeline)).toEqual(openSession(show));
				let again = back;
				for (let i = 0; puttableBack(again.timeline) !== null; i++) {
					again = walkOn(again, { ask: { do: 'put-back' }, atMs: 3_000_000_000 + i });
				}
				const withoutAside = walked.timeline.aside.length === 0;
				if (withoutAside) expect(sessionOf(again.timeline)).toEqual(sessionOf(walked.timeline));
			}),
			{ numRuns: RUNS },
		);
	});

	test('one step taken back disturbs nothing else', () => {
		fc.assert(
			fc.property(walk, walk, (steps, more) => {
				const before = steps.reduce(walkOn, startWalk(show));
				const [step] = more;
				if (!step || step.ask.do === 'take-back' || step.ask.do === 'put-back') return;
				const later = { ...step, atMs: step.atMs + 20_000_000 };
				const after = walkOn(before, later);
				if (after === before) return;
				const undone = walkOn(after, { ask: { do: 'take-back' }, atMs: later.atMs + 1000 });
				expect(sessionOf(undone.timeline)).toEqual(sessionOf(before.timeline));
			}),
			{ numRuns: RUNS },
		);
	});

	test('never has one instrument in two hands, a player with one that is elsewhere, or a broken one ready', () => {
		fc.assert(
			fc.property(walk, (steps) => {
				let walked = startWalk(show);
				for (const step of steps) {
					walked = walkOn(walked, step);
					const session = sessionOf(walked.timeline);
					const held = Object.values(session.players).flatMap(({ holds }) =>
						holds === null ? [] : [holds],
					);
					expect(new Set(held).size).toBe(held.length);
					for (const id of held) expect(session.instruments[id]).toBeDefined();
					for (const [id, { value, context }] of Object.entries(session.instruments)) {
						expect(value === 'inHands').toBe(held.includes(id));
						if (context.stringsDown.length > 0) expect(context.readyAtMs).toBeNull();
					}
					const playing = session.list.filter(
						(item) => item.kind === 'song' && item.runs.some(({ how }) => how === null),
					);
					expect(playing.map(({ key }) => key)).toEqual(
						session.phase.value === 'song' ? [session.current] : [],
					);
				}
			}),
			{ numRuns: RUNS },
		);
	});

	test('keeps every song that was played or is on, in its order and with its times, whatever is moved', () => {
		fc.assert(
			fc.property(walk, (steps) => {
				let walked = startWalk(show);
				for (const step of steps) {
					const before = sessionOf(walked.timeline);
					walked = walkOn(walked, step);
					const after = sessionOf(walked.timeline);
					const keys = after.list.map(({ key }) => key);
					expect(new Set(keys).size).toBe(keys.length);
					if (after.next !== null) expect(keys).toContain(after.next);
					if (after.current !== null) expect(keys).toContain(after.current);
					if (!EDITS.has(step.ask.do)) continue;
					expect(runsOf(after)).toEqual(runsOf(before));
					expect(after.current).toBe(before.current);
					expect(after.song === null).toBe(before.song === null);
					const isInterval = after.phase.value === 'interval' && before.phase.value !== 'interval';
					if (!isInterval) expect(after.players).toMatchObject(heldIn(before));
				}
			}),
			{ numRuns: RUNS },
		);
	});
});
