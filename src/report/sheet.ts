// The run sheet as data: song by song in the order of the list what to hand, what to do at the rack and when, what
// to press. Text and page are made from it, and two printings of it are compared by what it says.

import { boardAfterCue } from '../../machines/rig.ts';
import { minutesSeconds } from '../base/duration.ts';
import type { NightMs } from '../journal/entry.ts';
import type { CapoMove, PlannedHandOver, Section, Slot, Work } from '../plan/plan.ts';
import { gapWarnings } from '../plan/warnings/gap-warnings.ts';
import { orderChange } from '../rig/rig-path.ts';
import { offsetWords } from '../showfile/instrument-strings.ts';
import { runningOrder, type SetSong } from '../showfile/running-order.ts';
import type { PedalStates, Show, Song } from '../showfile/show.ts';
import { packName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import { backupFor } from '../words/backup-for.ts';
import { boardPresses } from '../words/board-presses.ts';
import { capoAct } from '../words/capo-words.ts';
import {
	HANDS_EMPTY,
	NO_BACKUP,
	nothingFor,
	paperClock,
	SHEET,
	sheetPack,
	shortWords,
	startsWords,
	whenWords,
	workDeadline,
} from '../words/paper.ts';
import { boardStateWords, orderWords } from '../words/rig.ts';
import { JOB_WORDS, jobWords, packElsewhere } from '../words/stage.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { warningWords } from '../words/warnings.ts';
import { packOfSlot } from './packs-along.ts';
import {
	channelOf,
	type RackPlace,
	type Radio,
	rackOf,
	radioOf,
	type SheetSource,
} from './sheet-gear.ts';

export type Sheet = {
	/** Its list is the one that the sheet is of. */
	readonly show: Show;
	/** What is left to do before the first song that is to come. */
	readonly before: readonly SheetWork[];
	readonly rows: readonly SheetRow[];
	/** What is said of the night and not of one song. */
	readonly warnings: readonly Mark[];
	readonly rack: readonly RackPlace[];
	readonly radio: Radio;
};

export type SheetRow = SheetSong | SheetInterval;

export type SheetInterval = {
	readonly kind: 'interval';
	/** `20:00`. */
	readonly length: string;
	/** When it begins; null where it is over. */
	readonly clock: string | null;
	/** What comes off: `ASH 2 Ember`. */
	readonly back: readonly { readonly player: string; readonly text: string }[];
	readonly work: readonly SheetWork[];
};

export type SheetSong = {
	readonly kind: 'song';
	/** The song, and which playing of it this is: the same in another printing. */
	readonly key: string;
	readonly position: number;
	readonly title: string;
	readonly isEncoreBegin: boolean;
	/** It is played, or was begun: nothing of it is to come. */
	readonly isDone: boolean;
	readonly clock: string | null;
	/** Before it; null where all there is to do fits. */
	readonly gap: string | null;
	/** The gap is hardly enough for its hand-overs, or too short. */
	readonly isTight: boolean;
	readonly length: string | null;
	/** `Bo starts, count 4`; empty where nobody is named. */
	readonly starts: string;
	/** `stop`, `ring`, `talk`, `SEGUE`. */
	readonly ends: string;
	readonly changes: readonly SheetChange[];
	/** Its start, where a board changes there, and each of its cues. */
	readonly points: readonly SheetPoint[];
	/** What is done at the rack from its start to the next. */
	readonly work: readonly SheetWork[];
	readonly marks: readonly Mark[];
};

/** What changes in a player's hands. */
export type SheetChange = {
	readonly player: string;
	/** In capitals. */
	readonly who: string;
	/** Before which cue; null for the song's start. */
	readonly at: string | null;
	/** What they have then; null where that is nothing. */
	readonly on: {
		readonly slot: string | null;
		readonly name: string;
		readonly tuning: string;
		readonly isKept: boolean;
	} | null;
	/** Why they have nothing, where they do. */
	readonly nothing: string | null;
	/** What they give back: `4 Anchor`. */
	readonly off: string | null;
	/** `CAPO ON 2`, `CAPO OFF`; null where there is none on it and none was. */
	readonly capo: string | null;
	/** What it takes at the rack besides a touch-up: `RETUNE drop D in the interval`. */
	readonly acts: readonly string[];
	/** The pack, what it is a backup for, offsets. */
	readonly notes: readonly string[];
	/** To be checked before it leaves the rack. */
	readonly leave: string | null;
};

/** A point at which somebody presses: what is pressed, and the whole boards from there on. */
export type SheetPoint = {
	/** What is heard or seen; null for the song's start. */
	readonly at: string | null;
	readonly say: string | null;
	readonly boards: readonly {
		readonly player: string;
		readonly who: string;
		/** `+DELAY −BOOST`, pedals in another order before it; empty where the board stays. */
		readonly presses: string;
		readonly whole: string;
	}[];
};

/** A piece of work at the rack. */
export type SheetWork = {
	readonly player: string;
	readonly slot: string | null;
	readonly name: string;
	/** `RETUNE drop D, CAPO ON 2`. */
	readonly what: string;
	/** `0:45, start by 20:36`. */
	readonly when: string;
	/** The song it is for: `3 Gravel`. */
	readonly song: string;
	readonly isShort: boolean;
};

/** A warning, of one player or of all. */
export type Mark = { readonly player: string | null; readonly text: string };

/** The sheet of a list as it stands in the session's show. A song that the plan no longer has is done. */
export function sheetOf(source: SheetSource): Sheet {
	const { show } = source.session;
	const order = runningOrder(show);
	const moments = momentsOf(source, order);
	const boards = boardsAlong(source, order);
	const rows = order.flatMap((playing, index): readonly SheetRow[] => {
		const interval = playing.isAfterInterval ? [intervalRow(source, { moments, playing })] : [];
		return [...interval, songRow(source, { order, index, moments, points: boards[index] ?? [] })];
	});
	const listed = new Set(source.plan.sections.map(({ song }) => song));
	return {
		show,
		before: worksAt(source, moments, null),
		rows,
		warnings: source.plan.warnings
			.filter(({ song }) => song === undefined || !listed.has(song))
			.map((warning) => ({
				player: warning.player ?? null,
				text: warningWords(show, warning),
			})),
		rack: rackOf(source),
		radio: radioOf(source),
	};
}

/** A stretch of the night: a song with the gap after it, or an interval. */
type Stretch = {
	readonly kind: 'song' | 'interval';
	readonly position: number;
	readonly fromMs: NightMs;
	/** Of a song: when it ends. */
	readonly endMs: NightMs;
};

/** The stretches ahead, in order. */
function momentsOf({ plan }: SheetSource, order: readonly SetSong[]): readonly Stretch[] {
	return order.flatMap(({ position, isAfterInterval }): readonly Stretch[] => {
		const sections = plan.sections.filter((section) => section.position === position);
		const [first] = sections;
		const last = sections.at(-1);
		if (first === undefined || last === undefined) return [];
		const { startMs, previousEndMs } = first;
		const interval: readonly Stretch[] =
			isAfterInterval && first.isAfterInterval && previousEndMs !== null
				? [{ kind: 'interval', position, fromMs: previousEndMs, endMs: startMs }]
				: [];
		return [...interval, { kind: 'song', position, fromMs: startMs, endMs: last.endMs }];
	});
}

/** In which stretch something is begun; null before all of them. */
function stretchAt(moments: readonly Stretch[], atMs: NightMs): Stretch | null {
	return moments.findLast(({ fromMs }) => fromMs <= atMs) ?? null;
}

function intervalRow(
	source: SheetSource,
	{ moments, playing }: { readonly moments: readonly Stretch[]; readonly playing: SetSong },
): SheetInterval {
	const at = moments.find(
		({ kind, position }) => kind === 'interval' && position === playing.position,
	);
	return {
		kind: 'interval',
		length: minutesSeconds(intervalSeconds(source.session.show, playing.position)),
		clock: at === undefined ? null : clockAt(source, at.fromMs),
		back: at === undefined ? [] : backAt(source, playing.position),
		work: at === undefined ? [] : worksAt(source, moments, at),
	};
}

/** What the players have in hands as an interval before this place begins. */
function backAt(source: SheetSource, position: number): SheetInterval['back'] {
	const { plan, session } = source;
	return session.show.players.flatMap(({ id, name }) => {
		const last = plan.slots.findLast(
			(slot) => slot.player === id && slot.section.position < position,
		);
		const held = last === undefined ? session.players[id]?.holds : last.instrument;
		if (held == null) return [];
		const what = shownInstrument(session.show, held);
		const capo = last === undefined ? [] : capoLeft(source, last);
		return [{ player: id, text: [`${name.toUpperCase()} ${what}`, ...capo].join(', ') }];
	});
}

/** The capo comes off something that is not played again: where it is, its next use says so. */
function capoLeft({ plan }: SheetSource, slot: Slot): readonly string[] {
	const later = plan.slots.slice(plan.slots.indexOf(slot) + 1);
	const isOver = !later.some(({ instrument }) => instrument === slot.instrument);
	return slot.capo > 0 && isOver ? [capoAct(0)] : [];
}

/** What stands between the song of this place and the one above. */
function intervalSeconds({ set }: Show, position: number): number {
	let songs = 0;
	let seconds = 0;
	for (const item of set) {
		if (item.kind === 'interval') seconds += item.seconds;
		else {
			songs += 1;
			if (songs === position) return seconds;
			seconds = 0;
		}
	}
	return seconds;
}

function clockAt({ session, zeroMs }: SheetSource, atMs: NightMs): string {
	return paperClock(session.show, (atMs - zeroMs) / 1000);
}

type RowPlace = {
	readonly order: readonly SetSong[];
	readonly index: number;
	readonly moments: readonly Stretch[];
	readonly points: readonly SheetPoint[];
};

function songRow(source: SheetSource, { order, index, moments, points }: RowPlace): SheetSong {
	const { plan, session } = source;
	const { show } = session;
	const playing = order[index];
	if (playing === undefined) throw new RangeError(`no song ${index} in the list`);
	const { song, position, gapSeconds } = playing;
	const at = moments.find((one) => one.kind === 'song' && one.position === position);
	const here = plan.sections.filter((section) => section.position === position);
	const isFirst = plan.sections.find((section) => section.song === song.id)?.position === position;
	const earlier = order.slice(0, index).filter((one) => one.song.id === song.id);
	const starter = show.players.find(({ id }) => id === song.starts)?.name ?? null;
	return {
		kind: 'song',
		key: `${song.id} ${earlier.length + 1}`,
		position,
		title: song.title,
		isEncoreBegin: playing.isEncore && order[index - 1]?.isEncore !== true,
		isDone: at === undefined,
		clock: at === undefined ? null : clockAt(source, at.fromMs),
		gap: gapSeconds === null ? null : minutesSeconds(gapSeconds),
		isTight: gapWarnings(plan, here).length > 0,
		length: song.lengthSeconds === null ? null : minutesSeconds(song.lengthSeconds),
		starts: startsWords({ player: starter, other: song.starts, count: song.count }),
		ends: song.ends === 'segue' ? SHEET.segue : song.ends,
		changes: at === undefined ? [] : changesOf(source, { song, position, moments }),
		points: at === undefined ? [] : points,
		work: at === undefined ? [] : worksAt(source, moments, at),
		// A song played twice gets its warnings once: they do not say which time is meant.
		marks: isFirst
			? plan.warnings
					.filter((warning) => warning.song === song.id)
					.map((warning) => ({
						player: warning.player ?? null,
						text: warningWords(show, warning),
					}))
			: [],
	};
}

// What changes in hands.

type SongPlace = {
	readonly song: Song;
	readonly position: number;
	readonly moments: readonly Stretch[];
};

/** The song's start first, then its cues. */
function changesOf(source: SheetSource, place: SongPlace): readonly SheetChange[] {
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

function isOf(slot: Slot, other: { readonly section: Section; readonly player: string }): boolean {
	return other.section === slot.section && other.player === slot.player;
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

/** What an instrument is in before this use of it. */
function stateBefore({ plan, session }: SheetSource, slot: Slot) {
	const last = plan.slots
		.slice(0, plan.slots.indexOf(slot))
		.findLast((one) => one.instrument === slot.instrument);
	return last ?? session.instruments[slot.instrument ?? '']?.context ?? null;
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

function whenOf(source: SheetSource, moments: readonly Stretch[], work: Work): string {
	const at = stretchAt(moments, work.startMs);
	if (at === null) return whenWords({ kind: 'before' });
	if (at.kind === 'interval') return whenWords({ kind: 'interval' });
	const song = songAt(source, at.position);
	return whenWords({ kind: work.startMs < at.endMs ? 'during' : 'after', song });
}

/** `3 Gravel`. */
function songAt({ session: { show } }: SheetSource, position: number): string {
	const playing = runningOrder(show).find((one) => one.position === position);
	return `${position} ${playing?.song.title ?? ''}`.trimEnd();
}

// What is done at the rack.

/** The work begun in this stretch, null for before all of them, in the order in which to do it. */
function worksAt(
	source: SheetSource,
	moments: readonly Stretch[],
	stretch: Stretch | null,
): readonly SheetWork[] {
	return source.plan.work
		.filter((work) => stretchAt(moments, work.startMs) === stretch)
		.map((work) => workRow(source, work));
}

function workRow(source: SheetSource, work: Work): SheetWork {
	const { session, plan } = source;
	const { show } = session;
	const instrument = show.instruments.find(({ id }) => id === work.instrument);
	const slot = plan.slots.find((one) => isOf(one, work));
	const capoBefore = slot === undefined ? 0 : (stateBefore(source, slot)?.capo ?? 0);
	const capo = work.isEarly || capoBefore === work.capo ? [] : [capoAct(work.capo)];
	const isTouchedUp = work.job === 'capo' && work.seconds > (instrument?.times.capo ?? 0);
	const job =
		work.job === 'retune'
			? [jobWords('retune', shortTuning(show, work.to))]
			: work.job === 'capo'
				? isTouchedUp
					? [JOB_WORDS['touch-up']]
					: []
				: [JOB_WORDS[work.job]];
	return {
		player: work.player,
		slot: instrument?.slot?.toUpperCase() ?? null,
		name: instrument?.name ?? work.instrument,
		what: [...job, ...capo].join(', ') || JOB_WORDS[work.job],
		when: workDeadline({
			seconds: work.seconds,
			startBy: clockAt(source, work.beginByMs),
			shortSeconds: work.shortSeconds,
		}),
		song: songAt(source, work.section.position),
		isShort: work.shortSeconds > 0,
	};
}

// What is pressed.

/** For each song of the list its points, every board followed from what it is before the first of them. */
function boardsAlong(
	{ session, plan }: SheetSource,
	order: readonly SetSong[],
): readonly (readonly SheetPoint[])[] {
	const { show } = session;
	const ahead = new Set(plan.sections.map(({ position }) => position));
	const now = new Map(
		Object.entries(session.boards).map(([player, { context }]) => [player, context]),
	);
	return order.map(({ song, position }, index) => {
		if (!ahead.has(position)) return [];
		const before = order[index - 1]?.song.id ?? null;
		const points = [
			{ at: null, say: null, boards: song.board },
			...song.cues.map(({ at, say, boards }) => ({ at, say, boards })),
		];
		return points.flatMap(({ at, say, boards: asked }): readonly SheetPoint[] => {
			const boards = Object.entries(show.boards).flatMap(([player, pedals]) => {
				const context = now.get(player);
				const states = asked[player];
				const moved = at === null ? orderChange(show, { player, from: before, to: song.id }) : null;
				if (context === undefined || (states === undefined && moved === null)) return [];
				const then: PedalStates =
					states === undefined ? context.pedals : boardAfterCue(context, states);
				now.set(player, { ...context, pedals: then });
				const presses = boardPresses(
					pedals,
					{ was: context.pedals, is: then, tempo: song.tempo },
					true,
				).join(' ');
				return [
					{
						player,
						who: playerName(show, player).toUpperCase(),
						presses: [...(moved === null ? [] : [orderWords(moved)]), presses]
							.filter((words) => words !== '')
							.join(', '),
						whole: boardStateWords(show, {
							player,
							states: then,
							tempo: song.tempo,
						}),
					},
				];
			});
			return at === null && boards.length === 0 ? [] : [{ at, say, boards }];
		});
	});
}

// Parts of a sheet.

/** For whom a sheet is cut down; null for everybody. */
export type SheetChoice = {
	/** Ids of players. */
	readonly players: readonly string[] | null;
	readonly isChangesOnly: boolean;
};

/** The sheet with what concerns these players, or with what changes alone. */
export function chosenOf(sheet: Sheet, { players, isChangesOnly }: SheetChoice): Sheet {
	const isFor = ({ player }: { readonly player: string | null }) =>
		players === null || player === null || players.includes(player);
	const rows = sheet.rows.map((row): SheetRow => {
		if (row.kind === 'interval') {
			return { ...row, back: row.back.filter(isFor), work: row.work.filter(isFor) };
		}
		const points = row.points.map((point) => ({ ...point, boards: point.boards.filter(isFor) }));
		return {
			...row,
			changes: row.changes.filter(isFor),
			points: isChangesOnly
				? []
				: players === null
					? points
					: points.filter(({ boards, say }) => boards.length > 0 || say !== null),
			work: row.work.filter(isFor),
			marks: row.marks.filter(isFor),
		};
	});
	return {
		...sheet,
		before: sheet.before.filter(isFor),
		rows: isChangesOnly ? rows.filter(hasChange) : rows,
		warnings: sheet.warnings.filter(isFor),
	};
}

function hasChange(row: SheetRow): boolean {
	return row.kind === 'interval' || row.changes.length > 0 || row.work.length > 0;
}
