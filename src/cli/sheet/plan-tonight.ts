// The run sheet of the night under way. Apart from the other plans, since only this one reads a night.

import { resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { unfinishedNight } from '../../disk/nights-folder.ts';
import { showIdentity } from '../../disk/paths.ts';
import { movedZero, plannedZero } from '../../night/planned-zero.ts';
import { nightSteps } from '../../report/night-steps.ts';
import { tonightSheet } from '../../report/tonight-sheet.ts';
import { noNightUnderWay, WITHOUT_TONIGHT } from '../../words/requests.ts';
import type { Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { localOffsetMinutes } from '../local-offset.ts';
import { isFinished, nightOnDisk } from '../nights/night-on-disk.ts';
import { searchedNights } from '../nights/night-places.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';
import { printSheet } from './print-sheet.ts';

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
	const sheet = tonightSheet({ session, nowMs, plannedZeroMs });
	return printSheet({ sheet, file, isKept: true }, request, io);
}
