// Everything from outside that ends the program, brought to the one way out: signals, faults that
// nobody caught, and streams that fail or end because the terminal is gone.

import type { EndingSignal } from './ending.ts';
import { SIGNAL_NUMBERS } from './ending.ts';
import type { Shutdown } from './shutdown.ts';

/** Something that tells what happens to it: a process or a stream. */
export type Emitter = {
	readonly on: (name: string, listener: (value: unknown) => void) => unknown;
};

/** What is listened to. */
export type EndingSources = {
	readonly process: Emitter;
	readonly stdin: Emitter;
	readonly stdout: Emitter;
	readonly stderr: Emitter;
};

/**
 * Listens for good: a second signal, or the error of a stream that dies while the program leaves,
 * must not kill it half-way. To be called before the terminal's modes are touched.
 */
export function endOnSignals(sources: EndingSources, shutdown: Shutdown): void {
	for (const signal of Object.keys(SIGNAL_NUMBERS) as EndingSignal[]) {
		sources.process.on(signal, () => shutdown.begin({ kind: 'signal', signal }));
	}
	// A file that may not grow fails its write, and that is answered there. Node ignores this signal
	// until somebody listens and stops listening, as the renderer does; then it would kill.
	sources.process.on('SIGXFSZ', () => {});
	for (const name of ['uncaughtException', 'unhandledRejection']) {
		sources.process.on(name, (error) => shutdown.begin({ kind: 'fault', error }));
	}
	for (const stream of ['stdin', 'stdout', 'stderr'] as const) {
		sources[stream].on('error', (error) =>
			shutdown.begin({ kind: 'terminal-lost', stream, error }),
		);
		for (const name of ['end', 'close']) {
			sources[stream].on(name, () => shutdown.begin({ kind: 'terminal-lost', stream }));
		}
	}
}
