// The run sheet of a night under way, its list as it stands: what was moved, put in and dropped, what is
// played already, and who gets what from here on as things are now.

import { backupOfSlot } from '../plan/backups/stand-ins.ts';
import type { Moment } from '../plan/demand/sections-ahead.ts';
import type { Slot } from '../plan/plan.ts';
import { planCore } from '../plan/timed-choice/plan-core.ts';
import { gapWarnings } from '../plan/warnings/gap-warnings.ts';
import { missingWarnings } from '../plan/warnings/warnings.ts';
import { curfewWarnings } from '../plan/what-if/curfew-warnings.ts';
import type { ListItem } from '../session/session.ts';
import { comingItems } from '../session/set-places.ts';
import type { SetItem } from '../showfile/show.ts';
import { tonightsList } from '../words/paper.ts';
import { runSheet, type SheetAsked } from './run-sheet.ts';

/** The sheet as lines of at most 80 columns, the last one ended too. */
export function tonightSheet(moment: Moment, asked: Omit<SheetAsked, 'backupOf'> = {}): string {
	const { show } = moment.session;
	const coming = new Set(comingItems(moment.session));
	const list = moment.session.list.filter(
		(item) => coming.has(item) || (item.kind === 'interval' ? true : item.runs.length > 0),
	);
	const session = { ...moment.session, list };
	const { plan } = planCore({ ...moment, session });
	const backupOf = (slot: Slot) =>
		backupOfSlot({ session, plan, nowMs: moment.nowMs }, slot)?.instrument ?? null;
	const warnings = [
		...missingWarnings(plan, (slot) => backupOf(slot) ?? undefined),
		...gapWarnings(plan, plan.sections),
		...curfewWarnings(show, plan.sections, moment.plannedZeroMs),
	];
	const tonight = { ...show, title: tonightsList(show.title), set: list.map(setItem) };
	return runSheet(tonight, { ...plan, warnings }, { ...asked, backupOf });
}

function setItem(item: ListItem): SetItem {
	if (item.kind === 'interval') return { kind: 'interval', seconds: item.seconds };
	const { song, gapSeconds, isEncore } = item;
	return { kind: 'song', song, gapSeconds, isEncore };
}
