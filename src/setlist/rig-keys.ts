// The rig of a show that was read, as the keys that a person writes.

import type {
	Arrival,
	FaultTraits,
	MidiMessage,
	MidiTempo,
	Output,
	PedalMidi,
	Power,
	RigPart,
	Supply,
} from '../showfile/rig.ts';
import type { Pack, Pedal } from '../showfile/show.ts';
import { given, type Keys, mapValues, someKeys } from './given-keys.ts';

/** A part of a player's sound path. */
export function partOfRigKeys(part: RigPart): Keys {
	const { id, name, kind, metres, picofaradsPerMetre, inputOhms, outputOhms, isTube } = part;
	const { ohms, watts, tap, taps, wired, switched, power } = part;
	return given({
		...{ id, name: name === id ? null : name, kind },
		length: metres === undefined ? null : `${metres} m`,
		'pf-per-m': picofaradsPerMetre,
		...{
			input: ohmsText(inputOhms),
			output: ohmsText(outputOhms),
			ohms,
			watts,
			tap,
			taps,
			tube: isTube,
		},
		...{
			wired,
			switched,
			power: power && powerKeys(power),
			...arrivalKeys(part),
			...faultKeys(part),
		},
	});
}

/** A pedal of a board, with what else the file says of it. */
export function boardPedalKeys(pedal: Pedal): Keys {
	const { id, name, inputOhms, outputOhms, switched, power, midi, controls, extra } = pedal;
	return given({
		...{
			id,
			name: name === id ? null : name,
			input: ohmsText(inputOhms),
			output: ohmsText(outputOhms),
			controls,
		},
		...{ switched, power: power && powerKeys(power), midi: midi && midiKeys(midi) },
		...faultKeys(pedal),
		...extra,
	});
}

/** A supply with its outputs. */
export function supplyKeys({ id, name, outputs }: Supply): Keys {
	return given({
		...{ id, name: name === id ? null : name },
		outputs: outputs.map(({ id: output, volts, milliamps, centre, current }) =>
			given({ id: output, volts, ma: milliamps, centre, current }),
		),
	});
}

/** A pack; hours of a battery that was not used yet are not written. */
export function packKeys({ battery, ...pack }: Pack): Keys {
	return given({
		...pack,
		battery: battery && given({ hours: battery.hours, used: battery.used || null }),
	});
}

/** What something runs on. */
export function powerKeys(power: Power): Keys {
	const { supply, output, milliamps, volts, centre, current, battery } = power;
	return given({
		...{ supply, output, ma: milliamps, volts, centre, current },
		battery: battery && `${battery.milliampHours} mAh`,
		'hours-used': battery?.hoursUsed || null,
	});
}

/** What an instrument gives; one thing without its list. */
export function outputKeys(output: Output | readonly Output[]): Keys | readonly Keys[] {
	return 'length' in output ? output.map(sourceKeys) : sourceKeys(output);
}

function sourceKeys(output: Output): Keys {
	return given({
		...{ ohms: ohmsText(output.ohms), pf: output.picofarads },
		...{ name: output.name, ...arrivalKeys(output) },
	});
}

function arrivalKeys({ distanceMetres, delayMilliseconds, isInverted }: Arrival): Keys {
	return {
		distance: distanceMetres === undefined ? null : `${distanceMetres} m`,
		delay: delayMilliseconds === undefined ? null : `${delayMilliseconds} ms`,
		polarity: isInverted === true ? 'inverted' : null,
	};
}

/** As labels write it: `500 k`, `1 M`. */
function ohmsText(ohms: number | undefined): string | number | undefined {
	if (ohms === undefined || ohms < 1000) return ohms;
	return ohms < 1_000_000 ? `${ohms / 1000} k` : `${ohms / 1_000_000} M`;
}

function faultKeys({ chance, testSeconds, swapSeconds, spare }: FaultTraits): Keys {
	const seconds = (value: number | undefined) => (value === undefined ? null : `${value}s`);
	return { chance, test: seconds(testSeconds), swap: seconds(swapSeconds), spare };
}

function midiKeys({ channel, on, off, scenes, tempo }: PedalMidi): Keys {
	const all = (messages: readonly MidiMessage[]) =>
		messages.length === 0 ? null : messages.map(messageKeys);
	return given({
		...{ channel, on: all(on), off: all(off) },
		scenes: someKeys(mapValues(scenes, (messages) => messages.map(messageKeys))),
		tempo: tempo && tempoKeys(tempo),
	});
}

function messageKeys(message: MidiMessage): Keys {
	switch (message.kind) {
		case 'bank':
			return { bank: message.bank };
		case 'program':
			return { program: message.program };
		case 'control':
			return { cc: message.controller, value: message.value };
		case 'note':
			return { note: message.note, velocity: message.velocity };
	}
}

function tempoKeys(tempo: MidiTempo): unknown {
	return tempo.kind === 'clock' ? 'clock' : { cc: tempo.controller, value: tempo.value };
}
