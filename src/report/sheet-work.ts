// What a sheet says is done at the rack, by the stretch in which it is begun.

import type { Work } from '../plan/plan.ts';
import { capoAct } from '../words/capo-words.ts';
import { workDeadline } from '../words/paper.ts';
import { JOB_WORDS, jobWords } from '../words/stage.ts';
import { shortTuning } from '../words/tuning-names.ts';
import type { SheetWork } from './sheet.ts';
import type { SheetSource } from './sheet-gear.ts';
import { clockAt, type Stretch, songAt, stretchAt } from './sheet-stretches.ts';
import { isOf, stateBefore } from './sheet-uses.ts';

/** The work begun in this stretch, null for before all of them, in the order in which to do it. */
export function worksAt(
	source: SheetSource,
	moments: readonly Stretch[],
	stretch: Stretch | null,
): readonly SheetWork[] {
	return source.plan.work
		.filter((work) => stretchAt(moments, work.startMs) === stretch)
		.map((work) => workRow(source, work));
}

function workRow(source: SheetSource, work: Work): SheetWork {
	const { session, plan } = source;
	const { show } = session;
	const instrument = show.instruments.find(({ id }) => id === work.instrument);
	const slot = plan.slots.find((one) => isOf(one, work));
	const capoBefore = slot === undefined ? 0 : (stateBefore(source, slot)?.capo ?? 0);
	const capo = work.isEarly || capoBefore === work.capo ? [] : [capoAct(work.capo)];
	const isTouchedUp = work.job === 'capo' && work.seconds > (instrument?.times.capo ?? 0);
	const job =
		work.job === 'retune'
			? [jobWords('retune', shortTuning(show, work.to))]
			: work.job === 'capo'
				? isTouchedUp
					? [JOB_WORDS['touch-up']]
					: []
				: [JOB_WORDS[work.job]];
	return {
		player: work.player,
		slot: instrument?.slot?.toUpperCase() ?? null,
		name: instrument?.name ?? work.instrument,
		what: [...job, ...capo].join(', ') || JOB_WORDS[work.job],
		when: workDeadline({
			seconds: work.seconds,
			startBy: clockAt(source, { atMs: work.beginByMs, position: work.section.position }),
			shortSeconds: work.shortSeconds,
		}),
		song: songAt(source, work.section.position),
		isShort: work.shortSeconds > 0,
	};
}
