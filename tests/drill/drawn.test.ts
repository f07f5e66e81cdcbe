// The walk and the drill as they are drawn: the band above, and nothing hidden that it speaks of.

import { test } from 'vitest';
import { drawMoments } from '../../src/drill/draw-moments.ts';
import { drill } from '../../src/drill/drill.ts';
import { type LedNight, ledNight } from '../../src/drill/led-night.ts';
import { openTrial } from '../../src/drill/trial-night.ts';
import { WALK_BEGINS_MS, walk } from '../../src/drill/walk.ts';
import { keyOfAction } from '../../src/keys/key-choices.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import { expectDrawn } from '../screen/expect-drawn.ts';
import { exampleShow, handClock } from './example-shows.ts';

const SIZES = [
	{ columns: 80, rows: 24 },
	{ columns: 120, rows: 40 },
];

function expectScreens(name: string, led: LedNight): void {
	for (const { columns, rows } of SIZES) {
		const drawn = drawScreen(led.screen(), { columns, rows }, { isAscii: false });
		expectDrawn(`${name}-${columns}x${rows}`, screenText(drawn));
	}
}

test('a string breaks in the first walk', () => {
	const { handMs, pass } = handClock();
	const show = exampleShow('club.yaml');
	const trial = openTrial({ show, handMs }, { records: [], atMs: WALK_BEGINS_MS });
	const led = ledNight(walk(trial), handMs);
	for (const key of ['space', 'enter', 't', '1', 'enter', 'b', '4']) {
		pass(800);
		led.press(key);
	}
	expectScreens('walk-break', led);
	pass(800);
	led.press('enter');
	expectScreens('walk-break-done', led);
});

test('a pack fails in a drill, and is not seen to', () => {
	const { handMs, pass } = handClock();
	const show = exampleShow('festival.yaml');
	const options = { show, handMs };
	const keyOf = (id: string) => keyOfAction(id, {});
	const moments = drawMoments(options, { seed: 2, count: 1, keyOf, kinds: ['pack'] });
	const led = ledNight(drill({ options, moments, bestOf: () => 12.5, onResult: () => {} }), handMs);
	for (const [name, ms] of [
		['drill-looks-on', 1000],
		['drill-asks', 8000],
		['drill-missed', 31_000],
	] as const) {
		pass(ms);
		led.tick();
		expectScreens(name, led);
	}
});
