// The size that the renderer sees, on a stream that a test resizes and a clock that it turns.

import { expect, test } from 'vitest';
import { keepSizeKnown, type SizedStream } from '../../src/terminal/known-size.ts';

function stream(columns: number, rows: number) {
	const listeners: (() => void)[] = [];
	const real = { columns, rows };
	const seen: SizedStream = {
		columns,
		rows,
		on: (_, listener) => listeners.push(listener),
		_refreshSize: () => {
			Object.assign(seen, real);
			for (const listener of listeners) listener();
		},
	};
	let waiting: (() => void)[] = [];
	keepSizeKnown(seen, {
		after: (_, run) => {
			waiting.push(run);
			return () => {};
		},
	});
	let drawn = 0;
	seen.on('resize', () => {
		drawn += 1;
	});
	return {
		size: () => ({ columns: seen.columns, rows: seen.rows }),
		drawn: () => drawn,
		resize: (newColumns: number, newRows: number) => {
			Object.assign(real, { columns: newColumns, rows: newRows });
			seen._refreshSize?.();
		},
		wait: () => {
			const due = waiting;
			waiting = [];
			for (const run of due) run();
		},
	};
}

// 80 by 24: the DEC VT100's, common practice.
test('an unknown size is 80 by 24, at first and after a change', () => {
	const terminal = stream(0, 0);
	expect(terminal.size()).toEqual({ columns: 80, rows: 24 });
	terminal.resize(100, 30);
	expect(terminal.size()).toEqual({ columns: 100, rows: 30 });
	terminal.wait();
	terminal.resize(0, 30);
	expect(terminal.size()).toEqual({ columns: 80, rows: 24 });
});

test('of many changes at once the first and the last are seen', () => {
	const terminal = stream(80, 24);
	for (let columns = 81; columns <= 180; columns += 1) terminal.resize(columns, 30);
	expect(terminal.size()).toEqual({ columns: 81, rows: 30 });
	terminal.wait();
	expect(terminal.size()).toEqual({ columns: 180, rows: 30 });
	expect(terminal.drawn()).toBe(2);
	terminal.wait();
	expect(terminal.drawn()).toBe(2);
});
