// Named instruments that a show cannot give: one for two players, one that somebody else keeps, a
// floating bridge in another tuning. Each is played on something else, and nobody is to be surprised.

import type { Finding, Gets } from './finding.ts';
import type { Holding } from './fitting-holdings.ts';
import { whereOf } from './set-point-where.ts';
import type { Instrument, Player, Show } from './show.ts';
import type { SetPoint, Substituted } from './walk-set.ts';

/** Findings of one point; what a player merely keeps on with has been said where it was named. */
export function checkSubstituted(show: Show, point: SetPoint): Finding[] {
	const named = point.substituted.filter(({ player }) => isNamed(point, player));
	const taken = Map.groupBy(
		named.filter(({ holder }) => holder !== null),
		({ named: { instrument } }) => instrument,
	);
	return [
		...[...taken].flatMap(([instrument, all]) => inTwoHands(show, point, { instrument, all })),
		...named.filter(({ holder }) => holder === null).map((one) => ofFloatingBridge(point, one)),
	];
}

function isNamed({ parts }: SetPoint, { id }: Player): boolean {
	return parts[id] !== undefined;
}

function inTwoHands(
	show: Show,
	point: SetPoint,
	{ instrument, all }: { readonly instrument: Instrument; readonly all: readonly Substituted[] },
): Finding[] {
	const [first] = all;
	if (!first?.holder) return [];
	const { holder } = first;
	const about = {
		code: 'two-hands',
		severity: 'risk',
		...whereOf(point),
		instrument: instrument.id,
	} as const;
	if (!isNamed(point, holder)) {
		return all.map(({ player, to }) => ({
			...about,
			player: player.id,
			named: [player.id],
			keeper: holder.id,
			gets: getsOf(instrument, to),
		}));
	}
	const both = new Set([holder, ...all.map(({ player }) => player)]);
	const named = show.players.filter((one) => both.has(one)).map(({ id }) => id);
	const worst = all.find(({ to }) => to === null) ?? first;
	return [{ ...about, named, keeper: null, gets: getsOf(instrument, worst.to) }];
}

function ofFloatingBridge(point: SetPoint, { player, named, to }: Substituted): Finding {
	const { instrument, tuning } = named;
	return {
		code: 'floating-retune',
		severity: 'risk',
		...whereOf(point),
		player: player.id,
		instrument: instrument.id,
		tuning: tuning.name,
		stays: instrument.tuning.name,
		gets: getsOf(instrument, to),
	};
}

function getsOf(named: Instrument, to: Holding | null): Gets {
	if (to === null) return 'nothing';
	return to.instrument === named ? { capo: to.capo } : 'backup';
}
