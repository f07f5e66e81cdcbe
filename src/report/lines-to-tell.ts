// Who must know what before the next show.

import { minutesSeconds } from '../base/duration.ts';
import { packName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import { TELL } from '../words/tomorrow.ts';
import { packLines } from './lines-to-repair.ts';
import { lineAbout, lineOn, type TomorrowLine, type TomorrowParts } from './tomorrow-line.ts';

/** Why an instrument cannot be played as it is; empty where it can. */
function unplayable({ last }: TomorrowParts, id: string): string {
	const state = last.instruments[id];
	if (state === undefined) return '';
	const { stringsDown, faults } = state.context;
	return [
		...(stringsDown.length === 0 ? [] : [TELL.brokeString(stringsDown)]),
		...faults.map(TELL.fault),
		...(state.value === 'out' && faults.length === 0 ? [TELL.out] : []),
	].join('; ');
}

/** Players, then who has the radio list, owners, production. */
export function linesToTell(parts: TomorrowParts): readonly TomorrowLine[] {
	const { show, last, report, nights, gearOf } = parts;
	const tonight = nights.at(-1)?.breaks ?? [];
	const ofInstruments = show.instruments.flatMap((instrument) => {
		const why = unplayable(parts, instrument.id);
		const shown = shownInstrument(show, instrument.id);
		const players = report.handOvers
			.filter(({ instrumentId }) => instrumentId === instrument.id)
			.map(({ playerId }) => playerId);
		const broke = tonight.filter(({ gear }) => gear === gearOf(instrument));
		const owner = instrument.hiredFrom ?? instrument.owner ?? null;
		const what = [
			...(broke.length === 0 ? [] : [TELL.brokeString(broke.map(({ string }) => string))]),
			...(last.instruments[instrument.id]?.context.faults ?? []).map(TELL.fault),
		].join('; ');
		return [
			...(why === ''
				? []
				: [...new Set(instrument.for ?? players)].map((player) =>
						lineOn('tell', instrument, { text: TELL.player(playerName(show, player), shown), why }),
					)),
			...(owner === null || what === ''
				? []
				: [
						lineOn('tell', instrument, {
							text: TELL.owner(owner, shown),
							why: TELL.ownerWhy(what, instrument.serial ?? null),
						}),
					]),
		];
	});
	const byPlayer = Map.groupBy(tonight, ({ player }) => player);
	const over = report.timing.curfew?.overSeconds ?? 0;
	return [
		...ofInstruments,
		...[...byPlayer].flatMap(([player, broke]) =>
			player === null || broke.length < 2
				? []
				: [
						lineAbout('tell', player, {
							text: TELL.breaks(player, broke.length),
							why: TELL.breaksWhy(
								broke.map(({ shown, string }) => `${shown} ${string ?? '?'}`).join(', '),
							),
						}),
					],
		),
		...last.suspectPacks.map((pack) =>
			lineAbout('tell', packName(show, pack), {
				text: TELL.radio(packName(show, pack)),
				why: packLines(parts).find(({ name }) => name === packName(show, pack))?.why ?? '',
			}),
		),
		...(over > 0
			? [
					lineAbout('tell', show.title, {
						text: TELL.production(minutesSeconds(over)),
						why: TELL.productionWhy(report.timing.curfew?.clock ?? ''),
					}),
				]
			: []),
	];
}
