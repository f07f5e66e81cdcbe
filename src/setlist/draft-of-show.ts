// A show that was read, as the draft of a file that says the same: the way back from what the program knows of a
// show to what a person writes. What only says again what is so anyway is left out.

import { playerKeys } from '../showfile/player-keys.ts';
import type {
	Cue,
	Instrument,
	Part,
	PedalState,
	PedalStates,
	Player,
	SetUp,
	Show,
	Song,
	StringGauge,
} from '../showfile/show.ts';
import { parseGauge, parseScale } from '../showfile/string-measure.ts';
import { shapeWords } from '../tuning/chord-shape.ts';
import { given, type Keys, mapValues, someKeys } from './given-keys.ts';
import {
	boardPedalKeys,
	outputKeys,
	packKeys,
	partOfRigKeys,
	powerKeys,
	supplyKeys,
} from './rig-keys.ts';
import type {
	DraftCell,
	DraftInstrument,
	DraftPlayer,
	DraftSong,
	ShowDraft,
} from './show-draft.ts';

const REFERENCE = 440;
const RECHECK_AFTER = 15 * 60;
const RECHECK_NEW = 5 * 60;
const DAY_MINUTES = 1440;
const INCH_MILLIMETRES = 25.4;

/** The draft; reading what is written of it gives the same show. */
export function draftOfShow(show: Show): ShowDraft {
	return {
		title: show.title,
		venue: show.venue,
		date: show.date,
		start: dayTime(show.startMinutes),
		curfew: dayTime(show.curfewMinutes),
		players: playersOf(show),
		instruments: show.instruments.map(instrumentOf),
		songs: show.songs.map(songOf),
		set: show.set,
		remarks: [],
		furtherShow: given({
			reference: unless(REFERENCE, show.referenceHertz),
			'recheck-after': seconds(unless(RECHECK_AFTER, show.staleAfterSeconds)),
			'recheck-new': seconds(unless(RECHECK_NEW, show.staleNewSeconds)),
			notes: show.notes,
		}),
		further: given({
			techs: some(show.techs),
			boards: someKeys(mapValues(show.boards, (pedals) => pedals.map(boardPedalKeys))),
			rigs: show.rigs && mapValues(show.rigs, (parts) => parts.map(partOfRigKeys)),
			supplies: show.supplies?.map(supplyKeys),
			packs: some(show.packs.map(packKeys)),
			times: someKeys(mapValues(show.times, secondsOfEach)),
			stock: some(show.stock),
			gauges: show.gauges,
			'unit-mass': show.unitMass,
			offsets: show.offsets,
			stage: show.stage && given(show.stage),
			abbreviations: someKeys(show.abbreviations),
		}),
	};
}

const unless = <Value>(usual: Value, value: Value): Value | undefined =>
	value === usual ? undefined : value;
const some = <Item>(list: readonly Item[]): readonly Item[] | undefined =>
	list.length === 0 ? undefined : list;
const seconds = (value: number | null | undefined): string | undefined =>
	value === null || value === undefined ? undefined : `${value}s`;

const secondsOfEach = (times: Readonly<Record<string, number>>): Keys => mapValues(times, seconds);

function dayTime(minutes: number | null): string | null {
	if (minutes === null) return null;
	const ofDay = minutes % DAY_MINUTES;
	const two = (part: number) => String(part).padStart(2, '0');
	return `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
}

/** A letter of their own is written only where the file would give another. */
function playersOf({ players, instruments }: Show): readonly DraftPlayer[] {
	const slots = new Set(instruments.flatMap(({ slot }) => slot ?? []));
	const usual = playerKeys(
		players.map(({ name }) => ({ name, key: undefined })),
		slots,
	);
	const isUsual = players.every(({ key }, index) => key === usual[index]);
	return players.map(({ id, name, plays, tech, key }: Player) => ({
		...{ id, name, plays },
		further: given({ tech, key: isUsual ? null : key }),
	}));
}

function instrumentOf(one: Instrument): DraftInstrument {
	const { on, hours } = one.strung;
	return {
		id: one.id,
		name: one.name,
		slot: one.slot,
		kind: one.kind,
		for: one.for,
		tuning: one.tuning.name,
		further: given({
			scale: one.scaleMillimetres === null ? null : scaleText(one.scaleMillimetres),
			strings: some(one.strings.map(gaugeText)),
			bridge: unless('fixed', one.bridge),
			features: some(one.features),
			pickups: one.pickups,
			pack: one.pack,
			case: one.case,
			spare: unless(false, one.spare),
			instead: one.instead?.map(({ instrument, tuning, capo }) =>
				tuning === null ? instrument : { instrument, tuning: tuning.name, ...capoKey(capo) },
			),
			gear: one.gear,
			'recheck-after': seconds(one.recheckAfterSeconds),
			strung: someKeys(given({ on, hours })),
			times: one.givenTimes && secondsOfEach(one.givenTimes),
			leave: one.leave,
			notes: one.notes,
			'unit-mass': one.unitMass,
			output: one.output && outputKeys(one.output),
			power: one.power && powerKeys(one.power),
			setup: one.setUp && setUpKeys(one.setUp),
		}),
	};
}

const capoKey = (capo: number): Keys => (capo === 0 ? {} : { capo });

/** In inches where it is a plain figure of them, as most are labelled. */
function scaleText(millimetres: number): string {
	const inches = `${Number((millimetres / INCH_MILLIMETRES).toFixed(3))} in`;
	return parseScale(inches) === millimetres ? inches : `${millimetres} mm`;
}

/** In thousandths of an inch where it is a plain figure of them, else in millimetres. */
function gaugeText({ millimetres, isWound }: StringGauge): string | number {
	const size = Number(((millimetres / INCH_MILLIMETRES) * 1000).toFixed(1));
	const isThousandths = parseGauge(`${size}`)?.millimetres === millimetres;
	if (isThousandths) return isWound ? `${size}w` : size;
	return `${millimetres} mm${isWound ? ' w' : ''}`;
}

function setUpKeys({ actionFirst, actionLast, relief, pickup, nut, saddleScrew }: SetUp): Keys {
	return given({
		...{ action: actionLast, 'action-first': actionFirst, relief, pickup, nut },
		'saddle-screw': saddleScrew,
	});
}

function songOf(song: Song): DraftSong {
	return {
		id: song.id,
		title: song.title,
		seconds: song.lengthSeconds,
		tempo: song.tempo,
		starts: song.starts,
		ends: unless('stop', song.ends) ?? null,
		notes: song.notes,
		hands: mapParts(song.parts, cellOf),
		further: given({
			shapes: song.shapes && mapValues(song.shapes, (shapes) => shapes.map(shapeWords)),
			board: someKeys(mapValues(song.board, boardKeys)),
			cues: some(song.cues.map(cueKeys)),
			count: song.count,
		}),
	};
}

function mapParts<Value>(
	parts: Readonly<Record<string, Part>>,
	map: (part: Part) => Value,
): Readonly<Record<string, Value>> {
	return Object.fromEntries(Object.entries(parts).map(([player, part]) => [player, map(part)]));
}

/** What a song's part says, as a cell of the draft. */
function cellOf(part: Part): DraftCell {
	if (part.kind === 'none') return { kind: 'none' };
	const further = given({ leave: part.leave, pack: part.pack });
	if (part.kind === 'named') {
		const { instrument, tuning, capo } = part;
		return { kind: 'named', instrument, tuning: tuning?.name ?? null, capo, further };
	}
	return {
		...{ kind: 'needs', instrumentKind: part.instrumentKind, sounds: part.sounds.name },
		...{ features: part.features, prefer: part.prefer, further },
	};
}

function partKeys(part: Part): unknown {
	if (part.kind === 'none') return 'none';
	const { leave, pack } = part;
	if (part.kind === 'needs') {
		const { instrumentKind: kind, sounds, features, prefer } = part;
		const needs = given({ kind, sounds: sounds.name, features: some(features), prefer });
		return { needs, ...given({ leave, pack }) };
	}
	const { instrument, tuning, capo } = part;
	const more = given({ tuning: tuning?.name, ...capoKey(capo), leave, pack });
	return Object.keys(more).length === 0 ? instrument : { instrument, ...more };
}

function cueKeys({ at, nearSeconds, say, hand, boards }: Cue): Keys {
	return given({
		...{ at, near: seconds(nearSeconds), say, hand: someKeys(mapParts(hand, partKeys)) },
		...mapValues(boards, boardKeys),
	});
}

function boardKeys(board: PedalStates): unknown {
	return Object.keys(board).length === 0 ? 'off' : mapValues(board, pedalKeys);
}

function pedalKeys({ on, settings }: PedalState): unknown {
	return settings ?? (on ? 'on' : 'off');
}
