// `rackside check`: everything wrong or risky in a show before the doors open.

import { cleanText } from '../../base/clean-text.ts';
import { planBeforeDoors } from '../../plan/plan-before-doors.ts';
import { checkList, type Risk } from '../../report/check-list.ts';
import { warningJson } from '../../report/plan-json.ts';
import { checkShow } from '../../showfile/check-show.ts';
import type { Show } from '../../showfile/show.ts';
import type { SourceNode } from '../../showfile/source-node.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { placeText } from '../../words/problem-text.ts';
import { NOTHING_TO_LOOK_AT, PLANNING, restToLookAt, toLookAt } from '../../words/program.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { openShow } from '../open-show.ts';
import { tellProblems } from '../tell-problems.ts';
import { terminalText } from '../terminal-text.ts';
import { whileWorking } from '../while-working.ts';

export const checkCommand: CliCommand = {
	usage: 'check SHOW',
	about: [COMMAND_WORDS.check.about],
	example: 'rackside check shows/club.yaml',
	options: JSON_OPTION,
	words: { least: 1, most: 1 },
	run: async (request, io) => {
		const isJson = request.options.json === true;
		const file = request.words[0] ?? '';
		const { show, problems, root, remarks } = await openShow(file, request, io);
		for (const remark of remarks) io.complain(`${cleanText(remark)}\n`);
		if (!show) {
			if (isJson)
				io.write(`${JSON.stringify({ usable: false, problems, findings: [], warnings: [] })}\n`);
			return tellProblems(problems, io);
		}
		const risks = whileWorking(PLANNING, () => risksOf(show, root));
		if (isJson)
			io.write(`${JSON.stringify({ usable: true, problems: [], ...risksJson(show, risks) })}\n`);
		else io.write(terminalText(risksText(risks), io));
		return risks.length === 0 ? EXIT.fine : EXIT.toLookAt;
	},
};

/** Everything wrong or risky in the show, worst first; its tree says where. */
export function risksOf(show: Show, root: SourceNode | null): readonly Risk[] {
	return checkList(show, {
		findings: checkShow(show),
		warnings: planBeforeDoors(show).warnings,
		root,
	});
}

/** A line each, and one that says how many; of a file just made the first alone, since the rest of what is said scrolls away. */
export function risksText(all: readonly Risk[], madeFile: string | null = null): string {
	const risks = all.filter(({ isSaidOnce }) => !isSaidOnce);
	const shown = madeFile === null ? risks : risks.slice(0, MOST_OF_A_NEW_FILE);
	const lines = shown.map(({ words, where }) => `${where ? `${placeText(where)}: ` : ''}${words}`);
	const count = risks.length === 0 ? NOTHING_TO_LOOK_AT : toLookAt(risks.length);
	const isCut = madeFile !== null && shown.length < risks.length;
	const last = isCut ? restToLookAt(risks.length, shown.length, madeFile) : count;
	return [...lines, last].map((line) => `${cleanText(line)}\n`).join('');
}

/** With what else `new` says they fit a terminal of 24 rows. */
const MOST_OF_A_NEW_FILE = 4;

/** What the file shows and what the plan shows, each in the order of the list, with its sentence by ids. */
function risksJson(show: Show, risks: readonly Risk[]) {
	return {
		findings: risks.flatMap(({ about, where, text }) =>
			'severity' in about ? [{ ...about, where, text }] : [],
		),
		warnings: risks.flatMap(({ about, where }) =>
			'severity' in about ? [] : [{ ...warningJson(about, show), where }],
		),
	};
}
