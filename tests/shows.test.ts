// The example shows: each opens without a problem and is free of risks.

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkShow } from '../src/showfile/check-show.ts';
import { readShow } from '../src/showfile/read-show.ts';
import { runningOrder } from '../src/showfile/running-order.ts';
import type { Show } from '../src/showfile/show.ts';

const FOLDER = new URL('../shows/', import.meta.url);

/** Included by club.yaml, no show by itself. */
const PARTS = ['club-gear.yaml'];

function load(path: string): Uint8Array | null {
	return readdirSync(FOLDER).includes(path) ? readFileSync(new URL(path, FOLDER)) : null;
}

function open(name: string): Show {
	const { show, problems } = readShow(load, name);
	expect(problems).toEqual([]);
	if (!show) throw new Error(`${name} gave neither a show nor a problem`);
	return show;
}

describe('the example shows', () => {
	const names = readdirSync(FOLDER).filter((name) => !PARTS.includes(name));

	it.each(names)('%s opens cleanly and holds no risk', (name) => {
		const findings = checkShow(open(name));
		expect(findings.filter(({ severity }) => severity === 'risk')).toEqual([]);
		// Even the notes stay few enough to be read.
		expect(findings.length).toBeLessThanOrEqual(4);
	});

	it('are the four that the documentation names', () => {
		expect(names).toEqual(['club.yaml', 'festival.yaml', 'first.yaml', 'folk.yaml']);
	});

	it('club is a night of eighteen songs with a segue, an interval and an encore', () => {
		const show = open('club.yaml');
		const order = runningOrder(show);
		expect(order).toHaveLength(18);
		expect(order.slice(0, 3).map(({ song }) => song.title)).toEqual([
			'Harbour',
			'Lantern',
			'Gravel',
		]);
		expect(order.some(({ song }) => song.ends === 'segue')).toBe(true);
		expect(order.some(({ isAfterInterval }) => isAfterInterval)).toBe(true);
		expect(order.some(({ isEncore }) => isEncore)).toBe(true);
		expect(show.boards.bo?.map(({ id }) => id)).toEqual(['drive', 'boost', 'delay']);
	});

	it('folk holds paired strings, a slide, an upright, capos and parts that name no instrument', () => {
		const show = open('folk.yaml');
		const kinds = new Set(show.instruments.map(({ kind }) => kind));
		for (const kind of ['mandolin-8', 'resonator-6', 'acoustic-12', 'upright-4'] as const) {
			expect(kinds).toContain(kind);
		}
		const parts = show.songs.flatMap((song) => Object.values(song.parts));
		expect(parts.some((part) => part.kind === 'needs')).toBe(true);
		expect(parts.some((part) => part.kind === 'named' && part.capo > 0)).toBe(true);
	});

	it('first is short enough to copy', () => {
		expect(open('first.yaml').songs).toHaveLength(5);
	});

	it('festival is eight songs with one technician', () => {
		const show = open('festival.yaml');
		expect(runningOrder(show)).toHaveLength(8);
		expect(show.techs).toHaveLength(1);
		expect(show.players.every(({ tech }) => tech === show.techs[0]?.id)).toBe(true);
	});
});
