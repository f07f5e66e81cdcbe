// Several recorded nights with what is known of each: those that were named, or the last ones that were played.

import { dirname } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import type { NightSummary } from '../../disk/nights-folder.ts';
import type { NightFacts } from '../../history/night-facts.ts';
import { factsOfNight } from '../../report/night-facts.ts';
import type { Show } from '../../showfile/show.ts';
import { withoutItsShow } from '../../words/history.ts';
import type { Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { localDay } from '../local-day.ts';
import { placesOf } from '../places.ts';
import { namedNight, noNight } from './chosen-night.ts';
import type { NightOnDisk } from './night-on-disk.ts';
import { searchedNights } from './night-places.ts';
import { type ReportedNight, reportOfNight } from './report-of-night.ts';

export type KnownNight = ReportedNight & {
	readonly night: NightOnDisk;
	readonly show: Show;
	/** Folder of its show file. */
	readonly folder: string;
	/** `2026-06-12`, where this machine stands. */
	readonly day: string;
	readonly beganMs: number;
	readonly facts: NightFacts;
};

export type NightsWanted = {
	/** Ids; empty for the last ones that were played, rehearsals left out. */
	readonly named: readonly string[];
	/** Of those that were not named, so many at the most. */
	readonly most: number;
	/** None from before this day; null for no such day. */
	readonly since: string | null;
};

/** The nights, oldest first, at least one; the exit code where there is none or a name is wrong, which is said. */
export function manyNights(
	wanted: NightsWanted,
	request: Request,
	io: Io,
): readonly KnownNight[] | number {
	const seen = searchedNights(placesOf(request, io), io);
	const known: KnownNight[] = [];
	for (const id of wanted.named.length > 0 ? new Set(wanted.named) : playedIds(seen.nights)) {
		const night = namedNight(seen, id, io);
		if (typeof night === 'number') return night;
		if (night.show === null) {
			io.complain(`${withoutItsShow(cleanText(id))}\n`);
			continue;
		}
		const one = knownNight(night, night.show);
		const isAsked = one.facts.songs.length > 0 && one.day >= (wanted.since ?? '');
		if (wanted.named.length === 0 && !isAsked) continue;
		known.push(one);
		if (wanted.named.length === 0 && known.length === wanted.most) break;
	}
	if (known.length > 0) return known.toSorted((one, other) => one.beganMs - other.beganMs);
	return wanted.named.length > 0 ? EXIT.unusable : noNight(seen, io, wanted.since);
}

/** Those that were no rehearsals, the newest first. */
function playedIds(nights: readonly NightSummary[]): readonly string[] {
	return nights.filter(({ header }) => header?.isRehearsal === false).map(({ id }) => id);
}

function knownNight(night: NightOnDisk, show: Show): KnownNight {
	const told = reportOfNight(night, show);
	const folder = dirname(night.showPath);
	const beganMs = told.report.began?.atMs ?? told.startedAtMs;
	const day = localDay(beganMs);
	return {
		...told,
		night,
		show,
		folder,
		day,
		beganMs,
		facts: factsOfNight({ ...told, folder, day }),
	};
}
