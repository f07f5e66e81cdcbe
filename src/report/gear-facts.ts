// What a night says of instruments and their strings, to those who look at many nights: what broke, how long each was in
// hands, when it was restrung.

import { type GearId, gearId } from '../gear/gear-id.ts';
import type { InstrumentNight, NightFacts, StringBreak } from '../history/night-facts.ts';
import type { NightMs } from '../journal/entry.ts';
import { findInstrument } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import type { Lanes } from './lanes.ts';
import { type NightStep, restringsOf } from './night-steps.ts';
import type { ReportInstrument } from './report-gear.ts';
import type { ReportIncident } from './report-incidents.ts';

/** The parts of a night's report that tell of instruments. */
type GearReport = {
	readonly incidents: readonly ReportIncident[];
	readonly instruments: readonly ReportInstrument[];
	readonly lanes: Lanes;
};

type Asked = {
	readonly report: GearReport;
	readonly steps: readonly NightStep[];
	/** Folder of the show file, by which instruments without a `gear` of their own are known. */
	readonly folder: string;
};

/** Empty lists where nothing happened in the night. */
export function gearFacts({
	report,
	steps,
	folder,
}: Asked): Pick<NightFacts, 'breaks' | 'instruments'> {
	const last = steps.at(-1)?.after;
	if (last === undefined) return { breaks: [], instruments: [] };
	const gearOf = (id: string): GearId => gearId(findInstrument(last, id) ?? { id }, folder);
	return {
		breaks: breaksOf(last, report, gearOf),
		instruments: instrumentsOf(last, { report, steps, gearOf }),
	};
}

function breaksOf(
	last: Session,
	{ incidents }: GearReport,
	gearOf: (id: string) => GearId,
): readonly StringBreak[] {
	return incidents.flatMap((one): StringBreak[] => {
		const { instrumentId, string } = one;
		if (one.kind !== 'string-break' || instrumentId === null) return [];
		const gauges = findInstrument(last, instrumentId)?.strings ?? [];
		return [
			{
				gear: gearOf(instrumentId),
				shown: one.instrument ?? instrumentId,
				player: one.player,
				string,
				gauge: string === null ? null : (gauges[string - 1] ?? null),
				silentSeconds: one.silenceSeconds,
			},
		];
	});
}

function instrumentsOf(
	last: Session,
	{
		report,
		steps,
		gearOf,
	}: Omit<Asked, 'folder'> & {
		readonly gearOf: (id: string) => GearId;
	},
): readonly InstrumentNight[] {
	const restrings = restringsOf(steps);
	return report.instruments.flatMap((one): InstrumentNight[] => {
		const instrument = findInstrument(last, one.id);
		if (instrument === null) return [];
		const hoursUntil = (untilMs: NightMs): number =>
			(report.lanes.instruments[one.id] ?? [])
				.filter(({ place }) => place === 'hands')
				.reduce((sum, { fromMs, toMs }) => sum + Math.max(0, Math.min(toMs, untilMs) - fromMs), 0) /
			3_600_000;
		return [
			{
				...{ gear: gearOf(one.id), shown: one.instrument, kind: instrument.kind },
				strung: instrument.strung,
				hours: hoursUntil(Number.POSITIVE_INFINITY),
				restrings: (restrings.get(one.id) ?? []).flatMap(({ entry, before, after }) => {
					const was = before.instruments[one.id];
					if (was === undefined || was === after.instruments[one.id]) return [];
					return [{ afterHours: hoursUntil(entry.at), strings: was.context.stringsDown }];
				}),
			},
		];
	});
}
