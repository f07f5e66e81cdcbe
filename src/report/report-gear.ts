// What a night says of each instrument and pack: what it was in hands for, how it stands at the end, what broke.

import { cleanText } from '../base/clean-text.ts';
import type { Entry, NightMs } from '../journal/entry.ts';
import type { Session } from '../session/session.ts';
import { wearersOf } from '../session/shared-packs.ts';
import { packFor } from '../session/suspect-packs.ts';
import type { Show } from '../showfile/show.ts';
import { packName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import type { LanePlace, Lanes } from './lanes.ts';
import { type NightStep, restringsOf } from './night-steps.ts';
import { type ReportTime, secondsOf } from './report-time.ts';
import { stringHoursAt } from './string-hours.ts';

export type ReportInstrument = {
	readonly id: string;
	/** Slot and name. */
	readonly instrument: string;
	readonly slot: string | null;
	readonly kind: string;
	readonly serial: string | null;
	readonly owner: string | null;
	readonly hiredFrom: string | null;
	/** In hands tonight, by the lanes. */
	readonly secondsInHands: number;
	/** Hours in hands of the strings that are on at the end; null where nobody knows. */
	readonly stringHours: number | null;
	/** How it stands at the end of what is known. */
	readonly place: LanePlace;
	readonly tuning: string;
	readonly capo: number;
	/** Numbers of strings still down; null for one that nobody named. */
	readonly stringsDown: readonly (number | null)[];
	readonly faults: readonly string[];
	/** Numbers of the incidents that were on it. */
	readonly incidents: readonly number[];
	readonly restrings: number;
};

export type ReportPack = {
	readonly at: ReportTime;
	/** `left-off`: it belongs to what was handed and did not go on with it. */
	readonly what: 'changed' | 'suspected' | 'cleared' | 'fresh-battery' | 'left-off';
	/** Whose it was or became; null for one that was cleared, or that nobody wore. */
	readonly player: string | null;
	readonly playerId: string | null;
	readonly pack: string;
	readonly packId: string;
	/** What was worn before, and with one that was left off still is; null where nothing was, or nothing changed. */
	readonly from: string | null;
	/** Who played on the one that was left off; null for any other, and for one in doubt. */
	readonly wearer: string | null;
};

/** In the order of the show. */
export function reportInstruments(
	show: Show,
	last: Session,
	{
		lanes,
		steps,
		incidents,
	}: {
		readonly lanes: Lanes;
		readonly steps: readonly NightStep[];
		readonly incidents: readonly { readonly id: number; readonly instrumentId: string | null }[];
	},
): readonly ReportInstrument[] {
	const restrings = restringsOf(steps);
	return show.instruments.flatMap((one): ReportInstrument[] => {
		const state = last.instruments[one.id];
		if (state === undefined) return [];
		const spans = lanes.instruments[one.id] ?? [];
		const inHandsMs = spans
			.filter(({ place }) => place === 'hands')
			.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);
		const { tuning, capo, stringsDown, faults } = state.context;
		return [
			{
				id: one.id,
				instrument: cleanText(shownInstrument(show, one.id)),
				slot: one.slot,
				kind: one.kind,
				serial: textOrNull(one.serial),
				owner: textOrNull(one.owner),
				hiredFrom: textOrNull(one.hiredFrom),
				secondsInHands: secondsOf(inHandsMs),
				stringHours: stringHoursAt(state, lanes.toMs),
				place: spans.at(-1)?.place ?? 'rack',
				tuning: cleanText(tuning.name),
				capo,
				stringsDown,
				faults: faults.map(cleanText),
				incidents: incidents
					.filter(({ instrumentId }) => instrumentId === one.id)
					.map(({ id }) => id),
				restrings: restrings.get(one.id)?.length ?? 0,
			},
		];
	});
}

function textOrNull(text: string | undefined): string | null {
	return text === undefined ? null : cleanText(text);
}

/** Every change, doubt, clearing and fresh battery of a wireless pack that was typed, and each that was left off, in order. */
export function reportPacks(
	show: Show,
	steps: readonly NightStep[],
	timeAt: (atMs: NightMs) => ReportTime,
): readonly ReportPack[] {
	return steps.flatMap((step): ReportPack[] => {
		const { entry, before } = step;
		const leftOff = packLeftOff(show, step, steps);
		if (leftOff !== null) return [{ at: timeAt(entry.at), ...leftOff }];
		const what = PACK_ENTRIES[entry.k];
		const pack = packOf(entry);
		if (what === undefined || pack === null) return [];
		const wearer = show.players.find(({ id }) => before.players[id]?.pack === pack)?.id ?? null;
		const isBattery = entry.k === 'battery-changed';
		const playerId = isBattery ? wearer : 'player' in entry ? entry.player : null;
		const worn = playerId === null ? null : (before.players[playerId]?.pack ?? null);
		return [
			{
				at: timeAt(entry.at),
				what,
				player: playerId === null ? null : cleanText(playerName(show, playerId)),
				playerId,
				pack: cleanText(packName(show, pack)),
				packId: pack,
				from: what !== 'changed' || worn === null ? null : cleanText(packName(show, worn)),
				wearer: null,
			},
		];
	});
}

/** The pack that belongs to what an entry hands, where the player kept another on, or none; null where it went on. */
function packLeftOff(
	show: Show,
	{ entry, of, before, after }: NightStep,
	steps: readonly NightStep[],
): Omit<ReportPack, 'at'> | null {
	if (entry.k !== 'handed-over' && entry.k !== 'hand-over-corrected') return null;
	const { player, instrument } = entry;
	const pack = instrument === null ? null : packFor(before, player, instrument);
	const worn = after.players[player]?.pack ?? null;
	const isKept = worn === null || worn === before.players[player]?.pack;
	if (pack === null || worn === pack || !isKept) return null;
	// Another hand-over of the same moment may have put it on somebody.
	const then = steps.findLast((one) => one.of === of)?.after ?? after;
	const wearer = wearersOf(then, pack).find(({ id }) => then.players[id]?.holds != null);
	return {
		what: 'left-off',
		player: cleanText(playerName(show, player)),
		playerId: player,
		pack: cleanText(packName(show, pack)),
		packId: pack,
		from: worn === null ? null : cleanText(packName(show, worn)),
		wearer: wearer === undefined ? null : cleanText(wearer.name),
	};
}

/** The pack that an entry about packs alone is of. */
function packOf(entry: Entry): string | null {
	if (entry.k === 'battery-changed') return entry.what === 'pack' ? entry.id : null;
	return 'pack' in entry ? (entry.pack ?? null) : null;
}

const PACK_ENTRIES: Readonly<Record<string, ReportPack['what']>> = {
	'pack-changed': 'changed',
	'pack-suspected': 'suspected',
	'pack-cleared': 'cleared',
	'battery-changed': 'fresh-battery',
};
