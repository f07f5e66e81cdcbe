// What is asked of a whole row, and of a word that may be the act's own: each answer stands in the reading.

import { describe, expect, it } from 'vitest';
import { type Answers, NO_ANSWERS, readingOf } from '../../src/setlist/answers.ts';
import { choicesOf, chosen, taught, typed } from '../../src/setlist/choices.ts';
import { EMPTY_RACK, type Rack } from '../../src/setlist/list-reading.ts';
import { readText } from './read-list.ts';

const RACK: Rack = {
	...EMPTY_RACK,
	players: [
		{ id: 'ash', name: 'Ash', plays: 'guitar' },
		{ id: 'bo', name: 'Bo', plays: 'guitar' },
	],
	instruments: [
		{
			...{ id: 'A1', name: 'Amber', slot: '1' },
			kind: 'electric-6',
			for: ['ash'],
			tuning: 'E standard',
		},
	],
};

/** What the only question offers, and the show after one of it or after a line. */
function question(
	text: string,
	{ form = 'lines', rack = EMPTY_RACK }: { form?: 'lines' | 'table'; rack?: Rack } = {},
) {
	const { list, reading } = readText(text, { form, rack });
	const [open] = reading.asked;
	if (!open) throw new Error('nothing is asked');
	const choices = choicesOf(open, list, rack);
	const after = (answers: Answers) => readingOf(list, rack, answers);
	return {
		...{ open, reading, offered: choices.map(({ means }) => means) },
		choose: (number: number) => {
			const choice = choices[number - 1];
			if (!choice || choice.means === 'tuning') throw new Error('no such choice');
			return after(chosen(NO_ANSWERS, open, choice));
		},
		teach: (tuning: string) => after(taught(NO_ANSWERS, open.word?.unknown ?? '', tuning)),
		type: (line: string) => after(typed(NO_ANSWERS, open, line)),
	};
}

describe('a doubt about a whole row', () => {
	it('a number behind a title is its length or part of it', () => {
		const { offered, choose } = question('1. Harbour\n2. Sienna 245\n');
		expect(offered).toEqual(['length', 'title', 'tempo']);
		const [, asLength] = choose(1).songs;
		expect(asLength).toMatchObject({ title: 'Sienna', seconds: 245 });
		const [, asTitle] = choose(2).songs;
		expect(asTitle).toMatchObject({ title: 'Sienna 245', seconds: null });
		expect([choose(1), choose(2)].flatMap(({ asked }) => asked)).toEqual([]);
	});

	it('a numbered break is an interval or a song', () => {
		const { offered, choose } = question('1. Harbour\n2. Break 15 min\n3. Lantern\n');
		expect(offered).toEqual(['interval', 'song']);
		expect(choose(1).set[1]).toEqual({ kind: 'interval', seconds: 900 });
		expect(choose(2).set).toHaveLength(3);
		expect(choose(2).asked).toEqual([]);
		const table = question('No,Song,Time\n1,Harbour,3:00\n2,Break,4:00\n3,Lantern,3:00\n', {
			form: 'table',
		});
		expect(table.choose(1).set[1]).toEqual({ kind: 'interval', seconds: 240 });
		expect(table.choose(2).songs[1]).toMatchObject({ title: 'Break', seconds: 240 });
	});

	it('a tuning in brackets is one of the players’, or a note', () => {
		const { offered, choose } = question('1. Harbour [drop D]\n', { rack: RACK });
		expect(offered).toEqual(['hands', 'hands', 'notes']);
		expect(choose(1).songs[0]).toMatchObject({
			hands: { ash: { kind: 'named', instrument: 'A1', tuning: 'drop D' } },
			notes: null,
		});
		expect(choose(3).songs[0]).toMatchObject({ hands: {}, notes: 'drop D' });
		expect([choose(1), choose(3)].flatMap(({ asked }) => asked)).toEqual([]);
	});

	it('a tuning among the words of a title is of the title or a player’s', () => {
		const { offered, choose } = question('1. Weathercock, part 2 - DD c2\n', { rack: RACK });
		expect(offered).toEqual(['title', 'hands', 'hands']);
		expect(choose(1).songs[0]).toMatchObject({ title: 'Weathercock, part 2 - DD c2', hands: {} });
		expect(choose(2).songs[0]).toMatchObject({
			title: 'Weathercock, part 2',
			hands: { ash: { instrument: 'A1', tuning: 'drop D', capo: 2 } },
		});
		expect([choose(1), choose(2)].flatMap(({ asked }) => asked)).toEqual([]);
	});

	it('and where the list names nobody, of one called Guitar', () => {
		const { choose } = question('1. Weathercock DD\n2. Gravel\n');
		const { players, songs, asked } = choose(2);
		expect(players).toMatchObject([{ id: 'guitar', name: 'Guitar' }]);
		expect(songs[0]).toMatchObject({ title: 'Weathercock' });
		expect(Object.keys(songs[0]?.hands ?? {})).toEqual(['guitar']);
		expect(asked).toEqual([]);
	});

	it('a row without a title is the song of the title that is typed', () => {
		const { offered, type, reading } = question(
			'Song,Time,Ash\nHarbour,3:00,Amber\n,4:05,Amber DD\nLantern,3:00,\n',
			{ form: 'table' },
		);
		expect(offered).toEqual([]);
		expect(reading.songs).toHaveLength(2);
		const { songs, asked } = type('Gravel');
		expect(asked).toEqual([]);
		expect(songs.map(({ title }) => title)).toEqual(['Harbour', 'Gravel', 'Lantern']);
		expect(songs[1]).toMatchObject({ seconds: 245, hands: { ash: { tuning: 'drop D' } } });
	});
});

describe('a word of the act’s own', () => {
	it('beside an instrument is a tuning, wherever it stands', () => {
		const { open, offered, teach } = question(
			'Song,Ash\nHarbour,Amber\nLantern,Amber OPG*\nGravel,Amber\nKiln,Amber OPG* c2\n',
			{ form: 'table' },
		);
		expect(open).toMatchObject({ row: 3, why: 'extra-words', word: { unknown: 'OPG*' } });
		expect(offered).toEqual(['tuning', 'instrument']);
		const { songs, asked, instruments } = teach('open G');
		expect(asked).toEqual([]);
		expect(instruments.map(({ name }) => name)).toEqual(['Amber']);
		expect(songs[1]?.hands.ash).toMatchObject({ tuning: 'open G', capo: 0 });
		expect(songs[3]?.hands.ash).toMatchObject({ tuning: 'open G', capo: 2 });
	});

	it('or another instrument, wherever it stands', () => {
		const { choose } = question(
			'Song,Ash\nHarbour,Amber\nLantern,Amber Two\nGravel,Amber\nKiln,Amber Two DD\n',
			{ form: 'table' },
		);
		const { instruments, asked } = choose(2);
		expect(asked).toEqual([]);
		expect(instruments.map(({ name }) => name)).toEqual(['Amber', 'Amber Two']);
	});

	// High-strung: the four lower strings an octave up, as on a twelve-string without its lower ones. Common practice.
	const NASH = 'E3 A3 D4 G4 B3 E4';

	it('alone among tunings, or alone where the rack is known, is asked about', () => {
		const tunings = question('Song,Ash\nHarbour,E\nLantern,DD\nGravel,Nash\nKiln,Nash\n', {
			form: 'table',
		});
		expect(tunings.open).toMatchObject({ why: 'own-word', word: { whole: 'Nash' } });
		expect(tunings.reading.asked).toHaveLength(2);
		expect(tunings.teach(NASH).asked).toEqual([]);
		expect(tunings.teach(NASH).instruments.map(({ tuning }) => tuning)).toContain(NASH);
		expect(tunings.choose(2).instruments.map(({ name }) => name)).toContain('Nash');
		const table = 'Song,Ash\nHarbour,Amber\nLantern,Nash\n';
		const racked = question(table, { form: 'table', rack: { ...RACK, isAsked: true } });
		expect(racked.open).toMatchObject({ row: 3, why: 'own-word' });
		expect(racked.choose(2).asked).toEqual([]);
		expect(racked.choose(2).instruments.map(({ name }) => name)).toEqual(['Nash']);
		// Where nobody can be asked it is made, and said.
		const { reading } = readText(table, { form: 'table', rack: RACK });
		expect(reading.asked).toEqual([]);
		expect(reading.said).toContainEqual(expect.objectContaining({ code: 'made', row: 3 }));
	});

	it('is no question where other cells say that it is an instrument', () => {
		const { reading } = readText('Song,Ash\nHarbour,LP\nLantern,LP DD\nGravel,DADGAD\nKiln,Eb\n', {
			form: 'table',
		});
		expect(reading.asked).toEqual([]);
	});

	it('is what it is nearly, where that is chosen', () => {
		const { offered, choose } = question('Song,Ash\nHarbour,Ambr DD\n', {
			form: 'table',
			rack: RACK,
		});
		expect(offered).toEqual(['near', 'tuning', 'instrument']);
		expect(choose(1).songs[0]?.hands.ash).toMatchObject({ instrument: 'A1', tuning: 'drop D' });
	});
});
