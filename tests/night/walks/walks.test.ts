// Random nights at the keys: what each player is told next is what an enumeration from the live state gives, the
// plan costs what it says and no less than the best, no tall row names what cannot be had, space and enter record
// nothing that the rows did not say, and all this is the same after the program was killed.
// NIGHTS says how many nights are walked, FIRST_NIGHT with which seed they begin: `npm run campaign:walks` walks
// 2,000.

import { expect, test } from 'vitest';
import type { Night } from '../../../src/night/night.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { drawScreen } from '../../../src/screen/draw-screen.ts';
import { rowText } from '../../../src/screen/row.ts';
import { tallRows, tallWidth } from '../../../src/screen/tall-glyphs.ts';
import { chanceShow, chanceSize } from '../../plan/independent/chance-show.ts';
import {
	type Cost,
	compareCosts,
	LIVE_CRITERIA,
	PLAN_CRITERIA,
} from '../../plan/independent/cost.ts';
import { judge } from '../../plan/independent/judge.ts';
import type { LiveNight } from '../../plan/independent/live-from-session.ts';
import { slotKey } from '../../plan/independent/live-state.ts';
import { seededChance } from '../../plan/independent/seeded-chance.ts';
import { showOf } from '../../plan/independent/show-of.ts';
import { playsOf } from '../../plan/plays-of.ts';
import { chanceGesture } from './gestures.ts';
import { isSaid, nextSaid, type Said, saidBy, staysSaid } from './said-by-rows.ts';
import { liveOf, toldByModel } from './told-by-model.ts';
import { type WalkedNight, walkedNight } from './walked-night.ts';

const NIGHTS = Number(process.env.NIGHTS ?? 12);
const FIRST = Number(process.env.FIRST_NIGHT ?? 1);
const LEAST_GESTURES = 10;
const MORE_GESTURES = 30;
const KILLS = 0.08;

/** Of all that could be compared at the steps of a night, at least so much of it must have been. */
const LEAST_COMPARED_A_NIGHT = 15;

/** A campaign goes on after a difference, but not for ever. */
const MOST_FAILED = 5;

type Walk = {
	readonly walked: WalkedNight;
	/** What was pressed, for whoever has to look at a difference. */
	readonly log: string[];
};

let compared = 0;
let compareStays = 0;
let recorded = 0;
let drawn = 0;
let judged = 0;

test(`${NIGHTS} nights by chance`, () => {
	const failed: unknown[] = [];
	for (let seed = FIRST; seed < FIRST + NIGHTS; seed += 1) {
		try {
			walk(seed);
		} catch (error) {
			failed.push(error);
			if (failed.length === MOST_FAILED) break;
		}
	}
	if (failed.length > 0) throw new AggregateError(failed, failed.map(String).join('\n'));
	expect(compared).toBeGreaterThan(NIGHTS * LEAST_COMPARED_A_NIGHT);
	expect(compareStays).toBeGreaterThan(NIGHTS);
	expect(recorded).toBeGreaterThan(NIGHTS);
	expect(drawn).toBeGreaterThan(NIGHTS);
	expect(judged).toBeGreaterThan(NIGHTS * LEAST_GESTURES);
});

function walk(seed: number): void {
	const chance = seededChance(seed);
	const text = chanceShow(chance, chanceSize(chance));
	const walked = walkedNight(showOf(text));
	const log: string[] = [];
	const count = LEAST_GESTURES + Math.floor(chance() * MORE_GESTURES);
	try {
		for (let i = 0; i < count; i += 1) {
			const { kind, keys, wait } = chanceGesture(chance, walked.night().session());
			log.push(`${wait} s, then ${keys.join(' ')}`);
			walked.wait(wait);
			const isOfHands = kind === 'space' || kind === 'enter';
			press({ walked, log }, keys, isOfHands);
			if (chance() < KILLS) killed(walked);
			check(walked.night());
		}
	} catch (error) {
		throw new Error(`night ${seed}: ${error}\n${text}\n${log.join('\n')}\n`, { cause: error });
	}
}

/** Presses them, and holds what space and enter record of hands against what was said before. */
function press({ walked }: Walk, keys: readonly string[], isOfHands: boolean): void {
	const before: Said[] = [];
	for (const key of keys) {
		const night = walked.night();
		const count = night.records().length;
		if (isOfHands) before.push(saidBy(night));
		walked.press(key);
		if (!isOfHands) continue;
		for (const { e } of night.records().slice(count)) {
			for (const entry of e) {
				const isHands = ['handed-over', 'stayed', 'found-as'].includes(entry.k);
				if (!isHands) continue;
				recorded += 1;
				if (!isSaid(entry, before)) {
					expect(before.map(({ players }) => players)).toEqual(`to say ${JSON.stringify(entry)}`);
				}
			}
		}
	}
}

function killed(walked: WalkedNight): void {
	const before = JSON.stringify([walked.night().session(), walked.night().plan()]);
	const state = JSON.stringify(walked.night().state());
	walked.kill();
	expect(JSON.stringify([walked.night().session(), walked.night().plan()])).toBe(before);
	expect(JSON.stringify(walked.night().state())).toBe(state);
}

function check(night: Night): void {
	const said = saidBy(night);
	rowsCanBeHad(night, said);
	const live = liveOf(night);
	const cost = costAsSaid(night, live);
	if (cost === null) return;
	const told = toldByModel(live);
	if (told === null) return;
	isWithinBound(night.plan(), told.best.cost);
	const isBest = compareCosts(cost, told.best.cost, LIVE_CRITERIA) === 0;
	// What is not the best, and says that it may not be, may tell people something else.
	if (!isBest && !night.plan().isProved) return;
	expect(cost).toEqual(told.best.cost);
	for (const { id } of night.session().show.players) {
		const next = told.next[id];
		if (next !== undefined) {
			compared += 1;
			expect({ player: id, next: nextSaid(night, said, id) }).toEqual({ player: id, next });
		}
		const stays = told.stays[id];
		if (stays !== undefined && stays !== 'unasked') {
			compareStays += 1;
			expect({ player: id, stays: staysSaid(said, id) }).toEqual({ player: id, stays });
		}
	}
}

/**
 * What the plan costs: what everybody is to play is allowed, and comes to what it says, proved or not. Null where
 * the enumeration knows no such night.
 */
function costAsSaid(night: Night, { state, placed, isAlone }: LiveNight): Cost | null {
	const plan = night.plan();
	const plays = playsOf(night.session().show, plan).map((all, index) =>
		all.map((played, player) => {
			const { id } = state.players[player]!;
			const slot = plan.slots.find(
				(one) => one.section === plan.sections[index] && one.player === id,
			);
			// What merely stays in hands and sounds so counts as missing all the same.
			const isLeft =
				slot !== undefined &&
				slot.for !== null &&
				!(slot.isChosen || slot.isHandOver || slot.isKept);
			return isLeft || isAlone.has(slotKey(placed[index]!.key, id)) ? undefined : played;
		}),
	);
	const verdict = judge(state, plays);
	if ('refusedAt' in verdict) {
		// Of two who lack something one may keep what would do for the other: a missing slot takes nothing out of
		// hands, but the enumeration gives it to the other all the same.
		const section = plan.sections[verdict.refusedAt];
		const lacking = plan.slots.filter((one) => one.section === section && one.isMissing);
		expect({ refusedAt: verdict.refusedAt, areTwo: lacking.length > 1 }).toMatchObject({
			areTwo: true,
		});
		return null;
	}
	judged += 1;
	expect(figures(plan.cost)).toEqual(figures(verdict.cost));
	return verdict.cost;
}

/** The least cost is no better than the bound of a plan that is not proved, and no worse than what that costs. */
function isWithinBound({ bound, cost }: Plan, best: Cost): void {
	const upToLateness = PLAN_CRITERIA.slice(0, PLAN_CRITERIA.indexOf('lateness') + 1);
	for (const name of upToLateness) {
		expect(best[name]).toBeLessThanOrEqual(cost[name]);
		if (bound !== null) expect(best[name]).toBeGreaterThanOrEqual(bound[name]);
		if (best[name] < cost[name]) {
			expect(bound).not.toBeNull();
			return;
		}
	}
}

function figures(cost: Omit<Cost, 'changed'>): readonly number[] {
	return PLAN_CRITERIA.map((name) => cost[name]);
}

/** A row that names an instrument names one that is there: not out, not faulty, not kept by somebody else. */
function rowsCanBeHad(night: Night, { rows }: Said): void {
	const { instruments, players } = night.session();
	const { handOvers, work, sections } = night.plan();
	for (const { kind, player, instrument } of rows) {
		if (kind !== 'hand-over' || instrument === null) continue;
		const { value, context } = instruments[instrument]!;
		expect(['racked', 'staged', 'inHands', 'onBench']).toContain(value);
		expect(context.faults).toEqual([]);
		const gets = handOvers.find((one) => one.player === player && one.instrument === instrument);
		const at = gets!.section.startMs;
		// Whoever it is restrung for: from there on it can be had.
		const isRestrung = work.some(
			(one) => one.instrument === instrument && one.job === 'restring' && one.section.startMs <= at,
		);
		if (players[player]!.holds !== instrument && !isRestrung) {
			expect(context.stringsDown).toEqual([]);
		}
		const holder = Object.keys(players).find((id) => players[id]!.holds === instrument);
		if (holder === undefined || holder === player) continue;
		// An interval takes all from hands.
		if (sections.some(({ isAfterInterval, startMs }) => isAfterInterval && startMs <= at)) continue;
		const leaves = handOvers.find((one) => one.player === holder && one.from === instrument);
		expect(leaves?.section.startMs ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(at);
	}
	isDrawn(night, rows);
}

/** The first row is in tall letters on the screen that people look at, alone or beside others. */
function isDrawn(night: Night, [first]: Said['rows']): void {
	const state = night.screen();
	if (state.view !== 'stage' || state.isDark || first?.kind !== 'hand-over') return;
	const slot = state.session.show.instruments.find(({ id }) => id === first.instrument)?.slot;
	if (slot == null) return;
	const lines = drawScreen(state, { columns: 80, rows: 24 }, { isAscii: false }).map(rowText);
	const glyphs = tallRows(slot, { style: 'bright', scale: 1, isAscii: false }).map(rowText);
	const width = tallWidth(slot);
	const isThere = (at: number, column: number): boolean =>
		glyphs.every(
			(glyph, i) =>
				(lines[at + i] ?? '').slice(column, column + width).trimEnd() === glyph.trimEnd(),
		);
	// One card is as wide as the screen, two and three share it; each begins a cell after its edge.
	const columns = [1, 41, 28, 55];
	drawn += 1;
	expect(lines.some((_, at) => columns.some((column) => isThere(at, column)))).toBe(true);
}
