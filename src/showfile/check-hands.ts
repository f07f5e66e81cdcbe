// What goes wrong between hands when a show is played as its file says: two players on one instrument,
// hand-overs that no gap has room for, tunings that a bridge or a neck will not take.

import { KINDS } from '../tuning/kind.ts';
import { isReachable } from '../tuning/retune.ts';
import { checkSubstituted } from './check-substituted.ts';
import type { Finding, Given } from './finding.ts';
import { holdingsThatFit, isSameTuning, mayHave, staysInTune } from './fitting-holdings.ts';
import { whereOf } from './moment-where.ts';
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
		const players = holders.map((one) => one.id);
		return [{ code: 'shared-pack', severity: 'risk', ...whereOf(moment), players, pack: id }];
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
	const all = given.map(({ player, to }): Given => {
		const missed = substituted.find((one) => one.player === player)?.named.instrument;
		const { id } = missed ?? to.instrument;
		return { player: player.id, instrument: id, isBackup: missed !== undefined };
	});
	const only = given.length === 1 ? given[0] : undefined;
	const about = {
		severity: 'risk',
		song: on.song.id,
		...(only ? { player: only.player.id } : {}),
		...(only && substituted.length === 0 ? { instrument: only.to.instrument.id } : {}),
	} as const;
	const code = on.gapSeconds === 0 ? 'segue-hand-over' : 'gap-too-short';
	return [{ code, ...about, gapSeconds: on.gapSeconds, seconds, given: all }];
}

function checkPart(show: Show, player: Player, moment: Moment): Finding[] {
	const part = moment.parts[player.id];
	const about = { ...whereOf(moment), player: player.id } as const;
	if (part?.kind === 'needs' && part.prefer !== null) {
		const fits = holdingsThatFit(show, player, part).some(
			({ instrument }) => instrument.id === part.prefer,
		);
		if (fits) return [];
		return [{ code: 'prefer-unfit', severity: 'note', ...about, instrument: part.prefer }];
	}
	if (part?.kind !== 'named') return [];
	const instrument = show.instruments.find(({ id }) => id === part.instrument);
	if (!instrument) return [];
	const { capo } = part;
	const tuning = part.tuning ?? instrument.tuning;
	const risk = { severity: 'risk', ...about, instrument: instrument.id } as const;
	const findings: Finding[] = [];
	if (!mayHave(player, instrument)) {
		const owners = show.players.map(({ id }) => id).filter((id) => instrument.for?.includes(id));
		findings.push({ code: 'for-others', ...risk, owners });
	}
	if (capo > 0 && !KINDS[instrument.kind].canTakeCapo) {
		findings.push({ code: 'capo-on-bass', ...risk, capo, kind: instrument.kind });
	}
	// A floating bridge has been said already.
	const isAsked = staysInTune(instrument, tuning) && !isSameTuning(tuning, instrument.tuning);
	if (isAsked && !isReachable(instrument.tuning.notes, tuning.notes, instrument.kind)) {
		const from = instrument.tuning.name;
		findings.push({ code: 'far-tuning', ...risk, tuning: tuning.name, from });
	}
	return findings;
}

function unmetNeed(
	moment: Moment,
	{ player, part, inOtherHands }: Moment['unmet'][number],
): Finding {
	return {
		code: 'needs-unmet',
		severity: 'risk',
		...whereOf(moment),
		player: player.id,
		kind: part.instrumentKind,
		sounds: part.sounds.name,
		inOtherHands: inOtherHands.map(({ id }) => id),
	};
}

// Asked once a player: whoever put an instrument down on purpose is meant to have none.
function nothingToKeep(show: Show, moments: readonly Moment[]): Finding[] {
	const [first] = moments;
	if (!first) return [];
	return show.players.flatMap((player): Finding[] => {
		if (first.parts[player.id] !== undefined) return [];
		const later = moments.find((moment) => moment.parts[player.id] !== undefined);
		return [
			{
				code: 'nothing-to-keep',
				severity: later ? 'risk' : 'note',
				song: first.on.song.id,
				player: player.id,
				until: later ? whereOf(later) : null,
			},
		];
	});
}
