// The row of what was last done, where a step did more than it has room for.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const folk = loadShow(join(import.meta.dirname, '../../shows/folk.yaml'));
const lastOf = (script: string): string =>
	playShow(folk, `-01:00 !ready\n00:00 space\n${script}`).screen.match(/^LAST .*/m)?.[0] ?? '';

test('names what the start of a song recorded of hands before that it began', () => {
	const last = lastOf(
		'03:20 d\n03:35 space\n07:40 d\n07:50 t 3\n08:00 t 5\n08:20 space\n08:22 !screen',
	);
	expect(last).toMatch(/Ash has 3 Larch, E standard, capo 2; \+2 more +u undo$/);
});

test('in the order in which it happened where all has room', () => {
	expect(lastOf('03:20 d\n03:35 space !screen')).toMatch(/Under the Hedge began; Bo has 4 Kettle/);
});
