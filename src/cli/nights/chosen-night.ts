// Which recorded night is meant: the one named, or the last.

import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import type { NightSummary } from '../../disk/nights-folder.ts';
import { diskFaultWords } from '../../words/disk.ts';
import {
	NIGHTS_LISTS,
	NO_NIGHT_YET,
	NO_SUCH_NIGHT,
	noneWasPlayed,
	ONLY_REHEARSALS,
	RUN_RECORDS_ONE,
} from '../../words/requests.ts';
import type { Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { notAmong } from '../not-among.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';
import { lastPlayed, type NightOnDisk, nightOnDisk } from './night-on-disk.ts';
import { type SearchedNights, type SeenNights, searchedNights } from './night-places.ts';

/** `last`: the newest night in which anything was played; `last-show`: a rehearsal only where there is nothing else. */
export type WantedNight = 'last' | 'last-show' | { readonly id: string };

/** The night that is wanted; the exit code where there is none, which is said. */
export function chosenNight(wanted: WantedNight, request: Request, io: Io): NightOnDisk | number {
	const seen = searchedNights(placesOf(request, io), io);
	const { folders, nights } = seen;
	const shows = nights.filter(({ header }) => header?.isRehearsal === false);
	const played =
		typeof wanted === 'object'
			? null
			: ((wanted === 'last-show' ? lastPlayed(folders, shows) : null) ??
				lastPlayed(folders, nights));
	if (played !== null) return played;
	const id = typeof wanted === 'object' ? wanted.id : nights[0]?.id;
	return id === undefined ? noNight(seen, io) : namedNight(seen, id, io);
}

/** That there is none, which is said, unless there may be one in a folder that cannot be read: that was said. */
export function noNight(
	{ folders, nights, isPart }: SeenNights,
	io: Io,
	since?: string | null,
): number {
	if (isPart) return EXIT.unusable;
	const areRehearsals = nights.every(({ header }) => header?.isRehearsal === true);
	const problem =
		nights.length === 0
			? noNightYet(folders[0])
			: nonePlayed(areRehearsals ? ONLY_REHEARSALS : noneWasPlayed(since ?? null));
	return tellProblems([problem], io);
}

/** The night of this name; the exit code where there is none, which is said likewise. */
export function namedNight(
	{ folders, nights, isPart, told }: SearchedNights,
	id: string,
	io: Io,
): NightOnDisk | number {
	const night = nightOnDisk(folders, id);
	if (night.isThere) return night;
	const gone = nights.find((one) => one.id === id)?.problem;
	if (gone) {
		if (!told.includes(id)) io.complain(`${cleanText(diskFaultWords(gone))}\n`);
		return EXIT.unusable;
	}
	return isPart ? EXIT.unusable : tellProblems([noSuchNight(id, nights)], io);
}

/** Nothing was ever recorded here. */
function noNightYet(folder = ''): Problem {
	const where = { file: cleanText(folder) };
	return { code: 'no-night', what: NO_NIGHT_YET, where, hint: RUN_RECORDS_ONE };
}

/** Nights are there, and none of them is meant: none was played, none since that day, or all are rehearsals. */
function nonePlayed(what: string): Problem {
	return { code: 'no-night', what, hint: NIGHTS_LISTS };
}

/** No night has this name. */
export function noSuchNight(id: string, nights: readonly NightSummary[]): Problem {
	const unknown = { code: 'no-night', what: NO_SUCH_NIGHT, found: id, listedBy: NIGHTS_LISTS };
	return notAmong(
		unknown,
		nights.map((one) => one.id),
	);
}
