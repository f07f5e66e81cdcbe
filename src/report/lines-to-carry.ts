// What the next show finds otherwise than its file gives it.

import { CARRY } from '../words/tomorrow.ts';
import { lineOn, type TomorrowLine, type TomorrowParts } from './tomorrow-line.ts';

/** What stands otherwise than the show file gives it. */
export function linesToCarry({ show, last }: TomorrowParts): readonly TomorrowLine[] {
	return show.instruments.flatMap((instrument) => {
		const state = last.instruments[instrument.id];
		if (state === undefined) return [];
		const { tuning, capo } = state.context;
		const isRetuned = tuning.notes.join(' ') !== instrument.tuning.notes.join(' ');
		const stands = [
			...(isRetuned ? [CARRY.tuning(tuning.name)] : []),
			...(capo > 0 ? [CARRY.capo(capo)] : []),
		].join(', ');
		const place =
			state.value === 'out' ? CARRY.out : state.value === 'onBench' ? CARRY.bench : null;
		return [
			...(stands === ''
				? []
				: [
						lineOn('carry-over', instrument, {
							text: stands,
							why: CARRY.file(instrument.tuning.name),
						}),
					]),
			...(place === null
				? []
				: [lineOn('carry-over', instrument, { text: place, why: CARRY.placeWhy })]),
		];
	});
}
