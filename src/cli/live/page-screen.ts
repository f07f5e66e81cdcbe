// A page of its own on the terminal, before a night is open: drawn at each key and each new size, and gone
// without a trace. Nothing moves on it, so that the renderer need not be loaded.

import type { Area } from '../../screen/row.ts';
import { type Clock, nodeClock } from '../../terminal/clock.ts';
import { redrawOnContinue } from '../../terminal/continue.ts';
import { type Emitter, endOnSignals } from '../../terminal/end-on-signals.ts';
import { createInputSource } from '../../terminal/input-source.ts';
import type { InputEvent, Key } from '../../terminal/key.ts';
import { resetTerminal } from '../../terminal/reset-terminal.ts';
import { createShutdown } from '../../terminal/shutdown.ts';
import { unblock } from '../../terminal/stall.ts';
import {
	BEGIN_FRAME,
	END_FRAME,
	ENTER_MODES,
	ENTER_SCREEN,
	FIRST_CELL,
	LEAVE_SCREEN,
} from '../../terminal/terminal-modes.ts';

export type Page = {
	/** As many rows as the terminal is high, each as it is sent. */
	readonly rowsAt: (size: Area) => readonly string[];
	/** Gives back whether the page is done. */
	readonly press: (key: Key) => boolean;
};

/** The size taken where the terminal does not know its own. */
const USUAL: Area = { columns: 80, rows: 24 };

/** Exit codes from here on say that something from outside ended the program. */
const FIRST_SIGNAL_CODE = 129;

/** Shows the page until it is done, and the terminal as it was; then comes back. A signal ends the program. */
export async function showPage(page: Page): Promise<void> {
	const { stdin, stdout, stderr } = process;
	unblock([stdout, stderr]);
	const clock = patientClock();
	const listening: (() => void)[] = [];
	const sources = {
		process: whileShown(process, listening),
		stdin: whileShown(stdin, listening),
		stdout: whileShown(stdout, listening),
		stderr: whileShown(stderr, listening),
	};
	const faults: unknown[] = [];
	const code = await new Promise<number>((exit) => {
		const shutdown = createShutdown({ clock, exit });
		endOnSignals(sources, shutdown);
		const draw = (enter: string): void => {
			const size = { columns: stdout.columns || USUAL.columns, rows: stdout.rows || USUAL.rows };
			try {
				const rows = page.rowsAt(size);
				stdout.write(BEGIN_FRAME + enter + FIRST_CELL + rows.join('\r\n') + FIRST_CELL + END_FRAME);
			} catch (error) {
				shutdown.begin({ kind: 'fault', error });
			}
		};
		const onEvent = (event: InputEvent): void => {
			if (event.kind === 'interrupt') shutdown.begin({ kind: 'signal', signal: 'SIGINT' });
			else if (event.kind !== 'key' || shutdown.hasBegun()) return;
			else if (page.press(event.key)) shutdown.begin({ kind: 'quit', code: 0 });
			else draw('');
		};
		const input = createInputSource({ stdin, clock, onEvent, onCooked: () => takeBack() });
		const takeBack = redrawOnContinue({
			...{ process: sources.process, clock, retake: input.retake },
			write: (text) => stdout.write(text),
			redraw: () => {
				if (!shutdown.hasBegun()) draw(ENTER_SCREEN);
			},
		});
		shutdown.hold({
			stopInput: input.stop,
			unmount: () => {
				stdout.write(LEAVE_SCREEN);
			},
			reset: resetTerminal(stdout),
			report: ({ ending }) => {
				if (ending.kind === 'fault') faults.push(ending.error);
			},
		});
		stdout.write(ENTER_MODES);
		draw(ENTER_SCREEN);
		input.start();
	});
	// What comes next listens for itself.
	for (const stop of listening) stop();
	for (const fault of faults) throw fault;
	// What ended the program from outside is not kept waiting by a terminal that has stalled.
	if (code >= FIRST_SIGNAL_CODE) process.exit(code);
}

/** Waiting for nothing but a key keeps the program going. */
function patientClock(): Clock {
	const clock = nodeClock();
	return {
		...clock,
		after: (milliseconds, run) => {
			const timer = setTimeout(run, milliseconds).unref();
			return () => clearTimeout(timer);
		},
	};
}

type Listened = Emitter & {
	readonly off: (name: string, listener: (value: unknown) => void) => unknown;
};

/** The same emitter, and in `listening` what takes every listener off again. */
function whileShown(emitter: Listened, listening: (() => void)[]): Emitter {
	return {
		on: (name, listener) => {
			// Once nobody listened to this one any more it would kill.
			if (name !== 'SIGXFSZ') listening.push(() => emitter.off(name, listener));
			return emitter.on(name, listener);
		},
	};
}
