// `rackside check`: everything wrong or risky in a show before the doors open.

import { cleanText } from '../../base/clean-text.ts';
import type { Warning } from '../../plan/plan.ts';
import { planBeforeDoors } from '../../plan/plan-before-doors.ts';
import { warningJson } from '../../report/plan-json.ts';
import { checkShow } from '../../showfile/check-show.ts';
import type { Finding } from '../../showfile/finding.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { findingText, findingWords } from '../../words/findings.ts';
import { NOTHING_TO_LOOK_AT, PLANNING, toLookAt } from '../../words/program.ts';
import { warningWords } from '../../words/warnings.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { openShow } from '../open-show.ts';
import { tellProblems } from '../tell-problems.ts';
import { whileWorking } from '../while-working.ts';

export const checkCommand: CliCommand = {
	usage: 'check SHOW',
	about: [COMMAND_WORDS.check.about],
	example: 'rackside check shows/club.yaml',
	options: JSON_OPTION,
	words: { least: 1, most: 1 },
	run: async (request, io) => {
		const isJson = request.options.json === true;
		const { show, problems, remarks } = await openShow(request.words[0] ?? '', request, io);
		for (const remark of remarks) io.complain(`${cleanText(remark)}\n`);
		if (!show) {
			if (isJson)
				io.write(`${JSON.stringify({ usable: false, problems, findings: [], warnings: [] })}\n`);
			return tellProblems(problems, io);
		}
		const { findings, warnings } = whileWorking(PLANNING, () => {
			const found = checkShow(show);
			const planned = planBeforeDoors(show).warnings.filter((one) => !isSaid(one, found));
			return { findings: found, warnings: planned };
		});
		if (isJson)
			io.write(
				`${JSON.stringify({ usable: true, problems: [], findings: findings.map((one) => ({ ...one, text: findingText(show, one) })), warnings: warnings.map((one) => warningJson(one, show)) })}\n`,
			);
		else {
			const lines = [
				...findings.map((one) => findingWords(show, one)),
				...warnings.map((one) => warningWords(show, one)),
			];
			const last = lines.length === 0 ? NOTHING_TO_LOOK_AT : toLookAt(lines.length);
			io.write([...lines, last].map((line) => `${cleanText(line)}\n`).join(''));
		}
		return findings.length + warnings.length === 0 ? EXIT.fine : EXIT.toLookAt;
	},
};

/** The plan comes to the same as the reading of the file: once is enough. */
function isSaid(warning: Warning, findings: readonly Finding[]): boolean {
	return findings.some(
		(one) =>
			one.code === warning.code &&
			one.instrument === warning.instrument &&
			(warning.song === undefined || one.song === warning.song),
	);
}
