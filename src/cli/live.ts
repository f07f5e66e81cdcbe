// Where everything of the live screen comes together: the night and its file, the keyboard, the screen,
// and the one way out. What each of them does is theirs; here they are only tied.

import { dirname, resolve } from 'node:path';
import process from 'node:process';
import { PassThrough } from 'node:stream';
import { cleanText } from '../base/clean-text.ts';
import type { ColorDepth } from '../base/colours.ts';
import type { MachineClock } from '../base/machine-clock.ts';
import { realClock } from '../disk/clock.ts';
import { draftFile } from '../disk/draft-file.ts';
import { makeFolders } from '../disk/folders.ts';
import { type Lock, type LockPlace, lockName, takeLock } from '../disk/lock.ts';
import { showIdentity } from '../disk/paths.ts';
import { realDisk } from '../disk/real-disk.ts';
import { openSettings } from '../disk/settings.ts';
import { type TroubleLog, troubleLog } from '../disk/trouble-log.ts';
import type { Night } from '../night/night.ts';
import { openNight } from '../night/night.ts';
import { oddStart, plannedZero } from '../night/planned-zero.ts';
import type { Area } from '../screen/row.ts';
import type { Clock } from '../terminal/clock.ts';
import { nodeClock } from '../terminal/clock.ts';
import { redrawOnContinue } from '../terminal/continue.ts';
import { createInputSource } from '../terminal/input-source.ts';
import type { InputEvent } from '../terminal/key.ts';
import { keepSizeKnown } from '../terminal/known-size.ts';
import type { Shutdown } from '../terminal/shutdown.ts';
import { createPaintGate, hasBacklog, unblock } from '../terminal/stall.ts';
import { terminalAbilities } from '../terminal/terminal-kind.ts';
import {
	BEGIN_FRAME,
	ENTER_MODES,
	ENTER_SCREEN,
	FIRST_CELL,
	LEAVE_SCREEN,
	RESET,
} from '../terminal/terminal-modes.ts';
import type { Ui } from '../ui/start-ui.tsx';
import { styledScreen } from '../ui/styled-screen.ts';
import { diskFaultWords } from '../words/disk.ts';
import {
	ANEW_ASKED,
	ANEW_KEY,
	ANEW_NOT,
	CANNOT_PLACE,
	NEEDS_TERMINAL,
	oddStartWords,
} from '../words/program.ts';
import { beginNight } from './begin-night.ts';
import type { Request } from './command.ts';
import { EXIT } from './exit-code.ts';
import { measuredOnGear } from './gear-journal.ts';
import type { Io } from './io.ts';
import { livePreferences } from './live-preferences.ts';
import { localOffsetMinutes } from './local-offset.ts';
import { nightPlaces, placesOf } from './places.ts';
import { tellProblems } from './tell-problems.ts';
import { wayOut } from './way-out.ts';

export type LiveRequest = {
	/** The show file as it was typed. */
	readonly file: string;
	readonly request: Request;
	/** How many times faster than the wall's the night's clock runs. */
	readonly speed: number;
	readonly isRehearsal: boolean;
};

/** A copy that was told to leave has ended by then. */
const LEAVING_MS = 1200;
const LOOK_AGAIN_MS = 100;
/** Opened this short a time ago, it is a night that has just begun. */
const FRESH_MS = 10_000;

const TICK_MS = 1000;

/** Quicker ticks than these would only draw what nobody can read. */
const QUICKEST_TICK_MS = 100;

/** Opens the live screen; comes back only when it could not be opened, with the exit code. */
export async function runLive(live: LiveRequest, io: Io): Promise<number> {
	const abilities = terminalAbilities({
		env: io.env,
		isInputTerminal: io.isInputTerminal,
		isOutputTerminal: io.isOutputTerminal,
		isColorRefused: live.request.options['no-color'] === true,
	});
	if (abilities.kind !== 'screen') {
		io.complain(`${abilities.kind === 'none' ? NEEDS_TERMINAL : CANNOT_PLACE}\n`);
		return EXIT.unusable;
	}
	const places = placesOf(live.request, io);
	const { folders, passedOver } = nightPlaces(places);
	// Where no folder can be made the night is kept in memory and says so; nothing is refused for it.
	makeFolders(realDisk, places.nights);
	const name = lockName(showIdentity(resolve(io.cwd, live.file)), live.isRehearsal);
	const lock = await takeLockOfLeaving({ disk: realDisk, folder: places.nights, name });
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
	// A night that is taken up has said so before.
	const isFresh = clock.wallMs() - begun.startedAtMs < FRESH_MS;
	const odd = isFresh ? oddStart(begun.show, begun.startedAtMs, dayOffsetMinutes) : null;
	const preferences = livePreferences({ disk: realDisk, folder: places.settings });
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
		measuredOn: measuredOnGear(places, dirname(showIdentity(resolve(io.cwd, live.file)))),
		drafts: draftFile(realDisk, { folder: places.nights, night: begun.id }),
		findings: [...passedOver.map(diskFaultWords), ...begun.findings, ...preferences.problems],
	});
	await show(night, {
		io,
		file: live.file,
		log,
		isRehearsal: live.isRehearsal,
		isAscii: !abilities.isUnicode,
		colorDepth: abilities.colorDepth,
		handMs: realTime.upMs,
		tickMs: Math.max(QUICKEST_TICK_MS, TICK_MS / live.speed),
	});
	try {
		const settings = await openSettings({ disk: realDisk, folder: places.settings });
		if (!live.isRehearsal) settings.change({ lastShow: showIdentity(resolve(io.cwd, live.file)) });
	} catch {
		// No show ends for want of preferences.
	}
	try {
		const { showFileOf } = await import('./show-file.ts');
		night.watchShow(showFileOf(live.file, io));
	} catch {
		// Nor for want of looking after a file that the night has its own copy of.
	}
	night.tick();
	// The way out ends the process.
	return new Promise(() => {});
}

/** One key on the plain terminal; empty when the input ended. */
function keyPressed(): Promise<string> {
	const { stdin } = process;
	stdin.setRawMode(true);
	return new Promise((done) => {
		const answer = (key: string): void => {
			stdin.off('data', onData);
			stdin.off('end', onEnd);
			stdin.setRawMode(false);
			stdin.pause();
			done(key);
		};
		const onData = (bytes: Buffer | string): void =>
			answer(String(bytes).slice(0, 1).toLowerCase());
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

type Stage = {
	readonly io: Io;
	readonly file: string;
	readonly log: TroubleLog;
	readonly isRehearsal: boolean;
	readonly isAscii: boolean;
	readonly colorDepth: ColorDepth;
	/** The clock by which hands are judged; time asleep counts. */
	readonly handMs: () => number;
	readonly tickMs: number;
};

async function show(night: Night, stage: Stage): Promise<void> {
	const clock = nodeClock();
	const shutdown = wayOut({ night, clock, ...stage });
	try {
		await draw({ night, stage, clock, shutdown });
	} catch (error) {
		shutdown.begin({ kind: 'fault', error });
	}
}

type Drawing = {
	readonly night: Night;
	readonly stage: Stage;
	readonly clock: Clock;
	readonly shutdown: Shutdown;
};

async function draw({ night, stage, clock, shutdown }: Drawing): Promise<void> {
	const { stdin, stdout, stderr } = process;
	unblock([stdout, stderr]);
	const leaveIfWanted = (): void => {
		if (!night.wantsToLeave()) return;
		const isEnded = night.session().phase.value === 'packed';
		shutdown.begin({ kind: 'quit', code: isEnded ? EXIT.fine : EXIT.toLookAt });
	};
	const onEvent = (event: InputEvent): void => {
		if (event.kind === 'key') night.press(event.key, event.atMs);
		else if (event.kind === 'paste') night.paste(event.text);
		else if (event.kind === 'burst') night.burst(event.count, event.text);
		else shutdown.begin({ kind: 'signal', signal: 'SIGINT' });
		leaveIfWanted();
	};
	let ui: Ui | null = null;
	let isInScreen = true;
	keepSizeKnown(stdout, clock);
	const rowsAt = (size: Area) => styledScreen(night.screen(), size, stage);
	let shown: readonly string[] = [];
	const showFirst = (): void => {
		shown = rowsAt(stdout);
		stdout.write(ENTER_SCREEN + shown.join('\r\n') + FIRST_CELL);
	};
	const input = createInputSource({
		stdin,
		clock: { ...clock, nowMs: stage.handMs },
		onEvent,
		onCooked: () => takeBack(),
	});
	const takeBack = redrawOnContinue({
		process,
		clock,
		retake: input.retake,
		write: (text) => stdout.write(text),
		redraw: () => {
			if (ui === null) {
				showFirst();
				return;
			}
			// Ink first erases its last frame, from the cursor upwards: on this screen, or it would do so
			// on the one that the shell is on.
			stdout.write(BEGIN_FRAME + ENTER_SCREEN);
			ui.redraw();
		},
	});
	shutdown.hold({
		stopInput: input.stop,
		unmount: () => {
			ui?.unmount();
			stdout.write(LEAVE_SCREEN);
			isInScreen = false;
		},
	});
	// Where the way out took too long and was given up, this is the last chance.
	process.once('exit', () => {
		if (isInScreen) stdout.write(RESET);
	});
	// Shown and listening at once; the renderer, which takes longer to load than all else, goes on from
	// there.
	stdout.write(ENTER_MODES);
	showFirst();
	input.start();
	const { startUi } = await import('../ui/start-ui.tsx');
	if (shutdown.hasBegun()) return;
	const started = startUi({
		shown,
		rowsAt,
		onFault: (error) => shutdown.begin({ kind: 'fault', error }),
		stdout,
		// Nothing ever arrives there: the keys are read by the input source.
		stdin: Object.assign(new PassThrough(), {
			isTTY: true,
			setRawMode: () => {},
			ref: () => {},
			unref: () => {},
		}) as unknown as NodeJS.ReadStream,
	});
	ui = started;
	const { offer } = createPaintGate({
		hasBacklog: () => hasBacklog(stdout),
		paint: started.draw,
		// What is written, though it is nothing, goes out after all that waits.
		afterSending: (run) => stdout.write('', run),
	});
	night.onChange(offer);
	offer();
	const beat = (): void => {
		if (shutdown.hasBegun()) return;
		night.tick();
		clock.after(stage.tickMs, beat);
	};
	clock.after(stage.tickMs, beat);
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
