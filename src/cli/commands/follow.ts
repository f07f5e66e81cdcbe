// `rackside follow`: the night that another window keeps, shown here as it goes on. It takes no lock and writes
// nothing.

import { tmpdir } from 'node:os';
import { dirname } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { realClock } from '../../disk/clock.ts';
import { followNight } from '../../disk/follow-night.ts';
import type { NightSummary } from '../../disk/nights-folder.ts';
import { isWipedByRestart } from '../../disk/paths.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { type FollowWindow, followedNight } from '../../night/follow-night.ts';
import { plannedZero } from '../../night/planned-zero.ts';
import { nodeClock } from '../../terminal/clock.ts';
import { styledScreen } from '../../ui/styled-screen.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskFaultWords, diskTrouble } from '../../words/disk.ts';
import {
	FOLLOW_BY_NAME,
	FOLLOWED_NO_MORE,
	NO_SHOW_TO_FOLLOW,
	NO_UNFINISHED_NIGHT,
	NOT_IN_FULL,
	unfollowable,
} from '../../words/follow.ts';
import { nightFindingWords } from '../../words/night-file.ts';
import { NIGHTS_LISTS } from '../../words/requests.ts';
import { measuredOnGear } from '../bench/gear-journal.ts';
import type { CliCommand, Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { livePreferences } from '../live/live-preferences.ts';
import { screenAbilities, screenOptions, showLive } from '../live/live-screen.ts';
import { unkeptWayOut } from '../live/way-out.ts';
import { localOffsetMinutes } from '../local-offset.ts';
import { noSuchNight } from '../nights/chosen-night.ts';
import { isFinished, nightOnDisk } from '../nights/night-on-disk.ts';
import { seenNights } from '../nights/night-places.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';

/** How often the night's files are looked at: with drawing, a key in the other window is seen within half a second. */
const LOOK_MS = 100;
const TICK_MS = 1000;

export const followCommand: CliCommand = {
	usage: 'follow [NIGHT]',
	about: [COMMAND_WORDS.follow.about],
	example: 'rackside follow',
	options: {},
	words: { least: 0, most: 1 },
	run: async (request, io) => {
		const abilities = screenAbilities(request, io);
		if (abilities === null) return EXIT.unusable;
		const found = openFollowed(request, io);
		if ('problem' in found) return tellProblems([found.problem], io);
		const clock = nodeClock();
		const shutdown = unkeptWayOut({ clock, io, farewell: () => `${FOLLOWED_NO_MORE}\n` });
		await showLive({
			...{ night: found, clock, shutdown },
			codeAtEnd: () => EXIT.fine,
			rowsAt: (size) => styledScreen(found.screen(), size, screenOptions(abilities)),
			handMs: realClock().upMs,
			tickMs: TICK_MS,
		});
		const lookOn = (): void => {
			if (shutdown.hasBegun()) return;
			try {
				found.look();
				clock.after(LOOK_MS, lookOn);
			} catch (error) {
				shutdown.begin({ kind: 'fault', error });
			}
		};
		lookOn();
		// The way out ends the process.
		return new Promise(() => {});
	},
};

function openFollowed(request: Request, io: Io): FollowWindow | { readonly problem: Problem } {
	const places = placesOf(request, io);
	const { folders, nights } = seenNights(places, io);
	const id = request.words[0] ?? underWay(nights)?.id;
	if (id === undefined) {
		const unseen = nights.flatMap(({ problem }) => (problem ? [problem] : []));
		for (const one of unseen) io.complain(`${cleanText(diskFaultWords(one))}\n`);
		const where = { file: cleanText(places.nights) };
		return {
			problem: { code: 'no-night', what: NO_UNFINISHED_NIGHT, where, hint: FOLLOW_BY_NAME },
		};
	}
	const { isThere, show, startedAtMs, isRehearsal } = nightOnDisk(folders, id);
	const files = followNight(
		{ disk: realDisk, folders, isWiped: (folder) => isWipedByRestart(folder, tmpdir()) },
		id,
	);
	const first = files();
	if (!isThere || first === null) return { problem: noSuchNight(id, nights) };
	if (first.kind !== 'read') {
		const why = first.trouble === null ? NOT_IN_FULL : diskTrouble(first.trouble);
		const found = cleanText(id);
		return { problem: { code: 'night-unreadable', what: unfollowable(why), found } };
	}
	if (show === null || startedAtMs === null) {
		const found = cleanText(id);
		return {
			problem: { code: 'no-show-in-night', what: NO_SHOW_TO_FOLLOW, found, hint: NIGHTS_LISTS },
		};
	}
	const dayOffsetMinutes = localOffsetMinutes(startedAtMs);
	const clock = realClock();
	const showPath = nights.find((one) => one.id === id)?.header?.showPath ?? '';
	const preferences = livePreferences({ disk: realDisk, folder: places.settings });
	const gear = measuredOnGear(places, dirname(showPath));
	return followedNight({
		...{ files, first, show, clock, dayOffsetMinutes, isRehearsal, preferences },
		plannedZeroMs: plannedZero(show, startedAtMs, dayOffsetMinutes),
		handMs: clock.upMs,
		measuredOn: gear.measuredOn,
		findings: [...first.findings.map(nightFindingWords), ...gear.findings],
	});
}

/** The newest night that is not finished; a rehearsal only where there is no other. */
function underWay(nights: readonly NightSummary[]): NightSummary | undefined {
	const open = nights.filter(({ header, lastRecords }) => header && !isFinished(lastRecords));
	return open.find(({ header }) => header?.isRehearsal === false) ?? open[0];
}
