// The page of an instrument between two tunings as data and in lines: targets, steps, tension, what the ear
// will say of open strings and of the chord shapes that matter.

import { minutesSeconds } from '../base/duration.ts';
import { textTable } from '../base/text-table.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { type HeardPair, shapeWords } from '../tuning/chord-shape.ts';
import { fromPureWords } from '../tuning/interval.ts';
import { KINDS } from '../tuning/kind.ts';
import { originOf } from '../tuning/named-tunings.ts';
import { pureChainCents } from '../tuning/pure-chain.ts';
import { LEAST_STRENGTH_LEFT } from '../tuning/string-set.ts';
import { retuneWhyWords, sameSoundWords } from '../words/bench-advice.ts';
import { breaksOrNear, TUNING } from '../words/bench-pages.ts';
import { STRING_CAUTION } from '../words/cautions.ts';
import { moveWords } from '../words/instrument-page.ts';
import { stringLabel } from '../words/string-labels.ts';
import { inHertz, signed, to4 } from './figures.ts';
import type { SongShape } from './song-shapes.ts';
import { breaking, capoOtherwise, isTunedFarUp, type TuningCard } from './tuning-card.ts';

export type TuningPage = {
	readonly show: Show;
	readonly card: TuningCard;
	/** A shape that was asked for, to the ear. */
	readonly chord: readonly HeardPair[] | null;
	/** Shapes of the show's songs that have it in this tuning. */
	readonly songShapes: readonly SongShape[];
};

/** Numbers of the strings with too little of their strength left. */
export function nearBreaking({ strings }: TuningCard): readonly number[] {
	return strings
		.filter(({ bearing }) => (bearing?.strengthLeft ?? 1) < LEAST_STRENGTH_LEFT)
		.map(({ string }) => string);
}

/** The fields that others rely on, and more. */
export function tuningPageJson({ card, chord, songShapes }: TuningPage) {
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
		steps: card.steps,
		why: retuneWhyWords(card.steps),
		byEar: card.byEar.map(pairJson),
		pureChain: pureChainCents(card.strings).map(to4),
		...(chord === null ? {} : { shape: chord.map(pairJson) }),
		songShapes: songShapes.map(songShapeJson),
		sameSound: sameSoundWords(capoOtherwise(card)),
		nearBreaking: nearBreaking(card),
	};
}

function songShapeJson({ song, player, capo, shape, name, pairs }: SongShape) {
	const said = { song: song.id, player, capo, shape: shapeWords(shape), name };
	return { ...said, byEar: pairs.map(pairJson) };
}

function pairJson({ strings, interval, centsFromPure, beatsHz }: HeardPair) {
	return { strings, interval, centsFromPure: to4(centsFromPure), beatsHz: to4(beatsHz) };
}

/** The page as it is printed. */
export function tuningPageLines({ show, card, chord, songShapes }: TuningPage): readonly string[] {
	const name = shownInstrument(show, card.instrument.id);
	const { capo, from, to, total } = card;
	const origin = originOf(card.instrument.kind, to.name);
	const isPaired = KINDS[card.instrument.kind].stringsPerCourse === 2;
	const called = (string: number) => stringLabel(strungOf(card), string);
	const strings = card.strings.map((one) => [
		called(one.string),
		one.note,
		inHertz(one.hertz),
		one.cents === 0 ? '' : TUNING.included(signed(one.cents, 1)),
		moveWords(one.move),
		capo > 0 ? TUNING.sounds(one.sounds) : '',
		one.bearing ? TUNING.newtons(one.bearing.newtons) : '',
	]);
	const isBreaking = breaking(card.strings).length > 0;
	const near = card.strings
		.filter(({ string }) => nearBreaking(card).includes(string))
		.map(({ string, bearing }) => breaksOrNear(string, bearing?.strengthLeft ?? null));
	const steps = card.steps.map(({ string, how, to: note, round, from: was }) => {
		const words = how === 'check' ? TUNING.check(note) : TUNING.step(how, was, note);
		const which = isPaired ? TUNING.course(called(string)) : TUNING.string(called(string));
		return TUNING.stepLine(which, words, round === 2);
	});
	return [
		`${TUNING.head(name, from.name, to.name)}${TUNING.capo(capo)}${TUNING.reference(card.referenceHertz)}`,
		...near,
		...TUNING.origin(to.name, origin),
		...(capo > 0 ? [sameSoundWords(capoOtherwise(card)) ?? []].flat() : []),
		'',
		...textTable(isPaired ? TUNING.pairedColumns : TUNING.columns, strings),
		'',
		...(isBreaking
			? []
			: steps.length === 0
				? [TUNING.none(minutesSeconds(card.seconds))]
				: [
						TUNING.steps(minutesSeconds(card.seconds)),
						...steps,
						retuneWhyWords(card.steps),
						...(isTunedFarUp(card) ? [STRING_CAUTION] : []),
					]),
		...(total
			? [TUNING.onNeck(total.newtons, total.uncertainty, signed(card.changeNewtons ?? 0, 0))]
			: [TUNING.noTension]),
		'',
		TUNING.openStrings,
		...pairLines(card.byEar),
		...pureChainLines(card),
		...(chord === null ? [] : ['', TUNING.shape, ...pairLines(chord)]),
		...songShapes.flatMap((one) => ['', songShapeHeading(show, one), ...pairLines(one.pairs)]),
	];
}

/** Its strings as they are to be tuned. */
function strungOf({ instrument: { kind }, strings }: TuningCard) {
	return { kind, notes: strings.map(({ note }) => note) };
}

/** A chain that misses by less than this does no harm: about the edge of hearing (one account). */
const CHAIN_MISSES = 2;

/** Why strings are not tuned one from the next: the one that such a chain would leave furthest out. */
function pureChainLines({ strings }: TuningCard): readonly string[] {
	const cents = pureChainCents(strings);
	const worst = cents.reduce(
		(one, value, index) => (Math.abs(value) > Math.abs(cents[one] ?? 0) ? index : one),
		0,
	);
	const off = cents[worst] ?? 0;
	if (Math.abs(off) < CHAIN_MISSES) return [];
	return [TUNING.pureChain(strings.length - worst, off)];
}

function songShapeHeading(show: Show, { song, player, capo, shape, name }: SongShape): string {
	const said = `${shapeWords(shape)}${name === null ? '' : ` (${name})`}`;
	return TUNING.songShape(said, { capo, player: playerName(show, player), song: song.title });
}

function pairLines(pairs: readonly HeardPair[]): readonly string[] {
	const rows = pairs.map((pair) => [
		TUNING.pair(pair.strings),
		pair.interval,
		fromPureWords(pair),
		TUNING.beats(pair.beatsHz),
	]);
	return textTable(TUNING.pairColumns, rows);
}
