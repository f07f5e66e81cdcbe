// What goes with a hand-over in tall letters, in words beside it: the name, the capo, the pack, and what
// to check before it leaves the rack.

import { wearersOf } from '../session/shared-packs.ts';
import { offsetWords } from '../showfile/instrument-strings.ts';
import { packName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import { backupFor } from '../words/backup-for.ts';
import { capoWords } from '../words/capo-words.ts';
import {
	CAPO_OFF,
	checkWords,
	packOn,
	packSuspect,
	packToPutOn,
	takeWords,
} from '../words/stage.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { type Area, cutRow, type Row, rowWidth, type Span, span, wrapWords } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import type { Coming } from './what-comes.ts';

export type DetailArea = Area & {
	/** The name stands elsewhere. */
	readonly isNamed: boolean;
	readonly style: 'plain' | 'dim';
};

/**
 * At most so many rows. What has to be done comes before the reason, which is cut first: a backup's
 * stands in the list of backups too.
 */
export function detailRows(state: ScreenState, coming: Coming, area: DetailArea): Row[] {
	const { columns, rows, style } = area;
	const pack = packWords(state, coming);
	const head = headRows(state, coming, { ...area, pack });
	const hasPack = head.some((row) => row.some(({ text }) => text.includes(pack)));
	const lines = [
		...(coming.for === null ? [] : [backupFor(state.session.show, coming.for)]),
		...(hasPack || pack === '' ? [] : [pack]),
		...offsetLines(state, coming),
		...(coming.leave === null ? [] : [checkWords(coming.leave)]),
		...(coming.why === null ? [] : [coming.why]),
	];
	const wrapped = wrapWords(lines.join('; '), { columns, rows: rows - head.length });
	return [...head, ...wrapped.map((line): Row => [span(line, style)])];
}

function headRows(
	state: ScreenState,
	coming: Coming,
	{ columns, rows, isNamed, style, pack }: DetailArea & { readonly pack: string },
): Row[] {
	if (coming.instrument === null) return [];
	const capo = capoSpan(state, coming);
	if (coming.kind === 'stays') return [stayRow(state, coming, style)];
	const withPack: Row = pack === '' ? [capo] : [capo, span(`  ${pack}`, style)];
	// A pack that does not fit whole stands below, and not twice.
	if (isNamed) return [rowWidth(withPack) <= columns ? withPack : [capo]];
	const name = span(nameOf(state, coming), style);
	const fits = [
		[name, span('  '), ...withPack],
		[name, span('  '), capo],
	].find((row) => rowWidth(row) <= columns);
	if (fits !== undefined) return [fits];
	if (rows > 3) return [[name], withPack].map((row) => cutRow(row, columns));
	return [[...cutRow([name], columns - rowWidth([capo]) - 1), span(' '), capo]];
}

/** What is to be taken from the rack; in a hurry with the order to take it. */
function nameOf({ session: { show } }: ScreenState, { kind, instrument }: Coming): string {
	if (instrument === null) return '';
	const name = shownInstrument(show, instrument);
	return kind === 'break' ? takeWords(name) : name;
}

/** What it is in, and its capo where that is not to be moved. */
function stayRow(state: ScreenState, coming: Coming, style: 'plain' | 'dim'): Row {
	const { show, instruments } = state.session;
	const { instrument, tuning, capo } = coming;
	const words = span(tuning === null ? '' : shortTuning(show, tuning), style);
	const isMoved = instrument !== null && instruments[instrument]?.context.capo !== capo;
	return isMoved ? [words] : [words, span('  '), capoSpan(state, coming)];
}

/** What the strings are to stand off equal temperament for this player, which is nobody's to guess. */
function offsetLines({ session: { show } }: ScreenState, coming: Coming): readonly string[] {
	const { instrument: id, tuning, player } = coming;
	const instrument = show.instruments.find((one) => one.id === id);
	const off = instrument && tuning ? offsetWords(show, { instrument, tuning, player }) : '';
	return off === '' ? [] : [off];
}

/** In capitals where the player is to be given another than the one they wear, and who wears it now. */
function packWords({ session }: ScreenState, { pack, player }: Coming): string {
	if (pack === null) return '';
	const { show, suspectPacks } = session;
	const name = packName(show, pack);
	const worn = session.players[player]?.pack ?? null;
	if (suspectPacks.includes(pack)) {
		return packSuspect(name, worn === null || worn === pack ? null : packName(show, worn));
	}
	if (pack === worn) return packOn(name);
	const wearer = wearersOf(session, pack).find(
		({ id }) => id !== player && session.players[id]?.holds,
	);
	return packToPutOn(name, wearer ? playerName(show, wearer.id) : null);
}

/** A capo to put on, or one that sits there and is not wanted, is said louder than none. */
function capoSpan({ session }: ScreenState, { instrument, capo }: Coming): Span {
	const on = instrument === null ? 0 : (session.instruments[instrument]?.context.capo ?? 0);
	if (capo === 0 && on > 0) return span(CAPO_OFF, 'bright');
	return span(capoWords(capo), capo > 0 ? 'bright' : 'plain');
}
