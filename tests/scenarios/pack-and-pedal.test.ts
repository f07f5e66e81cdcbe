// A pack that is not to be trusted and a pedal that does not switch, from the song in which they are noticed
// to the end of the night and into what tomorrow needs.

import { describe, expect, test } from 'vitest';
import { play, type State } from './play.ts';
import { reportOf } from './report-of.ts';

const keys =
	'-01:00 !ready\n00:00 space\n04:00 space\n04:15 space\n04:30 w a -\n04:33 w a 5\n04:40 f 0 1\n' +
	'05:00 space\n05:01 !state !screen\n06:00 space\n08:15 d\n08:30 space\n08:31 !state\n12:30 d\n12:31 !state\n';
const { states, screen } = play('pack', keys);
const [cue, third, over] = states;

describe('the pack', () => {
	test('that was chosen stays on when the next instrument has the suspect one', () => {
		expect(cue.players.ash.pack).toBe('P5');
		expect(third.players.ash).toMatchObject({ holds: 'A4', pack: 'P5' });
	});
	test('that is suspect is warned of', () => {
		const words = third.warnings.flatMap(({ code, text }: State) =>
			code === 'suspect-pack' ? [text] : [],
		);
		expect(words.join()).toContain('P1');
	});
});

describe('the pedal', () => {
	test('stays on at the cue that wants it off, and to the end of the night', () => {
		for (const state of [cue, third, over]) {
			expect(state.boards.bo.drive).toEqual({ on: true, stuck: true });
		}
		expect(screen).toContain('DRIVE STUCK on');
	});
	test('is in the report, and in what tomorrow needs', () => {
		const report = reportOf('pack', keys);
		const pedal = report.incidents.find(({ kind }) => kind === 'pedal');
		expect(pedal).toMatchObject({ position: 2, song: 'Two' });
		expect(pedal?.words).toContain('Drive is stuck');
		expect(report.tomorrow.join('\n')).toContain('Drive');
		expect(report.tomorrow.join('\n')).toContain('P1');
	});
});
