// What goes wrong between hands when a show is played as its file says: two players on one instrument,
// hand-overs that no gap has room for, tunings that a bridge or a neck will not take.

import { KINDS } from '../tuning/kind.ts';
import { isReachable } from '../tuning/retune.ts';
import { checkSubstituted } from './check-substituted.ts';
import type { Finding, Given } from './finding.ts';
import { holdingsThatFit, isSameTuning, mayHave, staysInTune } from './fitting-holdings.ts';
import { whereOf } from './set-point-where.ts';
import type { Player, Show } from './show.ts';
import type { SetPoint } from './walk-set.ts';

/** Findings about hands and hand-overs at the points of the set, in their order. */
export function checkHands(show: Show, points: readonly SetPoint[]): Finding[] {
	const byPoint = points.flatMap((point) => [
		...checkSubstituted(show, point),
		...sharedPacks(show, point),
		...crowdedGap(point),
		...show.players.flatMap((player) => checkPart(show, player, point)),
		...point.unmet
			.filter(({ player }) => point.parts[player.id] !== undefined)
			.map((unmet) => unmetNeed(point, unmet)),
	]);
	return [...nothingToKeep(show, points), ...byPoint];
}

function sharedPacks(show: Show, point: SetPoint): Finding[] {
	// What is played instead of a named one is the plan's to choose, and so is its pack.
	const sure = show.players.filter(
		({ id }) => !point.substituted.some(({ player }) => player.id === id),
	);
	return show.packs.flatMap(({ id }): Finding[] => {
		const holders = sure.filter((player) => packOf(point, player) === id);
		const instruments = new Set(holders.map((one) => point.hands.get(one.id)?.instrument.id));
		const isNews = holders.some((player) => point.parts[player.id] !== undefined);
		if (instruments.size < 2 || !isNews) return [];
		const players = holders.map((one) => one.id);
		return [{ code: 'shared-pack', severity: 'risk', ...whereOf(point), players, pack: id }];
	});
}

function packOf(point: SetPoint, player: Player): string | null {
	const part = point.parts[player.id];
	const named = part && part.kind !== 'none' ? part.pack : null;
	return named ?? point.hands.get(player.id)?.instrument.pack ?? null;
}

function crowdedGap({ on, cue, given, substituted }: SetPoint): Finding[] {
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

function checkPart(show: Show, player: Player, point: SetPoint): Finding[] {
	const part = point.parts[player.id];
	const about = { ...whereOf(point), player: player.id } as const;
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
	point: SetPoint,
	{ player, part, inOtherHands }: SetPoint['unmet'][number],
): Finding {
	return {
		code: 'needs-unmet',
		severity: 'risk',
		...whereOf(point),
		player: player.id,
		kind: part.instrumentKind,
		sounds: part.sounds.name,
		inOtherHands: inOtherHands.map(({ id }) => id),
	};
}

// Asked once a player: whoever put an instrument down on purpose is meant to have none.
function nothingToKeep(show: Show, points: readonly SetPoint[]): Finding[] {
	const [first] = points;
	if (!first) return [];
	return show.players.flatMap((player): Finding[] => {
		if (first.parts[player.id] !== undefined) return [];
		const later = points.find((point) => point.parts[player.id] !== undefined);
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
