// What a show file says of the rig behind the hands: the sound path from the strings to the desk, what
// feeds it, and what each pedal is sent. Plain data, every id in it followed.

/** What may stand in the sound path. */
export const PART_KINDS = [
	'cord',
	'pack',
	'board',
	'loop',
	'splitter',
	'direct-box',
	'preamp',
	'amp',
	'cab',
	'desk',
] as const;

export type PartKind = (typeof PART_KINDS)[number];

/** Alternating or direct. */
export type Current = 'ac' | 'dc';

/** Which pole is in the middle of the plug. */
export type Centre = 'negative' | 'positive';

/** Who changes it. */
export type Switched = 'feet' | 'tech' | 'midi';

/** What it runs on, and how much it draws; what the file does not say is null. */
export type Power = {
	/** A supply's id, and that of one of its outputs. */
	readonly supply: string | null;
	readonly output: string | null;
	readonly milliamps: number | null;
	readonly volts: number | null;
	readonly centre: Centre | null;
	/** Left out where the file gives none, as nights have it that began before it was known. */
	readonly current?: Current;
	readonly battery: { readonly milliampHours: number; readonly hoursUsed: number } | null;
};

/** What finding a fault needs to know of a part or a pedal; left out where the file gives none. */
export type FaultTraits = {
	/** How likely it is the one, relative to the others. */
	readonly chance?: number;
	/** Seconds. */
	readonly testSeconds?: number;
	readonly swapSeconds?: number;
	/** What replaces it, in words. */
	readonly spare?: string;
};

/** How sound from one of several sources reaches the desk; left out where the file gives none. */
export type Arrival = {
	/** Of its microphone from what that hears. */
	readonly distanceMetres?: number;
	/** What it adds itself. */
	readonly delayMilliseconds?: number;
	/** Its polarity is turned over. */
	readonly isInverted?: boolean;
};

/** One part of a player's sound path. */
export type RigPart = FaultTraits &
	Arrival & {
		readonly id: string;
		readonly name: string;
		readonly kind: PartKind;
		readonly metres?: number;
		readonly picofaradsPerMetre?: number;
		/** Ohms of its input. */
		readonly inputOhms?: number;
		readonly outputOhms?: number;
		/** Ohms of a cabinet. */
		readonly ohms?: number;
		/** What an amplifier gives, what a cabinet bears. */
		readonly watts?: number;
		/** Ohms of the tap that the cabinets hang on; all that it has. */
		readonly tap?: number;
		readonly taps?: readonly number[];
		readonly isTube?: boolean;
		/** With the cabinets before it. */
		readonly wired?: 'parallel' | 'series';
		readonly switched?: Switched;
		readonly power?: Power;
	};

/** A message to a pedal, numbers as they are sent. */
export type MidiMessage =
	/** 0 to 16383. */
	| { readonly kind: 'bank'; readonly bank: number }
	| { readonly kind: 'program'; readonly program: number }
	| { readonly kind: 'control'; readonly controller: number; readonly value: number }
	/** Velocity 0 is note off. */
	| { readonly kind: 'note'; readonly note: number; readonly velocity: number };

/** How a tempo reaches a pedal: four taps as control changes, or the clock's ticks. */
export type MidiTempo =
	| { readonly kind: 'tap'; readonly controller: number; readonly value: number }
	| { readonly kind: 'clock' };

export type PedalMidi = {
	/** 1 to 16. */
	readonly channel: number;
	readonly on: readonly MidiMessage[];
	readonly off: readonly MidiMessage[];
	/** By name, as cues call them. */
	readonly scenes: Readonly<Record<string, readonly MidiMessage[]>>;
	readonly tempo: MidiTempo | null;
};

/** What a pedal is beside its name; left out where the file gives none. */
export type PedalTraits = FaultTraits & {
	readonly inputOhms?: number;
	readonly outputOhms?: number;
	readonly switched?: Switched;
	readonly power?: Power;
	readonly midi?: PedalMidi;
	/** Its controls in the player's words, in their order. */
	readonly controls?: readonly string[];
};

export type SupplyOutput = {
	readonly id: string;
	readonly volts: number | null;
	readonly milliamps: number | null;
	readonly centre: Centre | null;
	readonly current?: Current;
};

export type Supply = {
	readonly id: string;
	readonly name: string;
	readonly outputs: readonly SupplyOutput[];
};

/** One thing that an instrument gives; with neither figure it is what a microphone hears. */
export type Output = Arrival & {
	readonly name?: string;
	/** Of its electronics. */
	readonly ohms?: number;
	/** Of a piezo. */
	readonly picofarads?: number;
};
