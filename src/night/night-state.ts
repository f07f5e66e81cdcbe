// The state of a night as scripts and other programs read it. Names here are fixed: fields may be
// added, never renamed.

import type { InstrumentPlace } from '../../machines/instrument.ts';
import { cueIndex, cuePoints } from '../../machines/song.ts';
import { markText, tenths } from '../base/show-clock.ts';
import { workToDo } from '../plan/backups/break-work.ts';
import type { IdleWork, Plan, StandIn, Work } from '../plan/plan.ts';
import { workFor } from '../plan/schedule/work-for.ts';
import { warningJson } from '../report/plan-json.ts';
import { findSong, findSongItem, positionOf, songOnNow, songsOf } from '../session/find.ts';
import { readinessOf } from '../session/readiness.ts';
import type { Session, SongItem } from '../session/session.ts';
import { standInWords } from '../words/backup-reasons.ts';
import { laterWords } from '../words/later-costs.ts';

const PLACES: Readonly<Record<InstrumentPlace, string>> = {
	racked: 'rack',
	staged: 'stage',
	inHands: 'hands',
	onBench: 'bench',
	out: 'out',
};

export type NightStateInput = {
	readonly session: Session;
	readonly plan: Plan;
	readonly nowMs: number;
	readonly zeroMs: number;
	readonly isSaved: boolean;
	readonly standInsFor: (player: string) => readonly StandIn[];
};

/** The state as a JSON value; marks on the show clock, seconds to a tenth, objects in the show file's order. */
export function nightState(input: NightStateInput): Record<string, unknown> {
	const { session, plan, nowMs, zeroMs } = input;
	const mark = (ms: number) => markText(ms - zeroMs);
	const current = findSongItem(session, session.current);
	const currentSong = current && findSong(session, current.song);
	const points = currentSong ? cuePoints(currentSong) : [];
	const index = session.song ? cueIndex(session.song) : null;
	return {
		at: mark(nowMs),
		phase: session.phase.value,
		song:
			current && currentSong
				? {
						id: currentSong.id,
						position: positionOf(session.list, current),
						of: songsOf(session.list).length,
						title: currentSong.title,
					}
				: null,
		cue: index === null ? null : { index, of: points.length, at: points[index]?.at ?? 'start' },
		players: Object.fromEntries(session.show.players.map(({ id }) => [id, playerState(input, id)])),
		instruments: Object.fromEntries(
			session.show.instruments.flatMap((one) => {
				const state = session.instruments[one.id];
				if (!state) return [];
				const { isReady, isStale, ageSeconds } = readinessOf(session, one.id, nowMs);
				const { tuning, capo, stringsDown, faults } = state.context;
				return [
					[
						one.id,
						{
							place: PLACES[state.value],
							slot: one.slot,
							ready: isReady,
							readyAge: ageSeconds === null ? null : tenths(ageSeconds),
							stale: isStale,
							tuning: tuning.name,
							capo,
							stringsDown,
							faults,
						},
					],
				];
			}),
		),
		boards: Object.fromEntries(
			Object.entries(session.boards).map(([player, { context }]) => [
				player,
				Object.fromEntries(
					Object.entries(context.pedals).map(([id, pedal]) => [
						id,
						{ ...pedal, stuck: context.stuck.includes(id) },
					]),
				),
			]),
		),
		packs: Object.fromEntries(
			session.show.packs.map(({ id }) => [id, { suspect: session.suspectPacks.includes(id) }]),
		),
		todo: [...workToDo(input).map((work) => jobOf(work, mark)), ...plan.idle.map(idleJob)],
		standIns: Object.fromEntries(
			session.show.players.map(({ id }) => [
				id,
				input.standInsFor(id).map((one) => ({
					instrument: one.instrument,
					readyIn: tenths(one.readyInSeconds),
					why: standInWords(session.show, one.why),
					reasons: one.why,
					later: one.later.map((cost) => laterWords(session.show, cost)),
					costs: one.later,
				})),
			]),
		),
		warnings: plan.warnings.map((one) => warningJson(one, session.show)),
		played: playedSongs(session),
		incidents: session.incidents.map((one, place) => ({
			id: place + 1,
			at: mark(one.atMs),
			kind: one.kind,
			player: one.player,
			instrument: one.instrument,
			string: one.string,
			pedal: one.pedal,
			standIn: one.standIn,
			silence: one.silenceSeconds === null ? null : tenths(one.silenceSeconds),
			words: one.words,
		})),
		faults: session.faults.map((one) => ({
			incident: session.incidents.findIndex(({ id }) => id === one.incident) + 1,
			at: mark(one.atMs),
			player: one.player,
			symptom: one.symptom,
			instrument: one.instrument,
			tests: one.tests.map(({ test, answer }) => ({ test, answer })),
			heard: one.heardAtMs === null ? null : mark(one.heardAtMs),
			cause: one.part,
			open: one.isOpen,
		})),
		saved: input.isSaved,
	};
}

function jobOf(work: Work, mark: (ms: number) => string): Record<string, unknown> {
	return {
		job: work.job,
		instrument: work.instrument,
		to: work.to.name,
		capo: work.capo,
		song: work.section.song,
		player: work.player,
		seconds: tenths(work.seconds),
		wanted: mark(work.wantedMs),
		slack: tenths(work.slackSeconds),
		beginBy: mark(work.beginByMs),
	};
}

/** Work that nothing waits for. */
function idleJob({ job, instrument, to, seconds }: IdleWork): Record<string, unknown> {
	return {
		job,
		instrument,
		to: to.name,
		capo: 0,
		song: null,
		player: null,
		seconds: tenths(seconds),
		wanted: null,
		slack: null,
		beginBy: null,
	};
}

function playerState(
	{ session, plan, nowMs, zeroMs }: NightStateInput,
	id: string,
): Record<string, unknown> {
	const player = session.players[id];
	const on = songOnNow(session);
	const slot = plan.slots.find((one) => one.player === id && one.section.hasBegun);
	const next = plan.handOvers.find((one) => one.player === id && one.instrument !== null);
	const stay = plan.stays.find((one) => one.player === id);
	return {
		holds: player?.holds ?? null,
		since: player?.sinceMs == null ? null : markText(player.sinceMs - zeroMs),
		planned: on ? (slot?.instrument ?? null) : null,
		pack: player?.pack ?? null,
		stays: stay
			? {
					song: stay.section.song,
					instrument: stay.instrument,
					tuning: stay.tuning.name,
					capo: stay.capo,
					for: stay.for,
				}
			: null,
		next: next
			? {
					song: next.section.song,
					instrument: next.instrument,
					tuning: next.tuning?.name ?? null,
					capo: next.capo,
					in: tenths((next.wantedMs - nowMs) / 1000),
					// Nothing is left to do before it is handed.
					ready: workFor(plan, next).length === 0,
					for: next.for,
				}
			: null,
	};
}

/** What became of each song, in the order in which it did; what was dropped, or never reached once the set is over, comes last. */
export function playedSongs(session: Session): readonly { song: string; state: string }[] {
	const songs = session.list.filter((item): item is SongItem => item.kind === 'song');
	const ended = songs
		.flatMap((item) => item.runs.map((run) => ({ song: item.song, run })))
		.filter(({ run }) => run.how !== null)
		.sort((a, b) => a.run.beganAtMs - b.run.beganAtMs)
		.map(({ song, run }) => ({ song, state: run.how as string }));
	const isOver = session.phase.value === 'over' || session.phase.value === 'packed';
	const dropped = songs.filter(({ isDropped, runs }) => runs.length === 0 && (isOver || isDropped));
	return [...ended, ...dropped.map(({ song }) => ({ song, state: 'dropped' }))];
}
