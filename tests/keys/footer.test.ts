// The footer offers the keys that act now, and no other.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ACTIONS } from '../../src/keys/actions.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const club = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

const lastRow = (screen: string) => screen.trimEnd().split('\n').at(-1);

test('locked, only what unlocks is offered', () => {
	const { screen } = playShow(club, '00:00 space\n00:10 l\n00:12 !screen\n');
	expect(lastRow(screen)).toBe('l then  esc within 2 s unlocks');
	const unlocked = playShow(club, '00:00 space\n00:10 l\n00:12 l esc\n00:14 !screen\n').screen;
	expect(lastRow(unlocked)).toContain('PgDn/space Ch1');
});

test('after the last song the way to end the show is offered, and not before', () => {
	const rest = { ...club, set: club.set.slice(0, 1) };
	const { screen } = playShow(rest, '00:00 space\n04:00 d\n04:05 !screen\n');
	expect(lastRow(screen)).toContain('q close the show');
	const during = playShow(rest, '00:00 space\n00:05 !screen\n').screen;
	expect(lastRow(during)).not.toContain('q ');
});

test('in the list view its own keys come first, in the help after those of the show', () => {
	const { screen } = playShow(club, '00:00 space\n00:05 tab\n00:06 tab\n00:07 !screen\n');
	expect(lastRow(screen)).toMatch(/^PgDn\/space Ch1 {2}enter open {2}g move/);
	const ids = ACTIONS.map(({ id }) => id);
	expect(ids.indexOf('move-song')).toBeGreaterThan(ids.indexOf('leave'));
});

test('however many answers a question has, the key that leaves it is among those shown', () => {
	const { screen } = playShow(club, '00:00 space\n00:05 f 2 !screen\n');
	expect(screen).toMatch(/\n.* {2}esc( cancel)?\s*$/);
});

test('a memo half written says that esc keeps it, and m goes on with it', () => {
	const { screen } = playShow(
		club,
		'00:00 space\n00:05 m "ha" !screen\n00:10 esc\n00:20 m !screen\n',
	);
	expect(screen).toContain('esc keep it for later');
	expect(screen.split('Memo, then enter').at(-1)).toMatch(/^ {2}ha_/);
});
