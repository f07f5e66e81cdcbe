// What changes in a player's hands in a song of a sheet: what comes off, what goes on, and what that takes.

import type { CapoMove, PlannedHandOver, Section, Slot } from '../plan/plan.ts';
import { offsetWords } from '../showfile/instrument-strings.ts';
import type { Song } from '../showfile/show.ts';
import { packName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import { backupFor } from '../words/backup-for.ts';
import { capoAct } from '../words/capo-words.ts';
import { HANDS_EMPTY, NO_BACKUP, nothingFor, sheetPack, shortWords } from '../words/paper.ts';
import { JOB_WORDS, jobWords, packElsewhere } from '../words/stage.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { packOfSlot } from './packs-along.ts';
import type { SheetChange } from './sheet.ts';
import { channelOf, type SheetSource } from './sheet-gear.ts';
import { type Stretch, whenOf } from './sheet-stretches.ts';
import { capoLeft, isOf, stateBefore } from './sheet-uses.ts';

export type SongPlace = {
	readonly song: Song;
	readonly position: number;
	readonly moments: readonly Stretch[];
};

/** The song's start first, then its cues. */
export function changesOf(source: SheetSource, place: SongPlace): readonly SheetChange[] {
	const { plan } = source;
	const isHere = ({ section }: { readonly section: Section }) =>
		section.position === place.position;
	const given = plan.slots
		.filter((slot) => isHere(slot) && isToDo(source, slot))
		.map((slot) => ({ point: slot.section.point, change: changeOf(source, place, slot) }));
	const emptied = plan.handOvers
		.filter((one) => isHere(one) && one.instrument === null)
		.map((one) => ({
			point: one.section.point,
			change: { ...nobody(source, place, one), nothing: HANDS_EMPTY },
		}));
	return [...given, ...emptied]
		.toSorted((one, other) => one.point - other.point)
		.map(({ change }) => change);
}

/** A hand-over, nothing where something was wanted; of what is kept a moved capo, or that it is a backup now. */
function isToDo(source: SheetSource, slot: Slot): boolean {
	if (slot.isHandOver || (slot.instrument === null && !slot.isKept)) return true;
	if (slot.instrument === null) return false;
	if (slot.for !== null && slot.for !== slotBefore(source, slot)?.for) return true;
	return capoMoveOf(source, slot) !== undefined;
}

function slotBefore({ plan: { slots } }: SheetSource, slot: Slot): Slot | undefined {
	return slots.slice(0, slots.indexOf(slot)).findLast((one) => one.player === slot.player);
}

function capoMoveOf({ plan }: SheetSource, slot: Slot): CapoMove | undefined {
	return plan.capoMoves.find((one) => isOf(slot, one));
}

/** Who it is about and when, with nothing said yet. */
function nobody(
	source: SheetSource,
	{ song }: SongPlace,
	one: Pick<Slot, 'section' | 'player'> & { readonly from?: string | null },
): SheetChange {
	const { show } = source.session;
	const { section, player, from = null } = one;
	const last = source.plan.slots.findLast(
		(slot) =>
			slot.instrument === from && slot.player === player && slot.section.startMs < section.startMs,
	);
	const capo = last === undefined ? [] : capoLeft(source, last);
	return {
		player,
		who: playerName(show, player).toUpperCase(),
		at: section.point === 0 ? null : (song.cues[section.point - 1]?.at ?? null),
		on: null,
		nothing: null,
		off: from === null ? null : [shownInstrument(show, from), ...capo].join(', '),
		capo: null,
		acts: [],
		notes: [],
		leave: null,
	};
}

function changeOf(source: SheetSource, place: SongPlace, slot: Slot): SheetChange {
	const { plan, session } = source;
	const { show } = session;
	const handOver = plan.handOvers.find((one) => isOf(slot, one));
	const bare = nobody(source, place, handOver ?? slot);
	const instrument = show.instruments.find(({ id }) => id === slot.instrument);
	if (instrument === undefined) {
		const other = slot.isMissing ? source.backupOf(slot) : null;
		const none = other === null ? NO_BACKUP : nothingFor(shownInstrument(show, other), '');
		return { ...bare, nothing: slot.isMissing ? none : HANDS_EMPTY };
	}
	const { tuning, player } = slot;
	const offsets = offsetWords(show, { instrument, tuning, player });
	return {
		...bare,
		on: {
			slot: instrument.slot?.toUpperCase() ?? null,
			name: instrument.name,
			tuning: shortTuning(show, tuning),
			isKept: !slot.isHandOver,
		},
		off: handOver?.from === slot.instrument ? null : bare.off,
		capo: capoOf(source, slot),
		acts: workActs(source, place, { slot, handOver }),
		notes: [
			...(slot.for === null ? [] : [backupFor(show, slot.for)]),
			...packNotes(source, slot),
			...(offsets === '' ? [] : [offsets]),
		],
		leave: slot.isHandOver ? slot.leave : null,
	};
}

/** The pack that goes on with it, or stays because its own is on somebody else; nothing where they wear it already. */
function packNotes(source: SheetSource, slot: Slot): readonly string[] {
	const { show } = source.session;
	const along = packOfSlot(source, slot);
	if (along === undefined) return [];
	const { worn, before, wearer, handOver } = along;
	if (wearer !== null && handOver.pack !== null) {
		const keeps = worn === null ? null : packName(show, worn);
		return [packElsewhere(packName(show, handOver.pack), keeps, playerName(show, wearer))];
	}
	if (worn === null || worn === before) return [];
	return [sheetPack(packName(show, worn), channelOf(show, worn))];
}

/** The capo that is put on, moved or taken off; where it stays on that it is there, since the eye looks for it. */
function capoOf(source: SheetSource, slot: Slot): string | null {
	const before = stateBefore(source, slot)?.capo ?? 0;
	return before === slot.capo && slot.capo === 0 ? null : capoAct(slot.capo);
}

/** What it takes besides a touch-up, and when that is done. */
function workActs(
	source: SheetSource,
	{ moments }: SongPlace,
	{ slot, handOver }: { readonly slot: Slot; readonly handOver: PlannedHandOver | undefined },
): readonly string[] {
	const { session, plan } = source;
	if (handOver === undefined) return [];
	return plan.work
		.filter((work) => isOf(slot, work) && (work.job === 'retune' || work.job === 'restring'))
		.map((work) => {
			const job =
				work.job === 'restring'
					? JOB_WORDS.restring
					: jobWords('retune', shortTuning(session.show, work.to));
			const { shortSeconds } = work;
			if (shortSeconds > 0) return `${job}, ${shortWords(shortSeconds)}`;
			return `${job} ${whenOf(source, moments, work)}`;
		});
}
