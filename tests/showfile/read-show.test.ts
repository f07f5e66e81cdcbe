// A whole show from its files: what is left out, what follows from what, and where problems are said.

import { describe, expect, it } from 'vitest';
import { readShow } from '../../src/showfile/read-show.ts';
import { linesFrom, loaderOf, showFrom, smallShow } from './show-files.ts';

const WHOLE = `format: rackside/1
show:
  title: Quay Street, second night
  venue: Wharrel Rooms
  date: 2026-06-12
  start: "20:30"
  curfew: "22:45"
  reference: 441
  recheck-after: 8m
  recheck-new: 4m
techs:
  - {id: lou, name: Lou}
players:
  - {id: ash, name: Ash, plays: guitar, tech: lou}
  - {id: bo, name: Bo}
boards:
  bo:
    - {id: drive, name: Drive, power: {volts: 9}, scribbles: [1, 2]}
    - {id: delay}
packs:
  - {id: P1, channel: "11"}
times:
  all: {walk: 8s}
  electric-6: {touch-up: 30s, hand-over: 12s}
stock:
  - {gauge: "10", count: 12}
abbreviations: {OPG: open G}
instruments:
  - id: A1
    name: Amber
    slot: S
    kind: electric-6
    for: ash
    tuning: OPG
    scale: 25.5 in
    strings: [10, 13, 17, 26w, "0.9 mm w", 46W]
    bridge: floating
    features: [arm, five-way]
    pickups: two
    pack: P1
    case: "3"
    spare: yes
    strung: {on: 2026-06-10, hours: 3.5}
    times: {touch-up: 45s, restring: 4m30s}
    leave: volume 7, neck pickup
    notes: buzz at the ninth fret
songs:
  - id: lantern
    title: "1.10"
    length: "3:30"
    tempo: 104
    hands:
      ash: {instrument: A1, tuning: drop d, capo: 2, leave: check the capo, pack: P1}
      bo: {needs: {kind: acoustic-6, sounds: E standard, features: arm, prefer: A1}}
    board:
      bo: {drive: off}
    cues:
      - {at: Ch1, bo: {drive: on}}
      - {at: solo, near: "1:32", bo: {drive: on, delay: {time: dotted-eighth}}, say: eight bars}
      - {at: bridge, hand: {ash: A1, bo: none}, bo: off}
    starts: the drummer
    count: 4
    ends: segue
    notes: long
set:
  - lantern
  - interval: 20m
  - {song: lantern, gap: 5s}
  - encore: [{song: lantern, gap: 90s}, lantern]
`;

describe('a show with everything in it', () => {
	// Read anew by each test, so that each is known to reach what reads.
	const whole = () => showFrom(WHOLE);

	it('keeps what the file says', () => {
		expect(whole()).toMatchObject({
			title: 'Quay Street, second night',
			venue: 'Wharrel Rooms',
			date: '2026-06-12',
			startMinutes: 1230,
			curfewMinutes: 1365,
			referenceHertz: 441,
			staleAfterSeconds: 480,
			staleNewSeconds: 240,
			techs: [{ id: 'lou', name: 'Lou' }],
			packs: [{ id: 'P1', name: null, channel: '11' }],
			times: { all: { walk: 8 }, 'electric-6': { 'touch-up': 30, 'hand-over': 12 } },
			stock: [{ gauge: '10', count: 12 }],
			abbreviations: { OPG: 'open G' },
		});
		expect(whole().instruments[0]).toMatchObject({
			slot: 's',
			for: ['ash'],
			tuning: { name: 'open G', notes: ['D2', 'G2', 'D3', 'G3', 'B3', 'D4'] },
			// 25.5 in at 25.4 mm to the international inch.
			scaleMillimetres: 647.7,
			bridge: 'floating',
			features: ['arm', 'five-way'],
			spare: true,
			strung: { on: '2026-06-10', hours: 3.5 },
			pickups: 'two',
		});
		// Ten thousandths of an inch are 0.254 mm.
		expect(whole().instruments[0]?.strings[0]).toEqual({ millimetres: 0.254, isWound: false });
		expect(whole().instruments[0]?.strings[4]).toEqual({ millimetres: 0.9, isWound: true });
	});

	it('reads a song, its parts and its cues', () => {
		expect(whole().songs[0]).toEqual({
			id: 'lantern',
			title: '1.10',
			lengthSeconds: 210,
			tempo: 104,
			parts: {
				ash: {
					kind: 'named',
					instrument: 'A1',
					tuning: { name: 'drop D', notes: ['D2', 'A2', 'D3', 'G3', 'B3', 'E4'] },
					capo: 2,
					leave: 'check the capo',
					pack: 'P1',
				},
				bo: {
					kind: 'needs',
					instrumentKind: 'acoustic-6',
					sounds: { name: 'E standard', notes: ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'] },
					features: ['arm'],
					prefer: 'A1',
					leave: null,
					pack: null,
				},
			},
			board: { bo: { drive: { on: false } } },
			cues: [
				{
					at: 'Ch1',
					nearSeconds: null,
					say: null,
					hand: {},
					boards: { bo: { drive: { on: true } } },
				},
				{
					at: 'solo',
					nearSeconds: 92,
					say: 'eight bars',
					hand: {},
					boards: {
						bo: { drive: { on: true }, delay: { on: true, settings: { time: 'dotted-eighth' } } },
					},
				},
				{
					at: 'bridge',
					nearSeconds: null,
					say: null,
					hand: {
						ash: {
							kind: 'named',
							instrument: 'A1',
							tuning: null,
							capo: 0,
							leave: null,
							pack: null,
						},
						bo: { kind: 'none' },
					},
					boards: { bo: {} },
				},
			],
			starts: 'the drummer',
			count: 4,
			ends: 'segue',
			notes: 'long',
		});
	});

	it('keeps the shapes and the order of pedals that a song gives, and leaves out those it does not', () => {
		const songs = `  - {id: harbour, hands: {ash: {instrument: none}}, shapes: {ash: [022100, x32010], bo: 2210}, order: {ash: [drive, delay], bo: drive}}
  - {id: lantern}`;
		const [harbour, lantern] = showFrom(smallShow({ songs })).songs;
		expect(harbour?.parts).toEqual({ ash: { kind: 'none' } });
		// As chord diagrams are written: string 1 last, x for a string that is not played.
		expect(harbour?.shapes).toEqual({
			ash: [
				[0, 2, 2, 1, 0, 0],
				[null, 3, 2, 0, 1, 0],
			],
			bo: [[2, 2, 1, 0]],
		});
		expect(harbour?.order).toEqual({ ash: ['drive', 'delay'], bo: ['drive'] });
		expect(lantern).toEqual({
			id: 'lantern',
			title: 'lantern',
			lengthSeconds: null,
			tempo: null,
			parts: {},
			board: {},
			cues: [],
			starts: null,
			count: null,
			ends: 'stop',
			notes: null,
		});
	});

	it('asks for no features where a part names none', () => {
		const songs = '  - {id: harbour, hands: {ash: {needs: {kind: electric-6, sounds: drop D}}}}';
		expect(showFrom(smallShow({ songs })).songs[0]?.parts.ash).toMatchObject({
			features: [],
			prefer: null,
		});
	});

	it('marks the songs of an encore and keeps gaps and intervals', () => {
		expect(whole().set).toEqual([
			{ kind: 'song', song: 'lantern', gapSeconds: null, isEncore: false },
			{ kind: 'interval', seconds: 1200 },
			{ kind: 'song', song: 'lantern', gapSeconds: 5, isEncore: false },
			{ kind: 'song', song: 'lantern', gapSeconds: 90, isEncore: true },
			{ kind: 'song', song: 'lantern', gapSeconds: null, isEncore: true },
		]);
	});

	it('keeps what a pedal has that nobody asks for yet', () => {
		expect(whole().boards.bo).toEqual([
			{
				id: 'drive',
				name: 'Drive',
				power: {
					supply: null,
					output: null,
					milliamps: null,
					volts: 9,
					centre: null,
					battery: null,
				},
				extra: { scribbles: ['1', '2'] },
			},
			{ id: 'delay', name: 'delay', extra: {} },
		]);
	});

	it('takes the times of the instrument first, then its kind, then those for all', () => {
		expect(whole().instruments[0]?.times).toEqual({
			touchUp: 45,
			oneString: 60,
			twoStrings: 75,
			allStrings: 90,
			otherTuning: 120,
			wipe: 15,
			capo: 10,
			walk: 8,
			restring: 270,
			furtherString: 90,
			handOver: 12,
		});
	});

	it('cannot be changed, however deep', () => {
		expect(() =>
			Object.assign(whole().songs[0]?.cues[1]?.boards.bo ?? {}, { drive: null }),
		).toThrow(TypeError);
		expect(Object.isFrozen(whole().instruments[0]?.tuning.notes)).toBe(true);
	});

	it('survives being written as JSON and read again, as a journal does', () => {
		expect(JSON.parse(JSON.stringify(whole()))).toEqual(whole());
	});
});

describe('a show with hardly anything in it', () => {
	const small = () => showFrom(smallShow());

	it('is called after its file and gets the usual times', () => {
		expect(small()).toMatchObject({
			title: 'show',
			venue: null,
			date: null,
			startMinutes: null,
			curfewMinutes: null,
			referenceHertz: 440,
			staleAfterSeconds: 900,
			staleNewSeconds: 300,
			boards: {},
			times: {},
		});
	});

	it('has nobody and nothing but songs where the file names no more', () => {
		const show = showFrom('format: rackside/1\nsongs: [{id: one}]\nset: [one]\n');
		expect(show).toMatchObject({ techs: [], players: [], instruments: [], packs: [], stock: [] });
		for (const key of ['gauges', 'notes', 'rigs', 'supplies']) expect(show).not.toHaveProperty(key);
	});

	it('keeps notes on the show and the gauges that are at hand', () => {
		const more = 'show: {notes: load in by the side door}\ngauges: ["10", 46w]';
		expect(showFrom(smallShow({ more }))).toMatchObject({
			notes: 'load in by the side door',
			gauges: ['10', '46w'],
		});
	});

	// Common practice, no source; each can be changed in the file.
	it.each([
		[
			'electric-6',
			'E standard',
			'fixed',
			{
				touchUp: 45,
				oneString: 60,
				twoStrings: 75,
				allStrings: 90,
				otherTuning: 120,
				restring: 270,
			},
		],
		['electric-6', 'E standard', 'floating', { touchUp: 45, restring: 645, furtherString: 90 }],
		['electric-12', 'E standard', 'fixed', { touchUp: 180, oneString: 195, allStrings: 360 }],
		['acoustic-12', 'E standard', 'fixed', { touchUp: 180 }],
		['bass-4', 'E standard', 'fixed', { touchUp: 40, oneString: 55, allStrings: 80 }],
		['bass-5', 'B standard', 'fixed', { touchUp: 40 }],
		['mandolin-8', 'GDAE', 'fixed', { touchUp: 60 }],
		['banjo-5', 'standard', 'fixed', { touchUp: 45, wipe: 15, capo: 10, walk: 10, handOver: 15 }],
	])('%s in %s with a %s bridge', (kind, tuning, bridge, times) => {
		const more = `  - {id: X, kind: ${kind}, tuning: ${tuning}, bridge: ${bridge}}`;
		expect(showFrom(smallShow({ more })).instruments[3]?.times).toMatchObject(times);
	});
});

describe('what an instrument says of itself', () => {
	const withMore = (text: string) =>
		showFrom(smallShow({ more: `  - {id: X, kind: electric-6, tuning: half-step down${text}}` }))
			.instruments[3];
	const insteadOf = (text: string) => withMore(`, instead: ${text}`)?.instead;
	const halfDown = { name: 'half-step down', notes: ['Eb2', 'Ab2', 'Db3', 'Gb3', 'Bb3', 'Eb4'] };

	it('keeps its name, and nothing that the file does not say', () => {
		const { times, ...amber } = showFrom(smallShow()).instruments[0] ?? {};
		expect(times).toBeDefined();
		expect(amber).toEqual({
			id: 'A1',
			name: 'Amber',
			slot: '1',
			kind: 'electric-6',
			for: null,
			tuning: { name: 'E standard', notes: ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'] },
			scaleMillimetres: null,
			strings: [],
			bridge: 'fixed',
			features: [],
			pack: 'P1',
			case: null,
			spare: false,
			strung: { on: null, hours: null },
			leave: null,
			notes: null,
			pickups: null,
		});
		expect(withMore('')).toMatchObject({ id: 'X', name: 'X', slot: null, pack: null });
	});

	it('has as many strings as it is said to where its kind has no number of its own', () => {
		const more = '  - {id: X, kind: other, tuning: G3 D3 A2, strings: [10, 13, 17]}';
		expect(showFrom(smallShow({ more })).instruments[3]?.strings).toHaveLength(3);
	});

	it('keeps whose it is, and which one', () => {
		const text = ', serial: QS-01447, owner: Northern Lights, hired-from: Quay Hire';
		expect(withMore(text)).toMatchObject({
			serial: 'QS-01447',
			owner: 'Northern Lights',
			hiredFrom: 'Quay Hire',
		});
	});

	it('leaves out what the file does not give', () => {
		const plain = withMore('');
		expect(plain).toBeDefined();
		for (const key of ['instead', 'gear', 'recheckAfterSeconds', 'serial', 'owner', 'hiredFrom']) {
			expect(plain).not.toHaveProperty(key);
		}
	});

	it('keeps how long ready lasts on it, and which one it is', () => {
		expect(withMore(', recheck-after: 10m, gear: quay-amber')).toMatchObject({
			recheckAfterSeconds: 600,
			gear: 'quay-amber',
		});
	});

	it('keeps what is played instead, best first, nothing too', () => {
		expect(insteadOf('[A2, {instrument: A1, tuning: drop D, capo: 1}]')).toEqual([
			{ instrument: 'A2', tuning: null, capo: 0 },
			{
				instrument: 'A1',
				tuning: { name: 'drop D', notes: ['D2', 'A2', 'D3', 'G3', 'B3', 'E4'] },
				capo: 1,
			},
		]);
		expect(insteadOf('A2')).toEqual([{ instrument: 'A2', tuning: null, capo: 0 }]);
		expect(insteadOf('{instrument: A2}')).toEqual([{ instrument: 'A2', tuning: null, capo: 0 }]);
		expect(insteadOf('[]')).toEqual([]);
	});

	it('tells two apart whose ids and capos read alike', () => {
		const one = '{id: A, kind: electric-6, tuning: E standard}';
		const more = `  - {id: X, kind: electric-6, tuning: E standard, instead: [{instrument: A, capo: 11}, {instrument: A1, capo: 1}]}\n  - ${one}`;
		const show = showFrom(smallShow({ more }));
		expect(show.instruments[3]?.instead?.map(({ instrument }) => instrument)).toEqual(['A', 'A1']);
	});

	it('reads a tuning for the kind of what is played instead', () => {
		expect(insteadOf('[{instrument: C1, tuning: drop D}]')?.[0]?.tuning?.notes).toEqual([
			'D1',
			'A1',
			'D2',
			'G2',
		]);
	});

	it('puts a capo without a tuning on the tuning that the file gives', () => {
		expect(insteadOf('[{instrument: X, capo: 3}]')).toEqual([
			{ instrument: 'X', tuning: halfDown, capo: 3 },
		]);
		// Declared further down, it is known all the same.
		const text = smallShow({
			more: '  - {id: X, kind: electric-6, tuning: half-step down}',
		}).replace('{id: A1, ', '{id: A1, instead: [{instrument: X, capo: 1}], ');
		expect(showFrom(text).instruments[0]?.instead).toEqual([
			{ instrument: 'X', tuning: halfDown, capo: 1 },
		]);
	});

	it('takes another tuning or capo of itself', () => {
		expect(insteadOf('[{instrument: X, tuning: drop D}, {instrument: X, capo: 1}]')).toHaveLength(
			2,
		);
	});

	it("hands over in its own time, else its kind's, else that of all, else in 15 s", () => {
		const more = `  - {id: X, kind: electric-6, tuning: E standard, times: {hand-over: 5s}}
times: {all: {hand-over: 10s}, bass-4: {hand-over: 8s}}`;
		const seconds = (text: string) =>
			showFrom(text).instruments.map(({ id, times }) => `${id} ${times.handOver}`);
		expect(seconds(smallShow({ more }))).toEqual(['A1 10', 'A2 10', 'C1 8', 'X 5']);
		expect(seconds(smallShow())).toEqual(['A1 15', 'A2 15', 'C1 15']);
	});
});

describe('the clock of a show', () => {
	it.each([
		['{start: "20:30", curfew: "22:45"}', 1230, 1365],
		['{start: "22:00", curfew: "00:30"}', 1320, 1470],
		['{curfew: "01:00"}', null, 1500],
		['{curfew: "23:00"}', null, 1380],
		['{curfew: "05:59"}', null, 1799],
		['{curfew: "06:00"}', null, 360],
		['{start: "22:00", curfew: "22:00"}', 1320, 1320],
		['{start: "9:05"}', 545, null],
	])('%s', (text, startMinutes, curfewMinutes) => {
		const show = showFrom(smallShow({ more: `show: ${text}` }));
		expect([show.startMinutes, show.curfewMinutes]).toEqual([startMinutes, curfewMinutes]);
	});

	// The Gregorian calendar: ISO 8601 refers to it.
	it.each(['2024-02-29', '2000-02-29', '2026-12-31'])('knows %s', (date) => {
		expect(showFrom(smallShow({ more: `show: {date: ${date}}` })).date).toBe(date);
	});

	it.each([
		'2026-02-29',
		'1900-02-29',
		'2026-04-31',
		'2026-13-01',
		'2026-00-10',
		'2026-01-00',
		'12.6.2026',
	])('does not know %s', (date) => {
		expect(linesFrom(smallShow({ more: `show: {date: ${date}}` }))[0]).toMatch(/date is not a day/);
	});
});

describe("the players' letters", () => {
	const keys = (players: string, slots: string) => {
		const text = `format: rackside/1
players: [${players}]
instruments: [${[...slots].map((slot, i) => `{id: I${i}, slot: "${slot}", kind: bass-4, tuning: E standard}`).join(', ')}]
songs: [{id: one}]
set: [one]
`;
		return showFrom(text).players.map(({ key }) => key);
	};

	it.each([
		['the first letter of the name', '{id: ash, name: Ash}, {id: bo, name: Bo}', '12', ['a', 'b']],
		[
			'the next one when the first is taken',
			'{id: x, name: Ash}, {id: y, name: Astrid}',
			'12',
			['a', 's'],
		],
		['the next one when the first is a slot', '{id: x, name: Ash}', 'AS', ['h']],
		[
			'a letter that another asks for is left to them',
			'{id: x, name: Ash}, {id: y, name: Bo, key: A}',
			'1',
			['s', 'a'],
		],
		[
			'any free letter when the name has none',
			'{id: x, name: "99"}, {id: y, name: Å}',
			'1',
			['a', 'b'],
		],
		['the id where there is no name', '{id: kit}', '1', ['k']],
	])('%s', (_, players, slots, expected) => {
		expect(keys(players, slots)).toEqual(expected);
	});
});

describe('included files', () => {
	const gear = `instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard}
players: [{id: ash, name: Ash}]
times: {all: {walk: 5s}, bass-4: {wipe: 20s}}
`;
	const night = `format: rackside/1
include: [gear.yaml, songs.yaml]
times: {all: {wipe: 10s}}
songs:
  - {id: b, hands: {ash: A1}}
set: [a, b]
`;

	it('bring lists that come before the own ones, and maps joined key by key', () => {
		const show = showFrom({
			'show.yaml': night,
			'gear.yaml': gear,
			'songs.yaml': 'songs: [{id: a}]\n',
		});
		expect(show.songs.map(({ id }) => id)).toEqual(['a', 'b']);
		expect(show.times).toEqual({ all: { walk: 5, wipe: 10 }, 'bass-4': { wipe: 20 } });
	});

	it('are asked for beside the main file, wherever that is', () => {
		const asked: string[] = [];
		const folder = {
			'tour/show.yaml': night,
			'tour/gear.yaml': gear,
			'tour/songs.yaml': 'songs: [{id: a}]',
		};
		const load = loaderOf(folder);
		const { problems } = readShow((path) => {
			asked.push(path);
			return load(path);
		}, 'tour/show.yaml');
		expect(problems).toEqual([]);
		expect(asked).toEqual(['tour/show.yaml', 'tour/gear.yaml', 'tour/songs.yaml']);
	});

	it('may be named alone, without brackets', () => {
		const show = showFrom({
			'show.yaml': `format: rackside/1\ninclude: rest.yaml\n`,
			'rest.yaml': `${gear}songs: [{id: a}]\nset: [a]\n`,
		});
		expect(show.set).toHaveLength(1);
	});

	it('have their problems said in their own file and line, the main file first', () => {
		const lines = linesFrom({
			'show.yaml': night.replace('[a, b]', '[a, c]'),
			'gear.yaml': gear.replace('electric-6', 'electric-7'),
			'songs.yaml': 'songs:\n  - {id: a, lenght: "3:00"}\n',
		});
		expect(lines.map((line) => line.split(': ')[0])).toEqual([
			'show.yaml:6:10',
			'gear.yaml:2:31',
			'songs.yaml:2:13',
		]);
	});

	it('that are missing make no other problem than that', () => {
		expect(linesFrom({ 'show.yaml': night, 'songs.yaml': 'songs: [{id: a}]\n' })).toEqual([
			'show.yaml:2:11: there is no such file (found gear.yaml). Check the name and the folder.',
		]);
	});

	it('count into one size of 1 MB in all', () => {
		const long = `${gear}# ${'x'.repeat(600_000)}\n`;
		const lines = linesFrom({
			'show.yaml': night,
			'gear.yaml': long,
			'songs.yaml': `# ${'x'.repeat(600_000)}`,
		});
		expect(lines).toEqual([expect.stringContaining('songs.yaml: the file is too large')]);
	});
});

describe('problems', () => {
	it('are told once each, in the order of the file, with nothing that follows from them', () => {
		const lines = linesFrom(`format: rackside/1
players:
  - {id: ash, key: 5}
instruments:
  - {id: A1, slot: "1", kind: elektric-6, tuning: E standard}
  - {id: C1, slot: "1", kind: bass-4, tuning: open G}
songs:
  - id: harbour
    lenght: "4:00"
    hands: {ash: A1, cleo: {instrument: C1, tuning: drop D}}
  - {id: lantern, hands: {ash: {instrument: A1, tuning: drop D}}}
set: [harbour, lantern, gravel]
`);
		expect(lines.map((line) => line.replace(/ \(.*/, ''))).toEqual([
			'show.yaml:3:20: key is not a key that a player can have',
			'show.yaml:5:31: kind is not a word that is known here',
			'show.yaml:6:47: tuning is not a tuning of this kind of instrument',
			'show.yaml:9:5: lenght is not a key that is known here',
			'show.yaml:10:22: there is no player cleo',
			'show.yaml:12:25: there is no song gravel',
		]);
	});

	it('stay readable in number', () => {
		const songs = Array.from({ length: 400 }, (_, i) => `  - {id: s${i}, tempo: fast}`).join('\n');
		const lines = linesFrom(smallShow({ songs, set: '[s0]' }));
		expect(lines).toHaveLength(101);
		expect(lines[100]).toBe('show.yaml: there are 300 more problems. Correct these first.');
	});

	it('show what a file holds without letting it act on the terminal', () => {
		const nasty = '\\e]0;owned\\a\\e[2J\\u202Etxt\\u200B\\u009b31m';
		const lines = [
			...linesFrom(smallShow({ set: `["${nasty}"]` })),
			...linesFrom(smallShow({ songs: `  - {id: harbour, "${nasty}": 1}` })),
			...linesFrom(smallShow({ songs: `  - {id: "${nasty}"}` })),
			...linesFrom(smallShow({ songs: `  - {id: harbour, hands: {"${nasty}": A1}}` })),
			...linesFrom(smallShow({ more: `include: ["${nasty}"]` })),
			...linesFrom(smallShow({ more: `abbreviations: {"${nasty}": nothing}` })),
			...linesFrom(smallShow({ songs: `  - {id: harbour, cues: [{at: x, "${nasty}": off}]}` })),
		];
		expect(lines.length).toBeGreaterThanOrEqual(7);
		for (const line of lines) expect(line).not.toMatch(/[\p{Cc}\p{Bidi_Control}\u200b]/u);
		expect(lines[0]).toContain('␛]0;owned␇␛[2J·txt··31m');
	});

	it('do not keep a title from being shown with what is invisible in it made visible', () => {
		const show = showFrom(
			smallShow({ songs: '  - {id: harbour, title: "Har\\e[31mbour\\u202E"}' }),
		);
		expect(show.songs[0]?.title).toBe('Har␛[31mbour·');
	});
});

describe('ids', () => {
	it('may have letters of any script, digits and - _ .', () => {
		const show = showFrom(smallShow({ songs: '  - {id: ström_2.b-x}', set: '[ström_2.b-x]' }));
		expect(show.songs[0]?.id).toBe('ström_2.b-x');
	});

	it('are the same with blanks around them', () => {
		const show = showFrom(smallShow({ songs: '  - {id: " gravel "}', set: '[gravel, " gravel"]' }));
		expect(show.set.map((item) => item.kind === 'song' && item.song)).toEqual(['gravel', 'gravel']);
		expect(show.songs[0]?.id).toBe('gravel');
	});

	it('are the same however an accent was typed', () => {
		const show = showFrom(smallShow({ songs: '  - {id: "r\u00e9"}', set: '["re\u0301"]' }));
		expect(show.set[0]).toMatchObject({ song: 'r\u00e9' });
	});

	it.each(['a b', '-a', 'a/b', 'a\u200bb', '"a\\u202eb"', `${'x'.repeat(41)}`, '"[x]"'])(
		'cannot be %s',
		(id) => {
			expect(linesFrom(smallShow({ songs: `  - {id: ${id}}`, set: `[${id}]` }))).toEqual([
				expect.stringContaining('id is not one that can be used'),
			]);
		},
	);
});

describe('slots', () => {
	it.each(['1', '9', 's', '[', ';', ',', '.', '/', '`', '\\', "'", 'ö'])('may be %s', (slot) => {
		const quoted = JSON.stringify(slot);
		const more = `  - {id: X, slot: ${quoted}, kind: bass-4, tuning: E standard}`;
		const text = smallShow({ more }).replace('slot: "1", ', '');
		expect(showFrom(text).instruments[3]?.slot).toBe(slot);
	});

	it.each(['0', '-', '=', ' ', '!', '?', 'ab', '10', '\u0301', '\u200b', '😀', ''])(
		'cannot be "%s"',
		(slot) => {
			const more = `  - {id: X, slot: ${JSON.stringify(slot)}, kind: bass-4, tuning: E standard}`;
			expect(linesFrom(smallShow({ more }))[0]).toMatch(/slot is not a key that a place/);
		},
	);
});
