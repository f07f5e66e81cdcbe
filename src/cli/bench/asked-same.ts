// Whether what was measured before, under the same id and by another file, was this very instrument: asked
// once, on a terminal or by an option, and the answer is kept.

import { cleanText } from '../../base/clean-text.ts';
import type { GearCompared, GearEntry, Measured } from '../../gear/gear-entry.ts';
import { folderIn, type GearId } from '../../gear/gear-id.ts';
import { remembered } from '../../gear/remembered.ts';
import type { Instrument } from '../../showfile/show.ts';
import {
	BAD_SAME,
	bodyWords,
	isItThis,
	measuredAsAnother,
	measuredElsewhere,
	sayWhether,
	YES_OR_NO,
} from '../../words/same-instrument.ts';
import { type Ask, askNobody, askOnTerminal } from '../ask-on-terminal.ts';
import type { Asked } from '../asked-number.ts';
import { optionText, type Request } from '../command.ts';
import type { Io } from '../io.ts';
import { localDay } from '../local-day.ts';

export type SameAbout = {
	readonly gear: GearId;
	readonly instrument: Instrument;
	/** What people call it. */
	readonly name: string;
};

export type SameAnswer = {
	/** To be kept. */
	readonly answers: readonly GearCompared[];
	/** What is in doubt still, or cannot be, a sentence each. */
	readonly findings: readonly string[];
};

type Asking = {
	readonly request: Request;
	readonly io: Io;
	readonly entries: readonly GearEntry[];
};

/** What is answered of each doubt about this instrument. */
export async function askedSame(
	about: SameAbout,
	{ request, io, entries }: Asking,
): Promise<Asked<SameAnswer>> {
	const { gear, instrument, name } = about;
	const option = optionText(request, 'same');
	if (option !== null && option !== 'yes' && option !== 'no') {
		const problem = { code: 'bad-same', what: BAD_SAME };
		return {
			ok: false,
			problems: [{ ...problem, found: cleanText(option), expected: YES_OR_NO }],
		};
	}
	const { doubts, otherBody } = remembered(entries, { gear, instrument });
	const other = otherBody?.body;
	const differs =
		other === undefined
			? []
			: [measuredAsAnother(name, bodyWords(other.kind, other.strings, other.scaleMillimetres))];
	const ask = request.options.json === true ? askNobody : askOnTerminal(io);
	const answers: GearCompared[] = [];
	const open: string[] = [];
	for (const doubt of doubts) {
		const folder = folderIn(doubt);
		const place = folder === null ? null : cleanText(folder);
		const measured = measuredElsewhere(instrument.id, place, dayOf(entries, doubt));
		const isSame =
			option === null ? await yesOrNo(isItThis(measured, name), ask) : option === 'yes';
		if (isSame === null) open.push(sayWhether(measured, name));
		else answers.push({ k: 'gear-compared', at: io.wallMs(), gear, other: doubt, isSame });
	}
	return { ok: true, value: { answers, findings: [...differs, ...open] } };
}

/** Null where nobody is there to answer, or nothing was answered. */
async function yesOrNo(question: string, ask: Ask): Promise<boolean | null> {
	for (;;) {
		const answer = (await ask(question))?.trim() ?? '';
		if (answer === '') return null;
		if (/^[yn]/i.test(answer)) return /^y/i.test(answer);
	}
}

function dayOf(entries: readonly GearEntry[], other: GearId): string {
	const last = entries.findLast(
		(entry): entry is Measured => entry.k === 'set-up-measured' && entry.gear === other,
	);
	return localDay(last?.at ?? 0);
}
