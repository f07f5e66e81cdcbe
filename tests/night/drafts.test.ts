// What is typed and not yet entered outlasts the program, whether the field was left or still open when
// it was killed; what was entered does not come up again.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const memoAfter = (script: string) =>
	/Memo, then enter +(.*)_/.exec(playShow(show, `00:00 space\n${script} m !screen`).screen)?.[1];

test('a field left with esc', () => {
	expect(memoAfter('00:05 m "strap lock" esc\n00:10 !kill\n00:11')).toBe('strap lock');
});

test('a field open when the program was killed, but for its last second', () => {
	expect(memoAfter('00:05 m "strap lock"\n00:15 !state\n00:20 !kill\n00:21')).toBe('strap lock');
});

test('one that was entered is empty, however soon after that came', () => {
	expect(memoAfter('00:05 m "strap"\n00:15 " lock" enter\n00:18 !kill\n00:21')).toBe('');
});
