// A night read from its journal's records by rules of its own: it shares no code with the session or the report. The
// rules are those of the show file and of what each entry says, as plainly as they can be written.

import type { Entry, NightMs } from '../../src/journal/entry.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import type { Show } from '../../src/showfile/show.ts';

type Run = { began: NightMs; ended: NightMs | null; how: string | null };
type Given = {
	/** Of its record. */
	id: string;
	at: NightMs;
	player: string;
	instrument: string | null;
	by: string;
	isCorrected: boolean;
	/** From the last song's end, or the call of the next, between songs; null elsewhere. */
	sinceCall: number | null;
};
type Trouble = {
	id: string;
	at: NightMs;
	kind: string | null;
	player: string | null;
	instrument: string | null;
	string: number | null;
	standIn: string | null;
	silence: number | null;
	words: string[];
};
/** A search for what took a player's sound away, while it is open. */
type Search = {
	id: string;
	trouble: Trouble;
	player: string;
	instrument: string | null;
	isSilent: boolean;
	isHeard: boolean;
};
type Held = { from: NightMs; to: NightMs; instrument: string | null };

export type IndependentNight = {
	readonly runs: ReadonlyMap<string, readonly Run[]>;
	readonly given: readonly Given[];
	readonly troubles: readonly Trouble[];
	/** What each player had, as intervals over the night. */
	readonly held: Readonly<Record<string, readonly Held[]>>;
	/** Instruments made ready, in order. */
	readonly ready: readonly { readonly at: NightMs; readonly instrument: string }[];
	readonly moved: ReadonlySet<string>;
	readonly memos: readonly string[];
	readonly pedals: number;
	readonly packs: readonly string[];
	readonly takenBack: number;
};

type Effective = { readonly id: string; readonly entry: Entry };

/** The entries that count, with the identity of their record, and how many steps do not. */
function effective(records: readonly JournalRecord<Entry>[]): {
	readonly all: readonly Effective[];
	readonly takenBack: number;
} {
	const aside = new Set<string>();
	for (const { e } of records) {
		for (const entry of e) {
			if (entry.k === 'taken-back') aside.add(entry.of);
			if (entry.k === 'put-back') aside.delete(entry.of);
		}
	}
	const all = records.flatMap(({ id, e }) => {
		const [first] = e;
		const step = first?.k === 'plan-told' ? (first.of ?? id) : id;
		const isOfUndo = first?.k === 'taken-back' || first?.k === 'put-back';
		return aside.has(step) || isOfUndo ? [] : e.map((entry) => ({ id, entry }));
	});
	return { all, takenBack: aside.size };
}

/** Read from the records in their order. */
export function independentNight(
	show: Show,
	records: readonly JournalRecord<Entry>[],
): IndependentNight {
	const { all, takenBack } = effective(records);
	const runs = new Map<string, Run[]>();
	const given: Given[] = [];
	const troubles: Trouble[] = [];
	const ready: { at: NightMs; instrument: string }[] = [];
	const moved = new Set<string>();
	const memos: string[] = [];
	const packs: string[] = [];
	let pedals = 0;
	const hands: Record<string, string | null> = {};
	const held: Record<string, Held[]> = {};
	for (const { id } of show.players) {
		hands[id] = null;
		held[id] = [];
	}
	const down = new Map<string, number>();
	const searches: Search[] = [];
	const out = new Set<string>();
	let on: string | null = null;
	let now = all[0]?.entry.at ?? 0;
	let lastEnd: NightMs | null = null;
	let called: NightMs | null = null;

	const empty = (instrument: string): void => {
		for (const [player, has] of Object.entries(hands)) if (has === instrument) hands[player] = null;
	};
	const put = (player: string, instrument: string | null): void => {
		if (instrument !== null) empty(instrument);
		hands[player] = instrument;
	};
	const blank = (id: string, at: NightMs): Trouble => ({
		...{ id, at, kind: null, player: null, instrument: null, string: null },
		...{ standIn: null, silence: null, words: [] },
	});

	/** Sound is back, or the song is over without it: counted where the song in which it went is still on. */
	const soundBack = ({ trouble, isSilent }: Search, at: NightMs): void => {
		const began = on === null ? null : (runs.get(on)?.at(-1)?.began ?? null);
		const isSameSong = began !== null && began <= trouble.at;
		if (isSilent && isSameSong) trouble.silence ??= (at - trouble.at) / 1000;
	};
	const hear = (fault: string, at: NightMs): void => {
		const search = searches.find((one) => one.id === fault);
		if (search === undefined || search.isHeard) return;
		search.isHeard = true;
		const holds = hands[search.player] ?? null;
		if (holds !== search.instrument) search.trouble.standIn = holds;
		soundBack(search, at);
	};

	for (const { id, entry } of all) {
		if (entry.at > now) {
			for (const [player, instrument] of Object.entries(hands)) {
				const spans = held[player] ?? [];
				const last = spans.at(-1);
				if (last && last.instrument === instrument) last.to = entry.at;
				else spans.push({ from: now, to: entry.at, instrument });
			}
			now = entry.at;
		}
		switch (entry.k) {
			case 'song-began': {
				on = entry.item;
				called = null;
				const own = runs.get(entry.item) ?? [];
				own.push({ began: entry.at, ended: null, how: null });
				runs.set(entry.item, own);
				break;
			}
			case 'song-ended': {
				if (on === null || (entry.item !== undefined && entry.item !== on)) break;
				for (const search of searches) if (!search.isHeard) soundBack(search, entry.at);
				const run = runs.get(on)?.at(-1);
				if (run) Object.assign(run, { ended: entry.at, how: entry.how });
				on = null;
				lastEnd = entry.at;
				break;
			}
			case 'next-chosen':
				called = entry.at;
				break;
			case 'song-moved':
				moved.add(entry.item);
				break;
			case 'handed-over': {
				const isBetween = on === null && lastEnd !== null;
				const since = isBetween ? entry.at - Math.max(lastEnd ?? 0, called ?? 0) : null;
				given.push({
					id,
					at: entry.at,
					player: entry.player,
					instrument: entry.instrument,
					by: entry.by,
					isCorrected: false,
					sinceCall: entry.incident === undefined ? since : null,
				});
				const trouble = troubles.find((one) => one.id === entry.incident);
				if (trouble) {
					trouble.standIn = entry.instrument === trouble.instrument ? null : entry.instrument;
					const began = on === null ? null : (runs.get(on)?.at(-1)?.began ?? null);
					const isSameSong = began !== null && began <= trouble.at;
					trouble.silence =
						entry.by === 'plan' && !isSameSong ? null : (entry.at - trouble.at) / 1000;
				}
				put(entry.player, entry.instrument);
				break;
			}
			case 'hand-over-corrected': {
				const last = given.findLast(({ player }) => player === entry.player);
				const before = last?.instrument ?? null;
				const isThat = entry.of === undefined || entry.of === last?.id;
				if (last && isThat && hands[entry.player] === before) {
					reallyHad(held, { player: entry.player, instrument: entry.instrument, from: last.at });
				}
				if (last) Object.assign(last, { instrument: entry.instrument, isCorrected: true });
				const trouble = troubles.findLast(
					(one) => one.player === entry.player && before !== null && one.standIn === before,
				);
				if (trouble) trouble.standIn = entry.instrument;
				put(entry.player, entry.instrument);
				break;
			}
			case 'came-back':
				empty(entry.instrument);
				break;
			case 'put-aside':
				empty(entry.instrument);
				if (entry.fault === null) out.add(entry.instrument);
				else out.delete(entry.instrument);
				break;
			case 'brought-back':
				out.delete(entry.instrument);
				break;
			case 'show-ended':
				for (const player of Object.keys(hands)) hands[player] = null;
				break;
			case 'made-ready': {
				const isBroken = (down.get(entry.instrument) ?? 0) > 0;
				const isInHands = Object.values(hands).includes(entry.instrument);
				if ((isBroken && entry.isRestrung !== true) || isInHands || out.has(entry.instrument)) {
					break;
				}
				ready.push({ at: entry.at, instrument: entry.instrument });
				if (entry.isRestrung) down.set(entry.instrument, 0);
				break;
			}
			case 'string-broke':
				down.set(entry.instrument, (down.get(entry.instrument) ?? 0) + 1);
				troubles.push({
					...blank(entry.incident ?? id, entry.at),
					kind: 'string-break',
					player: entry.player,
					instrument: entry.instrument,
				});
				break;
			case 'incident-noted':
				troubles.push(blank(entry.incident ?? id, entry.at));
				break;
			case 'fault-sought': {
				const known = troubles.find((one) => one.id === entry.incident);
				const trouble = known ?? blank(entry.incident ?? id, entry.at);
				if (known === undefined) troubles.push(trouble);
				const instrument = hands[entry.player] ?? null;
				trouble.kind ??= entry.symptom === 'silent' ? 'no-sound' : entry.symptom;
				trouble.player ??= entry.player;
				trouble.instrument ??= instrument;
				searches.push({
					...{ id, trouble, player: entry.player, instrument, isHeard: false },
					isSilent: ['silent', 'cuts-out', 'wireless'].includes(entry.symptom),
				});
				break;
			}
			case 'fault-tested':
				if (entry.isHeard === true) hear(entry.fault, entry.at);
				break;
			case 'fault-found':
				hear(entry.fault, entry.at);
				searches.splice(
					searches.findIndex((one) => one.id === entry.fault),
					1,
				);
				break;
			case 'fault-left':
				searches.splice(
					searches.findIndex((one) => one.id === entry.fault),
					1,
				);
				break;
			case 'pedal-stuck':
				troubles.push({
					...blank(entry.incident ?? id, entry.at),
					kind: 'pedal',
					player: entry.player,
				});
				break;
			case 'incident-described': {
				const trouble = troubles.find((one) => one.id === entry.incident);
				if (!trouble) break;
				trouble.string = entry.string ?? trouble.string;
				trouble.kind = entry.kind ?? trouble.kind;
				if (entry.words) trouble.words.push(entry.words);
				break;
			}
			case 'memo-written':
				memos.push(entry.words);
				break;
			case 'pedal-corrected':
				pedals += 1;
				break;
			case 'pack-changed':
			case 'pack-suspected':
			case 'pack-cleared':
				packs.push(`${entry.k} ${entry.pack}`);
				break;
		}
	}
	return { runs, given, troubles, held, ready, moved, memos, pedals, packs, takenBack };
}

/** Since then the player had this, and nobody else did. */
function reallyHad(
	held: Record<string, Held[]>,
	{ player, instrument, from }: { player: string; instrument: string | null; from: NightMs },
): void {
	for (const [id, spans] of Object.entries(held)) {
		const really = (span: Held): Held => {
			if (id === player) return { ...span, instrument };
			return span.instrument === instrument ? { ...span, instrument: null } : span;
		};
		held[id] = spans.flatMap((span) => {
			if (span.to <= from) return [span];
			if (span.from >= from) return [really(span)];
			return [{ ...span, to: from }, really({ ...span, from })];
		});
	}
}

/**
 * Where each song of the file's list falls on the show clock, in seconds: its own length, else the median of those given,
 * else 240; the file's gap, else 0 after a segue, 60 before the first of an encore, 15; an interval in place of a gap.
 */
export function plannedTimes(
	show: Show,
): readonly { readonly song: string; readonly start: number; readonly seconds: number }[] {
	const lengths = show.songs.flatMap((song) => song.lengthSeconds ?? []).sort((a, b) => a - b);
	const half = lengths.length / 2;
	const middle = [lengths[Math.ceil(half) - 1], lengths[Math.floor(half)]];
	const median = lengths.length === 0 ? 240 : ((middle[0] ?? 0) + (middle[1] ?? 0)) / 2;
	const times: { song: string; start: number; seconds: number }[] = [];
	let clock = 0;
	let before: { ends: string; isEncore: boolean } | null = null;
	let interval: number | null = null;
	for (const item of show.set) {
		if (item.kind === 'interval') {
			interval = item.seconds;
			continue;
		}
		const song = show.songs.find(({ id }) => id === item.song);
		if (!song) throw new Error(`no song ${item.song}`);
		if (before !== null) {
			const isFirstEncore = item.isEncore && !before.isEncore;
			const usual = isFirstEncore ? 60 : before.ends === 'segue' ? 0 : 15;
			clock += interval ?? item.gapSeconds ?? usual;
		}
		const seconds = song.lengthSeconds ?? median;
		times.push({ song: song.id, start: clock, seconds });
		clock += seconds;
		before = { ends: song.ends, isEncore: item.isEncore };
		interval = null;
	}
	return times;
}
