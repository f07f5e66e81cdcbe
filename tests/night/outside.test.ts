// What comes from outside, and what the outside is told: commands in, whole states out.

import { expect, test } from 'vitest';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import type { EffectsPort, Outside } from '../../src/night/effects-port.ts';
import { openNight } from '../../src/night/night.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { showFrom } from '../plan/show-from.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash], pack: P1}
  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard, for: [bo]}
boards:
  bo: [{id: drive, name: Drive}, {id: boost, name: Boost}]
packs: [{id: P1}]
songs:
  - id: one
    title: One
    hands: {ash: {instrument: A}, bo: {instrument: B}}
    cues: [{at: solo, bo: {drive: on, boost: on}}]
  - {id: two, title: Two}
set: [one, two]
`);

function opened(journal = memoryJournal(sampleHeader())) {
	let upMs = 0;
	const told: (Outside & { since: string | null })[] = [];
	const effects: EffectsPort = {
		become: (outside, since) => told.push({ ...outside, since }),
	};
	const night = openNight({
		show,
		journal,
		clock: { wallMs: () => 1_000_000 + upMs, upMs: () => upMs, bootId: 'boot' },
		plannedZeroMs: 1_000_000,
		dayOffsetMinutes: 0,
		isRehearsal: true,
		effects,
	});
	const press = (...keys: readonly string[]) => {
		for (const key of keys) {
			upMs += 1000;
			night.press(key);
		}
	};
	return { night, press, told, journal };
}

test('a foot switch steps as space does, with the hand-overs of what it reaches', () => {
	const { night } = opened();
	const done = night.submit({ do: 'step' }, 'foot switch');
	expect(done).toEqual({ ok: true, record: expect.any(String) });
	expect(night.session().players).toMatchObject({ ash: { holds: 'A' }, bo: { holds: 'B' } });
	expect(
		night
			.records()
			.at(-1)
			?.e.map(({ k }) => k),
	).toContain('song-began');
});

test('what cannot be done is said to whoever asked, and on the screen as of them', () => {
	const { night } = opened();
	const refused = night.submit({ do: 'step-back' }, 'foot switch');
	expect(refused).toMatchObject({ ok: false, why: expect.stringMatching(/./) });
	expect(night.screen().message).toMatch(/^foot switch: /);
	expect(night.records().map(({ e }) => e[0]?.k)).toEqual(['night-opened']);
});

test('the outside is told the whole state after each step, the same for the same state', () => {
	const { press, told } = opened();
	expect(told).toEqual([]);
	press('space', 'space');
	expect(told.at(-1)).toMatchObject({
		song: { id: 'one', cue: 1 },
		boards: { bo: { drive: { on: true }, boost: { on: true } } },
		packs: { ash: 'P1', bo: null },
	});
	const after = told.at(-1);
	press('backspace');
	expect(told.at(-1)?.boards).toEqual({ bo: { drive: { on: false }, boost: { on: false } } });
	press('space');
	expect({ ...told.at(-1), since: null }).toEqual({ ...after, since: null });
});

test('a pedal that does not switch is left out', () => {
	const { press, told } = opened();
	press('space', 'f', '0', '1');
	expect(told.at(-1)?.boards).toEqual({ bo: { boost: { on: false } } });
});

test('an undo tells the whole state, a resume nothing by itself, and all when it is asked to', () => {
	const { night, press, told, journal } = opened();
	press('space', 'space');
	press('u');
	expect(told.at(-1)).toMatchObject({
		song: { id: 'one', cue: 0 },
		boards: { bo: { drive: { on: false } } },
	});
	press('y');
	expect(told.at(-1)).toMatchObject({ song: { id: 'one', cue: 1 } });
	night.sendAgain();
	expect(told.at(-1)).toMatchObject({ song: { id: 'one', cue: 1 }, since: null });
	const again = opened(journal);
	expect(again.told).toEqual([]);
	again.night.sendAgain();
	expect(again.told).toHaveLength(1);
});
