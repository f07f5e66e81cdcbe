// `rackside plan`: who plays what when, the work between, stand-ins; or the run sheet for the case.

import { cleanText } from '../../base/clean-text.ts';
import { nearestName } from '../../base/nearest-name.ts';
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
import { runSheet, type SheetAsked } from '../../report/run-sheet.ts';
import { whyTable } from '../../report/why-table.ts';
import type { Show } from '../../showfile/show.ts';
import { changeWords, verdictWords } from '../../words/advice.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { PLANNING } from '../../words/program.ts';
import { didYouMean, LEAVE_ONE_OUT, NO_SUCH_SONG, notBoth, SONG_BY } from '../../words/requests.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
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
		boards: { words: COMMAND_WORDS.plan.options.boards },
		tonight: { words: COMMAND_WORDS.plan.options.tonight },
	},
	words: { least: 1, most: 1 },
	run: async (request, io) => {
		const other = (['why', 'sheet', 'boards', 'tonight'] as const).find(
			(one) => request.options[one],
		);
		if (request.options.json === true && other !== undefined) {
			return tellProblems(
				[{ code: 'two-answers', what: notBoth('json', other), hint: LEAVE_ONE_OUT }],
				io,
			);
		}
		if (request.options.tonight) {
			// A night on disk takes much of the program with it.
			const { tellTonight } = await import('../printed-commands.ts');
			return tellTonight(request, io);
		}
		const { show, problems, remarks } = await openShow(request.words[0] ?? '', request, io);
		for (const remark of remarks) io.complain(`${cleanText(remark)}\n`);
		if (!show) return tellProblems(problems, io);
		const asked = optionText(request, 'why');
		const hasBoards = request.options.boards === true;
		// Only the sheet says what is remembered of instruments, and that takes the reader of nights.
		const { sheetRings } =
			request.options.sheet || hasBoards
				? await import('../printed-commands.ts')
				: { sheetRings: null };
		const ringsOn = sheetRings?.(request, io) ?? (() => []);
		const told = whileWorking(PLANNING, () => {
			const plan = planBeforeDoors(show);
			if (asked !== null) return whyText(show, { plan, asked });
			const works = isWorking(shortfallOf(show, plan));
			if (request.options.sheet || hasBoards)
				return { works, text: sheetText(show, plan, { hasBoards, ringsOn }) };
			const text = planText(show, { plan, isJson: request.options.json === true });
			return { works, text };
		});
		if ('code' in told) return tellProblems([told], io);
		io.write(told.text);
		return told.works ? EXIT.fine : EXIT.toLookAt;
	},
};

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

function sheetText(show: Show, plan: Plan, asked: Omit<SheetAsked, 'backupOf'>): string {
	const missing = slotStandIns(readyAtZero(show), {
		plan,
		costs: 'none',
		isAsked: ({ isMissing }) => isMissing,
	});
	const backups = new Map(missing.map(({ slot, standIns: [best] }) => [slot, best?.instrument]));
	return runSheet(show, plan, { ...asked, backupOf: (slot) => backups.get(slot) ?? null });
}

function whyText(
	show: Show,
	{ plan, asked }: { readonly plan: Plan; readonly asked: string },
): Told | Problem {
	const isAsked = (text: string) => text.toLowerCase() === asked.toLowerCase();
	const song = show.songs.find(({ id, title }) => isAsked(id) || isAsked(title));
	if (song === undefined) {
		const near = nearestName(
			asked,
			show.songs.flatMap(({ id, title }) => [id, title]),
		);
		return {
			code: 'no-such-song',
			what: NO_SUCH_SONG,
			found: cleanText(asked),
			hint: near === null ? SONG_BY : didYouMean(near),
		};
	}
	const text = whyTable(show, { song: song.id, plan, considered: considered(show, plan, song.id) });
	return { works: true, text };
}
