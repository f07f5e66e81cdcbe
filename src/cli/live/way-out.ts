// The way out of a live screen: what is kept before it is left, and what is said on the plain terminal
// after. Apart from the screen's composition, since it is there before the screen and outlives it.

import { cleanText } from '../../base/clean-text.ts';
import type { TroubleLog } from '../../disk/trouble-log.ts';
import type { Night } from '../../night/night.ts';
import type { Clock } from '../../terminal/clock.ts';
import { endOnSignals } from '../../terminal/end-on-signals.ts';
import { resetTerminal } from '../../terminal/reset-terminal.ts';
import type { Shutdown, ShutdownOutcome } from '../../terminal/shutdown.ts';
import { createShutdown } from '../../terminal/shutdown.ts';
import { diskTrouble, leftElsewhere, saveProblemWords } from '../../words/disk.ts';
import { faultWords, NOT_ALL_SAVED, notAllKept, notConfirmed } from '../../words/program.ts';
import type { Io } from '../io.ts';
import { writeTrace } from '../write-trace.ts';
import { farewell } from './farewell.ts';

type WayOutParts = {
	readonly night: Night;
	readonly clock: Clock;
	readonly io: Io;
	readonly log: TroubleLog;
	/** The show file as it was typed. */
	readonly file: string;
	readonly isRehearsal: boolean;
	/** What is to be known of the night's own folder, a sentence; null for nothing. */
	readonly remark: string | null;
	/** What else the disk has not taken, a sentence; null for nothing. */
	readonly lost: () => string | null;
};

/** The way out of a night that is kept here. */
export function wayOut(parts: WayOutParts): Shutdown {
	const { night, clock, io } = parts;
	return screenWayOut({
		clock,
		io,
		syncJournal: async (limitMs) => {
			// A little less, so that the lock is given back before the program ends.
			const status = await night.close(limitMs - 100);
			// Confirmed, though in a place that a restart empties: that is told, and is no loss.
			if (status.isSaved || status.state === 'unsafe') return;
			const { problem } = status;
			throw new Error(problem === null ? NOT_ALL_SAVED : saveProblemWords(problem));
		},
		tell: (outcome) => {
			tellOutcome(outcome, parts);
			const lost = parts.lost();
			if (lost !== null) io.complain(`${cleanText(lost)}\n`);
		},
		isDiskAwaited: () => parts.lost() !== null,
	});
}

type ScreenWayOutParts = Pick<WayOutParts, 'clock' | 'io'> & {
	/** Keeps what is not kept yet; throws where that cannot be done. */
	readonly syncJournal: (limitMs: number) => Promise<void>;
	/** Says on the plain terminal what there is to say. */
	readonly tell: (outcome: ShutdownOutcome) => void;
	/** Whether the disk may yet be at work on something else that it was given; no when left out. */
	readonly isDiskAwaited?: () => boolean;
};

/** The way out of a screen that keeps no night; `farewell`: what is said on the plain terminal once it was left. */
export function unkeptWayOut({
	clock,
	io,
	farewell: words,
	keep = async () => {},
}: Pick<WayOutParts, 'clock' | 'io'> & {
	readonly farewell: () => string;
	/** Keeps what there is besides a night. */
	readonly keep?: () => Promise<void>;
}): Shutdown {
	return screenWayOut({
		clock,
		io,
		syncJournal: keep,
		tell: ({ ending }) => {
			if (ending.kind === 'fault')
				io.complain(`${faultWords(writeTrace(ending.error, io), false)}\n`);
			io.write(words());
		},
	});
}

/** The way out, listening from now on for everything from outside that ends the program. */
function screenWayOut({
	clock,
	io,
	syncJournal,
	tell,
	isDiskAwaited = () => false,
}: ScreenWayOutParts): Shutdown {
	const { stdin, stdout, stderr } = process;
	let isKept = false;
	let hasSaid = false;
	const exit = (code: number): void => {
		const launcher = io.env.RACKSIDE_LAUNCHER;
		// Leaving the other screen a second time would put what comes next over what was said.
		if (hasSaid) tellLauncher(launcher, 'SIGUSR2');
		// A sync that hangs keeps the process from ending, whatever it does: it is not to be waited for.
		if (!isKept || isDiskAwaited()) tellLauncher(launcher, 'SIGUSR1');
		process.exit(code);
	};
	const shutdown = createShutdown({ clock, exit });
	shutdown.hold({
		syncJournal,
		reset: resetTerminal(stdout),
		report: (outcome) => {
			isKept = outcome.isKept;
			tell(outcome);
			// Leaving before it has gone out would lose it.
			return new Promise((done) => {
				stdout.write('', (lost) =>
					stderr.write('', () => {
						hasSaid = !lost;
						done();
					}),
				);
			});
		},
	});
	endOnSignals({ process, stdin, stdout, stderr }, shutdown);
	return shutdown;
}

/** Tells the launcher, where there is one; see there what each signal says. */
function tellLauncher(pid: string | undefined, signal: 'SIGUSR1' | 'SIGUSR2'): void {
	if (pid === undefined || Number(pid) !== process.ppid) return;
	try {
		process.kill(process.ppid, signal);
	} catch {
		// It is gone, and waits for nothing.
	}
}

/** The kind of an error alone: its words may hold what somebody typed. */
function faultName(error: unknown): string {
	return error instanceof Error ? error.name.replaceAll(/\W/g, '') : typeof error;
}

function tellOutcome({ ending, isKept }: ShutdownOutcome, parts: WayOutParts): void {
	const { night, io, file, isRehearsal, remark } = parts;
	const { problem, lastSeq, savedSeq, elsewhere, wipedHome } = night.saveStatus();
	if (ending.kind === 'fault') {
		parts.log.note('fault', faultName(ending.error));
		io.complain(`${faultWords(writeTrace(ending.error, io), isKept)}\n`);
	}
	if (!isKept) {
		const steps = lastSeq - savedSeq;
		const isWritten = problem === null || problem.code === 'slow';
		const words = isWritten ? notConfirmed(steps) : notAllKept(steps, diskTrouble(problem.trouble));
		io.complain(`${words}\n`);
		if (elsewhere) io.complain(`${cleanText(leftElsewhere(elsewhere))}\n`);
		return;
	}
	const isOver = night.session().phase.value === 'packed';
	io.write(farewell({ file, isRehearsal, isOver, elsewhere, wipedHome, remark }));
}
