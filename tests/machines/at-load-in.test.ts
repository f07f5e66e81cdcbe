// What a night begins in is written down as plain data, so the machines are asked whether they would
// begin in the same. The numbers and names are made up by the test.

import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { type AnyStateMachine, initialTransition } from 'xstate';
import { instrumentLaw } from '../../machines/instrument.ts';
import { boardLaw } from '../../machines/rig.ts';
import { showLaw } from '../../machines/show.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Instrument, Pedal, Show } from '../../src/showfile/show.ts';
import { tuningCalled } from '../../src/tuning/tuning.ts';
import { showFrom, smallShow } from '../showfile/show-files.ts';

const plain = showFrom(smallShow());

const tuning = fc.constantFrom('E standard', 'drop D', 'half-step down').map((name) => {
	const called = tuningCalled(name, 'electric-6');
	if (!called) throw new Error(`${name} is one of the named tunings`);
	return called;
});

const instrument = (template: Instrument): fc.Arbitrary<Instrument> =>
	fc
		.record({ id: fc.string({ minLength: 1 }), tuning, hours: fc.option(fc.nat(500)) })
		.map(({ hours, ...rest }) => ({
			...template,
			...rest,
			strung: { ...template.strung, hours },
		}));

const pedal: fc.Arbitrary<Pedal> = fc
	.string({ minLength: 1 })
	.map((id) => ({ id, name: id }) as Pedal);

const shows: fc.Arbitrary<Show> = fc
	.record({
		instruments: fc.uniqueArray(instrument(plain.instruments[0] as Instrument), {
			selector: ({ id }) => id,
		}),
		boards: fc.dictionary(fc.string(), fc.array(pedal)),
	})
	.map((parts) => ({ ...plain, ...parts }));

const firstState = (machine: AnyStateMachine) => initialTransition(machine)[0].value;

test('a night of any show begins in what the machines begin in', () => {
	fc.assert(
		fc.property(shows, (show) => {
			const { phase, instruments, boards } = openSession(show);
			expect(phase.value).toBe(firstState(showLaw.machine));
			for (const { value } of Object.values(instruments)) {
				expect(value).toBe(firstState(instrumentLaw.machine));
			}
			for (const { value } of Object.values(boards)) {
				expect(value).toBe(firstState(boardLaw.machine));
			}
		}),
	);
});
