// What a bare start offers, and in which order.

import { expect, test } from 'vitest';
import { startChoices } from '../../src/cli/start-choices.ts';
import type { NightSummary } from '../../src/disk/nights-folder.ts';
import { recordBeside } from '../../src/journal/new-record.ts';

function night(file: string, isOver: boolean, isRehearsal = false): NightSummary {
	return {
		id: `night-of-${file}`,
		path: '',
		header: {
			k: 'header',
			format: 'rackside-night/2',
			journal: '',
			boot: '',
			title: file,
			showPath: file,
			showHash: '',
			show: null,
			isRehearsal,
			from: 1,
		} as NonNullable<NightSummary['header']>,
		startedAtMs: 0,
		lastRecords: isOver
			? [recordBeside({ s: 1, w: '', e: [{ k: 'show-ended' }], at: { wallMs: 0, upMs: 0 } })]
			: [],
		sizeBytes: 0,
		away: null,
		names: [],
		problem: null,
	};
}

const filesOf = (nights: NightSummary[], lastShow: string | null) =>
	startChoices({ nights, lastShow, example: 'example' }).map(({ file }) => file);

test('the newest comes first, each show once, the example last', () => {
	expect(filesOf([], null)).toEqual(['example']);
	expect(filesOf([night('a', false), night('b', true)], 'b')).toEqual(['a', 'b', 'example']);
	expect(filesOf([night('b', true), night('a', false)], 'b')).toEqual(['b', 'a', 'example']);
	expect(filesOf([night('r', false, true)], null)).toEqual(['example']);
});

test('a night left open of the example is offered, not gone on with unasked', () => {
	const choices = startChoices({
		nights: [night('example', false)],
		lastShow: null,
		example: 'example',
	});
	expect(choices).toMatchObject([{ file: 'example', isNew: false }]);
});
