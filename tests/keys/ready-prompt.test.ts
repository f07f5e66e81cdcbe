// What the ready key offers first: work that is worth doing now.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const offered = (script: string) =>
	[...playShow(show, script).screen.matchAll(/Ready: enter for slot (\w)/g)].map(
		([, slot]) => slot,
	);

test('an hour before the show each press of enter offers the next that wants work', () => {
	const script = '-60:00 t !screen enter t !screen enter t !screen enter t !screen';
	expect(offered(script)).toEqual(['1', '5', '8', '4']);
});

test('once all are ready it is the first again, since each will be stale by then', () => {
	expect(offered('-60:00 t 0\n-59:00 t !screen')).toEqual(['1']);
});

test('so near that it would last, what is ready but will be stale is offered as the list has it', () => {
	const early = '-20:00 t 1\n-10:00 t !screen';
	expect(offered(early)).toEqual(['1']);
});

test('during the show it is the first of the do-next list, however early', () => {
	const { states, screen } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n00:30 !state\n00:31 t !screen',
	);
	const todo = (states[0] as { todo: { instrument: string }[] }).todo;
	const rack = (states[0] as { instruments: Record<string, { slot: string; place: string }> })
		.instruments;
	const first = todo.find(({ instrument }) => rack[instrument]?.place !== 'hands');
	expect(screen).toContain(`Ready: enter for slot ${rack[first?.instrument ?? '']?.slot}`);
});
