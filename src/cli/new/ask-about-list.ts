// The questions that a set list leaves open, put on the terminal one by one until nothing is open or all is left so.

import { cleanText } from '../../base/clean-text.ts';
import {
	type Answers,
	answerKey,
	canBeAnswered,
	guessedKinds,
	kindsIn,
	NO_ANSWERS,
	readingOf,
} from '../../setlist/answers.ts';
import {
	type Choice,
	choicesOf,
	chosen,
	takesALine,
	taught,
	typed,
} from '../../setlist/choices.ts';
import { tuningName } from '../../setlist/legend.ts';
import type { Asked, ListReading, Rack } from '../../setlist/list-reading.ts';
import type { SetList } from '../../setlist/list-row.ts';
import type { DraftInstrument } from '../../setlist/show-draft.ts';
import type { Abbreviations } from '../../tuning/tuning.ts';
import * as words from '../../words/set-list.ts';
import type { Ask } from '../ask-on-terminal.ts';

/** The reading after every question that somebody is there to answer, and the words that it taught. */
export async function askAboutList(
	list: SetList,
	rack: Rack,
	ask: Ask,
): Promise<{ readonly reading: ListReading; readonly abbreviations: Abbreviations }> {
	let now: Answered = { answers: NO_ANSWERS, left: new Set(), areKindsSaid: false };
	const before: Answered[] = [];
	for (;;) {
		const { answers, left, areKindsSaid } = now;
		const abbreviations = { ...list.abbreviations, ...answers.abbreviations };
		const reading = readingOf(list, rack, answers);
		const next = reading.asked.find((one) => canBeAnswered(one) && !left.has(answerKey(one)));
		if (!next) {
			const guessed = guessedKinds(reading);
			const kinds = areKindsSaid || guessed.length === 0 ? null : await askKinds(guessed, ask);
			const last = kinds === BACK ? before.pop() : undefined;
			if (last) now = last;
			if (kinds === BACK) continue;
			if (kinds === null || kinds.size === 0) return { reading, abbreviations };
			// Asked once: those that were not named are as they were guessed.
			before.push(now);
			const told = { ...answers, kinds: new Map([...answers.kinds, ...kinds]) };
			now = { left, answers: told, areKindsSaid: true };
			continue;
		}
		const choices = choicesOf(next, list, rack);
		const takesLine = takesALine(next);
		const answer = await ask(cleanLines(words.question(next, choices, takesLine)));
		if (answer === null) return { reading, abbreviations };
		const line = answer.trim();
		if (line.toLowerCase() === BACK) {
			now = before.pop() ?? now;
			continue;
		}
		const choice = /^\d+$/.test(line) ? choices[Number(line) - 1] : undefined;
		if (line !== '' && !choice && !takesLine) continue;
		before.push(now);
		if (line === '') now = { ...now, left: new Set([...left, answerKey(next)]) };
		else if (choice) now = { ...now, answers: await withChoice(answers, { next, choice, ask }) };
		else now = { ...now, answers: typed(answers, next, line) };
	}
}

/** What was answered, and what was left open. */
type Answered = {
	readonly answers: Answers;
	readonly left: ReadonlySet<string>;
	readonly areKindsSaid: boolean;
};

/** The line that takes the last answer back. */
const BACK = 'u';

/** What is said of kinds that are a guess; null for nothing more, `BACK` to go back. */
async function askKinds(guessed: readonly DraftInstrument[], ask: Ask) {
	const question = cleanLines(words.kindsQuestion(guessed));
	for (let said = ''; ; said = `${words.NO_SUCH_KIND}\n`) {
		const line = (await ask(`${said}${question}`))?.trim() ?? '';
		if (line === '') return null;
		if (line.toLowerCase() === BACK) return BACK;
		const kinds = kindsIn(line, guessed);
		if (kinds !== null) return kinds;
	}
}

const cleanLines = (text: string): string => text.split('\n').map(cleanText).join('\n');

/** The answers with what was chosen; where a tuning is taught, once it can be read. */
async function withChoice(
	answers: Answers,
	{ next, choice, ask }: { readonly next: Asked; readonly choice: Choice; readonly ask: Ask },
): Promise<Answers> {
	if (choice.means !== 'tuning') return chosen(answers, next, choice);
	const question = cleanText(words.tuningQuestion(choice.word));
	for (let said = ''; ; said = `${words.NO_SUCH_TUNING}\n`) {
		const tuning = (await ask(`${said}${question}`))?.trim() ?? '';
		if (tuning === '') return answers;
		const name = tuningName(tuning);
		if (name !== null) return taught(answers, choice.word, name);
	}
}
