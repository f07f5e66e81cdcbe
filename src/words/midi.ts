// What is said of the port that pedals hang on.

import type { MidiFault } from '../base/midi-fault.ts';
import { diskTrouble } from './disk.ts';

export const NO_MIDI_PEDALS =
	'No pedal of this show is sent anything by MIDI: the port is not used.';

/** Why nothing goes out, and what to do meanwhile: what is wrong first, for a narrow row. */
export function midiFaultWords({ port, trouble, isGone, ports }: MidiFault): string {
	switch (trouble) {
		case 'NO_LIBRARY':
			return 'No MIDI: a port by its name needs a library. Add it: npm install -g @julusian/midi. Or name a path.';
		case 'NO_MIDI':
			return 'No MIDI: this machine has no ports by name. Name a path, such as /dev/snd/midiC1D0.';
		case 'NO_SUCH_PORT':
			return `No MIDI: no port ${port}${ports.length === 0 ? '' : ` (there are ${ports.join(', ')})`}. Switch by foot until it is there.`;
		case 'STALLED':
			return `MIDI stands still: ${port} takes nothing. Switch by foot, look at its cable.`;
		case 'EFTYPE':
			return `No MIDI: ${port} is a file, not a device. Start again with --midi and its path.`;
		case 'EISDIR':
			return `No MIDI: ${port} is a folder, not a device. Start again with --midi and its path.`;
		case 'ENOENT':
		case 'ENXIO':
		case 'ENODEV':
		case 'EIO':
		case 'EPIPE':
			return isGone
				? `No MIDI: ${port} is gone. Switch by foot until it is back.`
				: `No MIDI: ${port} is not there. Switch by foot until it is.`;
		default:
			return `No MIDI: ${port}: ${diskTrouble(trouble)}. Switch by foot until it is back.`;
	}
}
