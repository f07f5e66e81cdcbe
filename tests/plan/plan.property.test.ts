// What must hold for the plan of any night, however awkward.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standIns } from '../../src/plan/backups/stand-ins.ts';
import { samePitches, soundsSame } from '../../src/plan/demand/same-pitches.ts';
import { makePlan } from '../../src/plan/make-plan.ts';
import type { Plan, Section } from '../../src/plan/plan.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { planCore } from '../../src/plan/timed-choice/plan-core.ts';
import { planJson } from '../../src/report/plan-json.ts';
import { findInstrument } from '../../src/session/find.ts';
import { recheckSeconds } from '../../src/session/readiness.ts';
import type { Session } from '../../src/session/session.ts';
import { randomNight, randomShow, SEARCHED } from './random-night.ts';

const runs = { numRuns: Number(process.env.PLAN_RUNS ?? 60) };

function planOf({ session, nowMs }: { session: Session; nowMs: number }): Plan {
	return makePlan({ session, nowMs, plannedZeroMs: 0 }, SEARCHED);
}

function choicesIn({ slots }: Plan): string {
	return JSON.stringify(slots.map(({ player, instrument, capo }) => [player, instrument, capo]));
}

function piecesIn({ work }: Plan): string {
	const pieces = work.map(({ instrument, section, job, seconds }) =>
		[instrument, section.item, section.point, job, seconds].join(' '),
	);
	return pieces.toSorted().join();
}

describe('who has what', () => {
	test('nothing is in two hands', () => {
		fc.assert(
			fc.property(randomNight, (night) => {
				const { choices, plan } = planCore({ ...night, plannedZeroMs: 0 }, SEARCHED);
				for (const section of plan.sections) {
					const held = choices
						.filter((one) => one.section === section)
						.flatMap(({ after }) => (after === null ? [] : [after.instrument]));
					expect(new Set(held).size).toBe(held.length);
				}
			}),
			runs,
		);
	});

	test('what is named is had exactly so, or something else for it, or nothing for a reason', () => {
		fc.assert(
			fc.property(randomNight, (night) => {
				const plan = planOf(night);
				const songs = new Map(night.session.show.songs.map((song) => [song.id, song]));
				for (const slot of plan.slots.filter(({ section }) => section.point === 0)) {
					const part = songs.get(slot.section.song)?.parts[slot.player];
					if (part?.kind !== 'named') continue;
					expect(slot.named).toBe(part.instrument);
					expect([null, part.instrument]).toContain(slot.for);
					if (slot.instrument === null) expect(slot.why).not.toBeNull();
					if (slot.instrument === null || slot.for !== null) continue;
					expect(slot.instrument).toBe(part.instrument);
					if (part.tuning === null) continue;
					const [heard, asked] = [slot, { tuning: part.tuning, capo: part.capo }];
					expect(soundsSame(heard, asked)).toBe(true);
				}
			}),
			runs,
		);
	});

	test('a floating bridge is never handed in a tuning that it is not in', () => {
		fc.assert(
			fc.property(randomNight, (night) => {
				for (const { instrument, tuning } of planOf(night).handOvers) {
					const one = night.session.show.instruments.find(({ id }) => id === instrument);
					if (one?.bridge !== 'floating' || tuning === null) continue;
					const now = night.session.instruments[one.id]!.context.tuning;
					expect(samePitches(tuning, now)).toBe(true);
				}
			}),
			runs,
		);
	});
});

describe('the work', () => {
	test('never overlaps a hand-over, nor other work', () => {
		fc.assert(
			fc.property(randomNight, (night) => {
				const { work, handOvers } = planOf(night);
				const busy = handOvers.filter(({ section }) => !section.hasBegun);
				const isBusy = (ms: number): boolean =>
					busy.some(({ wantedMs, section }) => wantedMs <= ms && ms < section.startMs);
				let lastMs = night.nowMs;
				for (const { startMs, finishMs, seconds, fromMs } of work) {
					expect(startMs).toBeGreaterThanOrEqual(lastMs);
					expect(startMs).toBeGreaterThanOrEqual(fromMs);
					lastMs = finishMs;
					// All times here are whole seconds: counted one by one.
					let free = 0;
					for (let ms = startMs; ms < finishMs; ms += 1000) if (!isBusy(ms)) free += 1;
					expect(free).toBe(seconds);
				}
			}),
			runs,
		);
	});

	test('is there for all that is handed and not ready, fresh and as wanted', () => {
		fc.assert(
			fc.property(randomNight, (night) => {
				const { work, handOvers } = planOf(night);
				const { show, instruments } = night.session;
				const usedBefore = new Set(
					Object.values(night.session.players).flatMap(({ holds }) => holds ?? []),
				);
				for (const { section, instrument, tuning, capo } of handOvers) {
					if (instrument === null || tuning === null) continue;
					const state = instruments[instrument]!;
					const { readyAtMs, stringsDown, ...now } = state.context;
					const handedMs = section.hasBegun
						? Math.max(section.startMs, night.nowMs)
						: section.startMs;
					const isReady =
						!usedBefore.has(instrument) &&
						readyAtMs !== null &&
						stringsDown.length === 0 &&
						now.capo === capo &&
						samePitches(now.tuning, tuning) &&
						handedMs - readyAtMs <=
							recheckSeconds(
								show,
								findInstrument(night.session, instrument)!,
								state.context.stringHours,
							) *
								1000;
					const hasWork = work.some(
						(one) => one.section === section && one.instrument === instrument,
					);
					expect(hasWork).toBe(!isReady);
					usedBefore.add(instrument);
				}
			}),
			runs,
		);
	});

	test('waits no longer than it may: begin by stands still while nothing happens', () => {
		fc.assert(
			fc.property(randomNight, fc.integer({ min: 1, max: 100 }), (night, percent) => {
				const early = planOf(night);
				const [present] = early.sections;
				const open = early.handOvers.some(({ section }) => section.hasBegun);
				if (present === undefined || open) return;
				// Until what is on is expected to end, or what is next to begin.
				const untilMs = present.hasBegun
					? Math.min(present.endMs, ...early.sections.slice(1).map(({ startMs }) => startMs))
					: present.startMs;
				const laterMs = Math.floor(night.nowMs + ((untilMs - night.nowMs) * percent) / 100);
				const later = planOf({ ...night, nowMs: laterMs });
				// What was not begun in time may be given up for something that is less late.
				fc.pre(choicesIn(later) === choicesIn(early));
				// What stood in two pieces is one once there is no time left between them: that is other work.
				fc.pre(piecesIn(later) === piecesIn(early));
				const figures = ({ work }: Plan) => {
					const begins = new Map<string, number>();
					for (const { instrument, section, beginByMs } of work) {
						const use = `${instrument} for ${section.item}.${section.point}`;
						begins.set(use, Math.min(beginByMs, begins.get(use) ?? beginByMs));
					}
					return [...begins].map(([use, ms]) => `${use}: ${ms}`).toSorted();
				};
				expect(figures(later)).toEqual(figures(early));
			}),
			runs,
		);
	});

	test('is late exactly when it was not begun in time', () => {
		fc.assert(
			fc.property(randomNight, (night) => {
				const { work, cost } = planOf(night);
				const worst = Math.max(0, ...work.map(({ slackSeconds }) => -slackSeconds));
				expect(cost.lateness).toBe(worst);
				const [first] = work;
				if (first === undefined || first.fromMs > night.nowMs) return;
				if (first.beginByMs < night.nowMs) expect(cost.lateness).toBeGreaterThan(0);
			}),
			runs,
		);
	});
});

test('sections follow each other without overlap, the first perhaps begun', () => {
	fc.assert(
		fc.property(randomNight, (night) => {
			const { sections } = planOf(night);
			sections.forEach((section, index) => {
				expect(section.endMs).toBeGreaterThanOrEqual(section.startMs);
				expect(section.hasBegun && index > 0).toBe(false);
				const next = sections[index + 1];
				if (next !== undefined) expect(next.startMs).toBeGreaterThanOrEqual(section.endMs);
			});
		}),
		runs,
	);
});

test('a slot is a hand-over exactly where one is planned', () => {
	fc.assert(
		fc.property(randomNight, (night) => {
			const { slots, handOvers } = planOf(night);
			const given = handOvers.filter(({ instrument }) => instrument !== null);
			const marked = slots.filter(({ isHandOver }) => isHandOver);
			const key = (one: { section: Section; player: string; instrument: string | null }) =>
				`${one.section.item}/${one.section.point}/${one.player}/${one.instrument}`;
			expect(marked.map(key).sort()).toEqual(given.map(key).sort());
		}),
		runs,
	);
});

test('the same night gives the same plan, also after a journey through text', () => {
	fc.assert(
		fc.property(randomNight, (night) => {
			const plan = planOf(night);
			expect(planOf(night)).toEqual(plan);
			const copy = JSON.parse(JSON.stringify(night)) as typeof night;
			expect(JSON.stringify(planOf(copy))).toBe(JSON.stringify(plan));
		}),
		runs,
	);
});

test("stand-ins are never in somebody else's hands, broken, out or the instrument itself", () => {
	fc.assert(
		fc.property(randomNight, (night) => {
			const plan = planOf(night);
			const { session } = night;
			for (const player of session.show.players) {
				const held = session.players[player.id]!.holds;
				for (const { instrument, readyInSeconds } of standIns({
					...night,
					plan,
					player: player.id,
				})) {
					const state = session.instruments[instrument]!;
					expect(state.value).not.toBe('out');
					expect(state.context.stringsDown).toEqual([]);
					const others = session.show.players.filter(({ id }) => id !== player.id);
					expect(others.map(({ id }) => session.players[id]!.holds)).not.toContain(instrument);
					if (session.phase.value === 'song' && held !== null) expect(instrument).not.toBe(held);
					expect(readyInSeconds).toBeGreaterThanOrEqual(0);
				}
			}
		}),
		runs,
	);
});

test('before the doors any show has a plan and a document of it', () => {
	fc.assert(
		fc.property(randomShow, (show) => {
			const plan = planBeforeDoors(show);
			const document = planJson(plan, show);
			expect(document.slots).toHaveLength(plan.slots.length);
			expect(document.cost.missing).toBe(
				document.slots.filter(({ instrument }) => instrument === null).length,
			);
		}),
		runs,
	);
});
