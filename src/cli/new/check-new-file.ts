// What `check` says of a file just written, for all ways of `new`. Its risks are for its own exit code to tell: that
// of `new` says whether the file is whole.

import { problemText } from '../../words/problem-text.ts';
import { tooLongToCheck } from '../../words/program.ts';
import type { Request } from '../command.ts';
import { risksOf, risksText } from '../commands/check.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { openShow } from '../open-show.ts';
import { shellWord } from '../shell/shell-word.ts';

/** Places of a list: more keep whoever waits for longer than ten seconds, and no night has a tenth of these. */
const MOST_PLACES = 1000;

export type NewFileCheck = { readonly text: string; readonly code: number };

/** `work` runs what takes long. */
export async function checkNewFile(
	name: string,
	{ request, io }: { readonly request: Request; readonly io: Io },
	work: <Value>(run: () => Value) => Value = (run) => run(),
): Promise<NewFileCheck> {
	const { show, problems, root } = await openShow(name, request, io);
	const toLookAt = (text: string) => ({ text: `${text}\n`, code: EXIT.toLookAt });
	if (show === null) return toLookAt(problems.map(problemText).join('\n'));
	if (show.set.length > MOST_PLACES) {
		return toLookAt(tooLongToCheck(show.set.length, shellWord(name)));
	}
	const risks = work(() => risksOf(show, root));
	return { text: risksText(risks, shellWord(name)), code: EXIT.fine };
}
