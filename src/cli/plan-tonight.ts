// The run sheet of the night under way. Apart from the other plans, since only this one reads a night.

import { dirname, resolve } from 'node:path';
import { cleanText } from '../base/clean-text.ts';
import { unfinishedNight } from '../disk/nights-folder.ts';
import { showIdentity } from '../disk/paths.ts';
import { movedZero, plannedZero } from '../night/planned-zero.ts';
import { nightSteps } from '../report/night-steps.ts';
import { tonightSheet } from '../report/tonight-sheet.ts';
import { noNightUnderWay, WITHOUT_TONIGHT } from '../words/requests.ts';
import type { Request } from './command.ts';
import { EXIT } from './exit-code.ts';
import { type MeasuredBefore, measuredOnGear } from './gear-journal.ts';
import type { Io } from './io.ts';
import { localOffsetMinutes } from './local-offset.ts';
import { isFinished, nightOnDisk } from './night-on-disk.ts';
import { searchedNights } from './night-places.ts';
import { placesOf } from './places.ts';
import { tellProblems } from './tell-problems.ts';

/** The sheet of the night that `run` would take up; gives back the exit code. */
export function tellTonight(request: Request, io: Io): number {
	const { folders, nights, isPart } = searchedNights(placesOf(request, io), io);
	const file = request.words[0] ?? '';
	const unfinished = unfinishedNight(nights, {
		showPath: showIdentity(resolve(io.cwd, file)),
		isRehearsal: false,
		isFinished: ({ lastRecords }) => isFinished(lastRecords),
	});
	const night = unfinished && nightOnDisk(folders, unfinished.id);
	if (!night?.show) {
		// It may be in the folder that cannot be read, which was said.
		if (isPart) return EXIT.unusable;
		return tellProblems(
			[
				{
					code: 'no-night',
					what: noNightUnderWay(cleanText(file)),
					hint: WITHOUT_TONIGHT,
				},
			],
			io,
		);
	}
	const { show, records, startedAtMs } = night;
	const { opened, steps } = nightSteps(show, records);
	const session = steps.at(-1)?.after ?? opened;
	const beganMs = startedAtMs ?? 0;
	const offsetMinutes = localOffsetMinutes(beganMs);
	const plannedZeroMs = movedZero(plannedZero(show, beganMs, offsetMinutes), show, session.show);
	const nowMs = records.at(-1)?.e.at(-1)?.at ?? beganMs;
	const hasBoards = request.options.boards === true;
	io.write(
		tonightSheet(
			{ session, nowMs, plannedZeroMs },
			{ hasBoards, ringsOn: sheetRings(request, io) },
		),
	);
	return EXIT.fine;
}

/** What the gear journal says that the instruments of the show file asked for rang at. */
export function sheetRings(request: Request, io: Io): MeasuredBefore['ringsOn'] {
	const folder = dirname(showIdentity(resolve(io.cwd, request.words[0] ?? '')));
	return measuredOnGear(placesOf(request, io), folder).ringsOn;
}
