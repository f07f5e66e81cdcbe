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
import type { Sheet } from './sheet.ts';
import { sheetOf } from './sheet-of-plan.ts';

/** The sheet of that night. */
export function tonightSheet(moment: Moment): Sheet {
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
	const isByWall = show.startMinutes !== null;
	return sheetOf({
		session: { ...session, show: tonight },
		plan: { ...plan, warnings },
		zeroMs: isByWall ? moment.plannedZeroMs : (session.zeroAtMs ?? moment.plannedZeroMs),
		backupOf,
	});
}

function setItem(item: ListItem): SetItem {
	if (item.kind === 'interval') return { kind: 'interval', seconds: item.seconds };
	const { song, gapSeconds, isEncore } = item;
	return { kind: 'song', song, gapSeconds, isEncore };
}
