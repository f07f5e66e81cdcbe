// The fix for each thing that `check` finds, a sentence; empty where its own words say it.

import { minutesSeconds } from '../base/duration.ts';
import type { Warning } from '../plan/plan.ts';
import type { RigFinding } from '../rig/rig-finding.ts';
import type { Finding } from '../showfile/finding.ts';
import { sourceWords } from './rig.ts';

const SOONER = 'Start sooner, shorten gaps, or drop a song.';

/** What to do about it. */
export function mendOfRisk(about: Finding | RigFinding | Warning): string {
	switch (about.code) {
		case 'amp-load':
			return about.fits === null
				? 'Use cabinets that this amp is made for, and ask its maker before anything else.'
				: `Switch the amp off, let it cool down, then set it to ${about.fits} ohms.`;
		case 'amp-no-load':
			return 'Plug its cabinet in before it is switched on, and write the cabinet into the rig.';
		case 'cab-power':
			return 'Use a cabinet that takes more, or an amp that gives less.';
		case 'supply-load':
			return about.isOver ? 'Move a pedal to another output.' : 'Add nothing to it.';
		case 'supply-volts':
		case 'supply-centre':
		case 'supply-current':
			return 'Do not plug it in like this, which can destroy it: use an output or an adapter that fits.';
		case 'daisy-chain':
			return 'If it hums, give each an output of its own.';
		case 'battery-short':
			return about.change === 'interval'
				? 'Put a fresh one in before the doors, or in the interval at the latest.'
				: 'Put a fresh one in before the doors.';
		case 'shared-channel':
			return 'Ask the radio coordinator for another channel for one of them.';
		case 'unknown-scene':
			return 'Add the scene to the pedal, or correct its name.';
		case 'no-tempo':
			return 'Give the song its tempo.';
		case 'thin-piezo':
			return 'Put a preamp with a higher input first.';
		case 'dull-cord':
			return 'Use a shorter cord, or put a buffer first.';
		case 'sources-cancel': {
			const { isLows, offset, sources } = about;
			const nearer = sources[offset.later === 0 ? 1 : 0].from;
			if (isLows) return 'Flip the polarity of one at the desk.';
			// Lined up with opposite polarity they would cancel everything.
			return offset.isOpposed
				? `Flip the polarity of one and delay ${sourceWords(nearer)} by that at the desk, or leave one of them out.`
				: `Delay ${sourceWords(nearer)} by that at the desk, or leave one of them out.`;
		}

		case 'two-hands':
			return 'Name another instrument for one of them.';
		case 'nothing-to-keep':
			return 'Name what they play, or write "none".';
		case 'segue-hand-over':
			return `Give the song before it another end and ${minutesSeconds(about.seconds)} of gap, or let them keep what they have.`;
		case 'gap-too-short':
			return `Make the gap ${minutesSeconds(about.seconds)} or longer, or move a hand-over to another song.`;
		case 'no-gap':
			return `Write the real gaps into the set: {song: ${about.songs[0]}, gap: ${about.needs[0]}s}.`;
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
			return `Do it earlier if it hangs free, leave ${minutesSeconds(about.shortSeconds)} more before it, or name another.`;
		case 'no-stand-in':
			return 'Bring a backup, or agree what to play if it breaks.';
		default:
			return '';
	}
}
