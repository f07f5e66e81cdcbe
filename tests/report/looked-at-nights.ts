// Nights that the pages are looked at with: a club night with two breaks, a song called by the singer, a change of packs and
// a missed cue, and a theatre night that was left open.

import { readFileSync } from 'node:fs';
import { type NightReport, nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import type { Reader } from '../../src/report/reader.ts';
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
const THEATRE_NIGHT = 'theatre.txt';

/** A report with the first two instruments hired. */
function withHired(report: NightReport): NightReport {
	const instruments = report.instruments.map((one, place) =>
		place < 2 ? { ...one, hiredFrom: 'Pier Backline', serial: '00417', owner: 'Pier' } : one,
	);
	return { ...report, instruments };
}

export const TECH: Reader = { who: 'tech' };

/** Both nights for every kind of reader: a name, the report, who reads it. */
export function pages(): readonly (readonly [string, NightReport, Reader])[] {
	return [CLUB_NIGHT, THEATRE_NIGHT].flatMap((name) => {
		const report = withHired(scriptReport(name));
		const player: Reader = { who: 'player', id: report.players[0]?.id ?? '' };
		const readers: readonly Reader[] = [
			TECH,
			{ who: 'production' },
			player,
			{ who: 'hire', firm: null },
		];
		return readers.map((reader) => [`${name} for ${reader.who}`, report, reader] as const);
	});
}

const NAMES = new Set([
	'title',
	'venue',
	'name',
	'instrument',
	'song',
	'player',
	'words',
	'tuning',
]);

/** A name in place of every name of the report. */
export function renamed(report: NightReport, name: string): NightReport {
	return JSON.parse(JSON.stringify(report), (key, value) =>
		typeof value === 'string' && NAMES.has(key) ? name : value,
	) as NightReport;
}
