// Everything risky in a show as one list: each risk once, though the file and the plan may both show it, the
// worst and the soonest first, each with its place in the file and the fix.

import type { Place } from '../base/problem.ts';
import type { Warning } from '../plan/plan.ts';
import { checkRig } from '../rig/check-rig.ts';
import type { RigFinding } from '../rig/rig-finding.ts';
import { placeOfRigFinding } from '../rig/rig-place.ts';
import type { Finding } from '../showfile/finding.ts';
import { placeOfFinding } from '../showfile/finding-place.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { Show } from '../showfile/show.ts';
import type { SourceNode } from '../showfile/source-node.ts';
import { asSentence } from '../words/as-sentence.ts';
import { findingText, findingWords } from '../words/findings.ts';
import { mendOfRisk } from '../words/mends.ts';
import { rigFindingText, rigFindingWords } from '../words/rig-findings.ts';
import { warningWords } from '../words/warnings.ts';
import { assumedGap, type FullGap, isAssumed } from './assumed-gap.ts';

export type Risk = {
	readonly about: Finding | RigFinding | Warning;
	/** A whole sentence or two, the last one the fix. */
	readonly words: string;
	/** What scripts read, things by their ids; empty for a warning of the plan, which words itself. */
	readonly text: string;
	/** Null where the files were not read as a tree. */
	readonly where: Place | null;
	/** It follows from a gap that nobody gave, which is said once of all. */
	readonly isSaidOnce: boolean;
};

/** What of the plan is the same as what the reading of the file has found already. */
const SAME: Readonly<Partial<Record<Warning['code'], readonly Finding['code'][]>>> = {
	'tight-gap': ['segue-hand-over', 'gap-too-short'],
	missing: ['needs-unmet', 'two-hands', 'floating-retune'],
	substituted: ['two-hands', 'floating-retune'],
	'short-curfew': ['past-curfew'],
};

/** A show's risks; `root`: its files as a tree. */
export function checkList(
	show: Show,
	{
		findings,
		warnings,
		root,
	}: {
		readonly findings: readonly Finding[];
		readonly warnings: readonly Warning[];
		readonly root: SourceNode | null;
	},
): readonly Risk[] {
	const firstPlace = new Map<string, number>();
	for (const { song, position } of runningOrder(show)) {
		if (!firstPlace.has(song.id)) firstPlace.set(song.id, position);
	}
	const soonest = (about: Risk['about']) => {
		const { song, songs = song === undefined ? [] : [song] } = about as {
			song?: string;
			songs?: readonly string[];
		};
		return Math.min(...songs.map((one) => firstPlace.get(one) ?? Number.POSITIVE_INFINITY));
	};
	const found = findings.filter((one) => !isForThePlan(one));
	const all = [
		...found.map((about) => ({
			about,
			said: findingWords(show, about),
			text: findingText(show, about),
			placeIn: (tree: SourceNode) => placeOfFinding(tree, about),
		})),
		...warnings
			.filter((one) => !isSaid(one, found))
			.map((about) => ({
				about,
				said: asSentence(warningWords(show, about)),
				text: '',
				placeIn: (tree: SourceNode) => placeOfFinding(tree, about),
			})),
		...checkRig(show).map((about) => ({
			about,
			said: rigFindingWords(show, about),
			text: rigFindingText(show, about),
			placeIn: (tree: SourceNode) => placeOfRigFinding(tree, about),
		})),
	];
	const full = all.flatMap(({ about }) => (isFullGap(about) ? [about] : []));
	const noGap = assumedGap(show, full);
	const once =
		noGap === null
			? []
			: [
					{
						about: noGap,
						said: findingWords(show, noGap),
						text: findingText(show, noGap),
						placeIn: (tree: SourceNode) => placeOfFinding(tree, noGap),
					},
				];
	return [...once, ...all]
		.map(({ about, said, text, placeIn }) => ({
			about,
			isSaidOnce: noGap !== null && isFullGap(about) && isAssumed(show, about),
			words: [said, mendOfRisk(about)].filter((one) => one !== '').join(' '),
			text,
			where: root === null ? null : placeIn(root),
			rank: rankOf(about),
			soonest: soonest(about),
		}))
		.sort(
			(one, other) =>
				one.rank - other.rank || (one.soonest === other.soonest ? 0 : one.soonest - other.soonest),
		)
		.map(({ about, words, text, where, isSaidOnce }) => ({
			about,
			words,
			text,
			where,
			isSaidOnce,
		}));
}

function isFullGap(about: Risk['about']): about is Extract<Risk['about'], FullGap> {
	return about.code === 'gap-too-short' || about.code === 'tight-gap';
}

/** Whether a gap has a hand-over of a backup in it: who gets which is the plan's to choose, and so what fits. */
function isForThePlan(one: Finding): boolean {
	const isOfGap = one.code === 'gap-too-short' || one.code === 'segue-hand-over';
	return isOfGap && one.given.some(({ isBackup }) => isBackup);
}

function isSaid(warning: Warning, findings: readonly Finding[]): boolean {
	const codes = SAME[warning.code];
	if (codes === undefined) return false;
	return findings.some(
		(one) =>
			codes.includes(one.code) &&
			one.song === warning.song &&
			(one.player === undefined || one.player === warning.player || warning.player === undefined),
	);
}

/** Smaller is worse: what hurts, what leaves somebody without sound, what does not fit, what is only risky, what is good to know. */
function rankOf(about: Risk['about']): number {
	switch (about.code) {
		case 'amp-no-load':
			return 0;
		case 'string-tension':
			return about.percentLeft <= 0 ? 0 : 4;
		case 'missing':
		case 'needs-unmet':
		case 'nothing-to-keep':
			return 'severity' in about && about.severity === 'note' ? 7 : 1;
		case 'two-hands':
		case 'floating-retune':
			return 'gets' in about && about.gets === 'nothing' ? 1 : 2;
		case 'amp-load':
		case 'supply-centre':
		case 'supply-current':
		case 'supply-volts':
			return 2;
		case 'late':
		case 'segue-hand-over':
		case 'gap-too-short':
		case 'no-gap':
			return 3;
		case 'past-curfew':
		case 'short-curfew':
			return 3;
		case 'tight-gap':
			return about.seconds > about.gapSeconds ? 3 : 6;
		case 'no-stand-in':
			return 5;
		default:
			return 'severity' in about && about.severity === 'note' ? 7 : 4;
	}
}
