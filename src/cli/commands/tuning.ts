// `rackside tuning`: from one tuning to another on one instrument, string by string, to the ear too.

import { minutesSeconds } from '../../base/duration.ts';
import type { TuningCard } from '../../plan/tuning-card.ts';
import { shapeOnCard, tuningCard } from '../../plan/tuning-card.ts';
import { textTable } from '../../report/text-table.ts';
import { onlyPlayer } from '../../showfile/instrument-strings.ts';
import { slotAndName } from '../../showfile/shown-names.ts';
import type { ChordShape, HeardPair } from '../../tuning/chord-shape.ts';
import { parseShape } from '../../tuning/chord-shape.ts';
import { KINDS } from '../../tuning/kind.ts';
import { originOf } from '../../tuning/named-tunings.ts';
import { LEAST_STRENGTH_LEFT } from '../../tuning/string-set.ts';
import type { Asked } from '../asked-instrument.ts';
import { askedInstrument, askedNumber, askedTuning, TO_OPTION } from '../asked-instrument.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { inHertz, signed, to4 } from '../figures.ts';
import { tellProblems } from '../tell-problems.ts';

/** The highest fret that a song's part may name too. */
const CAPO_MOST = 12;

export const tuningCommand: CliCommand = {
	usage: 'tuning SHOW INSTRUMENT',
	about: [
		'Says how to bring an instrument to a tuning: targets in Hz with all offsets, steps in the order',
		'that disturbs least, tension on the neck, and what equal temperament does to neighbouring strings.',
		'Ends with 1 when a string has less than 15 % of its strength left.',
	],
	example: 'rackside tuning shows/club.yaml A1 --to "drop D"',
	options: {
		...JSON_OPTION,
		...TO_OPTION,
		from: { value: 'TUNING', words: 'what it is in now; its own tuning in the show unless given' },
		capo: { value: 'FRET', words: 'a capo on this fret, 0 to 12' },
		covers: { value: 'STRINGS', words: 'only these strings under the capo, such as "3 4 5"' },
		reference: { value: 'HZ', words: 'A4, 400 to 480; the show’s unless given' },
		shape: { value: 'FRETS', words: 'a chord shape to the ear too, such as 022100 or x32010' },
	},
	words: { least: 2, most: 2 },
	run: async (request, io) => {
		const asked = await askedInstrument(request, io);
		if (!asked.ok) return tellProblems(asked.problems, io);
		const { show, instrument } = asked.value;
		const to = askedTuning(request, 'to', asked.value);
		const from = askedTuning(request, 'from', asked.value);
		const capo = askedNumber(request, 'capo', {
			from: 0,
			to: CAPO_MOST,
			isWhole: true,
			otherwise: 0,
		});
		const reference = askedNumber(request, 'reference', {
			from: 400,
			to: 480,
			otherwise: show.referenceHertz,
		});
		const shape = askedShape(request);
		const covers = askedStrings(request, instrument.tuning.notes.length);
		const parts = [to, from, capo, reference, shape, covers];
		if (!to.ok || !from.ok || !capo.ok || !reference.ok || !shape.ok || !covers.ok) {
			return tellProblems(
				parts.flatMap((part) => (part.ok ? [] : part.problems)),
				io,
			);
		}
		if (capo.value > 0 && !KINDS[instrument.kind].canTakeCapo) {
			const what = `a ${KINDS[instrument.kind].words} takes no capo`;
			return tellProblems([{ code: 'no-capo', what, hint: 'Leave --capo out.' }], io);
		}
		const card = tuningCard(show, {
			instrument,
			from: from.value,
			to: to.value,
			capo: capo.value,
			player: onlyPlayer(instrument),
			referenceHertz: reference.value,
			...(covers.value ? { covers: covers.value } : {}),
		});
		const chord = shape.value ? shapeOnCard(card, shape.value) : null;
		if (request.options.json) io.write(`${JSON.stringify(cardJson(card, chord))}\n`);
		else
			io.write(
				cardLines(card, chord, slotAndName(show, instrument.id))
					.map((line) => `${line}\n`)
					.join(''),
			);
		return nearBreaking(card).length > 0 ? EXIT.toLookAt : EXIT.fine;
	},
};

function askedShape(request: Request): Asked<ChordShape | null> {
	const text = optionText(request, 'shape');
	if (text === null) return { ok: true, value: null };
	const shape = parseShape(text);
	if (shape) return { ok: true, value: shape };
	const expected = 'one fret a string from the highest-numbered, such as 022100 or x32010';
	const what = '--shape is not a chord shape';
	return { ok: false, problems: [{ code: 'bad-shape', what, found: text, expected }] };
}

function askedStrings(request: Request, most: number): Asked<readonly number[] | null> {
	const text = optionText(request, 'covers');
	if (text === null) return { ok: true, value: null };
	const strings = text
		.trim()
		.split(/[\s,]+/)
		.map(Number);
	if (strings.every((one) => Number.isInteger(one) && one >= 1 && one <= most)) {
		return { ok: true, value: strings };
	}
	const expected = `string numbers from 1 to ${most}, such as "3 4 5"`;
	const what = '--covers names no strings';
	return { ok: false, problems: [{ code: 'bad-strings', what, found: text, expected }] };
}

function nearBreaking({ strings }: TuningCard): readonly number[] {
	return strings
		.filter(({ bearing }) => (bearing?.strengthLeft ?? 1) < LEAST_STRENGTH_LEFT)
		.map(({ string }) => string);
}

/** The fields that others rely on, and more. */
function cardJson(card: TuningCard, chord: readonly HeardPair[] | null) {
	const isPaired = KINDS[card.instrument.kind].stringsPerCourse === 2;
	return {
		instrument: card.instrument.id,
		from: card.from.name,
		to: card.to.name,
		capo: card.capo,
		reference: card.referenceHertz,
		strings: card.strings.map(({ string, note, hertz, move, cents, sounds, bearing }) => ({
			string,
			...(isPaired ? { course: Math.ceil(string / 2) } : {}),
			note,
			hz: to4(hertz),
			move,
			cents,
			sounds,
			tensionN: bearing && to4(bearing.newtons),
		})),
		totalN: card.total && to4(card.total.newtons),
		totalUncertainty: card.total && to4(card.total.uncertainty),
		changeN: card.changeNewtons === null ? null : to4(card.changeNewtons),
		seconds: card.seconds,
		steps: card.retune.steps,
		why: card.retune.why,
		byEar: card.byEar.map(pairJson),
		...(chord === null ? {} : { shape: chord.map(pairJson) }),
		sameSound: card.sameSound,
		nearBreaking: nearBreaking(card),
	};
}

function pairJson({ strings, interval, centsFromPure, beatsHz }: HeardPair) {
	return { strings, interval, centsFromPure: to4(centsFromPure), beatsHz: to4(beatsHz) };
}

function cardLines(
	card: TuningCard,
	chord: readonly HeardPair[] | null,
	name: string,
): readonly string[] {
	const { capo, from, to, total, retune } = card;
	const origin = originOf(card.instrument.kind, to.name);
	const strings = card.strings.map((one) => [
		String(one.string),
		one.note,
		inHertz(one.hertz),
		one.cents === 0 ? '' : `${signed(one.cents, 1)} c in it`,
		one.move === 0 ? '' : `${one.move < 0 ? 'down' : 'up'} ${Math.abs(one.move)}`,
		capo > 0 ? `sounds ${one.sounds}` : '',
		one.bearing ? `${one.bearing.newtons.toFixed(1)} N` : '',
	]);
	const steps = retune.steps.map(({ string, how, to: note, round, from: was }) => {
		const words = how === 'check' ? `check ${note}, up to pitch` : `${how} from ${was} to ${note}`;
		return `  string ${string}: ${words}${round === 2 ? ' (second round)' : ''}`;
	});
	return [
		`${name}: ${from.name === to.name ? to.name : `${from.name} to ${to.name}`}${capo > 0 ? `, capo ${capo}` : ''}, A4 = ${card.referenceHertz} Hz`,
		...(origin === null || origin === 'common practice' ? [] : [`${to.name}: ${origin}`]),
		...(capo > 0 && card.sameSound ? [card.sameSound] : []),
		'',
		...textTable(['string', 'tune to', 'Hz', 'offset', 'move', '', 'tension'], strings),
		'',
		...(steps.length === 0
			? ['Nothing to retune; touch up.']
			: [`Steps, about ${minutesSeconds(card.seconds)}:`, ...steps, retune.why]),
		...(total
			? [
					`On the neck: ${total.newtons.toFixed(0)} N${total.uncertainty > 0 ? ` ± ${(total.uncertainty * 100).toFixed(0)} %` : ''}, ${signed(card.changeNewtons ?? 0, 0)} N from its own tuning.`,
				]
			: ['No tension: give its strings and scale in the show file.']),
		...nearBreaking(card).map(
			(string) => `String ${string} is near breaking. Keep eyes away, or choose another.`,
		),
		'',
		'By ear, open strings:',
		...pairLines(card.byEar),
		...(chord === null ? [] : ['', 'By ear, the shape:', ...pairLines(chord)]),
	];
}

function pairLines(pairs: readonly HeardPair[]): readonly string[] {
	const rows = pairs.map(({ strings, interval, centsFromPure, beatsHz }) => [
		`  ${strings.join(' and ')}`,
		interval,
		Math.abs(centsFromPure) < 0.05
			? 'pure'
			: `${Math.abs(centsFromPure).toFixed(1)} c ${centsFromPure > 0 ? 'wide' : 'narrow'}`,
		`${beatsHz.toFixed(2)} beats a second`,
	]);
	return textTable(['  strings', 'interval', 'from pure', ''], rows);
}
