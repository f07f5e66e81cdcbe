// The moments of a night at which somebody has seconds, each with the keys that it takes on the club
// show. How many are allowed is common practice, no source.

import type { State } from '../scenarios/play.ts';

/** What a moment shows: the JSON state, and the screen at 80×24 as text. */
export type Seen = { readonly state: State; readonly screen: string };

export type Story = {
	readonly moment: string;
	/** The script up to the moment. */
	readonly before: string;
	/** The show clock at the moment. */
	readonly at: string;
	/** What is pressed: names of keys, or letters to type. None: it is to be seen without a key. */
	readonly keys: readonly string[];
	readonly most: number;
	/** Whether what was wanted is there after the keys; `before` them it must not be where keys are pressed. */
	readonly isDone: (seen: Seen) => boolean;
};

const READY = '-01:00 !ready\n';
const OPENED = `${READY}00:00 space\n`;
/** In the second song, with drop D in Ash's hands. */
const SECOND = `${OPENED}03:58 d\n04:15 space\n`;
const AFTER_BREAK = `${OPENED}01:00 b 1\n01:02 enter\n`;

const todoOf = ({ state }: Seen, instrument: string): State =>
	state.todo.find((one: State) => one.instrument === instrument);
const hasWarning = ({ state }: Seen, code: string): boolean =>
	state.warnings.some((one: State) => one.code === code);

export const STORIES: readonly Story[] = [
	{
		moment: 'a song rings out: what goes to whom',
		before: OPENED,
		at: '03:40',
		keys: [],
		most: 0,
		isDone: ({ state, screen }) =>
			state.players.ash.next.instrument === 'A4' &&
			/ASH/.test(screen) &&
			/4 Anchor for 2 Lantern/.test(screen) &&
			/READY/.test(screen) &&
			/check volume 10/.test(screen),
	},
	{
		moment: 'a song rings out: handed over, the next song on',
		before: `${OPENED}04:00 d\n`,
		at: '04:15',
		keys: ['space'],
		most: 1,
		isDone: ({ state }) => state.song.id === 'lantern' && state.players.ash.holds === 'A4',
	},
	{
		moment: 'a string breaks, several play: the best ready backup and its slot',
		before: OPENED,
		at: '01:00',
		keys: ['b', '1'],
		most: 2,
		isDone: ({ state, screen }) =>
			state.standIns.ash?.[0]?.instrument === 'S1' &&
			/^ASH +DOWN .*STRING BREAK 1 Amber +READY, 0:10 to hand over$/m.test(screen) &&
			/^ +TAKE +S Spare +0:10 .*same tuning, ready/m.test(screen),
	},
	{
		moment: 'and it is in hands: the break and the swap are logged',
		before: OPENED,
		at: '01:00',
		keys: ['b', '1', 'enter'],
		most: 3,
		isDone: ({ state, screen }) =>
			state.players.ash.holds === 'S1' &&
			state.incidents[0]?.kind === 'string-break' &&
			state.incidents[0]?.standIn === 'S1' &&
			/^LAST .*Ash has S Spare, E standard, backup for 1 Amber/m.test(screen),
	},
	{
		moment: 'a string breaks, one plays: the best ready backup and its slot',
		before: `${READY}-00:30 x 1\n`,
		at: '-00:20',
		keys: ['b'],
		most: 1,
		isDone: ({ state, screen }) =>
			state.standIns.ash?.[0]?.instrument === 'S1' && /TAKE +S Spare/.test(screen),
	},
	{
		moment: 'and it is in hands',
		before: `${READY}-00:30 x 1\n`,
		at: '-00:20',
		keys: ['b', 'enter'],
		most: 2,
		isDone: ({ state }) =>
			state.players.ash.holds === 'S1' && state.incidents[0]?.kind === 'string-break',
	},
	{
		moment: 'a wrong key: taken back',
		before: `${OPENED}01:00 d\n`,
		at: '01:02',
		keys: ['u'],
		most: 1,
		isDone: ({ state }) => state.phase === 'song' && state.song.id === 'harbour',
	},
	{
		moment: 'an instrument comes back: what it must become, by when',
		before: SECOND,
		at: '04:20',
		keys: [],
		most: 0,
		isDone: (seen) =>
			todoOf(seen, 'A1')?.job === 'touch-up' &&
			/1 Amber .*TOUCH UP/.test(seen.screen) &&
			/1 Amber .*start within +2:2\d/.test(seen.screen),
	},
	{
		moment: 'a song called that is not next',
		before: SECOND,
		at: '05:00',
		keys: ['j', 'k', 'e', 's', 'enter'],
		most: 5,
		isDone: ({ state }) => state.players.ash.next.song === 'kestrel' && state.song.id === 'lantern',
	},
	{
		moment: 'a song called that is not on the list: what changes, before it counts',
		before: SECOND,
		at: '05:00',
		keys: ['j', 'o', 'l', 'd'],
		most: 4,
		isDone: ({ state, screen }) =>
			/> Old Mill/.test(screen) &&
			/Bo: 7 Rowan, capo 3: work 0:55, handed in/.test(screen) &&
			state.players.bo.next.song === 'tissel',
	},
	{
		moment: 'and it comes next',
		before: SECOND,
		at: '05:00',
		keys: ['j', 'o', 'l', 'd', 'enter'],
		most: 5,
		isDone: ({ state }) => state.players.bo.next.song === 'oldmill' && state.song.id === 'lantern',
	},
	{
		moment: 'a hand-over near: the instrument has gone stale',
		before: `${READY}00:00 space\n`,
		at: '16:00',
		keys: [],
		most: 0,
		isDone: (seen) => hasWarning(seen, 'stale') && /RECHECK/.test(seen.screen),
	},
	{
		moment: 'a hand-over near: the instrument is in another tuning',
		before: `${OPENED}02:00 c 4\n02:02 "E standard" enter\n`,
		at: '02:45',
		keys: [],
		most: 0,
		isDone: (seen) =>
			todoOf(seen, 'A4')?.job === 'retune' && /4 Anchor .*RETUNE 1:00/.test(seen.screen),
	},
	{
		moment: 'a hand-over near: its capo is not on',
		before: `${OPENED}02:30 j "old" enter\n`,
		at: '02:45',
		keys: [],
		most: 0,
		isDone: ({ screen }) => /7 Rowan .*TOUCH UP, CAPO ON 3, 0:55/.test(screen),
	},
	{
		moment: 'the laptop was cut off: same song, cue and hands',
		before: `${OPENED}00:40 space\n01:00 b 1\n01:02 enter\n01:20 !kill\n`,
		at: '01:25',
		keys: [],
		most: 0,
		isDone: ({ state }) =>
			state.song.id === 'harbour' && state.cue.at === 'Ch1' && state.players.ash.holds === 'S1',
	},
	{
		moment: 'the wrong instrument left the rack: said at once',
		before: SECOND,
		at: '04:30',
		keys: ['x', '2'],
		most: 2,
		isDone: (seen) =>
			seen.state.players.ash.holds === 'A2' &&
			hasWarning(seen, 'wrong-tuning') &&
			/^WRONG .*2 Ember/m.test(seen.screen),
	},
	{
		moment: 'an instrument is tuned: marked ready',
		before: SECOND,
		at: '05:30',
		keys: ['t', '1'],
		most: 2,
		isDone: ({ state }) => state.instruments.A1.ready,
	},
	{
		moment: 'the first of the list is tuned: marked ready',
		before: SECOND,
		at: '05:30',
		keys: ['t', 'enter'],
		most: 2,
		isDone: ({ state }) => state.instruments.A1.ready,
	},
	{
		moment: 'several change together: who, and whether the gap is long enough',
		before: `${OPENED}${steps(['04:00', '08:00', '12:00', '16:30', '20:30'])}`,
		at: '25:20',
		keys: [],
		most: 0,
		isDone: ({ state, screen }) =>
			state.players.ash.next.instrument === 'A2' &&
			state.players.cleo.next.instrument === 'C2' &&
			/Ember/.test(screen) &&
			/CLEO .*9 Cellar/.test(screen) &&
			/THEN .*7 Weather Eye, .*gap 0:45/.test(screen) &&
			!/Before Weather Eye/.test(screen),
	},
	{
		moment: 'a song is skipped',
		before: SECOND,
		at: '04:30',
		keys: ['right'],
		most: 1,
		isDone: ({ state }) => state.song.id === 'gravel',
	},
	{
		moment: 'two songs are run together',
		before: `${SECOND}07:50 d\n`,
		at: '07:51',
		keys: ['space'],
		most: 1,
		isDone: ({ state }) => state.song.id === 'gravel' && state.phase === 'song',
	},
	{
		moment: 'a spare is in use: what is late now, and by when the other must be restrung',
		before: `${OPENED}01:00 b 1\n01:02 enter\n`,
		at: '01:10',
		keys: [],
		most: 0,
		isDone: (seen) =>
			todoOf(seen, 'A1')?.job === 'restring' &&
			/1 Amber +x RESTRING.*start within +1:[45]\d/.test(seen.screen),
	},
	{
		moment: 'every backup is out: which songs are short of an instrument, by how much',
		before: `${OPENED}01:00 f 3 enter\n01:05 f s enter\n01:10 f 2 enter\n01:15 f d enter\n01:20 f 4 enter\n`,
		at: '01:30',
		keys: [],
		most: 0,
		isDone: (seen) =>
			hasWarning(seen, 'late') &&
			/ASH .*1 Amber for 2 Lantern .*IN HANDS, RETUNE 1:15/.test(seen.screen) &&
			/WATCH .*1 Amber is 1:15 short for Lantern; backup 7 Rowan/.test(seen.screen),
	},
	{
		moment: 'the light or the weather shifts: everything to be checked again',
		before: OPENED,
		at: '02:00',
		keys: ['a', 'enter'],
		most: 2,
		isDone: ({ state }) =>
			Object.values(state.instruments).every((one: State) => one.place === 'hands' || !one.ready),
	},
	{
		moment: 'and it was a slip: as ready as before',
		before: `${OPENED}02:00 a enter\n`,
		at: '02:05',
		keys: ['u'],
		most: 1,
		isDone: ({ state }) => state.instruments.A4.ready,
	},
	{
		moment: 'a cue from offstage is near: now and next as whole boards',
		before: OPENED,
		at: '00:30',
		keys: [],
		most: 0,
		isDone: ({ screen }) => /Ch1.*DRIVE on/i.test(screen),
	},
	{
		moment: 'two cues were missed: at the right section',
		before: OPENED,
		at: '02:00',
		keys: ['space', 'space'],
		most: 2,
		isDone: ({ state }) => state.cue.at === 'V2',
	},
	{
		moment: 'and what the board should be on there',
		before: `${OPENED}00:40 space space space\n`,
		at: '02:00',
		keys: [],
		most: 0,
		isDone: ({ screen }) =>
			/SONG .*Harbour {2}Ch2/.test(screen) && /BO BOARD {2}DRIVE, BOOST on, rest off/.test(screen),
	},
	{
		moment: 'something happens, hands full: a mark now',
		before: OPENED,
		at: '01:30',
		keys: ['i'],
		most: 1,
		isDone: ({ state }) => state.incidents.length === 1,
	},
	{
		moment: 'and its words later: third string',
		before: AFTER_BREAK,
		at: '01:40',
		keys: ['e', '3', 'enter'],
		most: 3,
		isDone: ({ state }) => state.incidents[0]?.string === 3,
	},
	{
		moment: 'blackout: the screen dark',
		before: OPENED,
		at: '02:00',
		keys: ['z'],
		most: 1,
		isDone: ({ screen }) => screen.trim() === 'z',
	},
	{
		moment: 'the light is back: the screen at the same place',
		before: `${OPENED}00:40 space\n02:00 z\n`,
		at: '02:30',
		keys: ['z'],
		most: 1,
		isDone: ({ screen }) => /SONG .*Harbour {2}Ch1/.test(screen),
	},
	{
		moment: 'a towel on the keyboard: locked',
		before: OPENED,
		at: '02:00',
		keys: ['l'],
		most: 1,
		isDone: ({ screen }) => /LOCKED/i.test(screen),
	},
	{
		moment: 'a towel lies on it all the same: no harm',
		before: `${OPENED}01:50 l\n01:52 d b 1 enter x 2 space right\n`,
		at: '02:00',
		keys: [],
		most: 0,
		isDone: ({ state }) =>
			state.song.id === 'harbour' &&
			state.cue.at === 'start' &&
			state.players.ash.holds === 'A1' &&
			state.incidents.length === 0,
	},
	{
		moment: 'the towel is off: unlocked',
		before: `${OPENED}01:50 l\n`,
		at: '02:00',
		keys: ['l', 'esc'],
		most: 2,
		isDone: ({ screen }) => !/LOCKED/i.test(screen),
	},
	{
		moment: 'wireless trouble: who has which pack on which channel',
		before: OPENED,
		at: '02:00',
		keys: ['w', 'a'],
		most: 2,
		isDone: ({ screen }) => /1 P1 {2}11 {2}Ash/.test(screen) && /3 P3 {2}13 {2}Bo/.test(screen),
	},
	{
		moment: 'wireless trouble: another pack',
		before: OPENED,
		at: '02:00',
		keys: ['w', 'a', '2'],
		most: 3,
		isDone: ({ screen }) => /Ash wears pack P2/.test(screen),
	},
	{
		moment: 'a guitar is silent: what to do with the hands now',
		before: OPENED,
		at: '01:00',
		keys: ['n', 'a', 's'],
		most: 3,
		isDone: ({ screen }) =>
			/NO SOUND {2}Ash.*NOW {2}Swap 1 Amber for S Spare, pack too\..*10 s/s.test(screen),
	},
	{
		moment: 'a guitar is silent: heard again, and logged',
		before: `${OPENED}01:00 n a s\n`,
		at: '01:20',
		keys: ['1'],
		most: 1,
		isDone: ({ state }) => state.incidents[0]?.silence >= 20 && state.players.ash.holds === 'S1',
	},
	{
		moment: 'a guitar is silent: the backup in hands',
		before: OPENED,
		at: '01:00',
		keys: ['n', 'a', 's', 'enter'],
		most: 4,
		isDone: ({ state }) => state.players.ash.holds === 'S1' && state.faults[0].open,
	},
	{
		moment: 'no spare is ready: every choice with its seconds, nothing forced',
		before: '-01:00 t 1\n-00:50 t 5\n-00:40 t 8\n00:00 space\n',
		at: '01:00',
		keys: ['b', '1'],
		most: 2,
		isDone: ({ state, screen }) =>
			state.players.ash.holds === 'A1' &&
			state.standIns.ash[0].readyIn > 10 &&
			/0 play on/.test(screen),
	},
	{
		moment: 'the list changes at soundcheck: a song one place later',
		before: READY,
		at: '-00:40',
		keys: ['tab', 'tab', 'down', 'down', 'g', 'down', 'enter'],
		most: 10,
		isDone: ({ screen }) => /Last Ferry.*Gravel/s.test(screen),
	},
	{
		moment: 'the list changes at soundcheck: a song dropped',
		before: READY,
		at: '-00:40',
		keys: ['tab', 'tab', 'down', 'k', 'enter'],
		most: 10,
		isDone: ({ screen }) => /Lantern.*dropped/i.test(screen),
	},
	{
		moment: 'the list changes at soundcheck: a song added',
		before: READY,
		at: '-00:40',
		keys: ['tab', 'tab', 'p', 'o', 'l', 'd', 'enter'],
		most: 10,
		isDone: ({ screen }) => /1 Harbour.*2 Old Mill.*3 Lantern/s.test(screen),
	},
	{
		moment: 'five minutes before walk-on: what is not ready, worst first',
		before: '-10:00 t 5\n-09:00 t 8\n',
		at: '-05:00',
		keys: [],
		most: 0,
		isDone: (seen) => seen.state.todo[0]?.instrument === 'A1' && /1 Amber /.test(seen.screen),
	},
];

/** What is asked for on the command line, before the doors or after load-out. */
export type AskedFor = {
	readonly moment: string;
	/** As typed after `rackside`. */
	readonly typed: string;
	/** The night of `tests/journals` that it is asked of. */
	readonly night: string;
	readonly isDone: (printed: string) => boolean;
};

const CLOSED = '2026-11-club';
const UNDER_WAY = '2026-12-01-club-open';

export const ASKED_FOR: readonly AskedFor[] = [
	{
		moment: 'before the doors: a sheet that works on paper when the laptop does not',
		typed: 'plan SHOW --sheet',
		night: CLOSED,
		isDone: (printed) =>
			/^ {2}2 Lantern .*\n.*\n {4}\[ \] ASH on 4 Anchor drop D, off 1 Amber/m.test(printed),
	},
	{
		moment: 'the list changes at soundcheck: the sheet again, as it is tonight',
		typed: 'plan SHOW --sheet --tonight',
		night: UNDER_WAY,
		isDone: (printed) => /tonight's list/.test(printed) && /^ {2}1 Harbour /m.test(printed),
	},
	{
		moment: 'after load-out: the report, to be edited',
		typed: 'report',
		night: CLOSED,
		isDone: (printed) => /## Songs/.test(printed) && /## Incidents/.test(printed),
	},
	{
		moment: 'after load-out: the incidents alone, as a table',
		typed: 'report --as incidents',
		night: CLOSED,
		isDone: (printed) => printed.includes('"Lantern","string break","Ash","4 Anchor"'),
	},
	{
		moment: 'next morning: what to restring, repair and buy',
		typed: 'report',
		night: CLOSED,
		isDone: (printed) => /## For tomorrow\n\n- 7 Rowan: restring/.test(printed),
	},
];

/** Each song ended by `d` at its time and the next begun 15 seconds later, ready marks renewed. */
function steps(ends: readonly string[]): string {
	return ends
		.map((end) => {
			const [minutes = 0, seconds = 0] = end.split(':').map(Number);
			const begin = minutes * 60 + seconds + 15;
			const clock = `${String(Math.floor(begin / 60)).padStart(2, '0')}:${String(begin % 60).padStart(2, '0')}`;
			return `${end} d\n${clock} space\n`;
		})
		.join('');
}
