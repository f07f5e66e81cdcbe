// The way out of a live screen: what is kept before it is left, and what is said on the plain terminal
// after. Apart from the screen's composition, since it is there before the screen and outlives it.

import type { Night } from '../night/night.ts';
import type { Clock } from '../terminal/clock.ts';
import { endOnSignals } from '../terminal/end-on-signals.ts';
import { resetTerminal } from '../terminal/reset-terminal.ts';
import type { Shutdown, ShutdownOutcome } from '../terminal/shutdown.ts';
import { createShutdown } from '../terminal/shutdown.ts';
import { saveProblemWords } from '../words/disk.ts';
import { faultWords, NOT_ALL_KEPT, NOT_ALL_SAVED, notConfirmed } from '../words/program.ts';
import { farewell } from './farewell.ts';
import type { Io } from './io.ts';
import { writeTrace } from './write-trace.ts';

export type WayOutParts = {
	readonly night: Night;
	readonly clock: Clock;
	readonly io: Io;
	/** The show file as it was typed. */
	readonly file: string;
	readonly isRehearsal: boolean;
};

/** The way out, listening from now on for everything from outside that ends the program. */
export function wayOut(parts: WayOutParts): Shutdown {
	const { night, clock, io } = parts;
	const { stdin, stdout, stderr } = process;
	let isKept = false;
	const exit = (code: number): void => {
		if (!isKept) tellLauncher(io.env.RACKSIDE_LAUNCHER);
		process.exit(code);
	};
	const shutdown = createShutdown({ clock, exit });
	shutdown.hold({
		syncJournal: async () => {
			const status = await night.close();
			if (status.isSaved) return;
			const { problem } = status;
			throw new Error(problem === null ? NOT_ALL_SAVED : saveProblemWords(problem));
		},
		reset: resetTerminal(stdout),
		report: (outcome) => {
			isKept = outcome.isKept;
			tellOutcome(outcome, parts);
			// Leaving before it has gone out would lose it.
			return new Promise((done) => {
				stdout.write('', () => stderr.write('', () => done()));
			});
		},
	});
	endOnSignals({ process, stdin, stdout, stderr }, shutdown);
	return shutdown;
}

/**
 * Tells the launcher not to wait for long: a sync that hangs keeps the process from ending, whatever it does.
 * Without a launcher the shell has to wait.
 */
function tellLauncher(pid: string | undefined): void {
	if (pid === undefined || Number(pid) !== process.ppid) return;
	try {
		process.kill(process.ppid, 'SIGUSR1');
	} catch {
		// It is gone, and waits for nothing.
	}
}

function tellOutcome({ ending, isKept }: ShutdownOutcome, parts: WayOutParts): void {
	const { night, io, file, isRehearsal } = parts;
	if (ending.kind === 'fault') {
		io.complain(`${faultWords(writeTrace(ending.error, io), isKept)}\n`);
	}
	if (!isKept) {
		const { problem, lastSeq, savedSeq } = night.saveStatus();
		const isWritten = problem === null || problem.code === 'slow';
		io.complain(`${isWritten ? notConfirmed(lastSeq - savedSeq) : NOT_ALL_KEPT}\n`);
		return;
	}
	io.write(farewell({ file, isRehearsal, isOver: night.session().phase.value === 'packed' }));
}
