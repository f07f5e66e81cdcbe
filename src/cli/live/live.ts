// Where everything of the live screen comes together: the night and its file, the screen, and the one way
// out. What each of them does is theirs; here they are only tied.

import { dirname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import type { MachineClock } from '../../base/machine-clock.ts';
import { realClock } from '../../disk/clock.ts';
import { draftFile, draftPath } from '../../disk/draft-file.ts';
import { makeFolders } from '../../disk/folders.ts';
import { type Lock, type LockPlace, lockName, lockPath, takeLock } from '../../disk/lock.ts';
import { takenPlaces } from '../../disk/own-file.ts';
import { showIdentity } from '../../disk/paths.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { troubleLog, troublesPath } from '../../disk/trouble-log.ts';
import { writerPath } from '../../disk/writer-id.ts';
import type { NightCauses } from '../../history/found-causes.ts';
import { openNight } from '../../night/night.ts';
import { oddStart, plannedZero } from '../../night/planned-zero.ts';
import { playedAlong } from '../../night/played-along.ts';
import type { Show } from '../../showfile/show.ts';
import { nodeClock } from '../../terminal/clock.ts';
import { takeLateEnter } from '../../terminal/late-enter.ts';
import { styledScreen } from '../../ui/styled-screen.ts';
import { diskFaultWords, noHomeWords } from '../../words/disk.ts';
import { NO_MIDI_PEDALS } from '../../words/midi.ts';
import { ANEW_ASKED, ANEW_KEY, ANEW_NOT, oddStartWords } from '../../words/program.ts';
import { measuredOnGear } from '../bench/gear-journal.ts';
import type { Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { isInStandInHome } from '../home.ts';
import type { Io } from '../io.ts';
import { localOffsetMinutes } from '../local-offset.ts';
import { causesBefore, foundBefore } from '../nights/found-before.ts';
import { nightPlaces } from '../nights/night-places.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';
import { beginNight } from './begin-night.ts';
import { liveMidi } from './live-midi.ts';
import { livePreferences, rememberShow } from './live-preferences.ts';
import { screenAbilities, screenOptions, showLive } from './live-screen.ts';
import { sendsMidi } from './midi-out.ts';
import { ringingNotes } from './ringing-notes.ts';
import { wayOut } from './way-out.ts';

export type LiveRequest = {
	/** The show file as it was typed. */
	readonly file: string;
	readonly request: Request;
	/** How many times faster than the wall's the night's clock runs. */
	readonly speed: number;
	readonly isRehearsal: boolean;
	/** A rehearsal with a band that plays by itself: what its show is made before. */
	readonly asPlayed?: (show: Show) => Show;
	/** The port that was asked for; null or left out: the one of the preferences, in a rehearsal none. */
	readonly midi?: string | null;
};

/** A copy that was told to leave has ended by then. */
const LEAVING_MS = 1200;
const LOOK_AGAIN_MS = 100;

/** The screen stands by then. */
const READ_BEFORE_MS = 3000;

const TICK_MS = 1000;

/** Quicker ticks than these would only draw what nobody can read. */
const QUICKEST_TICK_MS = 100;

/** Opens the live screen; comes back only when it could not be opened, with the exit code. */
export async function runLive(live: LiveRequest, io: Io): Promise<number> {
	const abilities = screenAbilities(live.request, io);
	if (abilities === null) return EXIT.unusable;
	const places = placesOf(live.request, io);
	const { folders, remarks } = nightPlaces(places);
	// Where no folder can be made the night is kept in memory and says so; nothing is refused for it.
	makeFolders(realDisk, places.nights);
	const name = lockName(showIdentity(resolve(io.cwd, live.file)), live.isRehearsal);
	const lockPlace = { disk: realDisk, folder: places.nights, name };
	const lock = await takeLockOfLeaving(lockPlace);
	if (!lock.isHeld) {
		io.complain(`${cleanText(diskFaultWords(lock.fault))}\n`);
		return EXIT.unusable;
	}
	const realTime = realClock();
	const log = troubleLog({ disk: realDisk, folder: places.data, wallMs: realTime.wallMs });
	const clock = fasterClock(realTime, live.speed);
	const wanted = {
		file: live.file,
		folders,
		request: live.request,
		isRehearsal: live.isRehearsal,
		clock,
		release: lock.release,
		log,
		...(live.asPlayed && { asPlayed: live.asPlayed }),
	};
	const isAnew = live.request.options.anew === true;
	let begun = await beginNight({ ...wanted, isAnew }, io);
	if ('unreadable' in begun) {
		io.complain(`${cleanText(begun.unreadable)}\n${ANEW_ASKED}\n`);
		if ((await keyPressed()) !== ANEW_KEY) {
			lock.release();
			io.complain(`${ANEW_NOT}\n`);
			return EXIT.unusable;
		}
		begun = await beginNight({ ...wanted, isAnew: true }, io);
	}
	if ('unreadable' in begun) throw new RangeError('a new night was wanted');
	if ('problems' in begun) {
		lock.release();
		return tellProblems(begun.problems, io);
	}
	const dayOffsetMinutes = localOffsetMinutes(begun.startedAtMs);
	const odd = oddStart(begun.show, begun.startedAtMs, dayOffsetMinutes);
	const preferences = livePreferences({ disk: realDisk, folder: places.settings });
	const draftPlace = { folder: places.nights, night: begun.id };
	const taken = takenPlaces(realDisk, [
		{ path: lockPath(lockPlace), holds: 'lock' },
		{ path: draftPath(draftPlace), holds: 'drafts' },
		{ path: troublesPath(places.data), holds: 'troubles' },
		{ path: writerPath(places.data), holds: 'writer' },
	]);
	const showFolder = dirname(showIdentity(resolve(io.cwd, live.file)));
	const homeless = isInStandInHome(places.nights) ? noHomeWords(places.nights) : null;
	const gear = measuredOnGear(places, showFolder);
	const asked = live.midi ?? (live.isRehearsal ? null : preferences.midi);
	const screenClock = nodeClock();
	const midi = await liveMidi(asked, {
		clock: screenClock,
		show: () => night.session().show,
		log,
		cwd: io.cwd,
	});
	const hasMidi = midi !== null && sendsMidi(begun.show);
	const isMidiIdle = midi !== null && !hasMidi && typeof live.midi === 'string';
	let before: readonly NightCauses[] = [];
	const night = openNight({
		show: begun.show,
		journal: begun.journal,
		clock,
		plannedZeroMs: plannedZero(begun.show, begun.startedAtMs, dayOffsetMinutes),
		dayOffsetMinutes,
		...(odd && { says: oddStartWords(begun.show, odd) }),
		isRehearsal: live.isRehearsal,
		handMs: realTime.upMs,
		preferences,
		measuredOn: gear.measuredOn,
		foundBefore: (show, player) => foundBefore(before, { show, folder: showFolder, player }),
		...(!live.isRehearsal &&
			ringingNotes({
				...{ places, folder: showFolder, night: begun.id, noted: gear.noted },
				wallMs: realTime.wallMs,
				show: () => night.session().show,
			})),
		...(midi && { ...midi, asksToSend: hasMidi }),
		drafts: draftFile(realDisk, draftPlace),
		findings: [
			...(homeless === null ? [] : [homeless]),
			...[...remarks, ...taken].map(diskFaultWords),
			...begun.findings,
			...preferences.problems,
			...gear.findings,
			...(isMidiIdle ? [NO_MIDI_PEDALS] : []),
		],
	});
	midi?.start();
	// Beside the night: nothing waits for it, and what is not read yet does not count.
	screenClock.after(READ_BEFORE_MS, () => {
		causesBefore(folders, begun.id).then(
			(nights) => {
				before = nights;
			},
			() => {},
		);
	});
	await showLive({
		night: live.asPlayed ? playedAlong(night) : night,
		clock: screenClock,
		shutdown: wayOut({
			...{ night, clock: screenClock, io, log },
			file: live.file,
			isRehearsal: live.isRehearsal,
			remark: homeless,
			lost: preferences.lost,
		}),
		codeAtEnd: () => (night.session().phase.value === 'packed' ? EXIT.fine : EXIT.toLookAt),
		rowsAt: (size) => styledScreen(night.screen(), size, screenOptions(abilities)),
		handMs: realTime.upMs,
		tickMs: Math.max(QUICKEST_TICK_MS, TICK_MS / live.speed),
	});
	try {
		const path = showIdentity(resolve(io.cwd, live.file));
		const place = { disk: realDisk, folder: places.settings };
		if (!live.isRehearsal) rememberShow(place, path);
		const { showFileOf } = await import('./show-file.ts');
		night.watchShow(showFileOf(live.file, io));
	} catch {
		// No show ends for want of preferences, nor of looking after a file that the night has its own copy of.
	}
	night.tick();
	// The way out ends the process.
	return new Promise(() => {});
}

/** One key on the plain terminal; empty when the input ended. */
function keyPressed(): Promise<string> {
	const { stdin } = process;
	let mayBeLate = takeLateEnter();
	stdin.setRawMode(true);
	return new Promise((done) => {
		const answer = (key: string): void => {
			stdin.off('data', onData);
			stdin.off('end', onEnd);
			stdin.setRawMode(false);
			stdin.pause();
			done(key);
		};
		const onData = (bytes: Buffer | string): void => {
			const isLate = mayBeLate && String(bytes) === '\r';
			mayBeLate = false;
			if (!isLate) answer(String(bytes).slice(0, 1).toLowerCase());
		};
		const onEnd = (): void => answer('');
		stdin.on('data', onData);
		stdin.on('end', onEnd);
	});
}

/** The lock; waited for a moment, since a copy that is just being left takes up to a second to end. */
async function takeLockOfLeaving(place: LockPlace): Promise<Lock> {
	const clock = nodeClock();
	const beganMs = clock.nowMs();
	for (;;) {
		const lock = await takeLock(place);
		if (lock.isHeld || clock.nowMs() - beganMs > LEAVING_MS) return lock;
		await new Promise<void>((done) => {
			clock.after(LOOK_AGAIN_MS, done);
		});
	}
}

/** The same two clocks, running so many times faster from now on. */
function fasterClock(clock: MachineClock, speed: number): MachineClock {
	if (speed === 1) return clock;
	const wallMs = clock.wallMs();
	const upMs = clock.upMs();
	const passedMs = (): number => (clock.upMs() - upMs) * speed;
	return {
		wallMs: () => wallMs + passedMs(),
		upMs: () => upMs + passedMs(),
		bootId: clock.bootId,
	};
}
