// What was at fault on earlier nights, out of the files of the data folder. Files are read beside everything else, one
// after the other, and only those in which a cause was found are looked into.

import { readdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { nightOfName } from '../../disk/read-night.ts';
import { gearId } from '../../gear/gear-id.ts';
import { foundCauses, type NightCauses, timesFound } from '../../history/found-causes.ts';
import { effectiveRecords } from '../../session/timeline.ts';
import type { Show } from '../../showfile/show.ts';
import { nightOnDisk } from './night-on-disk.ts';

/** Older ones tell little of a rig as it is now: common practice, no source. */
const MOST_NIGHTS = 60;

/** As it stands in a file wherever a cause was found. */
const FOUND = '"fault-found"';

/** The nights in these folders in which a cause was found, but this one and rehearsals; what cannot be read is passed over. */
export async function causesBefore(
	folders: readonly string[],
	tonight: string | null,
): Promise<readonly NightCauses[]> {
	const nights: NightCauses[] = [];
	for (const id of await nightsWithCause(folders, tonight)) {
		try {
			const { isRehearsal, show, showPath, records } = nightOnDisk(folders, id);
			if (isRehearsal || show === null) continue;
			const folder = dirname(showPath);
			const standing = effectiveRecords(records).flatMap(({ record, isTakenBack }) =>
				isTakenBack ? [] : [record],
			);
			nights.push({ folder, gears: gearsOf(show, folder), causes: foundCauses(standing) });
		} catch {
			// It is for others to say what is wrong with that night.
		}
	}
	return nights;
}

async function nightsWithCause(
	folders: readonly string[],
	tonight: string | null,
): Promise<readonly string[]> {
	const files = (await Promise.all(folders.map(filesIn))).flat();
	const byNight = Map.groupBy(files, ({ id }) => id);
	const newest = [...byNight].toSorted(([one], [other]) => (one < other ? 1 : -1));
	const found: string[] = [];
	for (const [id, parts] of newest.slice(0, MOST_NIGHTS)) {
		if (id === tonight) continue;
		for (const { path } of parts) {
			const bytes = await readFile(path).catch(() => null);
			if (bytes?.includes(FOUND)) {
				found.push(id);
				break;
			}
		}
	}
	return found;
}

async function filesIn(folder: string): Promise<readonly { id: string; path: string }[]> {
	const names = await readdir(folder).catch(() => []);
	return names.flatMap((name) => {
		const id = nightOfName(name);
		return id === null ? [] : [{ id, path: join(folder, name) }];
	});
}

/** How often each part of a player's rig was the cause before, by its id in this show. */
export function foundBefore(
	nights: readonly NightCauses[],
	{
		show,
		folder,
		player,
	}: { readonly show: Show; readonly folder: string; readonly player: string },
): Readonly<Record<string, number>> {
	return timesFound(nights, { player, folder, gears: gearsOf(show, folder) });
}

function gearsOf({ instruments }: Show, folder: string): Readonly<Record<string, string>> {
	return Object.fromEntries(instruments.map((one) => [one.id, gearId(one, folder)]));
}
