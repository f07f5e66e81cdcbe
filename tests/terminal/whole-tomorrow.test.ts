// What is to be done before the next show, on a real terminal: ticked off with keys, and ticked off still after a kill.

import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { keepNights } from '../history/three-nights.ts';
import {
	cleanUpAfterEach,
	MODES_OFF,
	PATIENCE_MS,
	scratch,
	startProgram,
	until,
} from './whole-program.ts';

cleanUpAfterEach();

function startPage(data: string) {
	return startProgram({ words: 'tomorrow', data });
}

test('space ticks a line off, kill -9 takes nothing back, and esc leaves all as it was', async () => {
	const data = scratch();
	keepNights(data);
	const first = startPage(data);
	await first.screen.waitFor(/Restring *\n> \[ \] 1 Amber: new set 10 13 17/, PATIENCE_MS);
	await first.screen.press('space');
	await first.screen.waitFor('> [x] 1 Amber', PATIENCE_MS);
	await first.screen.press('down');
	await first.screen.waitFor(/> \[ \] \d x 10/, PATIENCE_MS);
	await first.screen.press('space');
	await first.screen.waitFor(/> \[x\] \d x 10/, PATIENCE_MS);
	first.signal('SIGKILL');
	await first.gone();
	await until(
		() => readdirSync(join(data, 'nights')).some((name) => name.endsWith('.ticks')),
		'the file of ticks',
	);
	const second = startPage(data);
	await second.screen.waitFor(/> \[x\] 1 Amber[\s\S]*\[x\] \d x 10/, PATIENCE_MS);
	expect(second.screen.text()).toContain('2 of ');
	await second.screen.press('space');
	await second.screen.waitFor('> [ ] 1 Amber', PATIENCE_MS);
	await second.screen.press('esc');
	expect(await second.afterwards()).toEqual({ code: 0, areSettingsKept: true });
	expect(second.screen.modes()).toEqual(MODES_OFF);
});
