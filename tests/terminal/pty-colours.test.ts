// The colours that a user has set, on real terminals of more and less colour.

import { execFileSync } from 'node:child_process';
import { expect, test } from 'vitest';
import type { ColourSet } from '../../src/base/colours.ts';
import { TONES } from '../../src/screen/tones.ts';
import { cleanUpAfterEach, PATIENCE_MS, scratch, startProgram } from './whole-program.ts';

cleanUpAfterEach();

/** The colour in which the screen's TO DO is seen: -1 for the terminal's own. */
async function titleColor(
	colours: ColourSet | null,
	env: Readonly<Record<string, string>>,
	words = '',
): Promise<number> {
	const data = scratch();
	if (colours !== null) {
		const command = ['dist/rackside.js', 'settings', 'looks', colours, '--data', data];
		execFileSync(process.execPath, command);
	}
	const { screen } = startProgram({ data, env, words: `run shows/club.yaml ${words}` });
	const rows = await screen.waitFor(/z dark/, PATIENCE_MS);
	const row = rows.findIndex((one) => one.startsWith('TO DO'));
	return screen.cell(0, row).foreground;
}

const all = { COLORTERM: 'truecolor' };
const titleOf = (colours: ColourSet) => TONES[colours]!.title;
const rgbOf = (colours: ColourSet) => Number.parseInt(titleOf(colours).rgb.slice(1), 16);

test.each([
	['the usual colours', null, all, '', rgbOf('dark')],
	['amber', 'amber', all, '', rgbOf('amber')],
	['grey', 'grey', all, '', rgbOf('grey')],
	['amber of 256 colours', 'amber', {}, '', titleOf('amber').of256],
	// 30 to 37 are the palette's 0 to 7.
	['amber of sixteen', 'amber', { FORCE_COLOR: '1' }, '', titleOf('amber').of16 - 30],
	['none', 'none', all, '', -1],
	['amber where NO_COLOR is set', 'amber', { ...all, NO_COLOR: '1' }, '', -1],
	['amber with --no-color', 'amber', all, '--no-color', -1],
] as const)('%s', async (_, colours, env, words, color) => {
	expect(await titleColor(colours, env, words)).toBe(color);
});
