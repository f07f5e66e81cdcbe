// Who reads a report, and what of a night is theirs to read.

import type { NightReport } from './night-report.ts';

export type Reader =
	| { readonly who: 'tech' }
	| { readonly who: 'production' }
	/** All hired instruments, or those of one firm. */
	| { readonly who: 'hire'; readonly firm: string | null }
	| { readonly who: 'player'; readonly id: string };

/**
 * The night as this reader gets it: all of it, or for a player and a hire firm their own instruments alone, without what
 * was written for others.
 */
export function forReader(report: NightReport, reader: Reader): NightReport {
	if (reader.who === 'player') return forPlayer(report, reader.id);
	return reader.who === 'hire' ? forHire(report, reader.firm) : report;
}

/** The firms that lend instruments of this night, each once, in the order of the show. */
export function hireFirms({ instruments }: NightReport): readonly string[] {
	return [...new Set(instruments.flatMap(({ hiredFrom }) => hiredFrom ?? []))];
}

function forPlayer(report: NightReport, id: string): NightReport {
	const spans = report.lanes.players[id] ?? [];
	const had = new Set(spans.flatMap(({ instrument }) => instrument ?? []));
	const isOwn = ({ playerId }: { readonly playerId: string | null }): boolean => playerId === id;
	const own = withInstruments(report, (instrument) => had.has(instrument));
	return {
		...own,
		players: report.players.filter((one) => one.id === id),
		lanes: { ...own.lanes, players: { [id]: spans } },
		handOvers: report.handOvers.filter(isOwn),
		wrongHolds: report.wrongHolds.filter(isOwn),
		otherThanAsked: report.otherThanAsked.filter(isOwn),
		incidents: report.incidents.filter(
			(one) => isOwn(one) || (one.playerId === null && had.has(one.instrumentId ?? '')),
		),
		packs: report.packs.filter(isOwn),
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
	const own = withInstruments(report, (id) => hired.has(id));
	return {
		...own,
		players: [],
		lanes: { ...own.lanes, players: {} },
		handOvers: report.handOvers.filter(isOf),
		incidents: report.incidents.filter(isOf),
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
	const repairs = report.repairs.filter(isOf);
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
		repairs,
		tomorrow: repairs.map(({ words }) => words),
		stringsBroken: report.stringsBroken.filter(isOf),
		missedCues: [],
		memos: [],
		boardsCorrected: [],
		beforeShow: [],
		gaps: [],
		damage: [],
		cautions: [],
	};
}
