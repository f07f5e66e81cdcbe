// Looking at a night, and starting the program again in the middle of it, change nothing of what it
// says later.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from './load-show.ts';
import { playShow } from './play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/first.yaml'));
const STEPS = ['00:00 space', '00:02 f 1 enter', '04:03 d', '04:08 r 1', '05:46 x 2'];

function lastState(between: (clock: string) => string): unknown {
	const script = STEPS.flatMap((step, index) => [
		step,
		...(index === 0 ? [] : [between(`${step.slice(0, 5)}.900`)]),
	]);
	// Three keys of a line take 800 ms.
	return playShow(show, `${script.join('\n')}\n05:54 !state`).states.at(-1);
}

test('a state printed, a screen drawn or a new start in between is no step of the night', () => {
	const untouched = lastState(() => '# nothing');
	for (const act of ['!state', '!screen', '!kill']) {
		expect(
			lastState((clock) => `${clock} ${act}`),
			act,
		).toEqual(untouched);
	}
});

test('while a text is typed too, a state is of its own moment', () => {
	const typing = '-00:30 t 1\n00:00 space\n00:10 m "abc"';
	const state = (look: string) =>
		playShow(show, `${typing}\n${look}\n00:12.500 !state`).states.at(-1);
	expect(state('00:11.900 !screen')).toEqual(state('# nothing'));
});
