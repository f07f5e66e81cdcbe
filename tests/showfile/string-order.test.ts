// The picture of the order of strings in the README is what the program reads: gauges beside the notes that it
// says they sound.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { showFrom } from './show-files.ts';

const README = readFileSync(new URL('../../README.md', import.meta.url), 'utf8').split('\n');

test.each(['electric-6', 'electric-12'])('%s', (kind) => {
	const at = README.indexOf(`    kind: ${kind}`);
	const rows = README.slice(at + 1, at + 6);
	const written = rows[0]?.trim() ?? '';
	const sounds =
		rows
			.find((line) => line.startsWith('    sounds'))
			?.split(/\s+/)
			.slice(2) ?? [];
	const show = showFrom(`format: rackside/1
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, kind: ${kind}, tuning: E standard, ${written}}
songs: [{id: one, hands: {ash: A1}}]
set: [one]
`);
	const [instrument] = show.instruments;
	expect(sounds).toEqual(instrument!.tuning.notes.toReversed());
	expect(instrument!.strings).toHaveLength(sounds.length);
	// A string an octave up in its course is the thinner of the two.
	for (const [index, make] of instrument!.strings.entries()) {
		const low = instrument!.strings[index + 1];
		if (kind === 'electric-12' && index >= 4 && index % 2 === 0) {
			expect(make.millimetres).toBeLessThan(low!.millimetres);
		}
	}
});
