// What goes wrong between hands when a show is played as its file says: two players on one instrument,
// hand-overs that no gap has room for, tunings that a bridge or a neck will not take.

import { KINDS } from '../tuning/kind.ts';
import { isReachable } from '../tuning/retune.ts';
import { checkSubstituted } from './check-substituted.ts';
import type { Finding } from './finding.ts';
import { holdingsThatFit, isSameTuning, mayHave, staysInTune } from './fitting-holdings.ts';
import { instrumentWords, momentWords } from './moment-words.ts';
import type { Player, Show } from './show.ts';
import type { Moment } from './walk-set.ts';

/** Findings about hands and hand-overs at the moments of the set, in their order. */
export function checkHands(show: Show, moments: readonly Moment[]): Finding[] {
	const byMoment = moments.flatMap((moment) => [
		...checkSubstituted(show, moment),
		...sharedPacks(show, moment),
		...crowdedGap(moment),
		...show.players.flatMap((player) => checkPart(show, player, moment)),
		...moment.unmet
			.filter(({ player }) => moment.parts[player.id] !== undefined)
			.map((unmet) => unmetNeed(moment, unmet)),
	]);
	return [...nothingToKeep(show, moments), ...byMoment];
}

function sharedPacks(show: Show, moment: Moment): Finding[] {
	// What is played instead of a named one is the plan's to choose, and so is its pack.
	const sure = show.players.filter(
		({ id }) => !moment.substituted.some(({ player }) => player.id === id),
	);
	return show.packs.flatMap(({ id }): Finding[] => {
		const holders = sure.filter((player) => packOf(moment, player) === id);
		const instruments = new Set(holders.map((one) => moment.hands.get(one.id)?.instrument.id));
		const isNews = holders.some((player) => moment.parts[player.id] !== undefined);
		if (instruments.size < 2 || !isNews) return [];
		const names = holders.map(({ name }) => name).join(' and ');
		return [
			{
				code: 'shared-pack',
				severity: 'risk',
				song: moment.on.song.id,
				text: `In ${momentWords(moment)}, ${names} are both on pack ${id}.`,
			},
		];
	});
}

function packOf(moment: Moment, player: Player): string | null {
	const part = moment.parts[player.id];
	const named = part && part.kind !== 'none' ? part.pack : null;
	return named ?? moment.hands.get(player.id)?.instrument.pack ?? null;
}

function crowdedGap({ on, cue, given, substituted }: Moment): Finding[] {
	if (cue !== null || on.gapSeconds === null || given.length === 0) return [];
	const seconds = given.reduce((sum, { to }) => sum + to.instrument.times.handOver, 0);
	if (seconds <= on.gapSeconds) return [];
	const what = given.map(({ player, to }) => {
		const missed = substituted.find((one) => one.player === player)?.named.instrument;
		const gets = missed
			? `a backup for ${instrumentWords(missed)}`
			: instrumentWords(to.instrument);
		return `${player.name} gets ${gets}`;
	});
	const only = given.length === 1 ? given[0] : undefined;
	const about = {
		severity: 'risk',
		song: on.song.id,
		...(only ? { player: only.player.id } : {}),
		...(only && substituted.length === 0 ? { instrument: only.to.instrument.id } : {}),
	} as const;
	if (on.gapSeconds === 0) {
		const text = `${on.song.title} follows with no gap, and ${what.join(', ')}.`;
		return [{ code: 'segue-hand-over', ...about, text }];
	}
	const text = `${on.song.title} comes after ${on.gapSeconds} s, and its hand-overs take ${seconds} s: ${what.join(', ')}.`;
	return [{ code: 'gap-too-short', ...about, text }];
}

function checkPart(show: Show, player: Player, moment: Moment): Finding[] {
	const part = moment.parts[player.id];
	const where = momentWords(moment);
	const about = { song: moment.on.song.id, player: player.id } as const;
	if (part?.kind === 'needs' && part.prefer !== null) {
		const fits = holdingsThatFit(show, player, part).some(
			({ instrument }) => instrument.id === part.prefer,
		);
		if (fits) return [];
		const text = `In ${where}, ${player.name} prefers ${part.prefer}, which cannot play this part.`;
		return [{ code: 'prefer-unfit', severity: 'note', ...about, instrument: part.prefer, text }];
	}
	if (part?.kind !== 'named') return [];
	const instrument = show.instruments.find(({ id }) => id === part.instrument);
	if (!instrument) return [];
	const { capo } = part;
	const tuning = part.tuning ?? instrument.tuning;
	const name = instrumentWords(instrument);
	const risk = { severity: 'risk', ...about, instrument: instrument.id } as const;
	const findings: Finding[] = [];
	if (!mayHave(player, instrument)) {
		const owners = show.players
			.filter(({ id }) => instrument.for?.includes(id))
			.map((one) => one.name);
		const text = `In ${where}, ${player.name} plays ${name}, which is for ${owners.join(' and ')}.`;
		findings.push({ code: 'for-others', ...risk, text });
	}
	if (capo > 0 && !KINDS[instrument.kind].canTakeCapo) {
		const text = `In ${where}, ${name} has a capo at fret ${capo}, and no capo goes on a ${KINDS[instrument.kind].words}.`;
		findings.push({ code: 'capo-on-bass', ...risk, text });
	}
	// A floating bridge has been said already.
	const isAsked = staysInTune(instrument, tuning) && !isSameTuning(tuning, instrument.tuning);
	if (isAsked && !isReachable(instrument.tuning.notes, tuning.notes, instrument.kind)) {
		const text = `In ${where}, ${name} is wanted in ${tuning.name}, too far from ${instrument.tuning.name} that its strings are for.`;
		findings.push({ code: 'far-tuning', ...risk, text });
	}
	return findings;
}

function unmetNeed(
	moment: Moment,
	{ player, part, inOtherHands }: Moment['unmet'][number],
): Finding {
	const where = momentWords(moment);
	const wanted = `${KINDS[part.instrumentKind].words} sounding ${part.sounds.name}`;
	const taken = inOtherHands.map(instrumentWords).join(' and ');
	const why = taken === '' ? 'nothing on the rack can be that' : `${taken} is in other hands`;
	return {
		code: 'needs-unmet',
		severity: 'risk',
		song: moment.on.song.id,
		player: player.id,
		text: `In ${where}, ${player.name} needs a ${wanted}, and ${why}.`,
	};
}

// Asked once a player: whoever put an instrument down on purpose is meant to have none.
function nothingToKeep(show: Show, moments: readonly Moment[]): Finding[] {
	const [first] = moments;
	if (!first) return [];
	return show.players.flatMap((player): Finding[] => {
		if (first.parts[player.id] !== undefined) return [];
		const later = moments.find((moment) => moment.parts[player.id] !== undefined);
		const when = later ? `until ${momentWords(later)}` : 'in the whole set';
		return [
			{
				code: 'nothing-to-keep',
				severity: later ? 'risk' : 'note',
				song: first.on.song.id,
				player: player.id,
				text: `${player.name} keeps what they have from the first song on, and has nothing ${when}.`,
			},
		];
	});
}
