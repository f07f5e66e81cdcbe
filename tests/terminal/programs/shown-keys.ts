// A small program for the terminal tests: shows every event of the keyboard on a line of its own,
// and leaves by the real way out. Flags: --hung-journal, --failed-journal, --hung-unmount,
// --failed-unmount, --flood (writes without end), --start-fault. Keys: q quits, x throws.

import { appendFileSync } from 'node:fs';
import process from 'node:process';
import { nodeClock } from '../../../src/terminal/clock.ts';
import { redrawOnContinue } from '../../../src/terminal/continue.ts';
import { endOnSignals } from '../../../src/terminal/end-on-signals.ts';
import { createInputSource } from '../../../src/terminal/input-source.ts';
import type { InputEvent } from '../../../src/terminal/key.ts';
import { resetTerminal } from '../../../src/terminal/reset-terminal.ts';
import { createShutdown } from '../../../src/terminal/shutdown.ts';
import { createPaintGate, hasBacklog, unblock } from '../../../src/terminal/stall.ts';
import { ENTER_MODES } from '../../../src/terminal/terminal-modes.ts';

const flags = new Set(process.argv.slice(2));
const journal = process.env.SHOWN_KEYS_JOURNAL;
const { stdin, stdout, stderr } = process;
const clock = nodeClock();
const lines: string[] = [];

function log(line: string): void {
	if (journal !== undefined) {
		appendFileSync(journal, `${line}\n`);
	}
}

const shutdown = createShutdown({ clock, exit: (code) => process.exit(code) });
shutdown.hold({
	syncJournal: () => {
		log('sync');
		if (flags.has('--failed-journal')) {
			return Promise.reject(new Error('the disk is full'));
		}
		return flags.has('--hung-journal') ? new Promise(() => {}) : Promise.resolve();
	},
	reset: resetTerminal(stdout),
	report: ({ ending, isKept }) => {
		const kept = isKept ? 'kept' : 'not kept';
		const fault = ending.kind === 'fault' ? ` ${String(ending.error)}` : '';
		return new Promise((resolve) => {
			stdout.write(`bye: ${ending.kind}, ${kept}${fault}\r\n`, () => resolve());
		});
	},
});
endOnSignals({ process, stdin, stdout, stderr }, shutdown);
unblock([stdout, stderr]);

if (flags.has('--start-fault')) {
	throw new Error('could not start');
}

function draw(shown: readonly string[]): void {
	const { rows } = stdout;
	stdout.write(`\u001B[2J\u001B[H${['ready', ...shown.slice(2 - rows)].join('\r\n')}`);
}

function enterScreen(): void {
	stdout.write('\u001B[?1049h\u001B[?25l');
	draw(lines);
}

const gate = createPaintGate({
	hasBacklog: () => hasBacklog(stdout),
	paint: () => draw(lines.slice(-200)),
	afterSending: (run) => stdout.write('', run),
});

function show(event: InputEvent): string {
	switch (event.kind) {
		case 'key':
			return `key ${event.key}`;
		case 'paste':
			return `paste ${JSON.stringify(event.text)}`;
		case 'burst':
			return `burst ${event.count}`;
		case 'interrupt':
			return 'interrupt';
	}
}

function onEvent(event: InputEvent): void {
	const line = show(event);
	log(line);
	lines.push(line);
	gate.offer();
	if (event.kind === 'key' && event.key === 'q') {
		shutdown.begin({ kind: 'quit', code: 0 });
	}
	if (event.kind === 'key' && event.key === 'x') {
		throw new Error('thrown on purpose');
	}
}

const input = createInputSource({ stdin, clock, onEvent });
shutdown.hold({
	stopInput: input.stop,
	unmount: () => {
		if (flags.has('--failed-unmount')) {
			throw new Error('the screen could not be taken down');
		}
		if (flags.has('--hung-unmount')) {
			return new Promise(() => {});
		}
		stdout.write('\u001B[?25h\u001B[?1049l');
	},
});
stdout.write(ENTER_MODES);
redrawOnContinue({
	process,
	clock,
	retake: input.retake,
	write: (text) => stdout.write(text),
	redraw: enterScreen,
});
input.start();
enterScreen();

if (flags.has('--flood')) {
	const flood = (): void => {
		lines.push(`flood ${lines.length} ${'flood '.repeat(200)}`);
		gate.offer();
		clock.after(20, flood);
	};
	flood();
}
