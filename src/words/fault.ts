// What is said while a fault is sought: what to do with the hands, what to answer, how sure it is.

import { fitWidth } from '../base/display-width.ts';
import type { Entry } from '../journal/entry.ts';
import { faultNow, faultParts } from '../rig/fault-now.ts';
import { type Suspect, SYMPTOMS, type Symptom } from '../rig/fault-suspects.ts';
import { type FaultTest, faultTests } from '../rig/fault-tests.ts';
import type { FaultStep } from '../rig/find-fault.ts';
import type { Fault, Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { HUM_CAUTION, incidentCautions, TUBE_LOAD } from './cautions.ts';
import { PART_WORDS, partInWords } from './rig.ts';

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
	feedback:
		'What rings, which notch, polarity first: rackside setup SHOW INSTRUMENT --feedback HZ.',
	nothing: 'Nothing more can be tried here. Take the spare and look at it tomorrow.',
	contradiction:
		'These answers do not fit one fault: one of them is wrong, or two parts are at fault.',
	noEarth: 'Never lift the safety earth, never open an amp.',
} as const;

/** `4 Bay`, `cord lead`, `Drive`. */
export function suspectWords(show: Show, { id, name, kind }: Suspect): string {
	if (kind === 'instrument') return shownInstrument(show, id);
	if (kind === 'pedal') return name;
	const words = partInWords({ kind, name });
	return words === PART_WORDS[kind] ? `the ${words}` : words;
}

/** What to do, in about six words. */
export function testWords(show: Show, test: FaultTest, causes: FaultStep['causes']): string {
	const at = causes.find(({ suspect }) => suspect.id === test.at)?.suspect;
	const name = at === undefined ? test.at : suspectWords(show, at);
	switch (test.does) {
		case 'swap':
			return `Swap ${name}${at?.spare === undefined ? '' : ` for ${at.spare}`}${test.clears.length > 1 ? ', pack too' : ''}.`;
		case 'bypass':
			return at === undefined ? 'Take the whole board out.' : `Bypass ${name}.`;
		case 'straight':
			return `One good cord, instrument to ${name}.`;
		case 'listen':
			return `Listen behind ${name}.`;
	}
}

/** What to do, where another instrument than the one that was silent is in hands: tried on that one it would tell nothing. */
export const onInstrument = (words: string, instrument: string): string =>
	`${words.replace(/\.$/, '')} on ${instrument}.`;

/** Why this test: how likely it is to show the fault, and how long it takes. */
export function whyWords(test: FaultTest, { causes }: Pick<FaultStep, 'causes'>): string {
	const chance = causes
		.filter(({ suspect }) => test.clears.includes(suspect.id))
		.reduce((sum, one) => sum + one.chance, 0);
	const says = test.does === 'listen' ? upToThere(1 - chance) : helpsWords(chance);
	return [says, ...foundBeforeWords(test, causes), `${Math.round(test.seconds)} s`].join(', ');
}

/** What this rig's history says of what the test takes out of the way. */
function foundBeforeWords(test: FaultTest, causes: FaultStep['causes']): readonly string[] {
	if (test.does === 'listen') return [];
	const times = causes
		.filter(({ suspect }) => test.clears.includes(suspect.id))
		.reduce((sum, { suspect }) => sum + suspect.timesFound, 0);
	if (times === 0) return [];
	return [
		`found ${test.clears.length > 1 ? 'there ' : ''}${times === 1 ? 'once' : `${times} times`} before`,
	];
}

/** `helps in 3 of 4 cases`. */
export const helpsWords = (chance: number): string =>
	chance > ALMOST_ALL
		? 'almost sure to help'
		: chance < ALMOST_NONE
			? 'hardly ever helps'
			: `helps in ${casesWords(chance)}`;

function upToThere(chance: number): string {
	if (chance > ALMOST_ALL) return 'the fault is almost surely up to there';
	if (chance < ALMOST_NONE) return 'the fault is hardly ever up to there';
	return `the fault is up to there in ${casesWords(chance)}`;
}

const ALMOST_ALL = 0.95;
const ALMOST_NONE = 0.05;

/** Parts that people say without working them out. */
const CASES = [
	[1, 10],
	[1, 5],
	[1, 4],
	[1, 3],
	[2, 5],
	[1, 2],
	[3, 5],
	[2, 3],
	[3, 4],
	[4, 5],
	[9, 10],
] as const;

/** The nearest of them: `3 of 4 cases`. */
function casesWords(chance: number): string {
	const off = ([part, all]: readonly [number, number]) => Math.abs(part / all - chance);
	const [part, all] = CASES.reduce((best, one) => (off(one) < off(best) ? one : best));
	return `${part} of ${all} cases`;
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

/** The cautions of what is heard, with that of a tube amp where the path has an amp; the earth once. */
export function faultCautions(symptom: Symptom, causes: FaultStep['causes']): readonly string[] {
	const amps = causes.flatMap(({ suspect }) => (suspect.kind === 'amp' ? [suspect] : []));
	const hasAmp = amps.length > 0;
	const mayHaveTubes = amps.some(({ isTube }) => isTube !== false);
	const own = incidentCautions(SYMPTOM_WORDS[symptom]);
	return [
		...own.filter((one) => one !== HUM_CAUTION),
		...(hasAmp || own.includes(HUM_CAUTION) ? [FAULT_PAGE.noEarth] : []),
		...(mayHaveTubes ? [TUBE_LOAD] : []),
	];
}

// In the live night.

/** The letter that says what is heard, in the order of the list. */
export const SYMPTOM_KEYS: readonly { readonly key: string; readonly symptom: Symptom }[] = [
	{ key: 's', symptom: 'silent' },
	{ key: 'c', symptom: 'crackle' },
	{ key: 'h', symptom: 'hum' },
	{ key: 't', symptom: 'thin' },
	{ key: 'o', symptom: 'cuts-out' },
	{ key: 'd', symptom: 'distorted' },
	{ key: 'f', symptom: 'feedback' },
	{ key: 'w', symptom: 'wireless' },
];

export const WHOSE_FAULT = 'Find a fault: whose sound?';
export const whatIsHeard = (player: string): string => `${player}: what is heard?`;
export const noSuchSymptom = (key: string): string => `Nothing that is heard has the key ${key}.`;
export const faultHint = (key: string): string => `${key} looks for the fault, best test first.`;

/** What the keys of the panel do. */
export const FAULT_KEYS = {
	right: 'right',
	same: 'same',
	notNow: 'not now',
	thatOne: 'that one',
	leave: 'leave it',
	later: 'later',
	find: 'find the fault',
} as const;
export const handSpare = (slot: string): string => `hand ${slot}`;

/** The panel's first words of each line. */
export const FAULT_LINES = {
	now: 'NOW',
	is: 'IT IS',
	listen: 'HEAR',
	take: 'TAKE',
	or: '  or',
} as const;
export const NOT_ONE_FAULT = 'These answers fit no single fault: one is wrong, or there are two.';
export const NOTHING_LEFT = 'Nothing more to try here.';
export const NO_TEST_OPEN = 'Nothing is being tried. 0 leaves it, esc decides later.';
export const NO_SUCH_CAUSE = 'No cause has that number.';
export const AFTER_SONG = 'Sound is back. The cause is looked for when the song is over.';
export const SOONER = 'sooner than the search';
export const isItRight = (what: string): string => `${what} is on: is it right now?`;
export const FIND_CAUSE = 'FIND THE CAUSE';
export const downNow = (time: string): string => `DOWN ${time}`;
export const causeLogged = (part: string, player: string): string =>
	`${player}: it was ${part}. Logged for tomorrow.`;

/** `NO SOUND  Ash  1 Amber  DOWN 0:04`. */
export function faultTitle(session: Session, fault: Fault, state: string): string {
	const { show } = session;
	const what = fault.instrument === null ? [] : [shownInstrument(show, fault.instrument)];
	return [
		symptomWords(fault.symptom).toUpperCase(),
		...[playerName(show, fault.player), ...what].map((name) =>
			name.length > TITLE_NAME ? fitWidth(name, TITLE_NAME) : name,
		),
		state,
	].join('  ');
}

const TITLE_NAME = 24;

/** What is heard; the record's own word where a newer version wrote it. */
function symptomWords(symptom: string): string {
	const known = SYMPTOMS.find((one) => one === symptom);
	return known === undefined ? symptom : SYMPTOM_WORDS[known];
}

/** The part that was the cause. */
export function causeWords(session: Session, fault: Fault, part: string): string {
	const suspect = faultParts(session, fault).find(({ id }) => id === part);
	return suspect === undefined ? part : suspectWords(session.show, suspect);
}

/** A test that was done, and what came of it: `bypass Drive: the same`. */
function testedWords(
	session: Session,
	fault: Fault,
	{ test, answer }: Pick<Fault['tests'][number], 'test' | 'answer'>,
): string {
	const parts = faultParts(session, fault);
	const known = faultTests(parts).find(({ id }) => id === test);
	const causes = parts.map((suspect) => ({ suspect, chance: suspect.prior }));
	const words = known === undefined ? test : testWords(session.show, known, causes);
	return `${asPart(words)}: ${ANSWERED[answer]}`;
}

const ANSWERED = { sound: 'right', same: 'the same', 'not-now': 'not now' } as const;

/** A sentence to stand behind a colon or before one. */
function asPart(sentence: string): string {
	return `${sentence.slice(0, 1).toLowerCase()}${sentence.slice(1).replace(/\.$/, '')}`;
}

type FaultEntry = Extract<
	Entry,
	{ readonly k: 'fault-sought' | 'fault-tested' | 'fault-found' | 'fault-left' }
>;

/** What an entry of a search says, for the log. */
export function faultEntryWords(entry: FaultEntry, show: Show, session?: Session): string {
	if (entry.k === 'fault-sought') {
		return `${playerName(show, entry.player)}: ${symptomWords(entry.symptom)}, looking for the fault`;
	}
	const fault = session?.faults.find(({ id }) => id === entry.fault);
	const who = fault === undefined ? '' : `${playerName(show, fault.player)}, `;
	switch (entry.k) {
		case 'fault-tested':
			return session && fault
				? `${who}${testedWords(session, fault, entry)}`
				: `${entry.test}: ${ANSWERED[entry.answer]}`;
		case 'fault-found':
			return `${who}cause: ${session && fault ? causeWords(session, fault, entry.part) : entry.part}`;
		case 'fault-left':
			return `${who}fault not found, left as it is`;
	}
}

/** What was tried and found, for the incident's line in the report. */
export function triedWords(session: Session, fault: Fault): readonly string[] {
	const { tests, part, isOpen } = fault;
	const tried = tests
		.filter(({ answer }) => answer !== 'not-now')
		.map((one) => testedWords(session, fault, one));
	const end =
		part !== null
			? `cause: ${causeWords(session, fault, part)}`
			: `${isOpen ? 'cause still looked for' : 'cause not found'}${likeliest(session, fault)}`;
	return [...(tried.length === 0 ? [] : [`tried ${tried.join('; ')}`]), end];
}

/** From this chance on what was not proved is named all the same: common practice, no source. */
const WORTH_NAMING = 0.5;

function likeliest(session: Session, fault: Fault): string {
	const likely = faultNow(session, fault, null).step.causes.find(
		({ chance }) => chance >= WORTH_NAMING,
	);
	if (likely === undefined) return '';
	return `, likeliest ${suspectWords(session.show, likely.suspect)}, ${percent(likely.chance)}`;
}

/** What becomes of the part that was at fault: for tomorrow. */
export function toBench(session: Session, fault: Fault, part: string): string {
	const suspect = faultParts(session, fault).find(({ id }) => id === part);
	const name = suspect === undefined ? part : suspectWords(session.show, suspect);
	const what =
		suspect?.kind === 'cord' ? 'into the bin, a new one into stock' : 'to the bench, repair';
	return `${playerName(session.show, fault.player)}'s rig: ${name} ${what} (${symptomWords(fault.symptom)})`;
}
