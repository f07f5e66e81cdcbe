// The bytes of a board's whole state, as MIDI 1.0 has them: each message with its status byte, so that a pedal
// that joins late understands the first one it hears.

import type { MidiMessage, PedalMidi } from '../showfile/rig.ts';
import type { Pedal, PedalState, PedalStates } from '../showfile/show.ts';

// MIDI 1.0, summary of channel messages: status is the upper four bits, the channel less 1 the lower four.
const NOTE_OFF = 0x80;
const NOTE_ON = 0x90;
const CONTROL = 0xb0;
const PROGRAM = 0xc0;
/** MIDI 1.0: bank select is controller 0 for the upper seven bits and 32 for the lower seven. */
const BANK_UPPER = 0;
const BANK_LOWER = 32;
const SEVEN_BITS = 0x7f;

/**
 * One message on a channel from 1 to 16.
 *
 * @example
 * messageBytes({ kind: 'control', controller: 7, value: 100 }, 1) // => [0xb0, 7, 100]
 * messageBytes({ kind: 'bank', bank: 300 }, 2) // => [0xb1, 0, 2, 0xb1, 32, 44]
 */
export function messageBytes(message: MidiMessage, channel: number): readonly number[] {
	const low = channel - 1;
	switch (message.kind) {
		case 'bank':
			return [
				...[CONTROL | low, BANK_UPPER, message.bank >> 7],
				...[CONTROL | low, BANK_LOWER, message.bank & SEVEN_BITS],
			];
		case 'program':
			return [PROGRAM | low, message.program];
		case 'control':
			return [CONTROL | low, message.controller, message.value];
		case 'note':
			return [(message.velocity === 0 ? NOTE_OFF : NOTE_ON) | low, message.note, message.velocity];
	}
}

/** What a pedal is sent for a state: its `off`; or its `on` and the scene that the state names. */
function stateMessages(midi: PedalMidi, state: PedalState): readonly MidiMessage[] {
	if (!state.on) return midi.off;
	const scene = state.settings?.scene;
	return [...midi.on, ...(scene === undefined ? [] : (midi.scenes[scene] ?? []))];
}

/**
 * The whole state of a board in the order of its pedals, a pedal that the state does not name being off.
 *
 * @example
 * boardBytes([], {}) // => []
 */
export function boardBytes(pedals: readonly Pedal[], states: PedalStates): readonly number[] {
	return pedals.flatMap(({ id, midi }) =>
		midi === undefined
			? []
			: stateMessages(midi, states[id] ?? { on: false }).flatMap((one) =>
					messageBytes(one, midi.channel),
				),
	);
}

/**
 * Bytes as people write them.
 *
 * @example
 * hexBytes([0xc0, 5, 0xb0, 7, 100]) // => 'C0 05 B0 07 64'
 */
export function hexBytes(bytes: readonly number[]): string {
	return bytes.map((byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join(' ');
}
