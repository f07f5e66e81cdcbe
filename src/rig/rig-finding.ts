// What a look at a show's rig finds before the doors. Data, things by their ids; the sentences are made in `words`.

import type { Severity } from '../showfile/finding.ts';
import type { Centre, Current } from '../showfile/rig.ts';
import type { BatteryLeft } from './battery-hours.ts';
import type { Offset, TwoSources } from './two-sources.ts';

/** Something that runs on power; `player`: null for an instrument. */
type Consumer = { readonly player: string | null; readonly id: string };

export type RigFinding = {
	readonly severity: Severity;
	readonly song?: string;
} /** `fits`: a tap of this amplifier that is made for the load; null where it has none, or they are not given. */ & (
	| {
			readonly code: 'amp-load';
			readonly player: string;
			readonly amplifier: string;
			readonly ohms: number;
			readonly tapOhms: number;
			readonly fits: number | null;
	  }
	| { readonly code: 'amp-no-load'; readonly player: string; readonly amplifier: string }
	| {
			readonly code: 'cab-power';
			readonly player: string;
			readonly amplifier: string;
			readonly cab: string;
			/** What it gets, and what it bears. */
			readonly watts: number;
			readonly ratedWatts: number;
	  }
	/** `isOver`: more than the rating; else more than four fifths of it. */
	| {
			readonly code: 'supply-load';
			readonly supply: string;
			readonly output: string;
			readonly usedMa: number;
			readonly ratedMa: number;
			readonly isOver: boolean;
	  }
	| ({
			readonly code: 'supply-volts';
			readonly supply: string;
			readonly output: string;
			readonly wants: number;
			readonly gives: number;
	  } & Consumer)
	| ({
			readonly code: 'supply-centre';
			readonly supply: string;
			readonly output: string;
			readonly wants: Centre;
			readonly gives: Centre;
	  } & Consumer)
	| ({
			readonly code: 'supply-current';
			readonly supply: string;
			readonly output: string;
			readonly wants: Current;
			readonly gives: Current;
	  } & Consumer)
	| {
			readonly code: 'daisy-chain';
			readonly supply: string;
			readonly output: string;
			readonly on: readonly Consumer[];
	  }
	/** `hoursNeeded`: of the show, margin not in it; `change`: by when it must be fresh. */
	| ({
			readonly code: 'battery-short';
			readonly hoursLeft: number;
			readonly hoursNeeded: number;
			readonly change: 'before-doors' | 'interval';
	  } & Pick<BatteryLeft, 'what' | 'player' | 'id'>)
	| {
			readonly code: 'shared-channel';
			readonly channel: string;
			readonly packs: readonly string[];
	  }
	| {
			readonly code: 'unknown-scene';
			readonly song: string;
			readonly player: string;
			readonly pedal: string;
			readonly scene: string;
	  }
	| {
			readonly code: 'no-tempo';
			readonly song: string;
			readonly player: string;
			readonly pedal: string;
			readonly value: string;
	  }
	/** A piezo that loses its lowest notes; `decibels`: at its lowest string, negative. */
	| {
			readonly code: 'thin-piezo';
			readonly player: string;
			readonly instrument: string;
			readonly hertz: number;
			readonly decibels: number;
	  }
	| {
			readonly code: 'dull-cord';
			readonly player: string;
			readonly instrument: string;
			readonly hertz: number;
	  }
	/** `isLows`: their polarity is opposite and the lowest strings lose by it; else one frequency of the range does. */
	| ({
			readonly code: 'sources-cancel';
			readonly offset: Offset;
			readonly isLows: boolean;
	  } & Pick<TwoSources, 'player' | 'instrument' | 'sources'>)
);
