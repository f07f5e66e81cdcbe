// The run sheet of a plan: its rows, a song or an interval each, from what the files beside this one tell of hands, of the
// rack and of boards.

import { minutesSeconds } from '../base/duration.ts';
import { gapWarnings } from '../plan/warnings/gap-warnings.ts';
import { runningOrder, type SetSong } from '../showfile/running-order.ts';
import type { Show } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { SHEET, startsWords } from '../words/paper.ts';
import { warningWords } from '../words/warnings.ts';
import type { Sheet, SheetInterval, SheetPoint, SheetRow, SheetSong } from './sheet.ts';
import { changesOf } from './sheet-changes.ts';
import { rackOf, radioOf, type SheetSource } from './sheet-gear.ts';
import { boardsAlong } from './sheet-points.ts';
import { clockAt, momentsOf, type Stretch } from './sheet-stretches.ts';
import { capoLeft } from './sheet-uses.ts';
import { worksAt } from './sheet-work.ts';

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
		clock:
			at === undefined ? null : clockAt(source, { atMs: at.fromMs, position: playing.position }),
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
		clock: at === undefined ? null : clockAt(source, { atMs: at.fromMs, position }),
		gap: gapSeconds === null ? null : minutesSeconds(gapSeconds),
		isTight: gapWarnings(plan, here).length > 0,
		length: song.lengthSeconds === null ? null : minutesSeconds(song.lengthSeconds),
		starts: startsWords({ player: starter, other: song.starts, count: song.count }),
		ends: song.ends === 'segue' ? SHEET.segue : song.ends,
		notes: song.notes,
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
