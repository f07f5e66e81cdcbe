// The first walk: eight moments of a night on the real screen, each with its keys. It goes by what the night and
// the screen have come to, whatever keys led there.

import { keyOfAction } from '../keys/key-choices.ts';
import { slotOf } from '../keys/rack-slots.ts';
import { standIns } from '../plan/backups/stand-ins.ts';
import type { Band, ScreenState } from '../screen/screen-state.ts';
import { findSong, nextSongItem } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { comingItems } from '../session/set-places.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import {
	WALK,
	WALK_DARK,
	WALK_PASSED,
	WALK_REPORT,
	type WalkWords,
	walkBreak,
	walkJump,
	walkNext,
	walkReady,
	walkTakeBack,
	walkWrong,
} from '../words/walk.ts';
import type { Lead } from './led-night.ts';
import { breakKeys, jumpKeys, type KeyOf, type Keys, swapKeys } from './right-keys.ts';
import { beginNext, doWork, endSong, makeAllReady, type TrialNight } from './trial-night.ts';
import { wrongFor } from './wrong-for.ts';

/** When the first song is about to begin. */
export const WALK_BEGINS_MS = -30_000;

/** So far into a song a moment comes: all hands have settled, and enough of it is left. */
const INTO_SONG_MS = 60_000;

export type WalkMoment = {
	readonly words: WalkWords;
	readonly keys: Keys;
	/** What is to be seen, one after the other, for it to be done. */
	readonly stages: readonly ((state: ScreenState) => boolean)[];
};

/** Whoever left the way may have left nothing to do it with: it is done already. */
const PASSED: WalkMoment = { words: WALK_PASSED, keys: [], stages: [] };

/** Sets the scene, and says what to do in it. */
type Scene = (trial: TrialNight, keyOf: KeyOf) => WalkMoment;

const next: Scene = (trial) => {
	const { show, list } = trial.night.session();
	const first = list.find((item) => item.kind === 'song');
	makeAllReady(trial);
	return {
		words: walkNext(first ? songTitle(show, first.song) : ''),
		keys: ['space'],
		stages: [({ session }) => session.phase.value === 'song'],
	};
};

/** Goes on until something that was in hands is back and wants work: such a song is what `ready` is for. */
const ready: Scene = (trial, keyOf) => {
	const { night, clock } = trial;
	let due: string | null = null;
	while (due === null && beginNext(trial)) {
		clock.leap(INTO_SONG_MS);
		const { instruments } = night.session();
		const isThere = (id: string) => instruments[id]?.value === 'racked';
		due = night.plan().work.find(({ instrument }) => isThere(instrument))?.instrument ?? null;
	}
	if (due === null) return PASSED;
	const instrument = due;
	const session = night.session();
	const before = readyAt(session, instrument);
	return {
		words: walkReady(shownInstrument(session.show, instrument)),
		keys: [keyOf('ready'), slotOf(session, instrument)],
		stages: [
			({ session: now }) =>
				readyAt(now, instrument) !== null && readyAt(now, instrument) !== before,
		],
	};
};

const breaks: Scene = ({ night }, keyOf) => {
	const session = night.session();
	const { show } = session;
	const held = show.players.flatMap(({ id }) => {
		const holds = session.players[id]?.holds ?? null;
		return holds === null ? [] : [{ player: id, instrument: holds }];
	});
	const now = { session, plan: night.plan(), nowMs: night.nowMs() };
	const one = held.find((hand) => standIns({ ...now, ...hand }).length > 0);
	if (one === undefined) return PASSED;
	const { player, instrument } = one;
	const before = session.incidents.length;
	return {
		words: walkBreak(playerName(show, player), shownInstrument(show, instrument)),
		keys: breakKeys(keyOf, session, instrument),
		stages: [
			({ session: { incidents } }) =>
				incidents
					.slice(before)
					.some((incident) => incident.instrument === instrument && !incident.isOpen),
		],
	};
};

/** The next song is on as planned, and one of those who changed for it has something else in hands. */
const wrong: Scene = (trial, keyOf) => {
	doWork(trial);
	beginNext(trial);
	const session = trial.night.session();
	const { show, players } = session;
	const found = show.players.flatMap(({ id: player }) => {
		const holds = show.instruments.find(({ id }) => id === players[player]?.holds);
		const taken = holds && wrongFor(session, { player, holds });
		return holds && taken ? [{ player, holds, taken }] : [];
	});
	const [one] = found.toSorted(
		(a, b) => (players[b.player]?.sinceMs ?? 0) - (players[a.player]?.sinceMs ?? 0),
	);
	if (one === undefined) return PASSED;
	const { player, holds, taken } = one;
	return {
		words: walkWrong(
			playerName(show, player),
			shownInstrument(show, taken.id),
			shownInstrument(show, holds.id),
		),
		keys: swapKeys(keyOf, session, { player, instrument: taken }),
		stages: [({ session: now }) => now.players[player]?.holds === taken.id],
	};
};

const jump: Scene = ({ night }, keyOf) => {
	const session = night.session();
	const [, ...later] = comingItems(session).filter((item) => item.kind === 'song');
	const found = later.flatMap(({ song: id }) => {
		const song = findSong(session, id);
		const keys = song && jumpKeys(keyOf, session, song);
		return song && keys ? [{ song, keys }] : [];
	});
	// Not the very next but one: what is skipped is to be seen.
	const { song, keys } = found[1] ?? found[0] ?? { song: null, keys: [] };
	return {
		words: walkJump(song?.title ?? ''),
		keys,
		stages: [({ session: now }) => nextSongItem(now)?.song === song?.id],
	};
};

const takeBack: Scene = ({ night }, keyOf) => {
	const session = night.session();
	const called = nextSongItem(session)?.song ?? '';
	return {
		words: walkTakeBack(songTitle(session.show, called)),
		keys: [keyOf('take-back')],
		stages: [({ session: now }) => nextSongItem(now)?.song !== called],
	};
};

const dark: Scene = (_, keyOf) => ({
	words: WALK_DARK,
	keys: [keyOf('dark'), keyOf('dark')],
	stages: [({ isDark }) => isDark, ({ isDark }) => !isDark],
});

/** The rest of the night goes as planned, to its end. */
const report: Scene = (trial, keyOf) => {
	do doWork(trial);
	while (beginNext(trial));
	endSong(trial);
	return {
		words: WALK_REPORT,
		keys: [keyOf('leave'), 'e'],
		stages: [({ session }) => session.phase.value === 'packed'],
	};
};

const SCENES: readonly Scene[] = [next, ready, breaks, wrong, jump, takeBack, dark, report];

/** Who leads through the eight moments of this night, which has just been opened. */
export function walk(trial: TrialNight): Lead {
	const { night, clock } = trial;
	const keyOf: KeyOf = (id) => keyOfAction(id, night.screen().preferences.keys);
	let number = 1;
	let moment = at(number);
	let stage = 0;

	function at(place: number): WalkMoment {
		const scene = SCENES[place - 1];
		if (scene === undefined) throw new RangeError('no such moment');
		const made = scene(trial, keyOf);
		clock.run(1);
		return made;
	}

	const isDone = () => stage >= moment.stages.length;
	const band = (): Band => ({
		label: WALK.label(number, SCENES.length),
		words: isDone() ? moment.words.done : moment.words.asks,
		under: isDone() ? WALK.goOn : WALK.press(moment.keys),
		hint: WALK.leaves,
	});
	return {
		night: () => night,
		band,
		isWaiting: () => isDone() && number < SCENES.length,
		goOn: () => {
			number += 1;
			stage = 0;
			moment = at(number);
		},
		look: () => {
			if (moment.stages[stage]?.(night.screen())) stage += 1;
		},
		isOver: () => isDone() && number === SCENES.length,
	};
}

function readyAt(session: Session, instrument: string): number | null {
	return session.instruments[instrument]?.context.readyAtMs ?? null;
}
