// The page of the club show's fourth guitar, ready to be made where it is asked for: in a night under way,
// with the rack on the screen.

import { readFileSync } from 'node:fs';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { instrumentPrompt } from '../../src/keys/instrument-prompt.ts';
import type { KeyContext } from '../../src/keys/key-context.ts';
import { openNight } from '../../src/night/night.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { readPlainShow } from '../../src/showfile/read-plain-show.ts';
import { sampleHeader } from '../journal/sample-journal.ts';

const START_MS = 1_000_000_000_000;

/** What makes it, each time anew. */
export function pageOnRack(shows: URL): () => void {
	const load = (path: string) => readFileSync(new URL(path, shows));
	const show = readPlainShow(load, 'club.yaml')?.show;
	if (!show) throw new Error('the club show cannot be read');
	const night = openNight({
		show,
		journal: memoryJournal(sampleHeader()),
		clock: { wallMs: () => START_MS, upMs: () => 0, bootId: 'boot' },
		plannedZeroMs: START_MS + 600_000,
		dayOffsetMinutes: 0,
		isRehearsal: true,
	});
	night.press('tab');
	drawScreen(night.screen(), { columns: 80, rows: 24 }, { isAscii: false });
	const context = {
		session: night.session(),
		plan: night.plan(),
		nowMs: START_MS,
		picked: show.instruments.findIndex(({ id }) => id === 'A4'),
		measuredOn: () => [],
	} satisfies Partial<KeyContext>;
	const page = instrumentPrompt();
	return () => {
		page.view(context as unknown as KeyContext);
	};
}
