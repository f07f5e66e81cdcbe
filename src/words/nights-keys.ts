// What each key of the data of several nights holds, for the JSON Schema of it.

import { type KeyTree, toldOf } from './key-tree.ts';

const GEAR: KeyTree = {
	gear: ['Identity of the instrument, the same on every night.'],
	shown: ['Slot and name, as the last of the nights has them.'],
};

const NIGHTS: KeyTree = {
	format: ['The form of this data; it changes when a key changes its meaning.'],
	nights: [
		'Night by night, the oldest first.',
		{
			night: ['Id of the night.'],
			title: ['What the show is called.'],
			day: ['When it was played, where it was.'],
			songs: ['Each time that a song was on and not skipped.'],
			breaks: ['Strings that broke.'],
			soundSeconds: [
				'Until there was sound again after a break; null where that is not known of any.',
				{ median: ['Half of them were no longer.'], longest: ['The longest.'] },
			],
			handOversLate: ['Hand-overs that were late.'],
			handOvers: ['Those of which it is known whether they were late.'],
			tightInPlan: ['Gaps that the plan left under five seconds.'],
			tightInTruth: ['Gaps that really had under five seconds left, or a late hand-over.'],
		},
	],
	strings: [
		'Strings that broke, the most breaks first.',
		{
			...GEAR,
			string: ['Number of the string; null where nobody said.'],
			breaks: ['How often it broke.'],
			nightsBroken: ['In how many of the nights.'],
			nightsUsed: ['Nights in which the instrument was in hands.'],
			chance: [
				'Confidence limits at 95 % of the chance that a night breaks one.',
				{ low: ['No less than this.'], high: ['No more than this.'] },
			],
		},
	],
	gaps: [
		'Gaps with hand-overs that were tight in the plan or in truth.',
		{
			night: ['Id of the night.'],
			day: ['When it was played.'],
			song: ['Id of the song that it is before.'],
			title: ['What that is called.'],
			plannedSeconds: ['How long it was to be.'],
			seconds: ['How long it was.'],
			handOvers: ['Hand-overs in it.'],
			neededSeconds: ['What these take by the plan, one after the other.'],
			leftSeconds: ['From the last of them to the song; null where that is not known.'],
			isLate: ['One of them was late.'],
			isTightInPlan: ['The plan left under five seconds.'],
			wasTight: ['So it was in truth; null where that is not known.'],
		},
	],
	hours: [
		'Hours in hands of the strings that are on after the last night.',
		{
			...GEAR,
			hours: ['In hands.'],
			isAtLeast: ['Nothing says how old they were at first: it may be more.'],
		},
	],
	times: [
		'What work took, beside what the plan takes.',
		{
			work: ['By the name of its time in the settings.'],
			count: ['Measured, those left out not among them.'],
			leftOut: ['Three times the plan or longer: not done in one go.'],
			usedSeconds: ["The plan's."],
			medianSeconds: ['Half of them were no longer; null for fewer than five.'],
			highSeconds: ['Nine of ten were no longer; null for fewer than five.'],
		},
	],
};

/** What is told of the key at the end of a path. */
export const nightsKeyTold = toldOf(NIGHTS);
