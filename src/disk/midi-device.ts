// A raw MIDI device as a file, a FIFO or a terminal: opened and written without ever waiting, since a key does both.

import * as fs from 'node:fs';
import { diskError, diskErrorCode } from './disk.ts';
import type { MidiLine } from './midi-line.ts';

const { O_NOCTTY = 0, O_NONBLOCK = 0, O_WRONLY } = fs.constants;

const NO_ROOM_NOW = new Set(['EAGAIN', 'EINTR']);

/** Opens a device for writing; throws where nothing is there, where nobody reads, and for a plain file. */
export function openMidiDevice(path: string): MidiLine {
	const file = openNow(path);
	const opened = fs.fstatSync(file);
	if (!opened.isFIFO() && !opened.isCharacterDevice()) {
		fs.closeSync(file);
		throw diskError('EFTYPE');
	}
	return {
		write: (bytes, from) => {
			try {
				return fs.writeSync(file, bytes, from);
			} catch (error) {
				if (NO_ROOM_NOW.has(diskErrorCode(error))) return 0;
				throw error;
			}
		},
		isThere: () => {
			try {
				const found = fs.statSync(path);
				if (found.dev !== opened.dev || found.ino !== opened.ino) return false;
				// Who reads a FIFO can leave it without a trace; opening it once more tells.
				if (opened.isFIFO()) fs.closeSync(openNow(path));
				return true;
			} catch (error) {
				diskErrorCode(error);
				return false;
			}
		},
		// Some drivers first send what they hold: another thread waits for that.
		close: () => fs.close(file, () => {}),
	};
}

function openNow(path: string): number {
	return fs.openSync(path, O_WRONLY | O_NONBLOCK | O_NOCTTY);
}
