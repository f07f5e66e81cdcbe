// The fix for each thing that `check` finds, a sentence; empty where its own words say it.

import { minutesSeconds } from '../base/duration.ts';
import type { Warning } from '../plan/plan.ts';
import type { Finding } from '../showfile/finding.ts';

const SOONER = 'Start sooner, shorten gaps, or drop a song.';

/** What to do about it. */
export function mendOfRisk(about: Finding | Warning): string {
	switch (about.code) {
		case 'two-hands':
			return 'Name another instrument for one of them.';
		case 'nothing-to-keep':
			return 'Name what they play, or write "none".';
		case 'segue-hand-over':
			return `Give the song before it another end and ${minutesSeconds(about.seconds)} of gap, or let them keep what they have.`;
		case 'gap-too-short':
			return `Make the gap ${minutesSeconds(about.seconds)} or longer, or move a hand-over to another song.`;
		case 'tight-gap':
			return about.seconds > about.gapSeconds
				? `Make the gap ${minutesSeconds(about.seconds)} or longer, or move a hand-over to another song.`
				: 'Keep hands free for it, or ask for a longer gap.';
		case 'floating-retune':
			return 'entry' in about
				? 'Correct its "instead".'
				: 'Name one with a fixed bridge, or set this one up for that tuning.';
		case 'far-tuning':
			return 'Name another instrument, or string it for this tuning.';
		case 'capo-on-bass':
			return 'Take the capo out.';
		case 'for-others':
			return 'Add the player to its "for", or name another instrument.';
		case 'needs-unmet':
		case 'missing':
			return 'Bring one that can be this, or name another part.';
		case 'prefer-unfit':
			return 'Correct "prefer", or take it out.';
		case 'substituted':
			return 'Name what is to be played, or bring another.';
		case 'shared-pack':
			return 'Give one of them another pack.';
		case 'pedal-missing':
			return 'Add the pedal to "boards", or correct its name.';
		case 'past-curfew':
		case 'short-curfew':
			return SOONER;
		case 'no-slot':
			return 'Give it a slot.';
		case 'not-played':
			return 'Fine if it is only there in case it is called.';
		case 'no-length':
			return 'Give it a length.';
		case 'near-past-end':
			return 'Correct "near" or the length.';
		case 'octaves-spoilt':
			return 'Bring their offsets closer together.';
		case 'shape-without-hands':
			return 'Name what they play there, or take the shapes out.';
		case 'late':
			return `Do it before the doors, or leave ${minutesSeconds(about.shortSeconds)} more before it.`;
		case 'no-stand-in':
			return 'Bring a backup, or agree what to play if it breaks.';
		default:
			return '';
	}
}
