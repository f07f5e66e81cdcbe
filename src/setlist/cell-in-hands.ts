// What a cell puts into a player's hands: which instrument, in which tuning, with which capo; or why that is asked.

import { type InstrumentKind, KINDS } from '../tuning/kind.ts';
import type { ListInstruments } from './list-instruments.ts';
import type { AskedWhy, Rack } from './list-reading.ts';
import type { Owner } from './owners.ts';
import { rackSlip } from './rack-slip.ts';
import { type CellSaid, type Has, NOTHING_SAID } from './read-cell.ts';
import type { DraftCell } from './show-draft.ts';

type Open = { readonly why: AskedWhy; readonly near: string | null };
/** Null: they keep what they have. */
type InHands = { readonly cell: DraftCell | null; readonly isUsualTuning?: true } | Open;

const open = (why: AskedWhy): Open => ({ why, near: null });

/** `now` is what the player has from the song above; a capo alone goes on that, or on an instrument in its usual tuning. */
export function cellInHands(
	said: Exclude<CellSaid, { kind: 'as' }>,
	{ owner, now }: { readonly owner: Owner; readonly now: DraftCell | null },
	{ rack, instruments }: { readonly rack: Rack; readonly instruments: ListInstruments },
): InHands {
	if (said.kind === 'keeps') return { cell: null };
	if (said.kind === 'none') return { cell: { kind: 'none' } };
	if (said.kind === 'unclear') return open(said.why);
	if ((said.name ?? said.slot ?? said.id) !== null) return named(said);
	if (said.instrumentKind !== null) return needs(said.tuning, said.instrumentKind);
	const capo = said.capo ?? 0;
	if (said.tuning !== null) return whichever(said.tuning, capo);
	if (now?.kind === 'named') return withCapo(now, capo);
	const { usual } = KINDS[owner.kind];
	if (owner.hasNames || usual === null) return open('capo-on-nothing');
	return { ...whichever(usual, capo), isUsualTuning: true };

	function withCapo(held: Extract<DraftCell, { kind: 'named' }>, fret: number): InHands {
		const kind = instruments.all.find(({ id }) => id === held.instrument)?.kind;
		if (kind && fret > 0 && !KINDS[kind].canTakeCapo) return open('capo-on-this-kind');
		return { cell: { ...held, capo: fret } };
	}

	function named(one: Has): InHands {
		const instrument = instruments.find(one, owner);
		if (!instrument) return rackSlip(rack, one) ?? open('no-such-instrument');
		const fret = one.capo ?? 0;
		if (fret > 0 && !KINDS[instrument.kind].canTakeCapo) return open('capo-on-this-kind');
		const cell = { kind: 'named', instrument: instrument.id, tuning: null, capo: fret } as const;
		if (one.tuning === null) return { cell };
		const tuning = instruments.tuning(one.tuning, instrument.kind);
		if (!tuning) return open('tuning-of-another-kind');
		return { cell: tuning.name === instrument.tuning ? cell : { ...cell, tuning: tuning.name } };
	}

	function needs(text: string | null, kind: InstrumentKind): InHands {
		const tuning = text === null ? null : instruments.tuning(text, kind);
		if (!tuning) return open('tuning-of-another-kind');
		return { cell: { kind: 'needs', instrumentKind: kind, sounds: tuning.name } };
	}

	/** A tuning alone: whichever of theirs; with a capo it has to be one that is in it. */
	function whichever(text: string, fret: number): InHands {
		const theirs = instruments.all.filter((one) => one.for?.includes(owner.player.id));
		const able = theirs.filter((one) => instruments.tuning(text, one.kind) !== null);
		const [inIt, other] = able.filter(
			(one) => instruments.tuning(text, one.kind)?.name === one.tuning,
		);
		if (inIt && !other && (fret > 0 || !owner.hasNames))
			return named({ ...NOTHING_SAID, id: inIt.id, capo: fret });
		const [only, another] = theirs;
		if (only && !another && able.length === 1)
			return named({ ...NOTHING_SAID, id: only.id, tuning: text, capo: fret });
		if (fret > 0 || theirs.length === 0) return open('which-instrument');
		const [first] = able;
		return first ? needs(text, first.kind) : open('tuning-of-another-kind');
	}
}
