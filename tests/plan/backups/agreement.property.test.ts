// One answer to what could take over, wherever it is given: before the doors in `check`, the plan, its table,
// `--why` and the sheet; when a string breaks in the question and among the warnings. Every instrument is
// broken as each song of shows made up by chance begins.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { standInPrompt } from '../../../src/keys/stand-in-prompt.ts';
import { considered } from '../../../src/plan/advice/alternatives.ts';
import { slotStandIns } from '../../../src/plan/backups/slot-stand-ins.ts';
import { standInsWithCosts } from '../../../src/plan/backups/stand-in-costs.ts';
import { standIns } from '../../../src/plan/backups/stand-ins.ts';
import { makePlan } from '../../../src/plan/make-plan.ts';
import { planBeforeDoors } from '../../../src/plan/plan-before-doors.ts';
import { readyAtZero } from '../../../src/plan/timed-choice/before-doors.ts';
import { playedThrough } from '../../../src/plan/what-if/played-through.ts';
import { planTable } from '../../../src/report/plan-table.ts';
import { runSheet } from '../../../src/report/run-sheet.ts';
import { sheetOf } from '../../../src/report/sheet-of-plan.ts';
import { applyAll } from '../../../src/session/apply.ts';
import { decide } from '../../../src/session/decide.ts';
import type { Show } from '../../../src/showfile/show.ts';
import { randomShow } from '../random-night.ts';

/** Some of its instruments may let nothing be played instead, or name what may be. */
const shows = fc
	.tuple(
		randomShow,
		fc.array(fc.constantFrom('any', 'any', 'none', 'next'), { minLength: 6, maxLength: 6 }),
	)
	.map(([show, instead]): Show => {
		const { instruments } = show;
		return {
			...show,
			instruments: instruments.map((one, index) => {
				const next = instruments[(index + 1) % instruments.length]!;
				if (instead[index] === 'none') return { ...one, instead: [] };
				if (instead[index] !== 'next') return one;
				return { ...one, instead: [{ instrument: next.id, tuning: null, capo: 0 }] };
			}),
		};
	});

const names = (all: readonly { readonly instrument: string }[]) =>
	all.map(({ instrument }) => instrument).sort();

test('before the doors and in the break the same could take over', () => {
	let breaks = 0;
	let without = 0;
	fc.assert(
		fc.property(shows, (show) => {
			const plan = planBeforeDoors(show);
			const alone = plan.warnings.filter((one) => one.code === 'no-stand-in');
			const all = slotStandIns(readyAtZero(show), {
				plan,
				costs: 'none',
				isAsked: ({ instrument, isMissing }) => instrument !== null || isMissing,
			});
			for (const { section, session } of playedThrough(readyAtZero(show), plan)) {
				const nowMs = section.startMs;
				for (const { slot, standIns: before, leftOut } of all) {
					const { player, instrument } = slot;
					if (slot.section !== section || instrument === null) continue;
					if (session.players[player]?.holds !== instrument) continue;
					// Said before the doors, where and only where nothing could.
					const isAlone = alone.some(
						(one) =>
							one.player === player &&
							one.instrument === instrument &&
							one.songs?.includes(section.song),
					);
					const inSong = all.filter(
						(one) =>
							one.slot.section.song === section.song &&
							one.slot.player === player &&
							one.slot.instrument === instrument,
					);
					expect(isAlone).toBe(inSong.some((one) => one.standIns.length === 0));
					expect(leftOut.length > 0).toBe(before.length === 0);
					const broken = decide(session, { do: 'report-break', instrument }, nowMs);
					if (!broken.ok) continue;
					breaks += 1;
					const after = applyAll(session, broken.entries);
					const moment = { session: after, nowMs, plannedZeroMs: 0 };
					const replanned = makePlan(moment);
					const asked = { ...moment, plan: replanned, player };
					const now = standIns(asked);
					expect(names(now)).toEqual(names(before));
					expect(names(standInsWithCosts(asked))).toEqual(names(before));
					const seconds = (list: typeof now) =>
						Object.fromEntries(list.map((one) => [one.instrument, one.readyInSeconds]));
					expect(seconds(now)).toEqual(seconds(before));
					// The warnings and the question.
					const isWarned = replanned.warnings.some(
						(one) => one.code === 'no-stand-in' && one.instrument === instrument,
					);
					expect(isWarned).toBe(before.length === 0);
					const { lines } = standInPrompt().view({
						session: after,
						plan: replanned,
						nowMs,
						plannedZeroMs: 0,
						standInsFor: () => now,
						playOnLater: () => [],
						keyOf: () => 'b',
					} as never);
					expect(lines.some((line) => line.startsWith('No backup fits'))).toBe(before.length === 0);
					if (before.length === 0) {
						without += 1;
						expect(lines[0]).toMatch(/^No backup fits: .+\.$/);
					}
				}
			}
		}),
		{ numRuns: 40, seed: 20260612 },
	);
	expect(breaks).toBeGreaterThan(150);
	expect(without).toBeGreaterThan(20);
}, 120_000);

test('the table, the reasons and the sheet have no backup where the plan has none', () => {
	let missing = 0;
	fc.assert(
		fc.property(shows, (show) => {
			const plan = planBeforeDoors(show);
			const all = slotStandIns(readyAtZero(show), { plan, costs: 'none' });
			const none = all.filter(({ slot, standIns: found }) => slot.isMissing && found.length === 0);
			missing += all.filter(({ slot }) => slot.isMissing).length;
			const table = planTable(show, { plan, sentence: '', standIns: all }).split('\nBackups\n')[0]!;
			expect(table.match(/NO BACKUP/g)?.length ?? 0).toBe(none.length);
			const others = new Map(all.map(({ slot, standIns: [best] }) => [slot, best?.instrument]));
			const sheet = runSheet(
				sheetOf({
					session: readyAtZero(show),
					plan,
					zeroMs: 0,
					backupOf: (slot) => others.get(slot) ?? null,
				}),
				{ version: '', since: [], hasBoards: false },
			);
			expect((sheet.match(/NO BACKUP/g)?.length ?? 0) > 0).toBe(none.length > 0);
			const [first] = show.songs;
			for (const { slot, alternatives, leftOut } of considered(show, plan, first!.id)) {
				const found = all.find((one) => one.slot === slot);
				if (found === undefined) continue;
				expect(names(alternatives.map(({ hand }) => hand))).toEqual(names(found.standIns));
				expect(leftOut).toEqual(found.leftOut);
			}
		}),
		{ numRuns: 40, seed: 20260612 },
	);
	expect(missing).toBeGreaterThan(20);
}, 120_000);
