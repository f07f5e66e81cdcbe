// A night of sixteen songs, fourteen instruments and four players, made up and full of trouble: at each of thirty
// moments the screen at 80 by 24 says who holds what and which instrument each player has next, as the state does.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const folder = join(import.meta.dirname, '../rehearsals');
const show = loadShow(join(folder, 'theatre.yaml'));
const script = readFileSync(join(folder, 'theatre.txt'), 'utf8');
const MOMENTS = 30;
const ROWS = 24;

const { states, screen } = playShow(show, script);
const rows = screen.split('\n');
const moments = Array.from({ length: MOMENTS }, (_, at) => ({
	at: at + 1,
	state: states[at]!,
	rows: rows.slice(at * ROWS, (at + 1) * ROWS),
}));

const instrument = (id: string) => {
	const found = show.instruments.find((one) => one.id === id)!;
	return { slot: found.slot!.toUpperCase(), name: found.name };
};
const nameOf = (player: string) => show.players.find(({ id }) => id === player)!.name;

test('the night has its moments, each with a whole screen', () => {
	expect(rows).toHaveLength(MOMENTS * ROWS);
	for (const { state } of moments) expect(Object.keys(state.players)).toHaveLength(4);
});

test.each(moments)(
	'moment $at: who holds what, and what each gets next',
	({ state, rows: drawn }) => {
		const text = drawn.join('\n');
		for (const [player, { holds, next, stays }] of Object.entries(state.players) as [
			string,
			{
				holds: string | null;
				next: { instrument: string | null } | null;
				stays: { instrument: string } | null;
			},
		][]) {
			// Under its slot the peg names the player.
			if (holds !== null) {
				const { slot } = instrument(holds);
				expect(text).toMatch(new RegExp(`(^| )${slot} [ x=~] ?${nameOf(player)}`, 'm'));
			}
			const isAsked = state.incidents.some(
				(one: { player: string; standIn: string | null; silence: number | null }) =>
					one.player === player && one.standIn === null && one.silence === null,
			);
			const coming = stays?.instrument ?? next?.instrument ?? null;
			if (coming === null || isAsked) continue;
			const { slot, name } = instrument(coming);
			expect(text).toMatch(new RegExp(`(^| )${slot} ${name}`, 'm'));
		}
	},
);
