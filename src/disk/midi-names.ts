// Ports by name, through a library that is no part of the program: whoever names one adds it.

import { diskError } from './disk.ts';
import type { MidiLine, OpenMidiLine } from './midi-line.ts';

/** Named by a word that the bundler does not follow: it is looked for where the program is installed. */
const LIBRARY: string = '@julusian/midi';

/** As much of the library as is used. */
type Library = {
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
	load: () => Promise<unknown> = () => import(LIBRARY),
): Promise<MidiNames> {
	const never = (code: string): MidiNames => ({
		open: () => {
			throw diskError(code);
		},
		ports: () => [],
	});
	let library: Library;
	try {
		library = (await load()) as Library;
	} catch {
		return never('NO_LIBRARY');
	}
	try {
		return namesOf(new library.Output(), name);
	} catch {
		return never('NO_MIDI');
	}
}

function namesOf(output: InstanceType<Library['Output']>, name: string): MidiNames {
	const ports = (): string[] =>
		Array.from({ length: output.getPortCount() }, (_, at) => output.getPortName(at));
	// Systems add numbers to the names that makers gave: the beginning is enough.
	const find = (): number => {
		const all = ports();
		const exact = all.indexOf(name);
		return exact >= 0 ? exact : all.findIndex((one) => one.startsWith(name));
	};
	const open = (): MidiLine => {
		const at = find();
		if (at < 0) throw diskError('NO_SUCH_PORT');
		output.openPort(at);
		return {
			write: (bytes, from) => {
				for (const message of messagesIn(bytes.subarray(from))) output.sendMessage(message);
				return bytes.length - from;
			},
			isThere: () => find() >= 0,
			close: () => output.closePort(),
		};
	};
	return { open, ports };
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
