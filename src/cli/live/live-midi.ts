// The port of a live night, tied to it: opened by its path or its name, said on the screen where it is gone.

import { resolve } from 'node:path';
import { openMidiDevice } from '../../disk/midi-device.ts';
import { isMidiPath } from '../../disk/midi-line.ts';
import { midiNames } from '../../disk/midi-names.ts';
import type { TroubleLog } from '../../disk/trouble-log.ts';
import type { NightOptions } from '../../night/night-under-way.ts';
import type { Show } from '../../showfile/show.ts';
import type { Clock } from '../../terminal/clock.ts';
import { midiFaultWords } from '../../words/midi.ts';
import { midiOut } from './midi-out.ts';
import { portAsked } from './midi-port.ts';

export type LiveMidiParts = {
	readonly clock: Clock;
	readonly show: () => Show;
	readonly log: TroubleLog;
	/** Where a path that is not whole begins. */
	readonly cwd: string;
};

/** What a night takes of it, and how it begins; null where no port is asked for. */
export async function liveMidi(
	asked: string | null,
	{ clock, show, log, cwd }: LiveMidiParts,
): Promise<
	| (Required<Pick<NightOptions, 'effects' | 'outsideTrouble'>> & {
			readonly start: () => void;
	  })
	| null
> {
	const port = portAsked(asked ?? '');
	if (port === null) return null;
	const { open, ports } = isMidiPath(port)
		? { open: () => openMidiDevice(resolve(cwd, port)), ports: () => [] }
		: await midiNames(port);
	const out = midiOut({ port, open, ports, show, clock, note: log.note });
	return {
		effects: out.effects,
		outsideTrouble: () => {
			const fault = out.fault();
			return fault === null ? null : midiFaultWords(fault);
		},
		start: out.start,
	};
}
