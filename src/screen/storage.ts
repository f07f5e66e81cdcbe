// Whether the night is kept, where, and what was noticed about its files: in a row of its own that no
// other warning pushes out, and in full, with all other warnings, in a view.

import type { SaveWarning } from '../journal/night-journal.ts';
import { keyOfAction } from '../keys/key-choices.ts';
import {
	elsewhereInShort,
	elsewhereWords,
	inOneRow,
	saveProblemInShort,
	saveProblemWords,
	saveWarningInShort,
	saveWarningWords,
	wipedHomeInShort,
	wipedHomeWords,
} from '../words/disk.ts';
import { DISK_IS_SLOW, moreAndKey, NOTHING, NOTHING_REACHES_DISK, PLACES } from '../words/stage.ts';
import { HEADINGS, helpPart } from '../words/views.ts';
import { warningWords } from '../words/warnings.ts';
import {
	type Area,
	cutRow,
	fillRows,
	placeAt,
	type Row,
	rowWidth,
	type SpanStyle,
	span,
	wrapWords,
} from './row.ts';
import type { Follows, ScreenState } from './screen-state.ts';

const LABEL_COLUMNS = 10;
const LONGEST_WORDS_ROWS = 9;

type Told = Pick<ScreenState, 'save' | 'findings' | 'noticesSeen' | 'follows'>;

/** Something to be said of where the night is kept. */
type Said = {
	readonly label: string;
	readonly words: string;
	/** In one row of so many cells, where the words themselves would be cut; what matters comes first. */
	readonly short: (columns: number) => string;
	readonly style: SpanStyle;
};

/** What is wrong with keeping the night just now, the gravest first; none while all is well. */
function storageTroubles({ save, follows }: Told): readonly Said[] {
	const { elsewhere, wipedHome, problem } = save;
	// Nobody can know when the other copy has ended, and what it writes goes on to count.
	const others = save.warnings.filter(isOfAnother).map((one) => ({
		label: PLACES.storage,
		words: saveWarningWords(one),
		short: (columns: number) => saveWarningInShort(one, columns),
		style: 'unready' as const,
	}));
	const words = saveProblem(save);
	return [
		...(follows?.trouble ? [followTrouble(follows.trouble)] : []),
		...(words === null
			? []
			: [
					{
						label: PLACES.notSaved,
						words,
						short: () => (problem ? saveProblemInShort(problem) : words),
						style: 'accent' as const,
					},
				]),
		...(elsewhere === null
			? []
			: [
					{
						label: elsewhere.isWiped ? PLACES.notSafe : PLACES.elsewhere,
						words: elsewhereWords(elsewhere),
						short: (columns: number) => elsewhereInShort(elsewhere, columns),
						style: elsewhere.isWiped ? ('accent' as const) : ('unready' as const),
					},
				]),
		...(wipedHome === null
			? []
			: [
					{
						label: PLACES.notSafe,
						words: wipedHomeWords(wipedHome),
						short: (columns: number) => wipedHomeInShort(wipedHome, columns),
						style: 'accent' as const,
					},
				]),
		...others,
	];
}

function followTrouble({ words, short, isEnd }: NonNullable<Follows['trouble']>): Said {
	return { label: PLACES.storage, words, short: () => short, style: isEnd ? 'plain' : 'accent' };
}

function saveProblem({ problem, state }: ScreenState['save']): string | null {
	if (problem !== null) return saveProblemWords(problem);
	if (state === 'unsaved') return NOTHING_REACHES_DISK;
	return state === 'slow' ? DISK_IS_SLOW : null;
}

function isOfAnother({ code }: SaveWarning): boolean {
	return code === 'written-by-other';
}

/** What was noticed about the night's files since the start, oldest first. */
function storageNotices({ save, findings }: Told): readonly Said[] {
	const warnings = save.warnings.filter((one) => !isOfAnother(one));
	return [...findings, ...warnings.map(saveWarningWords)].map((words) => ({
		label: PLACES.storage,
		words,
		short: (columns) => inOneRow(words, columns),
		style: 'unready',
	}));
}

/** What stands in the row: troubles as long as they last, the rest until it was looked at. */
function storageNow(state: Told): readonly Said[] {
	const unseen = storageNotices(state).slice(state.noticesSeen);
	return [...storageTroubles(state), ...unseen.toReversed()];
}

/** The label of the row, which stands in every view and size; null while there is nothing to say. */
export function storageMark(state: Told): Pick<Said, 'label' | 'style'> | null {
	return storageNow(state)[0] ?? null;
}

/** The row, with how much more there is and the key that shows it; null while there is nothing to say. */
export function storageRow(state: ScreenState, columns: number): Row | null {
	const [first, ...more] = storageNow(state);
	if (!first) return null;
	const key = keyOfAction('warnings', state.preferences.keys);
	const whole = [span(first.words, first.style)];
	const isWhole = more.length === 0 && LABEL_COLUMNS + rowWidth(whole) <= columns;
	const hint = isWhole || columns < 50 ? '' : moreAndKey(more.length, key);
	const room = columns - LABEL_COLUMNS - (hint === '' ? 0 : hint.length + 2);
	const isCut = rowWidth(whole) > room;
	const short = isCut ? [span(first.short(room), first.style)] : whole;
	return placeAt(columns, [
		[0, [span(first.label, first.style)]],
		[LABEL_COLUMNS, cutRow(short, Math.max(0, room))],
		...(hint === '' ? [] : [[columns - hint.length, [span(hint, 'dim')]] as const]),
	]);
}

/** Every warning in full: where the night is kept, what was noticed about its files, then the plan's. */
export function warningsPane(state: ScreenState, { columns, rows }: Area): Row[] {
	const all: readonly Omit<Said, 'short'>[] = [
		...storageTroubles(state),
		...storageNotices(state).toReversed(),
		...(state.outsideTrouble
			? [{ label: PLACES.watch, words: state.outsideTrouble, style: 'unready' as const }]
			: []),
		...state.plan.warnings.map((one) => ({
			label: PLACES.watch,
			words: warningWords(state.session.show, one),
			style: 'plain' as const,
		})),
	];
	const entries = all.map(({ label, words, style }) =>
		wrapWords(words, {
			columns: Math.max(1, columns - 2 - LABEL_COLUMNS),
			rows: LONGEST_WORDS_ROWS,
		}).map((line, index) =>
			placeAt(columns, [
				[2, index === 0 ? [span(label, 'title')] : []],
				[2 + LABEL_COLUMNS, [span(line, style)]],
			]),
		),
	);
	const room = Math.max(1, rows - 1);
	const first = firstEntry(entries, state.picked, room);
	const lines = entries.slice(first).flat();
	const isPart = entries.flat().length > room;
	const last = entries.findLastIndex(
		(_, index) => index >= first && entries.slice(first, index + 1).flat().length <= room,
	);
	const how = isPart
		? helpPart(first + 1, Math.max(first, last) + 1, entries.length)
		: HEADINGS.warningsHow;
	const heading = placeAt(columns, [
		[2, [span(HEADINGS.warnings, 'title')]],
		[2 + LABEL_COLUMNS, [span(how.trim(), 'dim')]],
	]);
	const none: Row = [span(`  ${NOTHING}`, 'dim')];
	return fillRows([heading, ...(entries.length === 0 ? [none] : lines)], rows);
}

/** The picked entry, but none so late that rows stay empty at the end. */
function firstEntry(entries: readonly (readonly Row[])[], picked: number, room: number): number {
	let first = 0;
	while (first < picked && entries.slice(first).flat().length > room) first += 1;
	return first;
}
