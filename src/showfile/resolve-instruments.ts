// Instruments with every player, pack and tuning followed, and what is played instead of each.

import { stringCount } from '../tuning/kind.ts';
import type { ShapedInstrument } from './instrument-shape.ts';
import type { Linking } from './linking.ts';
import { setUpOf, unitMassOf } from './resolve-bench.ts';
import { resolveInstead } from './resolve-instead.ts';
import { electricsOf, type RigLinks } from './resolve-rig.ts';
import type { ShapedShow } from './shape.ts';
import type { Instrument } from './show.ts';
import { type GivenTimes, workTimesOf, writtenSeconds } from './work-times.ts';

/** The show's instruments in the order of the file; one whose tuning is none is left out, with a problem. */
export function resolveInstruments(shaped: ShapedShow, links: RigLinks): Instrument[] {
	const { linking } = links;
	const given = shaped.instruments ?? [];
	const alone = given.flatMap((instrument, index) =>
		resolveInstrument(instrument, index, { times: shaped.times ?? {}, links }),
	);
	refuseSharedSlots(given, linking);
	refuseSharedGear(given, linking);
	const own = new Map(alone.map((instrument) => [instrument.id, instrument]));
	const instead = new Map(
		given.flatMap((one, index) => {
			const all = resolveInstead(one, ['instruments', index, 'instead'], { own, linking });
			return all === null ? [] : [[one.id, all] as const];
		}),
	);
	return alone.map((instrument) => {
		const all = instead.get(instrument.id);
		return all === undefined ? instrument : { ...instrument, instead: all };
	});
}

function resolveInstrument(
	shaped: ShapedInstrument,
	index: number,
	{ times, links }: { times: NonNullable<ShapedShow['times']>; links: RigLinks },
): Instrument[] {
	const { linking } = links;
	const path = ['instruments', index];
	for (const player of shaped.for ?? []) linking.follow('players', player, [...path, 'for']);
	if (shaped.pack !== undefined) linking.follow('packs', shaped.pack, [...path, 'pack']);
	const strings = shaped.strings ?? [];
	const count = stringCount(shaped.kind);
	if (strings.length > 0 && count !== null && strings.length !== count) {
		linking.complain([...path, 'strings'], {
			code: 'string-count',
			id: shaped.id,
			strings: count,
			gauges: strings.length,
		});
	}
	const tuning = linking.tuning(shaped.tuning, shaped.kind, [...path, 'tuning']);
	if (!tuning) return [];
	const bridge = shaped.bridge ?? 'fixed';
	const byKind: Readonly<Record<string, GivenTimes | undefined>> = times;
	const layers = [shaped.times, byKind[shaped.kind], byKind.all];
	const instrument: Instrument = {
		id: shaped.id,
		name: shaped.name ?? shaped.id,
		slot: shaped.slot ?? null,
		kind: shaped.kind,
		for: shaped.for ?? null,
		tuning,
		scaleMillimetres: shaped.scale ?? null,
		strings,
		bridge,
		features: shaped.features ?? [],
		pack: shaped.pack ?? null,
		case: shaped.case ?? null,
		spare: shaped.spare ?? false,
		strung: { on: shaped.strung?.on ?? null, hours: shaped.strung?.hours ?? null },
		times: workTimesOf(
			shaped.kind,
			bridge,
			layers.filter((layer) => layer !== undefined),
		),
		...(shaped.times === undefined ? {} : { givenTimes: writtenSeconds(shaped.times) }),
		leave: shaped.leave ?? null,
		notes: shaped.notes ?? null,
		pickups: shaped.pickups ?? null,
		...unitMassOf(shaped['unit-mass'], [...path, 'unit-mass'], linking),
		...setUpOf(shaped.setup),
		...(shaped['recheck-after'] === undefined
			? {}
			: { recheckAfterSeconds: shaped['recheck-after'] }),
		...(shaped.gear === undefined ? {} : { gear: shaped.gear }),
		...(shaped.serial === undefined ? {} : { serial: shaped.serial }),
		...(shaped.owner === undefined ? {} : { owner: shaped.owner }),
		...(shaped['hired-from'] === undefined ? {} : { hiredFrom: shaped['hired-from'] }),
		...electricsOf(shaped, path, links),
	};
	return [instrument];
}

function refuseSharedSlots(instruments: readonly ShapedInstrument[], linking: Linking): void {
	const owners = new Map<string, string>();
	for (const [index, { id, slot }] of instruments.entries()) {
		if (slot === undefined) continue;
		const owner = owners.get(slot);
		if (owner === undefined) owners.set(slot, id);
		else {
			linking.complain(['instruments', index, 'slot'], {
				code: 'duplicate-slot',
				key: slot,
				id,
				owner,
			});
		}
	}
}

function refuseSharedGear(instruments: readonly ShapedInstrument[], linking: Linking): void {
	const owners = new Map<string, string>();
	for (const [index, { id, gear }] of instruments.entries()) {
		if (gear === undefined) continue;
		const owner = owners.get(gear);
		if (owner === undefined) owners.set(gear, id);
		else {
			linking.complain(['instruments', index, 'gear'], {
				code: 'duplicate-gear',
				key: gear,
				id,
				owner,
			});
		}
	}
}
