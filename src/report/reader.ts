// Who reads a report, and what of a night is theirs to read.

import { stuckPedal } from '../words/report.ts';
import type { NightReport } from './night-report.ts';
import type { ReportIncident } from './report-incidents.ts';

export type Reader =
	| { readonly who: 'tech' }
	| { readonly who: 'production' }
	/** All hired instruments, or those of one firm. */
	| { readonly who: 'hire'; readonly firm: string | null }
	| { readonly who: 'player'; readonly id: string };

/**
 * The night as this reader gets it: all of it for the technician; for production without what was typed of incidents; for
 * a player and a hire firm their own instruments alone, without what was written for others.
 */
export function forReader(report: NightReport, reader: Reader): NightReport {
	if (reader.who === 'tech') return report;
	// What was typed in the dark is the technician's own; what others are to know of it is a remark.
	const told = { ...report, incidents: report.incidents.map(withoutTyped) };
	if (reader.who === 'production') return told;
	return reader.who === 'player' ? forPlayer(told, reader.id) : forHire(told, reader.firm);
}

/** The firms that lend instruments of this night, each once, in the order of the show. */
export function hireFirms({ instruments }: NightReport): readonly string[] {
	return [...new Set(instruments.flatMap(({ hiredFrom }) => hiredFrom ?? []))];
}

function withoutTyped(one: ReportIncident): ReportIncident {
	return { ...one, words: one.pedal === null ? [] : [stuckPedal(one.pedal)] };
}

function forPlayer(report: NightReport, id: string): NightReport {
	const spans = report.lanes.players[id] ?? [];
	const had = new Set(spans.flatMap(({ instrument }) => instrument ?? []));
	const isOwn = ({ playerId }: { readonly playerId: string | null }): boolean => playerId === id;
	const own = withRepairs(
		withInstruments(report, (instrument) => had.has(instrument)),
		report.repairs.filter(
			(one) => isOwn(one) || (one.instrumentId !== null && had.has(one.instrumentId)),
		),
	);
	return {
		...own,
		players: report.players.filter((one) => one.id === id),
		lanes: { ...own.lanes, players: { [id]: spans } },
		handOvers: report.handOvers.filter(isOwn),
		wrongHolds: report.wrongHolds.filter(isOwn),
		otherThanAsked: report.otherThanAsked.filter(isOwn),
		// What broke on the rack did not break in their hands; what is left to do of it stands among the repairs.
		incidents: report.incidents.filter(isOwn),
		packs: report.packs.filter(isOwn),
		missedCues: report.missedCues.filter(({ playerIds }) => playerIds.includes(id)),
	};
}

function forHire(report: NightReport, firm: string | null): NightReport {
	const hired = new Set(
		report.instruments
			.filter(({ hiredFrom }) => hiredFrom !== null && (firm === null || hiredFrom === firm))
			.map(({ id }) => id),
	);
	const isOf = ({ instrumentId }: { readonly instrumentId: string | null }): boolean =>
		instrumentId !== null && hired.has(instrumentId);
	const own = withRepairs(
		withInstruments(report, (id) => hired.has(id)),
		report.repairs.filter(isOf),
	);
	return {
		...own,
		players: [],
		lanes: {
			...own.lanes,
			players: {},
			instruments: Object.fromEntries(
				Object.entries(own.lanes.instruments).map(([id, spans]) => [
					id,
					spans.map((span) => ({ ...span, player: null })),
				]),
			),
		},
		// Who had it, what was played instead and how long that took are no business of the firm.
		incidents: report.incidents.filter(isOf).map((one) => ({
			...one,
			...{ player: null, playerId: null, standIn: null, standInId: null },
			...{ silenceSeconds: null, soundAt: null },
			later: { ...one.later, songsOnOther: [] },
		})),
		handOvers: [],
		work: [],
		wrongHolds: [],
		otherThanAsked: [],
		packs: [],
		timing: { ...report.timing, lost: [] },
	};
}

/** With these instruments alone, and without what the technician noted for the technician. */
function withInstruments(report: NightReport, has: (id: string) => boolean): NightReport {
	const isOf = ({ instrumentId }: { readonly instrumentId: string | null }): boolean =>
		instrumentId !== null && has(instrumentId);
	const { instruments } = report.lanes;
	return {
		...report,
		songs: report.songs.map((song) => ({ ...song, happened: [] })),
		instruments: report.instruments.filter(({ id }) => has(id)),
		lanes: {
			...report.lanes,
			instruments: Object.fromEntries(Object.entries(instruments).filter(([id]) => has(id))),
		},
		work: report.work.filter(isOf),
		stringsBroken: report.stringsBroken.filter(isOf),
		missedCues: [],
		memos: [],
		boardsCorrected: [],
		beforeShow: [],
		gaps: [],
		damage: [],
		cautions: [],
		forNext: [],
	};
}

function withRepairs(report: NightReport, repairs: NightReport['repairs']): NightReport {
	return { ...report, repairs, tomorrow: repairs.map(({ words }) => words) };
}
