// `rackside plan`: who plays what when, the work between, stand-ins; or the run sheet for the case.

import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { considered } from '../../plan/advice/alternatives.ts';
import { mendOf } from '../../plan/advice/mend.ts';
import { isWorking, shortfallOf } from '../../plan/advice/shortfall.ts';
import { verdict } from '../../plan/advice/verdict.ts';
import { slotStandIns } from '../../plan/backups/slot-stand-ins.ts';
import type { Plan } from '../../plan/plan.ts';
import { planBeforeDoors } from '../../plan/plan-before-doors.ts';
import { readyAtZero } from '../../plan/timed-choice/before-doors.ts';
import { planJson } from '../../report/plan-json.ts';
import { planTable } from '../../report/plan-table.ts';
import { whyTable } from '../../report/why-table.ts';
import type { Show } from '../../showfile/show.ts';
import { changeWords, verdictWords } from '../../words/advice.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { PLANNING } from '../../words/program.ts';
import { LEAVE_ONE_OUT, NO_SUCH_SONG, notBoth, SONG_BY } from '../../words/requests.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { notAmong } from '../not-among.ts';
import { openShow } from '../open-show.ts';
import { tellProblems } from '../tell-problems.ts';
import { whileWorking } from '../while-working.ts';

export const planCommand: CliCommand = {
	usage: 'plan SHOW',
	about: [COMMAND_WORDS.plan.about],
	example: 'rackside plan shows/club.yaml --sheet',
	options: {
		...JSON_OPTION,
		why: { value: 'SONG', words: COMMAND_WORDS.plan.options.why },
		sheet: { words: COMMAND_WORDS.plan.options.sheet },
		tonight: { words: COMMAND_WORDS.plan.options.tonight },
		as: { value: 'FORM', words: COMMAND_WORDS.plan.options.as },
		page: { value: 'PAGE', words: COMMAND_WORDS.plan.options.page },
		player: { value: 'NAME', words: COMMAND_WORDS.plan.options.player },
		tech: { value: 'NAME', words: COMMAND_WORDS.plan.options.tech },
		changes: { words: COMMAND_WORDS.plan.options.changes },
		boards: { words: COMMAND_WORDS.plan.options.boards },
		out: { value: 'FILE', words: COMMAND_WORDS.plan.options.out },
		pdf: { value: 'FILE', words: COMMAND_WORDS.plan.options.pdf },
		paper: { value: 'PAPER', words: COMMAND_WORDS.plan.options.paper },
		force: { words: COMMAND_WORDS.plan.options.force },
	},
	words: { least: 1, most: 1 },
	run: (request, io) => planShow(request, io, true),
};

/** What makes a request one for the run sheet. */
const OF_SHEET = [
	'sheet',
	'tonight',
	'as',
	'page',
	'player',
	'tech',
	'changes',
	'boards',
	'out',
	'pdf',
	'paper',
] as const;

/** The plan, or the sheet. `isKept`: the next printing says what changed since this one. */
export async function planShow(request: Request, io: Io, isKept: boolean): Promise<number> {
	const { options } = request;
	const ofSheet = OF_SHEET.find((one) => options[one] !== undefined);
	const [one, other] = [...PLANS.filter((name) => options[name] !== undefined), ofSheet];
	if (one !== undefined && other !== undefined) {
		return tellProblems(
			[{ code: 'two-answers', what: notBoth(one, other), hint: LEAVE_ONE_OUT }],
			io,
		);
	}
	if (options.tonight) {
		// A night on disk takes much of the program with it.
		const { tellTonight } = await import('../printed-commands.ts');
		return tellTonight(request, io);
	}
	const file = request.words[0] ?? '';
	const { show, problems, remarks } = await openShow(file, request, io);
	for (const remark of remarks) io.complain(`${cleanText(remark)}\n`);
	if (!show) return tellProblems(problems, io);
	if (ofSheet !== undefined) {
		const plan = whileWorking(PLANNING, () => planBeforeDoors(show));
		// The sheet takes more of the program than the plan itself.
		const { printSheet, sheetBeforeDoors } = await import('../printed-commands.ts');
		const code = printSheet({ sheet: sheetBeforeDoors(show, plan), file, isKept }, request, io);
		return code === EXIT.fine && !works(show, plan) ? EXIT.toLookAt : code;
	}
	const asked = optionText(request, 'why');
	const told = whileWorking(PLANNING, () => {
		const plan = planBeforeDoors(show);
		if (asked !== null) return whyText(show, { plan, asked });
		const text = planText(show, { plan, isJson: options.json === true });
		return { works: works(show, plan), text };
	});
	if ('code' in told) return tellProblems([told], io);
	io.write(told.text);
	return told.works ? EXIT.fine : EXIT.toLookAt;
}

/** Whether the night works as planned. */
const works = (show: Show, plan: Plan): boolean => isWorking(shortfallOf(show, plan));

/** What is asked of a plan in place of its sheet. */
const PLANS = ['json', 'why'] as const;

/** Steps of all plans beside the one that is shown: some tenths of a second. */
const STEPS = 600_000;

/** `works`: false where something does not fit, and that is what was asked. */
type Told = { readonly works: boolean; readonly text: string };

function planText(
	show: Show,
	{ plan, isJson }: { readonly plan: Plan; readonly isJson: boolean },
): string {
	// Advice and tables are planned from one budget, so that no show keeps anybody waiting.
	const from = { left: STEPS };
	const mend = mendOf(show, plan, from);
	const found = verdict(show, { plan, mend });
	const sentence = verdictWords(show, found);
	if (isJson) {
		const changes = mend?.changes.map(({ price: _, show: __, ...asked }) => ({
			...asked,
			words: changeWords(show, asked),
		}));
		return `${JSON.stringify({ ...planJson(plan, show, from), works: found.works, sentence, mend: changes ?? [] })}\n`;
	}
	const standIns = slotStandIns(readyAtZero(show), { plan, costs: 'best', from });
	return planTable(show, { plan, sentence, standIns });
}

function whyText(
	show: Show,
	{ plan, asked }: { readonly plan: Plan; readonly asked: string },
): Told | Problem {
	const isAsked = (text: string) => text.toLowerCase() === asked.toLowerCase();
	const song = show.songs.find(({ id, title }) => isAsked(id) || isAsked(title));
	if (song === undefined) {
		const unknown = { code: 'no-such-song', what: NO_SUCH_SONG, found: asked, listedBy: SONG_BY };
		return notAmong(
			unknown,
			show.songs.flatMap(({ id, title }) => [id, title]),
		);
	}
	const text = whyTable(show, { song: song.id, plan, considered: considered(show, plan, song.id) });
	return { works: true, text };
}
