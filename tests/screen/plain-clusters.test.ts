// Emoji of several code points, drawn as what every terminal takes for equally wide.

import { expect, test } from 'vitest';
import { displayWidth } from '../../src/base/display-width.ts';
import { plainClusters } from '../../src/screen/plain-clusters.ts';

test.each([
	['a family', '👩‍👩‍👧 song', '👩 song'],
	['flags', '🇩🇪🇫🇷', 'DEFR'],
	['a shade of skin', '👍🏽!', '👍!'],
	['a heart in colour', '❤️.', '❤ .'],
	['a keycap', '1️⃣.', '1 .'],
	['one sign', '🎸', '🎸'],
	['letters that are joined', 'क्‍ष', 'क्‍ष'],
	['an accent', 'Cafe\u0301', 'Cafe\u0301'],
])('%s', (_, text, drawn) => {
	expect(plainClusters(text)).toBe(drawn);
	expect(displayWidth(drawn)).toBe(displayWidth(text));
});
