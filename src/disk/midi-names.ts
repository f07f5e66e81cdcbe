// Ports by name, through a library that is no part of the program: whoever names one adds it.

import { diskError } from './disk.ts';
import type { MidiLine, OpenMidiLine } from './midi-line.ts';

/** Named by a word that the bundler does not follow: it is looked for where the program is installed. */
const LIBRARY: string = '@julusian/midi';

/** As much of the library as is used; whatever it throws has no code. */
export type MidiLibrary = {
	readonly Output: new () => {
		readonly getPortCount: () => number;
		readonly getPortName: (at: number) => string;
		readonly openPort: (at: number) => void;
		readonly closePort: () => void;
		readonly sendMessage: (message: number[]) => void;
	};
};

export type MidiNames = {
	readonly open: OpenMidiLine;
	/** The names that there are now. */
	readonly ports: () => readonly string[];
};

/** A status byte has the upper bit (MIDI 1.0). */
const STATUS = 0x80;

/** How the port of this name is opened; the library is loaded here, and what it lacks is said on opening. */
export async function midiNames(
	name: string,
	load: () => Promise<MidiLibrary> = () => import(LIBRARY),
): Promise<MidiNames> {
	const never = (code: string): MidiNames => ({
		open: () => {
			throw diskError(code);
		},
		ports: () => [],
	});
	let library: MidiLibrary;
	try {
		library = await load();
	} catch {
		return never('NO_LIBRARY');
	}
	try {
		return namesOf(new library.Output(), name);
	} catch {
		return never('NO_MIDI');
	}
}

function namesOf(output: InstanceType<MidiLibrary['Output']>, name: string): MidiNames {
	// A port may go between two of these calls.
	const ports = (): string[] => {
		try {
			return Array.from({ length: output.getPortCount() }, (_, at) => output.getPortName(at));
		} catch {
			return [];
		}
	};
	const open = (): MidiLine => {
		const all = ports();
		// Systems add numbers to the names that makers gave: the beginning is enough.
		const opened = all.includes(name) ? name : all.find((one) => one.startsWith(name));
		if (opened === undefined) throw diskError('NO_SUCH_PORT');
		coded(() => output.openPort(all.indexOf(opened)));
		return {
			write: (bytes, from) => {
				for (const message of messagesIn(bytes.subarray(from))) {
					coded(() => output.sendMessage(message));
				}
				return bytes.length - from;
			},
			// One that comes back may have another number, and nothing is joined to it then.
			isThere: () => ports().includes(opened),
			close: () => {
				try {
					output.closePort();
				} catch {
					// It is gone by itself.
				}
			},
		};
	};
	return { open, ports };
}

function coded(act: () => void): void {
	try {
		act();
	} catch {
		throw diskError('EIO');
	}
}

/** Each from its status byte to the next one. */
function messagesIn(bytes: Uint8Array): number[][] {
	const messages: number[][] = [];
	for (const byte of bytes) {
		const last = messages.at(-1);
		if (byte >= STATUS || last === undefined) messages.push([byte]);
		else last.push(byte);
	}
	return messages;
}
