// The page of the club show's first guitar, ready to be made: to drop D, with all that it says.

import { readFileSync } from 'node:fs';
import { instrumentPage } from '../../src/keys/instrument-page.ts';
import type { KeyContext } from '../../src/keys/key-context.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { openSession } from '../../src/session/open-session.ts';
import { readPlainShow } from '../../src/showfile/read-plain-show.ts';

/** What makes it, each time anew. */
export function pageOnRack(): () => void {
	const folder = new URL('../../shows/', import.meta.url);
	const show = readPlainShow((path) => readFileSync(new URL(path, folder)), 'club.yaml');
	if (!show) throw new Error('the club show cannot be read');
	const picked = show.instruments.findIndex(({ id }) => id === 'A4');
	const session = openSession(show);
	const context = {
		session,
		plan: planBeforeDoors(show),
		nowMs: 0,
		picked,
		measuredOn: () => [],
	} satisfies Partial<KeyContext>;
	const page = instrumentPage();
	return () => {
		page.view(context as unknown as KeyContext);
	};
}
