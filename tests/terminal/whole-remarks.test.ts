// Remarks on a night that are typed line by line on a real terminal, and a draft that an editor had left.

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { keepNights } from '../history/three-nights.ts';
import { cleanUpAfterEach, PATIENCE_MS, scratch, startProgram } from './whole-program.ts';

cleanUpAfterEach();

test('what was typed here is kept, and what an editor left to be mended stays', async () => {
	const data = scratch();
	keepNights(data);
	const nights = join(data, 'nights');
	const id = readdirSync(nights).toSorted().at(-1)?.replace('.journal', '') ?? '';
	const draft = join(nights, `${id}.remarks-draft`);
	writeFileSync(draft, '[nigth]\nA long evening.\n', { mode: 0o600 });
	const words = 'report --edit';
	const env = { EDITOR: '', VISUAL: '' };
	const { screen, afterwards } = startProgram({ data, words, columns: 200, env });
	await screen.waitFor('A line on the night', PATIENCE_MS);
	await screen.press('A', 'enter', '\u0004');
	await screen.waitFor('Kept in', PATIENCE_MS);
	expect(await afterwards()).toMatchObject({ code: 0 });
	expect(JSON.parse(readFileSync(join(nights, `${id}.remarks`), 'utf8')).night).toBe('A');
	expect(readFileSync(draft, 'utf8')).toBe('[nigth]\nA long evening.\n');
});
