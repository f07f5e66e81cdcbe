// The run sheet as it is printed before the doors open: the list of the file, everything on the rack and ready.

import { slotStandIns } from '../plan/backups/slot-stand-ins.ts';
import type { Plan } from '../plan/plan.ts';
import { readyAtZero } from '../plan/timed-choice/before-doors.ts';
import type { Show } from '../showfile/show.ts';
import type { Sheet } from './sheet.ts';
import { sheetOf } from './sheet-of-plan.ts';

/** The sheet of a plan made before the doors. */
export function sheetBeforeDoors(show: Show, plan: Plan): Sheet {
	const session = readyAtZero(show);
	const missing = slotStandIns(session, {
		plan,
		costs: 'none',
		isAsked: ({ isMissing }) => isMissing,
	});
	const backups = new Map(missing.map(({ slot, standIns: [best] }) => [slot, best?.instrument]));
	return sheetOf({ session, plan, zeroMs: 0, backupOf: (slot) => backups.get(slot) ?? null });
}
