// What a change of tonight's list would mean, in words for its prompt: where the song then stands, who
// changes for it, what is not well any more.

import { minutesSeconds } from '../base/duration.ts';
import { type Moment, showSeconds } from '../plan/demand/sections-ahead.ts';
import type { Plan } from '../plan/plan.ts';
import { previewSong } from '../plan/what-if/change-preview.ts';
import { type ChangedNight, changeCost } from '../plan/what-if/what-if.ts';
import { findSongItem, positionOf, songsOf } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { comingItems } from '../session/set-places.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { costLines, jumpWords } from './jump-words.ts';

/** The night as it stands, with its plan. */
type Night = Moment & { readonly plan: Plan };

/** The title of a song of the list, and what kind of place it has. */
export function itemTitle(session: Session, key: string): string {
	const item = session.list.find((one) => one.key === key);
	if (item === undefined) return 'nothing';
	return item.kind === 'interval' ? 'the interval' : songTitle(session.show, item.song);
}

/** `6 of 19, after Harbour, in the encore`: where a song of tonight's list stands. */
function placeWords(session: Session, key: string): string {
	const item = findSongItem(session, key);
	if (item === null) return '';
	const coming = comingItems(session);
	const before = coming[coming.findIndex((one) => one.key === key) - 1]?.key ?? session.current;
	return [
		`${positionOf(session.list, item)} of ${songsOf(session.list).length}`,
		before === null ? 'the first' : `after ${itemTitle(session, before)}`,
		...(item.isEncore ? ['in the encore'] : []),
	].join(', ');
}

/** Where a song of a changed list stands, and when it begins. */
export function beginWords(context: Night, after: ChangedNight, key: string): string {
	const section = after.plan.sections.find((one) => one.item === key && !one.hasBegun);
	const begins = section
		? `, begins in ${minutesSeconds((section.startMs - context.nowMs) / 1000)}`
		: '';
	return `${placeWords(after.session, key)}${begins}`;
}

/** Who changes for it, a line each, then what would not be well any more. */
export function changeLines(context: Night, after: ChangedNight, key: string): readonly string[] {
	const preview = previewSong(context, after, key);
	return [
		...(preview ? jumpWords(preview, { session: after.session, nowMs: context.nowMs }) : []),
		...worseLines(context, after, key),
	];
}

/** What follows a song that is dropped, with the gap before it; then who changes for that. */
export function dropWords(
	context: Night,
	after: ChangedNight,
	key: string,
): { readonly follows: string; readonly lines: readonly string[] } {
	const { session } = after;
	const coming = comingItems(context.session);
	const dropped = coming.findIndex((item) => item.key === key);
	const following = coming.slice(dropped + 1).find(({ kind }) => kind === 'song');
	const preview = dropped < 0 || !following ? null : previewSong(context, after, following.key);
	if (preview === null) {
		const isLast = dropped >= 0 && dropped === coming.length - 1;
		return {
			follows: isLast ? 'Nothing comes after it' : 'It was already off the list',
			lines: worseLines(context, after),
		};
	}
	const { gapSeconds } = preview.section;
	const gap = gapSeconds === null ? '' : `, gap ${minutesSeconds(gapSeconds)}`;
	const place = placeWords(session, following?.key ?? '');
	return {
		follows: `Then ${songTitle(session.show, preview.song)} is ${place}${gap}`,
		lines: [
			...jumpWords(preview, { session, nowMs: context.nowMs }),
			...worseLines(context, after, following?.key),
		],
	};
}

/** `told`: the item whose own change stands in the lines above. */
function worseLines(context: Night, after: ChangedNight, told?: string): readonly string[] {
	const cost = changeCost(context, after, told);
	return costLines(after.session.show, cost, showSeconds(context));
}
