// What each section ahead asks of each player, with everything that would do for it.

import type { Demand } from './demand.ts';
import { demandAt, goesOnWithin } from './demand.ts';
import type { Hand } from './hand.ts';
import type { Outlook } from './outlook.ts';
import { preferenceCost } from './preference.ts';
import { waysToSound } from './ways-to-sound.ts';
import { whyAbsent, whyUnplayable } from './why-unplayable.ts';

/** An instrument in an open tuning with a capo that would do, and the points against it. */
export type Option = { readonly hand: Hand; readonly preference: number };

/** What one player is asked in one section. */
export type Ask = {
	readonly demand: Demand;
	/** Their hands are left alone. */
	readonly isSettled: boolean;
	/** Asked only of empty hands: it is the middle of a song, and nobody exchanges for them there. */
	readonly isOfEmptyHands: boolean;
	/** For what is named or needed, in the order of the file, then the lowest fret; else none. Of settled players, what they should have. */
	readonly options: readonly Option[];
};

/**
 * The asks of each section, players in the file's order. What somebody is named for is no option for
 * whoever merely needs one of its kind.
 *
 * @example
 * asksAhead(outlook)[1].map(({ demand, options }) => [demand.kind, options.length]) // => [['named', 1], ['keeps', 0], ['keeps', 0]]
 */
export function asksAhead(outlook: Outlook): readonly (readonly Ask[])[] {
	const { show, sections, settledThrough } = outlook;
	const songs = new Map(show.songs.map((song) => [song.id, song]));
	return sections.map((section, place) => {
		const song = songs.get(section.song);
		const asked = show.players.map(({ id }) => ({
			player: id,
			isSettled: (settledThrough.get(id) ?? -1) >= place,
			isOfEmptyHands: song !== undefined && goesOnWithin(song, section, id),
			demand:
				song === undefined
					? ({ kind: 'keeps' } as const)
					: demandAt(show, { song, point: section.point, player: id }),
		}));
		const namedFor = new Map<string, string>();
		for (const { player, isSettled, demand } of asked) {
			if (demand.kind !== 'named' || isSettled || !isPlayable(outlook, demand)) continue;
			namedFor.set(demand.instrument.id, player);
		}
		return asked.map(({ player, demand, ...how }): Ask => {
			const options = optionsFor(outlook, demand, player);
			const isFree = ({ hand }: Option): boolean =>
				demand.kind === 'named' || !namedFor.has(hand.instrument);
			return { demand, ...how, options: options.filter(isFree) };
		});
	});
}

function isPlayable(
	{ instruments }: Outlook,
	{ instrument, tuning }: Extract<Demand, { kind: 'named' }>,
): boolean {
	const state = instruments[instrument.id];
	return state !== undefined && whyUnplayable({ instrument, state, tuning }) === null;
}

function optionsFor(outlook: Outlook, demand: Demand, player: string): readonly Option[] {
	if (demand.kind === 'named') {
		const { instrument, tuning, capo } = demand;
		if (!isPlayable(outlook, demand)) return [];
		return [{ hand: { instrument: instrument.id, tuning, capo }, preference: 0 }];
	}
	if (demand.kind !== 'needs') return [];
	const { instrumentKind, features, sounds } = demand.part;
	return outlook.show.instruments.flatMap((instrument): readonly Option[] => {
		const state = outlook.instruments[instrument.id];
		const isFit =
			state !== undefined &&
			instrument.kind === instrumentKind &&
			(instrument.for === null || instrument.for.includes(player)) &&
			features.every((feature) => instrument.features.includes(feature)) &&
			whyAbsent(instrument, state) === null;
		if (!isFit) return [];
		return waysToSound(instrument, sounds, state.context.tuning).map((way) => ({
			hand: { instrument: instrument.id, ...way },
			preference: preferenceCost(instrument, way.capo, demand.part),
		}));
	});
}
