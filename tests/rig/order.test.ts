// The order of a board's pedals for a song.

import { expect, test } from 'vitest';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { runSheet } from '../../src/report/run-sheet.ts';
import { sheetBeforeDoors } from '../../src/report/sheet-before-doors.ts';
import { orderChange, pathOf } from '../../src/rig/rig-path.ts';
import { openSession } from '../../src/session/open-session.ts';
import { checkShow } from '../../src/showfile/check-show.ts';
import { keptShow, showRecord } from '../../src/showfile/show-record.ts';
import { showFrom } from '../showfile/show-files.ts';
import { rigShow } from './example-rig.ts';

const show = rigShow(
	`instruments: [{id: B1, kind: electric-6, tuning: E standard}]
boards: {bo: [{id: drive}, {id: boost}, {id: chorus}, {id: delay}]}`,
	'{id: one, hands: {bo: B1}, order: {bo: [chorus, drive]}}',
);

function pedals(order: readonly string[]): readonly string[] {
	const path = pathOf(openSession(show), { player: 'bo', batteries: [], endsInHours: 0, order });
	return path.flatMap((one) =>
		one.kind === 'board' ? one.pedals.map(({ pedal }) => pedal.id) : [],
	);
}

test('those that are named stand one after the other where the first of them stands', () => {
	expect(pedals(['chorus', 'drive'])).toEqual(['chorus', 'drive', 'boost', 'delay']);
	expect(pedals(['delay', 'boost'])).toEqual(['drive', 'delay', 'boost', 'chorus']);
	expect(pedals([])).toEqual(['drive', 'boost', 'chorus', 'delay']);
});

test('a change is named, and so is the way back', () => {
	const to = (from: string | null, song: string | null) =>
		orderChange(show, { player: 'bo', from, to: song })?.map(({ id }) => id) ?? null;
	expect(to(null, 'one')).toEqual(['chorus', 'drive']);
	expect(to('one', 'one')).toBeNull();
	expect(to('one', null)).toEqual([]);
});

test('it is kept with a night, and a pedal that is not there is found', () => {
	expect(keptShow(JSON.parse(JSON.stringify(showRecord(show))))?.songs[0]?.order).toEqual({
		bo: ['chorus', 'drive'],
	});
	const wrong = rigShow(
		'instruments: [{id: B1, kind: electric-6, tuning: E standard}]\nboards: {bo: [{id: drive}]}',
		'{id: one, hands: {bo: B1}, order: {bo: [chorus, drive]}}',
	);
	expect(checkShow(wrong)).toContainEqual(
		expect.objectContaining({ code: 'pedal-missing', pedal: 'chorus' }),
	);
});

test('it stands on the run sheet where the song starts, before what is pressed, and so does the way back', () => {
	const night = showFrom(`format: rackside/1
players: [{id: bo, name: Bo}]
instruments: [{id: B1, kind: electric-6, tuning: E standard}]
boards: {bo: [{id: drive, name: Drive}, {id: chorus, name: Chorus}]}
songs:
  - {id: one, length: "3:00", hands: {bo: B1}, order: {bo: [chorus, drive]}, board: {bo: {drive: on}}}
  - {id: two, length: "3:00", hands: {bo: B1}}
  - {id: three, length: "3:00", hands: {bo: B1}}
set: [one, two, three]
`);
	const source = sheetBeforeDoors(night, planBeforeDoors(night));
	const text = runSheet(source, { version: 'version 1', since: [], hasBoards: false });
	expect(text.split('\n').filter((line) => line.includes('BO') && line.includes('start:'))).toEqual(
		['    start: BO Chorus before Drive, +DRIVE', '    start: BO pedals in their usual order'],
	);
});
