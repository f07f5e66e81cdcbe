// From shaped words to a show: every id followed, every tuning read, every default filled in. What the
// rest of the program gets has nothing left to look up.

import { cleanText } from '../base/clean-text.ts';
import { INSTRUMENT_KINDS } from '../tuning/kind.ts';
import { readTuning } from '../tuning/tuning.ts';
import type { KnownIds } from './linking.ts';
import { Linking } from './linking.ts';
import { playerKeys } from './player-keys.ts';
import { offsetsOf, stageOf, unitMassOf } from './resolve-bench.ts';
import { resolveInstruments } from './resolve-instruments.ts';
import { boardsOf, rigsOf } from './resolve-rig.ts';
import { resolveSet } from './resolve-set.ts';
import { resolveSong } from './resolve-song.ts';
import type { ShapedShow } from './shape.ts';
import type { Pack, Player, Show, Tech, Times } from './show.ts';
import type { KeyRefusal } from './show-fault.ts';
import type { SourceNode } from './source-node.ts';
import { writtenSeconds } from './work-times.ts';

/** What a show is resolved from. */
export type Unresolved = {
	readonly shaped: ShapedShow;
	readonly root: SourceNode;
	readonly known: KnownIds;
	/** False when a file of the show is missing, so that an unknown id may be in it. */
	readonly isWhole: boolean;
	/** The title of a show that gives itself none. */
	readonly fallbackTitle: string;
};

// How long "ready" lasts indoors, and on strings with less than an hour in hands: common practice, no source.
const RECHECK_AFTER = 15 * 60;
const RECHECK_NEW = 5 * 60;
/** ISO 16:1975, the standard tuning frequency. */
const REFERENCE = 440;
const DAY_MINUTES = 1440;
/** A curfew before this hour, where no start is given, is past midnight. */
const SMALL_HOURS_MINUTES = 6 * 60;

/** The show, and what in it leads nowhere; with problems it is not to be used. */
export function resolveShow(unresolved: Unresolved): { show: Show; problems: Linking['problems'] } {
	const { shaped, root, known, isWhole } = unresolved;
	const abbreviations = cleanKeys(shaped.abbreviations ?? {});
	const linking = new Linking({ root, known, isWhole, abbreviations });
	refuseEmptyNames(abbreviations, linking);
	const links = { linking, supplies: shaped.supplies ?? [] };
	const instruments = resolveInstruments(shaped, links);
	const kinds = new Map((shaped.instruments ?? []).map(({ id, kind }) => [id, kind]));
	const songs = (shaped.songs ?? []).map((song, index) =>
		resolveSong(song, ['songs', index], { linking, kinds }),
	);
	const { startMinutes, curfewMinutes } = dayTimes(shaped.show ?? {});
	const show: Show = {
		title: shaped.show?.title ?? unresolved.fallbackTitle,
		venue: shaped.show?.venue ?? null,
		date: shaped.show?.date ?? null,
		startMinutes,
		curfewMinutes,
		referenceHertz: shaped.show?.reference ?? REFERENCE,
		staleAfterSeconds: shaped.show?.['recheck-after'] ?? RECHECK_AFTER,
		staleNewSeconds: shaped.show?.['recheck-new'] ?? RECHECK_NEW,
		techs: (shaped.techs ?? []).map(({ id, name }): Tech => ({ id, name: name ?? id })),
		players: resolvePlayers(shaped, linking),
		instruments,
		songs,
		set: resolveSet(shaped.set ?? [], linking),
		boards: boardsOf(shaped, links),
		packs: (shaped.packs ?? []).map(
			({ id, name, channel, battery }): Pack => ({
				id,
				name: name ?? null,
				channel: channel ?? null,
				...(battery === undefined
					? {}
					: { battery: { hours: battery.hours, used: battery.used ?? 0 } }),
			}),
		),
		times: writtenTimes(shaped.times ?? {}),
		stock: shaped.stock ?? [],
		abbreviations,
		...(shaped.gauges === undefined ? {} : { gauges: shaped.gauges }),
		...unitMassOf(shaped['unit-mass'], ['unit-mass'], linking),
		...offsetsOf(shaped.offsets, { linking, kinds }),
		...stageOf(shaped.stage),
		...rigsOf(shaped, links),
		...(shaped.show?.notes === undefined ? {} : { notes: shaped.show.notes }),
	};
	return { show, problems: linking.problems };
}

/** A short name may mean a tuning on one kind of instrument only, but it must mean one somewhere. */
function refuseEmptyNames(abbreviations: Readonly<Record<string, string>>, linking: Linking): void {
	for (const [short, name] of Object.entries(abbreviations)) {
		if (INSTRUMENT_KINDS.some((kind) => readTuning(name, kind, {}).ok)) continue;
		linking.complain(['abbreviations', short], {
			code: 'unknown-tuning',
			text: name,
			short,
		});
	}
}

function resolvePlayers(shaped: ShapedShow, linking: Linking): Player[] {
	const players = shaped.players ?? [];
	const slots = new Set((shaped.instruments ?? []).flatMap(({ slot }) => slot ?? []));
	const wishes = players.map(({ id, name, key }) => ({ name: name ?? id, key }));
	const keys = playerKeys(wishes, slots);
	return players.map(({ id, name, plays, tech, key: wished }, index) => {
		const path = ['players', index];
		if (tech !== undefined) linking.follow('techs', tech, [...path, 'tech']);
		const key = keys[index] ?? 'none-left';
		if (key.length > 1) {
			linking.complain([...path, 'key'], {
				code: 'player-key',
				id,
				refusal: key as KeyRefusal,
				wished: wished ?? null,
			});
		}
		return { id, name: name ?? id, plays: plays ?? null, tech: tech ?? null, key };
	});
}

function cleanKeys(texts: Readonly<Record<string, string>>): Record<string, string> {
	return Object.fromEntries(Object.entries(texts).map(([key, text]) => [cleanText(key), text]));
}

function writtenTimes(shaped: NonNullable<ShapedShow['times']>): Times {
	const times: Record<string, Record<string, number>> = {};
	for (const [kind, given] of Object.entries(shaped)) times[kind] = writtenSeconds(given ?? {});
	return times;
}

function dayTimes(show: NonNullable<ShapedShow['show']>): {
	startMinutes: number | null;
	curfewMinutes: number | null;
} {
	const startMinutes = show.start ?? null;
	if (show.curfew === undefined) return { startMinutes, curfewMinutes: null };
	const isPastMidnight = show.curfew < (startMinutes ?? SMALL_HOURS_MINUTES);
	return { startMinutes, curfewMinutes: show.curfew + (isPastMidnight ? DAY_MINUTES : 0) };
}
