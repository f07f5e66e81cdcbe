// Nights that the pages are looked at with: a club night with two breaks, a song called by the singer, a change of packs and
// a missed cue, and a theatre night that was left open.

import { readFileSync } from 'node:fs';
import { type NightReport, nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import { nightOf, ZERO_MS } from './script-night.ts';

/** The report of the night of this script of tests/rehearsals. */
export function scriptReport(name: string): NightReport {
	const script = readFileSync(new URL(`../rehearsals/${name}`, import.meta.url), 'utf8');
	const { show, records } = nightOf(name, script);
	return nightReport({
		show,
		night: '2026-06-12',
		isRehearsal: false,
		...nightSteps(show, records),
		plannedZeroMs: ZERO_MS,
		dayOffsetMinutes: 510,
		damage: [],
	});
}

export const CLUB_NIGHT = 'club-night.txt';
export const THEATRE_NIGHT = 'theatre.txt';
