// The way out of a live screen: what is kept before it is left, and what is said on the plain terminal
// after. Apart from the screen's composition, since it is there before the screen and outlives it.

import type { Night } from '../night/night.ts';
import type { Clock } from '../terminal/clock.ts';
import { endOnSignals } from '../terminal/end-on-signals.ts';
import { resetTerminal } from '../terminal/reset-terminal.ts';
import type { Shutdown, ShutdownOutcome } from '../terminal/shutdown.ts';
import { createShutdown } from '../terminal/shutdown.ts';
import { saveProblemWords } from '../words/disk.ts';
import { faultWords, NOT_ALL_KEPT, NOT_ALL_SAVED } from '../words/program.ts';
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
	const { night, clock } = parts;
	const { stdin, stdout, stderr } = process;
	const shutdown = createShutdown({ clock, exit: (code) => process.exit(code) });
	shutdown.hold({
		syncJournal: async () => {
			const status = await night.close();
			if (status.isSaved) return;
			const { problem } = status;
			throw new Error(problem === null ? NOT_ALL_SAVED : saveProblemWords(problem));
		},
		reset: resetTerminal(stdout),
		report: (outcome) => {
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

function tellOutcome({ ending, isKept }: ShutdownOutcome, parts: WayOutParts): void {
	const { night, io, file, isRehearsal } = parts;
	if (ending.kind === 'fault') {
		io.complain(`${faultWords(writeTrace(ending.error, io), isKept)}\n`);
	}
	if (!isKept) {
		io.complain(`${NOT_ALL_KEPT}\n`);
		return;
	}
	io.write(farewell({ file, isRehearsal, isOver: night.session().phase.value === 'packed' }));
}
