// The line of a player who has no card: what has to be done to the instrument is never what is left out of it.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';

// Four change at once, so that the fourth has a line at 80x24; a long tuning and a capo to be put on.
const PLAYERS = ['ash', 'bo', 'cleo', 'nell'];
const show = showFrom(`
players: [${PLAYERS.map((id) => `{id: ${id}, name: ${id[0]?.toUpperCase()}${id.slice(1)}}`).join(', ')}]
instruments:
${PLAYERS.map(
	(
		id,
		at,
	) => `  - {id: ${id}1, name: Amber, slot: "${at + 1}", kind: electric-6, for: [${id}], tuning: E standard}
  - {id: ${id}2, name: Campion, slot: "${at + 5}", kind: electric-6, for: [${id}], tuning: ${at < 3 ? 'E standard' : 'DADGAD'}}`,
).join('\n')}
songs:
  - {id: one, title: One, length: "3:00", hands: {${PLAYERS.map((id) => `${id}: {instrument: ${id}1}`).join(', ')}}}
  - {id: two, title: Two, length: "3:00", hands: {${PLAYERS.map((id) => `${id}: {instrument: ${id}2${id === 'nell' ? ', capo: 2' : ''}}`).join(', ')}}}
set: [one, {song: two, gap: 60s}]
`);

test('the capo to be put on stands there before where the other one goes', () => {
	const { screen } = playShow(show, '-01:00 t 0\n00:00 space\n01:00 !screen\n');
	const [line] = screen.match(/^NELL.*/m) ?? [];
	expect(line).toMatch(/8 Campion, DADGAD, .*TOUCH UP, CAPO ON 2/);
	expect(line).toContain('off: 4');
	expect(line).not.toContain('…');
});

test('what was to come off already is had, not kept', () => {
	// The break of Ash's string is on the card; Nell has not been given what the song that is on wants.
	const { screen } = playShow(
		show,
		'-01:00 t 0\n-00:30 enter enter\n00:00 space\n01:00 right\n01:10 b 1\n01:12 !screen\n',
	);
	expect(screen).toMatch(/^ASH +DOWN/m);
	expect(screen).toMatch(/^NELL .*has 4 Amber, +0:1\d late 8 Campion/m);
	expect(screen).not.toMatch(/keeps .* late /);
});

test('after the last song nobody keeps what is in hands', () => {
	const { screen } = playShow(
		show,
		'-01:00 t 0\n-00:30 enter enter\n00:00 space\n03:00 d\n04:00 space\n07:00 d !screen\n',
	);
	expect(screen).toMatch(/^ASH +has 5 Campion/m);
	expect(screen).not.toContain('keeps');
});
