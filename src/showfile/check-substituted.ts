// Named instruments that a show cannot give: one for two players, one that somebody else keeps, a
// floating bridge in another tuning. Each is played on something else, and nobody is to be surprised.

import type { Finding } from './finding.ts';
import type { Holding } from './fitting-holdings.ts';
import { instrumentWords, momentWords } from './moment-words.ts';
import type { Instrument, Player, Show } from './show.ts';
import type { Moment, Substituted } from './walk-set.ts';

/** Findings of one moment; what a player merely keeps on with has been said where it was named. */
export function checkSubstituted(show: Show, moment: Moment): Finding[] {
	const named = moment.substituted.filter(({ player }) => isNamed(moment, player));
	const taken = Map.groupBy(
		named.filter(({ holder }) => holder !== null),
		({ named: { instrument } }) => instrument,
	);
	return [
		...[...taken].flatMap(([instrument, all]) => inTwoHands(show, moment, { instrument, all })),
		...named.filter(({ holder }) => holder === null).map((one) => ofFloatingBridge(moment, one)),
	];
}

function isNamed({ parts }: Moment, { id }: Player): boolean {
	return parts[id] !== undefined;
}

function inTwoHands(
	show: Show,
	moment: Moment,
	{ instrument, all }: { readonly instrument: Instrument; readonly all: readonly Substituted[] },
): Finding[] {
	const [first] = all;
	if (!first?.holder) return [];
	const { holder } = first;
	const about = {
		code: 'two-hands',
		severity: 'risk',
		song: moment.on.song.id,
		instrument: instrument.id,
	} as const;
	const where = momentWords(moment);
	const what = instrumentWords(instrument);
	if (!isNamed(moment, holder)) {
		return all.map(({ player, to }) => ({
			...about,
			player: player.id,
			text: `In ${where}, ${player.name} is named ${what}, and ${holder.name} keeps it. ${elseWords(player.name, to)}`,
		}));
	}
	const both = new Set([holder, ...all.map(({ player }) => player)]);
	const names = show.players.filter((one) => both.has(one)).map(({ name }) => name);
	const worst = all.find(({ to }) => to === null) ?? first;
	const who = all.length === 1 ? 'One of them' : 'All but one of them';
	const text = `In ${where}, ${names.join(' and ')} are named ${what} at once. ${elseWords(who, worst.to)}`;
	return [{ ...about, text }];
}

function ofFloatingBridge(moment: Moment, { player, named, to }: Substituted): Finding {
	const { instrument, tuning } = named;
	const what = instrumentWords(instrument);
	const instead =
		to?.instrument === instrument
			? `${player.name} will play it with a capo at fret ${to.capo} instead.`
			: elseWords(player.name, to);
	return {
		code: 'floating-retune',
		severity: 'risk',
		song: moment.on.song.id,
		player: player.id,
		instrument: instrument.id,
		text: `In ${momentWords(moment)}, ${what} is wanted in ${tuning.name}; its floating bridge stays in ${instrument.tuning.name} tonight. ${instead}`,
	};
}

function elseWords(who: string, to: Holding | null): string {
	return to === null
		? `${who} will have nothing: nothing else fits.`
		: `${who} will play something else.`;
}
