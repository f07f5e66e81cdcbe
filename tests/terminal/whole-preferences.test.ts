// A preference that is changed by a key while the disk hangs: keys go on, and it is said that the change waits, and
// on leaving that it is lost.

import { expect, test } from 'vitest';
import { whyNoInjection } from '../campaigns/injected-faults.ts';
import { cleanUpAfterEach, PATIENCE_MS, startLive } from './whole-program.ts';

cleanUpAfterEach();

const why = whyNoInjection();

/** Far longer than a key needs to reach the screen on a busy machine. */
const HANGS_SECONDS = 10;
const KEY_MS = 5000;

test.skipIf(why !== null)(
	`a disk that hangs holds no key up${why ? ` (left out: ${why})` : ''}`,
	async () => {
		const inject = `-e trace=fsync,fdatasync -e inject=fsync,fdatasync:delay_enter=${HANGS_SECONDS}s`;
		const line = `strace -f -qq -o /dev/null ${inject} PROGRAM`;
		const { screen, afterwards } = await startLive({ line, columns: 120, rows: 30 });
		await screen.press(',');
		await screen.waitFor('SETTINGS', PATIENCE_MS);
		await screen.press('enter');
		await screen.waitFor(/colours +amber/, KEY_MS);
		await screen.waitFor('are written as soon as the disk answers', KEY_MS);
		await screen.press('esc', 'm', ...'gaffer');
		await screen.waitFor('gaffer', KEY_MS);
		await screen.press('enter', 'q', 'enter');
		expect(await afterwards()).toEqual({ code: 3, areSettingsKept: true });
		expect(screen.text()).toContain('The preferences that were changed could not be written');
	},
	60_000,
);
