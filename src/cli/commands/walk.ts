// `rackside walk`: a first walk through a night of the example show, on the real screen.

import { realClock } from '../../disk/clock.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { ledNight } from '../../drill/led-night.ts';
import { openTrial, type TrialNight } from '../../drill/trial-night.ts';
import { WALK_BEGINS_MS, walk } from '../../drill/walk.ts';
import { nightReport } from '../../report/night-report.ts';
import { nightSteps } from '../../report/night-steps.ts';
import { reportMarkdown } from '../../report/report-markdown.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { WALK } from '../../words/walk.ts';
import type { CliCommand } from '../command.ts';
import { showTrial, trialPreferences } from '../drill/show-trial.ts';
import { exampleShowPath } from '../example-show.ts';
import { EXIT } from '../exit-code.ts';
import { livePreferences } from '../live/live-preferences.ts';
import { screenAbilities } from '../live/live-screen.ts';
import { openShow } from '../open-show.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';

export const walkCommand: CliCommand = {
	usage: 'walk',
	about: [COMMAND_WORDS.walk.about],
	example: 'rackside walk',
	options: {},
	words: { least: 0, most: 0 },
	run: async (request, io) => {
		const abilities = screenAbilities(request, io);
		if (abilities === null) return EXIT.unusable;
		const { show, problems } = await openShow(exampleShowPath(), request, io);
		if (!show) return tellProblems(problems, io);
		const { upMs: handMs } = realClock();
		const preferences = trialPreferences(
			livePreferences({ disk: realDisk, folder: placesOf(request, io).settings }),
		);
		const trial = openTrial({ show, handMs, preferences }, { records: [], atMs: WALK_BEGINS_MS });
		const night = ledNight(walk(trial), handMs);
		return showTrial({ night, abilities, handMs, farewell: () => farewell(trial) }, io);
	},
};

/** The report, where the show was closed; what to do next. */
function farewell({ night }: TrialNight): string {
	const session = night.session();
	if (session.phase.value !== 'packed') return `${WALK.left}\n`;
	const report = nightReport({
		show: session.show,
		night: WALK.night,
		isRehearsal: true,
		...nightSteps(session.show, night.records()),
		plannedZeroMs: null,
		dayOffsetMinutes: 0,
		damage: [],
	});
	return `${reportMarkdown(report)}\n${WALK.done}\n${WALK.next}\n`;
}
