// What a show file says for the bench: targets of a set-up, offsets from equal temperament, the stage.
// Each is left out of the show where the file is silent.

import { INSTRUMENT_KINDS, type InstrumentKind, stringCount } from '../tuning/kind.ts';
import type { Offsets } from '../tuning/offsets.ts';
import { readTuning } from '../tuning/tuning.ts';
import type { ShapedSetUp } from './instrument-shape.ts';
import type { Linking } from './linking.ts';
import type { ShapedShow } from './shape.ts';
import type { SetUp, Show, UnitMass } from './show.ts';
import type { SourcePath } from './source-node.ts';
import { parseGauge } from './string-measure.ts';

/** The set-up of an instrument, when the file gives one. */
export function setUpOf(shaped: ShapedSetUp | undefined): { readonly setUp?: SetUp } {
	if (shaped === undefined) return {};
	const { action, 'action-first': actionFirst, relief, pickup, nut } = shaped;
	const screw = shaped['saddle-screw'];
	return {
		setUp: {
			...(actionFirst === undefined ? {} : { actionFirst }),
			...(action === undefined ? {} : { actionLast: action }),
			...(relief === undefined ? {} : { relief }),
			...(pickup === undefined ? {} : { pickup }),
			...(nut === undefined ? {} : { nut }),
			...(screw === undefined ? {} : { saddleScrew: screw }),
		},
	};
}

/** What strings weigh by their gauges, when the file says. */
export function unitMassOf(
	shaped: UnitMass | undefined,
	path: SourcePath,
	linking: Linking,
): { readonly unitMass?: UnitMass } {
	if (shaped === undefined) return {};
	for (const label of Object.keys(shaped)) {
		if (parseGauge(label)) continue;
		linking.complainOfKey([...path, label], { code: 'mass-key', key: label });
	}
	return { unitMass: shaped };
}

/** The stage, when the file says anything of it. */
export function stageOf(shaped: ShapedShow['stage']): Pick<Show, 'stage'> {
	if (shaped === undefined) return {};
	const { temperature = null, soundcheck = null, humidity = null } = shaped;
	return { stage: { temperature, soundcheck, humidity } };
}

/** What following the ids of offsets needs. */
type Following = {
	readonly linking: Linking;
	readonly kinds: ReadonlyMap<string, InstrumentKind>;
};

/** The offsets, their ids followed and their tunings under canonical names. */
export function offsetsOf(
	shaped: ShapedShow['offsets'],
	following: Following,
): Pick<Show, 'offsets'> {
	if (shaped === undefined) return {};
	return { offsets: shaped.map((one, index) => oneOffset(one, index, following)) };
}

function oneOffset(
	shaped: NonNullable<ShapedShow['offsets']>[number],
	index: number,
	{ linking, kinds }: Following,
): Offsets {
	const path = ['offsets', index];
	const { player, instrument, tuning, cents } = shaped;
	if (player !== undefined) linking.follow('players', player, [...path, 'player']);
	if (instrument !== undefined) linking.follow('instruments', instrument, [...path, 'instrument']);
	const kind = kinds.get(instrument ?? '');
	const most = (kind && stringCount(kind)) ?? MOST_STRINGS;
	for (const string of Object.keys(cents)) {
		if (/^[1-9]\d?$/.test(string) && Number(string) <= most) continue;
		linking.complainOfKey([...path, 'cents', string], {
			code: 'unknown-string',
			key: string,
			most,
		});
	}
	return {
		...(player === undefined ? {} : { player }),
		...(instrument === undefined ? {} : { instrument }),
		...(tuning === undefined ? {} : { tuning: canonical(tuning, kind, { linking, path }) }),
		cents,
	};
}

const MOST_STRINGS = 24;

/** The tuning's own name on the kind, or on the first kind that knows it. */
function canonical(
	text: string,
	kind: InstrumentKind | undefined,
	{ linking, path }: { readonly linking: Linking; readonly path: SourcePath },
): string {
	if (kind !== undefined) return linking.tuning(text, kind, [...path, 'tuning'])?.name ?? text;
	for (const one of INSTRUMENT_KINDS) {
		const reading = readTuning(text, one, linking.abbreviations);
		if (reading.ok) return reading.tuning.name;
	}
	linking.complain([...path, 'tuning'], { code: 'unknown-tuning', text, short: null });
	return text;
}
