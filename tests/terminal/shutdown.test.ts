// The way out, with a clock turned by hand: every step once and in order, and never late.

import { describe, expect, test } from 'vitest';
import type { Clock } from '../../src/terminal/clock.ts';
import type { Ending } from '../../src/terminal/ending.ts';
import type { ShutdownParts } from '../../src/terminal/shutdown.ts';
import { createShutdown } from '../../src/terminal/shutdown.ts';

function handClock(): Clock & { readonly turn: (milliseconds: number) => Promise<void> } {
	let nowMs = 0;
	let timers: { atMs: number; run: () => void }[] = [];
	async function settle(): Promise<void> {
		for (let round = 0; round < 50; round += 1) {
			await Promise.resolve();
		}
	}
	return {
		nowMs: () => nowMs,
		after: (milliseconds, run) => {
			const timer = { atMs: nowMs + milliseconds, run };
			timers.push(timer);
			return () => {
				timers = timers.filter((other) => other !== timer);
			};
		},
		afterReading: (run) => run(),
		turn: async (milliseconds) => {
			await settle();
			const untilMs = nowMs + milliseconds;
			for (;;) {
				const [next] = timers.toSorted((one, other) => one.atMs - other.atMs);
				if (next === undefined || next.atMs > untilMs) {
					break;
				}
				timers = timers.filter((other) => other !== next);
				nowMs = next.atMs;
				next.run();
				await settle();
			}
			nowMs = untilMs;
		},
	};
}

function walk(parts: ShutdownParts = {}) {
	const clock = handClock();
	const done: string[] = [];
	const exits: { code: number; atMs: number }[] = [];
	const shutdown = createShutdown({
		clock,
		exit: (code) => exits.push({ code, atMs: clock.nowMs() }),
	});
	shutdown.hold({
		stopInput: () => {
			done.push('input');
		},
		syncJournal: async () => {
			done.push('journal');
		},
		unmount: () => {
			done.push('unmount');
		},
		reset: (isUnmounted) => {
			done.push(isUnmounted ? 'leave' : 'reset');
		},
		report: ({ isKept, failures }) => {
			done.push(`report ${isKept ? 'kept' : 'not kept'} ${failures.map(String).join()}`.trim());
		},
		...parts,
	});
	return { clock, done, exits, shutdown };
}

const QUIT: Ending = { kind: 'quit', code: 0 };
const hung = (): Promise<void> => new Promise(() => {});

describe('the way out', () => {
	test('goes from the keyboard over the journal to the exit', async () => {
		const { clock, done, exits, shutdown } = walk();
		shutdown.begin(QUIT);
		await clock.turn(0);
		expect(done).toEqual(['input', 'journal', 'unmount', 'leave', 'report kept']);
		expect(exits).toEqual([{ code: 0, atMs: 0 }]);
	});

	test('is walked once, for the first of many reasons', async () => {
		const { clock, done, exits, shutdown } = walk();
		shutdown.begin({ kind: 'signal', signal: 'SIGTERM' });
		shutdown.begin({ kind: 'signal', signal: 'SIGHUP' });
		shutdown.begin({ kind: 'terminal-lost', stream: 'stdin' });
		expect(shutdown.hasBegun()).toBe(true);
		await clock.turn(5000);
		expect(done.length).toBe(5);
		expect(exits.map(({ code }) => code)).toEqual([143]);
	});

	test('can begin again inside its own steps, without a second walk', async () => {
		const { clock, exits, shutdown, done } = walk({
			unmount: () => {
				shutdown.begin({ kind: 'fault', error: new Error('while leaving') });
			},
		});
		shutdown.begin(QUIT);
		await clock.turn(5000);
		expect(exits.map(({ code }) => code)).toEqual([0]);
		expect(done).toEqual(['input', 'journal', 'leave', 'report kept']);
	});

	test('needs none of its steps', async () => {
		const clock = handClock();
		const codes: number[] = [];
		createShutdown({ clock, exit: (code) => codes.push(code) }).begin(QUIT);
		await clock.turn(0);
		expect(codes).toEqual([0]);
	});
});

// 128 + n: POSIX, Shell Command Language, "Exit Status for Commands", as shells have it in practice.
test.each([
	[{ kind: 'signal', signal: 'SIGHUP' }, 129],
	[{ kind: 'signal', signal: 'SIGINT' }, 130],
	[{ kind: 'signal', signal: 'SIGQUIT' }, 131],
	[{ kind: 'signal', signal: 'SIGTERM' }, 143],
	[{ kind: 'terminal-lost', stream: 'stdout' }, 129],
	[{ kind: 'fault', error: new Error('a bug') }, 70],
	[{ kind: 'quit', code: 1 }, 1],
] as const)('%j exits with %d', async (ending, code) => {
	const { clock, exits, shutdown } = walk();
	shutdown.begin(ending);
	await clock.turn(0);
	expect(exits).toEqual([{ code, atMs: 0 }]);
});

describe('a step that fails', () => {
	test('keeps none of the others from being done', async () => {
		const { clock, done, exits, shutdown } = walk({
			stopInput: () => {
				throw new Error('no keyboard');
			},
			unmount: () => {
				throw new Error('no screen');
			},
		});
		shutdown.begin(QUIT);
		await clock.turn(0);
		expect(done).toEqual(['journal', 'reset', 'report kept Error: no keyboard,Error: no screen']);
		expect(exits).toEqual([{ code: 0, atMs: 0 }]);
	});

	test('of the journal makes a good end code 3, and leaves a signal its own', async () => {
		const syncJournal = () => Promise.reject(new Error('the disk is full'));
		for (const [ending, code] of [
			[QUIT, 3],
			[{ kind: 'quit', code: 2 }, 2],
			[{ kind: 'signal', signal: 'SIGTERM' }, 143],
		] as const) {
			const { clock, done, exits, shutdown } = walk({ syncJournal });
			shutdown.begin(ending);
			await clock.turn(0);
			expect(exits.map((exit) => exit.code)).toEqual([code]);
			expect(done.at(-1)).toBe('report not kept Error: the disk is full');
		}
	});
});

describe('a step that hangs', () => {
	const TERM: Ending = { kind: 'signal', signal: 'SIGTERM' };
	const allHung = { syncJournal: hung, unmount: hung, reset: hung, report: hung };

	test.each([
		[QUIT, { code: 3, atMs: 1500 }],
		[TERM, { code: 143, atMs: 500 }],
	] as const)(
		'in the journal costs a quit a second and a half, a signal half of one: %j',
		async (ending, exit) => {
			const { clock, done, exits, shutdown } = walk({ syncJournal: hung });
			shutdown.begin(ending);
			await clock.turn(exit.atMs - 1);
			expect(exits).toEqual([]);
			await clock.turn(2);
			expect(done).toEqual(['input', 'unmount', 'leave', 'report not kept']);
			expect(exits).toEqual([exit]);
		},
	);

	test.each([
		[QUIT, { code: 3, atMs: 2000 }],
		[TERM, { code: 143, atMs: 1000 }],
	] as const)('in all of them costs a quit two seconds, a signal one: %j', async (ending, exit) => {
		const { clock, exits, shutdown } = walk(allHung);
		shutdown.begin(ending);
		await clock.turn(5000);
		expect(exits).toEqual([exit]);
	});

	test('in the journal of a quit is not waited for much longer once a signal comes', async () => {
		const { clock, done, exits, shutdown } = walk({ syncJournal: hung });
		shutdown.begin(QUIT);
		await clock.turn(100);
		shutdown.begin(TERM);
		await clock.turn(5000);
		expect(done).toEqual(['input', 'unmount', 'leave', 'report not kept']);
		expect(exits).toEqual([{ code: 3, atMs: 600 }]);
		const stuck = walk(allHung);
		stuck.shutdown.begin(QUIT);
		await stuck.clock.turn(100);
		stuck.shutdown.begin(TERM);
		await stuck.clock.turn(5000);
		expect(stuck.exits).toEqual([{ code: 3, atMs: 1100 }]);
	});

	test('a journal that needs a second is kept', async () => {
		const { clock, exits, shutdown } = walk();
		shutdown.hold({
			syncJournal: () =>
				new Promise((done) => {
					clock.after(1000, done);
				}),
		});
		shutdown.begin(QUIT);
		await clock.turn(5000);
		expect(exits).toEqual([{ code: 0, atMs: 1000 }]);
	});
});
