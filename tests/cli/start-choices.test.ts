// What a bare start offers, in which order, and what its keys do.

import { describe, expect, test } from 'vitest';
import {
	type OfferedShow,
	pressOnPage,
	type StartSources,
	startChoices,
	startItems,
	unofferedCount,
} from '../../src/cli/start-choices.ts';
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

const show = (file: string, isToday = false): OfferedShow => ({
	file,
	isToday,
	show: { title: file, date: '2026-06-12', startMinutes: 1230 },
});

const sources = (rest: Partial<StartSources>): StartSources => ({
	nights: [],
	standsAt: () => null,
	shows: [],
	played: null,
	example: 'example',
	moment: () => 'today 20:31',
	hasCommand: () => false,
	...rest,
});

/** What each choice opens. */
const opened = (rest: Partial<StartSources>) =>
	startChoices(sources(rest)).map(({ opens }) => (opens.kind === 'show' ? opens.file : opens.name));

describe('the choices', () => {
	test('the unfinished nights come first, each show once, the example last', () => {
		expect(opened({})).toEqual(['example']);
		const nights = [night('b', true), night('a', false)];
		expect(opened({ nights, shows: [show('b')] })).toEqual(['a', 'b', 'example']);
		expect(opened({ nights, shows: [show('a')] })).toEqual(['a', 'example']);
		expect(opened({ nights: [night('r', false, true)] })).toEqual(['example']);
		const again = [night('a', false), night('a', false)];
		expect(opened({ nights: again })).toEqual(['a', 'example']);
	});

	test("tonight's shows come before the last one, and the same file is there once", () => {
		const shows = [show('x', true), show('y'), show('x')];
		expect(opened({ shows })).toEqual(['x', 'y', 'example']);
		expect(startChoices(sources({ shows })).map(({ label }) => label)).toEqual([
			"Tonight's show: x",
			'The last show again: y',
			'Look around with the example',
		]);
	});

	test('all there is, in the order in which it is wanted', () => {
		expect(
			opened({
				nights: [night('a', false), night('p', true)],
				shows: [show('t', true)],
				played: night('p', true),
				hasCommand: () => true,
			}),
		).toEqual(['a', 't', 'new', 'report', 'tomorrow', 'example', 'walk']);
	});

	test('what tomorrow needs is offered of a night that is over, and of no other', () => {
		const hasCommand = () => true;
		const over = startChoices(sources({ played: night('p', true), hasCommand }));
		const [, report, tomorrow] = over;
		expect(tomorrow).toMatchObject({ label: 'What tomorrow needs' });
		expect(report?.opens).toMatchObject({ kind: 'night', name: 'report' });
		const of = report?.opens.kind === 'night' ? report.opens.night : null;
		expect(tomorrow?.opens).toEqual({ kind: 'night', name: 'tomorrow', night: of });
		expect(opened({ played: night('p', false), hasCommand })).toEqual([
			...['new', 'report', 'example', 'walk'],
		]);
		expect(opened({ played: night('p', true) })).toEqual(['report', 'example']);
	});

	test('the example that was opened last is the example, and one left open is gone on with', () => {
		expect(opened({ shows: [show('example')] })).toEqual(['example']);
		const [first, ...others] = startChoices(sources({ nights: [night('example', false)] }));
		expect(first?.label).toBe('Go on with example');
		expect(first?.detail).toMatch(/^the example {2}unfinished, begun today 20:31/);
		expect(others).toEqual([]);
	});

	test('of many nights left open three are offered, and the others counted', () => {
		const nights = ['a', 'b', 'c', 'd', 'e'].map((file) => night(file, false));
		expect(opened({ nights })).toEqual(['a', 'b', 'c', 'example']);
		expect(unofferedCount(nights)).toBe(2);
	});

	test('a file of today that cannot be read is offered, and says so', () => {
		const [first] = startChoices(
			sources({ shows: [{ file: '/x/bad.yaml', isToday: true, show: null }] }),
		);
		expect(first).toMatchObject({
			label: "Tonight's show: bad.yaml",
			detail: 'cannot be opened yet; its key says why',
		});
	});
});

describe('the keys', () => {
	const items = startItems(
		startChoices(sources({ nights: [night('a', false)], hasCommand: () => true })),
	);

	test('are numbers from 1, and ? for the walk', () => {
		expect(items.map(({ key }) => key)).toEqual(['1', '2', '3', '?']);
	});

	test.each([
		['1', 0, { picked: 0, done: 'open' }],
		['3', 0, { picked: 2, done: 'open' }],
		['?', 0, { picked: 3, done: 'open' }],
		['enter', 1, { picked: 1, done: 'open' }],
		['down', 0, { picked: 1, done: null }],
		['down', 3, { picked: 3, done: null }],
		['up', 0, { picked: 0, done: null }],
		['esc', 2, { picked: 2, done: 'leave' }],
		['q', 0, { picked: 0, done: 'leave' }],
		['9', 0, { picked: 0, done: null }],
		['space', 0, { picked: 0, done: null }],
		['pagedown', 0, { picked: 0, done: null }],
	])('%s with item %i picked', (key, picked, step) => {
		expect(pressOnPage(items, picked, key)).toEqual(step);
	});
});
