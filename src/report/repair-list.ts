// What is to be done before the next show, from how the instruments stand at the end of a night.

import { cleanText } from '../base/clean-text.ts';
import { dueHours } from '../history/due-strings.ts';
import type { NightMs } from '../journal/entry.ts';
import { causeOf } from '../rig/fault-now.ts';
import type { Session } from '../session/session.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { packName, pedalName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import { toBench } from '../words/fault.ts';
import { REPAIRS } from '../words/report.ts';
import type { ReportPack } from './report-gear.ts';
import { stringHoursAt } from './string-hours.ts';

export type Repair = {
	/** Null for a pedal or a pack. */
	readonly instrumentId: string | null;
	/** Whose pedal it is, or who wore the pack last; null where it is nobody's. */
	readonly playerId: string | null;
	readonly words: string;
};

/** A sentence for each instrument, pedal and pack that needs a hand at the end, in the order of the show file. */
export function repairList(
	show: Show,
	session: Session,
	{ packs, endMs }: { readonly packs: readonly ReportPack[]; readonly endMs: NightMs },
): readonly Repair[] {
	const other = (text: string, playerId: string | null): Repair => ({
		...{ instrumentId: null, playerId, words: cleanText(text) },
	});
	return [
		...show.instruments.flatMap((instrument): Repair[] => {
			const needs = needsOf(instrument, session, endMs);
			const name = shownInstrument(show, instrument.id);
			if (needs.length === 0) return [];
			const words = cleanText(`${name}: ${needs.join('; ')}`);
			return [{ instrumentId: instrument.id, playerId: null, words }];
		}),
		...Object.entries(session.boards).flatMap(([player, { context }]) =>
			context.stuck.map((pedal) => {
				const isOn = context.pedals[pedal]?.on === true;
				const name = pedalName(show, player, pedal);
				return other(REPAIRS.pedal(playerName(show, player), name, isOn), player);
			}),
		),
		...causesFound(session).map((words) => other(words, null)),
		...session.suspectPacks.map((pack) => {
			const worn = packs.findLast(
				({ what, packId, playerId }) => what !== 'left-off' && packId === pack && playerId !== null,
			);
			return other(REPAIRS.pack(packName(show, pack)), worn?.playerId ?? null);
		}),
	];
}

function needsOf(instrument: Instrument, session: Session, endMs: NightMs): string[] {
	const state = session.instruments[instrument.id];
	if (!state) return [];
	const { stringsDown, faults } = state.context;
	const stringHours = stringHoursAt(state, endMs);
	const isStillBroken = stringsDown.length > 0;
	const isDue = stringHours !== null && stringHours >= dueHours(instrument.kind);
	const broke = session.incidents.filter(
		(one) => one.kind === 'string-break' && one.instrument === instrument.id,
	).length;
	return [
		...(isStillBroken ? [REPAIRS.restring(stringsDown)] : []),
		...(broke > 1 ? [REPAIRS.burr] : []),
		...(!isStillBroken && isDue ? [REPAIRS.newStrings(Math.floor(stringHours))] : []),
		...faults.map(REPAIRS.repair),
		...(state.value === 'out' && faults.length === 0 ? [REPAIRS.wasOut] : []),
	];
}

/** Each part that was a cause tonight, once; a suspect pack and an instrument on the bench have lines of their own. */
function causesFound(session: Session): readonly string[] {
	const lines = session.faults.flatMap((fault) => {
		const { part, instrument } = fault;
		if (part === null) return [];
		const { is } = causeOf(session, fault, { id: part });
		const isOnBench = (session.instruments[instrument ?? '']?.context.faults.length ?? 0) > 0;
		return is === 'pack' || (is === 'instrument' && isOnBench)
			? []
			: [toBench(session, fault, part)];
	});
	return [...new Set(lines)];
}
