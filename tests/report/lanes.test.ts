// The lanes of a night cover it exactly: for every rehearsal script, no gap and no overlap, and at every moment what
// they say is what the fold of the journal up to there says.

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { lanesOf } from '../../src/report/lanes.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import { readinessOf } from '../../src/session/readiness.ts';
import { nightOf } from './script-night.ts';

const SCRIPTS = new URL('../rehearsals/', import.meta.url);
const names = readdirSync(SCRIPTS).filter((name) => name.endsWith('.txt'));

describe('the lanes of a rehearsed night', () => {
	test.each(names)('%s', (name) => {
		const { show, records } = nightOf(name, readFileSync(new URL(name, SCRIPTS), 'utf8'));
		const { opened, steps } = nightSteps(show, records);
		const lanes = lanesOf(opened, steps);
		const all = [...Object.values(lanes.instruments), ...Object.values(lanes.players)];
		for (const spans of all) {
			expect(spans[0]?.fromMs).toBe(lanes.fromMs);
			expect(spans.at(-1)?.toMs).toBe(lanes.toMs);
			for (const [at, span] of spans.entries()) {
				expect(span.toMs).toBeGreaterThan(span.fromMs);
				expect(span.fromMs).toBe(at === 0 ? lanes.fromMs : spans[at - 1]?.toMs);
			}
		}
		// What a correction says was so since the hand-over, which the fold up to there could not know.
		const corrected = steps.flatMap(({ entry, before }) =>
			entry.k === 'hand-over-corrected'
				? [{ fromMs: before.players[entry.player]?.correctable?.atMs ?? 0, toMs: entry.at }]
				: [],
		);
		for (let atMs = lanes.fromMs; atMs < lanes.toMs; atMs += 17_000) {
			if (corrected.some(({ fromMs, toMs }) => fromMs <= atMs && atMs < toMs)) continue;
			const session = steps.findLast(({ entry }) => entry.at <= atMs)?.after ?? opened;
			for (const [id, spans] of Object.entries(lanes.instruments)) {
				const span = spans.find(({ fromMs, toMs }) => fromMs <= atMs && atMs < toMs);
				const { isReady, isStale } = readinessOf(session, id, atMs);
				expect(span?.place === 'hands').toBe(
					Object.values(session.players).some(({ holds }) => holds === id),
				);
				if (span?.readiness !== null) {
					expect(span?.readiness).toBe(isReady ? 'ready' : isStale ? 'stale' : 'not-ready');
				}
			}
		}
	});
});
