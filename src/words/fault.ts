// What is said while a fault is sought: what to do with the hands, what to answer, how sure it is.

import type { Suspect, Symptom } from '../rig/fault-suspects.ts';
import type { FaultTest } from '../rig/fault-tests.ts';
import type { FaultStep } from '../rig/find-fault.ts';
import type { Show } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { incidentCautions, TUBE_LOAD } from './cautions.ts';
import { PART_WORDS } from './rig.ts';

/** What is heard, as an incident says it. */
export const SYMPTOM_WORDS: Readonly<Record<Symptom, string>> = {
	silent: 'no sound',
	crackle: 'crackle',
	hum: 'hum',
	thin: 'thin sound',
	'cuts-out': 'cuts out',
	distorted: 'distorted',
	feedback: 'feedback',
	wireless: 'wireless dropout',
};

export const FAULT_PAGE = {
	next: 'NEXT',
	found: 'FOUND',
	chances: 'CHANCES',
	answers: 'sound: it is right now. same: nothing has changed.',
	nothing: 'Nothing more can be tried here. Take the spare and look at it tomorrow.',
	contradiction:
		'These answers do not fit one fault: one of them is wrong, or two parts are at fault.',
	noEarth: 'Never lift the safety earth, never open an amp.',
} as const;

/** `4 Bay`, `cord lead`, `Drive`. */
export function suspectWords(show: Show, { id, name, kind }: Suspect): string {
	if (kind === 'instrument') return shownInstrument(show, id);
	if (kind === 'pedal') return name;
	const part = PART_WORDS[kind];
	return name === part ? `the ${part}` : `${part} ${name}`;
}

/** What to do, in about six words. */
export function testWords(show: Show, test: FaultTest, causes: FaultStep['causes']): string {
	const at = causes.find(({ suspect }) => suspect.id === test.at)?.suspect;
	const name = at === undefined ? test.at : suspectWords(show, at);
	switch (test.does) {
		case 'swap':
			return at?.spare === undefined ? `Swap ${name}.` : `Swap ${name} for ${at.spare}.`;
		case 'bypass':
			return at === undefined ? 'Take the whole board out.' : `Bypass ${name}.`;
		case 'straight':
			return `One good cord, instrument to ${name}.`;
		case 'listen':
			return `Listen behind ${name}.`;
	}
}

/** Why this test: how likely it is to show the fault, and how long it takes. */
export function whyWords(test: FaultTest, { causes }: Pick<FaultStep, 'causes'>): string {
	const chance = causes
		.filter(({ suspect }) => test.clears.includes(suspect.id))
		.reduce((sum, one) => sum + one.chance, 0);
	const odds = `${percent(chance)} that it helps, ${Math.round(test.seconds)} s`;
	return test.does === 'listen'
		? `${percent(1 - chance)} that the fault is up to there, ${Math.round(test.seconds)} s`
		: odds;
}

/** `31 %`; a cause that is only nearly out of the question is under 1 %. */
export function percent(chance: number): string {
	const whole = Math.round(chance * 100);
	return chance > 0 && whole === 0 ? 'under 1 %' : `${whole} %`;
}

/** `It is cord lead, 97 % sure.` */
export function foundWords(show: Show, suspect: Suspect, chance: number): string {
	const name = suspectWords(show, suspect);
	return `It is ${name}, ${percent(chance)} sure. ${suspect.spare === undefined ? 'Take it out of use.' : `Use ${suspect.spare}.`}`;
}

/** `About 0:40 to the cause.` */
export function expectedWords(time: string, aim: 'sound' | 'cause'): string {
	return aim === 'sound' ? `About ${time} to sound.` : `About ${time} to the cause.`;
}

/** The cautions of what is heard, with that of a tube amp where the way has an amp. */
export function faultCautions(symptom: Symptom, causes: FaultStep['causes']): readonly string[] {
	const hasAmp = causes.some(({ suspect }) => suspect.kind === 'amp');
	return [
		...incidentCautions(SYMPTOM_WORDS[symptom]),
		...(hasAmp ? [FAULT_PAGE.noEarth, TUBE_LOAD] : []),
	];
}
