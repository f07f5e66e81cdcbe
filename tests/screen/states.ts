// States of an invented night to draw: made from a small show and the machines, with a plan written by
// hand, so that what is drawn depends on nothing else.

import { advance } from '../../machines/advance.ts';
import {
	type InstrumentEvent,
	type InstrumentState,
	instrumentLaw,
} from '../../machines/instrument.ts';
import { boardLaw } from '../../machines/rig.ts';
import { type Ahead, showLaw } from '../../machines/show.ts';
import { advanceSong, songBegun } from '../../machines/song-machine.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { ACTIONS } from '../../src/keys/actions.ts';
import { shownKeys } from '../../src/keys/key-choices.ts';
import { lineOf } from '../../src/keys/text-line.ts';
import type { PlannedHandOver, Section, Slot, StandInReason, Work } from '../../src/plan/plan.ts';
import type { PlayerPreview } from '../../src/plan/what-if/change-preview.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { EMPTY_HANDS, openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import type { Instrument, Part, Show, Song } from '../../src/showfile/show.ts';
import type { InstrumentKind } from '../../src/tuning/kind.ts';
import { tuningCalled } from '../../src/tuning/tuning.ts';
import { ACTION_WORDS, FOOTER } from '../../src/words/actions.ts';
import { asSentence } from '../../src/words/as-sentence.ts';
import { differenceFirst } from '../../src/words/backup-reasons.ts';
import { capoWords } from '../../src/words/capo-words.ts';
import { entryWords } from '../../src/words/entry-words.ts';
import { jumpWords } from '../../src/words/jump-words.ts';
import {
	ANSWERS,
	breakTitle,
	checkFirst,
	handOverLine,
	handOverTitle,
	JUMP_TITLE,
	OR,
	TAKE,
} from '../../src/words/questions.ts';
import { warningWords } from '../../src/words/warnings.ts';

const tuning = (name: string, kind: InstrumentKind = 'electric-6') =>
	tuningCalled(name, kind) ?? { name, notes: name.split(' ') };

function instrument(slot: string | null, name: string, rest: Partial<Instrument> = {}): Instrument {
	return {
		id: `i${slot ?? name}`,
		name,
		slot,
		kind: 'electric-6',
		for: null,
		tuning: tuning('E standard', rest.kind),
		scaleMillimetres: null,
		strings: [],
		bridge: 'fixed',
		features: [],
		pack: null,
		case: null,
		spare: false,
		strung: { on: null, hours: 5 },
		times: {
			touchUp: 45,
			oneString: 60,
			twoStrings: 75,
			allStrings: 90,
			otherTuning: 120,
			wipe: 15,
			capo: 10,
			walk: 10,
			restring: 270,
			furtherString: 60,
			handOver: 15,
		},
		leave: null,
		notes: null,
		pickups: null,
		...rest,
	};
}

const named = (id: string, name: string | null = null, capo = 0): Part => ({
	kind: 'named',
	instrument: id,
	tuning: name === null ? null : tuning(name),
	capo,
	leave: null,
	pack: null,
});

function song(id: string, title: string, rest: Partial<Song> = {}): Song {
	return {
		id,
		title,
		lengthSeconds: 225,
		tempo: null,
		parts: {},
		board: {},
		cues: [],
		starts: null,
		count: null,
		ends: 'stop',
		notes: null,
		...rest,
	};
}

const titles = [
	'Harbour',
	'Cinder',
	'Tideway',
	'Marrow',
	'Saltmarsh',
	'Oldmill',
	'Windrow',
	'Lamplight',
];

/** Three players, eleven instruments, ten songs with an interval and an encore. */
const show: Show = {
	title: 'Quay Street, second night',
	venue: null,
	date: '2026-06-12',
	startMinutes: 20 * 60 + 30,
	curfewMinutes: 22 * 60 + 45,
	referenceHertz: 440,
	staleAfterSeconds: 900,
	staleNewSeconds: 300,
	techs: [],
	players: [
		{ id: 'ash', name: 'Ash', plays: 'guitar', tech: null, key: 'a' },
		{ id: 'bo', name: 'Bo', plays: 'guitar', tech: null, key: 'b' },
		{ id: 'cleo', name: 'Cleo', plays: 'bass', tech: null, key: 'c' },
	],
	instruments: [
		instrument('1', 'Amber', { pack: 'P1' }),
		instrument('2', 'Birch', { tuning: tuning('half-step down') }),
		instrument('3', 'Clovet', { bridge: 'floating' }),
		instrument('4', 'Dace', {
			tuning: tuning('drop D'),
			leave: 'volume 7, neck pickup',
			pack: 'P2',
		}),
		instrument('5', 'Elder', { kind: 'acoustic-6' }),
		instrument('6', 'Fern'),
		instrument('7', 'Briar', { kind: 'acoustic-6' }),
		instrument('8', 'Granite', { kind: 'bass-4' }),
		instrument('9', 'Heron', { kind: 'baritone-6', tuning: tuning('B standard', 'baritone-6') }),
		instrument('r', 'Rook', { tuning: tuning('DADGAD') }),
		instrument('s', 'Spare', { spare: true }),
	],
	songs: [
		...titles.map((title) => song(title.toLowerCase(), title)),
		song('gravel', 'Gravel', {
			board: { bo: {} },
			ends: 'ring',
			cues: [
				{ at: 'V2', nearSeconds: 60, say: null, hand: {}, boards: { bo: {} } },
				{
					at: 'Ch2',
					nearSeconds: 90,
					say: 'eight bars',
					hand: {},
					boards: {
						bo: { drive: { on: true }, delay: { on: true, settings: { time: 'dotted-eighth' } } },
					},
				},
			],
		}),
		song('lantern', 'Lantern', {
			parts: { ash: named('i4', 'drop D'), bo: named('i7', null, 3) },
			starts: 'ash',
			count: 4,
		}),
	],
	set: [
		...['harbour', 'cinder', 'tideway', 'marrow', 'saltmarsh', 'gravel', 'lantern'].map(
			(id) =>
				({
					kind: 'song',
					song: id,
					gapSeconds: id === 'lantern' ? 30 : null,
					isEncore: false,
				}) as const,
		),
		{ kind: 'interval', seconds: 1200 },
		{ kind: 'song', song: 'oldmill', gapSeconds: null, isEncore: false },
		{ kind: 'song', song: 'windrow', gapSeconds: null, isEncore: false },
		{ kind: 'song', song: 'lamplight', gapSeconds: null, isEncore: true },
	],
	boards: {
		bo: [
			{ id: 'drive', name: 'Drive', extra: {} },
			{ id: 'boost', name: 'Boost', extra: {} },
			{ id: 'delay', name: 'Delay', extra: {} },
		],
	},
	packs: [{ id: 'P1', name: null, channel: '11' }],
	times: {},
	stock: [],
	abbreviations: {},
};

/** 20:30 on the show's day, in UTC. */
const ZERO_MS = Date.UTC(2026, 5, 12, 20, 30);
export const at = (minutes: number, seconds = 0) => ZERO_MS + (minutes * 60 + seconds) * 1000;

function moved(state: InstrumentState, ...events: readonly InstrumentEvent[]): InstrumentState {
	return events.reduce((before, event) => {
		const after = advance(instrumentLaw, before, event);
		if (after === null) throw new Error(`${before.value} does not take ${event.type}`);
		return after;
	}, state);
}

const footer = [
	{ key: 'PgDn/space', words: 'Ch2' },
	{ key: 'enter', words: FOOTER.handed },
	{ key: 't', words: FOOTER.ready },
	{ key: 'b', words: FOOTER.break },
	{ key: 'd', words: FOOTER.done },
	{ key: 'j', words: FOOTER.jump },
	{ key: 'x', words: ACTION_WORDS.exchange.name },
	{ key: 'u', words: FOOTER.undo },
	{ key: 'z', words: FOOTER.dark },
	{ key: '?', words: FOOTER.all },
];

const saved = {
	state: 'saved',
	isSaved: true,
	savedSeq: 9,
	lastSeq: 9,
	problem: null,
	elsewhere: null,
	wipedHome: null,
	sinceUpMs: null,
	warnings: [],
} as const;

function screenOf(session: Session, rest: Partial<ScreenState>): ScreenState {
	return {
		session,
		plan: {
			isProved: true,
			bound: null,
			cost: {
				missing: 0,
				substituted: 0,
				overGap: 0,
				lateness: 0,
				backup: 0,
				handOvers: 0,
				retunings: 0,
				preference: 0,
			},
			sections: [],
			slots: [],
			handOvers: [],
			capoMoves: [],
			stays: [],
			idle: [],
			work: [],
			warnings: [],
		},
		nowMs: at(-10),
		zeroMs: ZERO_MS,
		dayOffsetMinutes: 0,
		view: 'stage',
		picked: 0,
		prompt: null,
		message: null,
		standIns: {},
		save: saved,
		findings: [],
		noticesSeen: 0,
		isDark: false,
		isLocked: false,
		isRehearsal: false,
		follows: null,
		log: [],
		showChangedAtMs: null,
		takeableStep: null,
		narrowedTo: '',
		preferences: { colours: 'dark', keys: {}, times: {} },
		footer,
		help: ACTIONS.map(({ id, words }) => ({ key: shownKeys(id, {}), words })),
		...rest,
	};
}

/** When the song on in the middle of the night is to end. */
const END_MS = at(22, 45);

function section(item: string, id: string, startMs: number, rest: Partial<Section> = {}): Section {
	return {
		item,
		song: id,
		point: 0,
		position: Number(item),
		startMs,
		endMs: startMs + 225_000,
		gapSeconds: 30,
		previousEndMs: startMs - 30_000,
		isAfterInterval: false,
		hasBegun: item === '6',
		...rest,
	};
}

function handOver(forSong: Section, rest: Partial<PlannedHandOver>): PlannedHandOver {
	const { instrument: given = 'i4' } = rest;
	return {
		section: forSong,
		player: 'ash',
		from: 'i1',
		instrument: 'i4',
		for: null,
		tuning: tuning('drop D'),
		capo: 0,
		seconds: 15,
		wantedMs: forSong.previousEndMs ?? forSong.startMs - 45_000,
		fits: true,
		leave: 'volume 7, neck pickup',
		pack: show.instruments.find(({ id }) => id === given)?.pack ?? null,
		...rest,
	};
}

function work(forSong: Section, rest: Partial<Work>): Work {
	const nowMs = at(20, 12);
	return {
		job: 'touch-up',
		instrument: 'i4',
		player: 'ash',
		section: forSong,
		to: tuning('drop D'),
		capo: 0,
		isEarly: false,
		seconds: 45,
		fromMs: nowMs,
		wantedMs: END_MS,
		startMs: nowMs,
		finishMs: nowMs + 45_000,
		slackSeconds: 48,
		shortSeconds: Math.max(0, -(rest.slackSeconds ?? 0)),
		beginByMs: at(21),
		...rest,
	};
}

/** Ten minutes before the show: everybody is to be given something, and all of it is to be tuned. */
export function beforeTheShow(of: Show = show): ScreenState {
	const first = section('1', 'harbour', at(0), { gapSeconds: null, previousEndMs: null });
	const given = [
		{ player: 'ash', instrument: 'i1', leave: 'volume 7, neck pickup' },
		{ player: 'bo', instrument: 'i5', leave: 'low cut on' },
		{ player: 'cleo', instrument: 'i8', leave: 'fresh battery, volume full' },
	];
	const state = screenOf(openSession(of), {});
	return {
		...state,
		plan: {
			...state.plan,
			sections: [first, section('11', 'lamplight', at(56))],
			handOvers: given.map((one) =>
				handOver(first, { ...one, from: null, tuning: tuning('E standard') }),
			),
			work: given.map((one, index) =>
				work(first, {
					player: one.player,
					instrument: one.instrument,
					to: tuning('E standard'),
					fromMs: at(-10),
					wantedMs: at(-1, 15),
					slackSeconds: 510 - index * 45,
					beginByMs: at(-3, index * 45),
				}),
			),
		},
	};
}

/** In the sixth song at its second verse; two players change at its end. */
export function middleOfASong(): ScreenState {
	const open = openSession(show);
	const nowMs = at(20, 12);
	const beganAtMs = at(19);
	const gravel = show.songs.find(({ id }) => id === 'gravel') as Song;
	const songState = advanceSong(gravel, songBegun(gravel), { type: 'stepped' });
	const instruments = { ...open.instruments };
	const change = (id: string, ...events: readonly InstrumentEvent[]) => {
		instruments[id] = moved(instruments[id]!, ...events);
	};
	const handed = (id: string) => change(id, { type: 'handed', atMs: at(-1) });
	for (const id of ['i1', 'i5', 'i8']) handed(id);
	change('i4', { type: 'madeReady', atMs: at(4, 10) });
	change('is', { type: 'madeReady', atMs: at(18) });
	change('i2', { type: 'madeReady', atMs: at(0) });
	change('i3', { type: 'foundFaulty', atMs: at(2), fault: 'buzzes' });
	change('i9', { type: 'putOut', atMs: at(2) });
	const board = advance(boardLaw, open.boards.bo!, { type: 'cued', pedals: {} });
	const session: Session = {
		...open,
		phase: advance(showLaw, open.phase, { type: 'songBegan' }) as Session['phase'],
		current: '6',
		next: '7',
		zeroAtMs: ZERO_MS,
		song: songState,
		phaseSinceMs: beganAtMs,
		list: open.list.map((item, index) =>
			item.kind === 'song' && index < 6
				? {
						...item,
						runs: [
							index < 5
								? { beganAtMs: at(index * 4), endedAtMs: at(index * 4 + 3), how: 'played' }
								: { beganAtMs, endedAtMs: null, how: null },
						],
					}
				: item,
		),
		instruments,
		boards: { bo: board as Session['boards'][string] },
		players: {
			ash: { ...EMPTY_HANDS, holds: 'i1', sinceMs: at(-1), pack: 'P1' },
			bo: { ...EMPTY_HANDS, holds: 'i5', sinceMs: at(-1) },
			cleo: { ...EMPTY_HANDS, holds: 'i8', sinceMs: at(-1) },
		},
	};
	const lantern = section('7', 'lantern', END_MS + 30_000);
	const said = (entry: object) => entryWords({ at: nowMs, ...entry } as Entry, show, session);
	return screenOf(session, {
		nowMs,
		plan: {
			isProved: true,
			bound: null,
			cost: {
				missing: 0,
				substituted: 0,
				overGap: 0,
				lateness: 0,
				backup: 0,
				handOvers: 3,
				retunings: 1,
				preference: 0,
			},
			sections: [
				section('6', 'gravel', beganAtMs),
				lantern,
				section('9', 'oldmill', at(47)),
				section('10', 'windrow', at(51)),
				section('11', 'lamplight', at(56)),
			],
			slots: [],
			capoMoves: [],
			stays: [],
			idle: [],
			handOvers: [
				handOver(lantern, {}),
				handOver(lantern, {
					player: 'bo',
					from: 'i5',
					instrument: 'i7',
					tuning: tuning('E standard'),
					capo: 3,
					leave: null,
				}),
			],
			work: [
				work(lantern, {}),
				work(lantern, {
					instrument: 'i7',
					player: 'bo',
					to: tuning('E standard'),
					capo: 3,
					seconds: 55,
					slackSeconds: 3,
					beginByMs: at(21, 35),
				}),
				work(lantern, {
					job: 'retune',
					instrument: 'i6',
					to: tuning('open G'),
					seconds: 120,
					slackSeconds: 1500,
					beginByMs: at(45),
				}),
				work(lantern, {
					job: 'restring',
					instrument: 'ir',
					to: tuning('DADGAD'),
					seconds: 270,
					slackSeconds: -20,
					beginByMs: at(19, 50),
				}),
			],
			warnings: [
				{ code: 'tight-gap', song: 'lantern', handOvers: 2, seconds: 30, gapSeconds: 30 },
				{ code: 'no-stand-in', player: 'cleo', instrument: 'i8', leftOut: [] },
			],
		},
		log: [
			{
				atMs: at(20, 6),
				words: said({ k: 'cue-reached', index: 2 }),
				isTakenBack: true,
				step: '4',
			},
			{
				atMs: at(20, 4),
				words: said({ k: 'cue-reached', index: 1 }),
				isTakenBack: false,
				step: '3',
			},
			{ atMs: at(19), words: said({ k: 'song-began', item: '6' }), isTakenBack: false, step: '2' },
			{
				atMs: at(18),
				words: said({ k: 'made-ready', instrument: 'is' }),
				isTakenBack: false,
				step: '1',
			},
		],
		takeableStep: '3',
	});
}

/** Four seconds after Ash broke a string, with three backups to choose from. */
export function afterABreak(): ScreenState {
	const before = middleOfASong();
	const { session, plan } = before;
	const nowMs = at(20, 16);
	const why = (...reasons: readonly StandInReason[]) => differenceFirst(show, reasons);
	const played: Slot = {
		section: { ...plan.sections[0]!, hasBegun: true },
		player: 'ash',
		instrument: 'i1',
		named: 'i1',
		asked: 'i1',
		kind: 'electric-6',
		tuning: tuning('E standard'),
		capo: 0,
		isHandOver: false,
		isKept: false,
		for: null,
		isChosen: false,
		isMissing: false,
		why: null,
		leave: null,
		pack: null,
	};
	return {
		...before,
		plan: { ...plan, slots: [played] },
		nowMs,
		session: {
			...session,
			instruments: {
				...session.instruments,
				i1: moved(session.instruments.i1!, { type: 'stringBroke' }),
			},
			incidents: [
				{
					id: '1',
					atMs: at(20, 12),
					kind: 'string-break',
					player: 'ash',
					instrument: 'i1',
					string: null,
					pedal: null,
					standIn: null,
					silenceSeconds: null,
					isOpen: true,
					words: [],
				},
			],
		},
		standIns: {
			ash: [
				{
					instrument: 'is',
					readyInSeconds: 10,
					tuning: tuning('E standard'),
					capo: 0,
					why: [{ code: 'same-tuning' }, { code: 'ready' }],
					later: [],
				},
			],
		},
		prompt: {
			title: breakTitle('Ash', '1 Amber', '0:04'),
			lines: [
				`${TAKE}  S Spare  0:10 E standard             ${why({ code: 'same-tuning' }, { code: 'ready' })}`,
				`${OR}  6 Fern   0:55 E standard             ${why({ code: 'same-tuning' }, { code: 'not-ready' })}`,
				`${OR}  2 Birch  1:05 half-step down, capo 1 ${why({ code: 'stale' })}`,
				`${OR}  0 ${ANSWERS.playOn}`,
			],
			field: null,
			choices: [
				{ key: 'enter', words: ANSWERS.firstInHands('S') },
				{ key: 'slot', words: ANSWERS.another },
				{ key: '0', words: ANSWERS.playOn },
				{ key: 'b', words: ANSWERS.nextBreak },
				{ key: 'esc', words: ANSWERS.decideLater },
			],
		},
	};
}

/** A show whose names are wide, marked and emoji. */
export function wideNames(): ScreenState {
	const state = middleOfASong();
	const wide: Show = {
		...show,
		players: show.players.map((one, index) => ({
			...one,
			name: ['明日香', 'Zoë\u0308', '🎸🎸'][index]!,
		})),
		instruments: show.instruments.map((one) => ({ ...one, name: `琥珀${one.name}` })),
		songs: show.songs.map((one) => ({ ...one, title: `納屋の鈴 ${one.title}` })),
	};
	return { ...state, session: { ...state.session, show: wide } };
}

/** The same moment while another song is looked for. */
export function jumpPrompt(): ScreenState {
	const before = middleOfASong();
	const { nowMs } = before;
	const bo: PlayerPreview = {
		player: 'bo',
		from: 'i5',
		instrument: 'i7',
		tuning: tuning('E standard'),
		capo: 3,
		for: null,
		isHandOver: true,
		why: null,
		condition: 'not-ready',
		workSeconds: 55,
		inHandsMs: nowMs + 183_000,
		afterEndSeconds: 30,
	};
	const preview = { song: 'oldmill', section: section('9', 'oldmill', END_MS), players: [bo] };
	const session = { ...before.session, next: '9' };
	return {
		...before,
		prompt: {
			title: JUMP_TITLE,
			field: lineOf('old'),
			lines: ['> Oldmill', ...jumpWords(preview, { session, nowMs })],
			choices: [],
		},
	};
}

const ENDED = { current: '6', next: '7', song: null } as const;

/** The sixth song is over, nobody holds anything new yet, and the slots of three hand-overs are asked for. */
export function handOverOfThree(): ScreenState {
	const before = middleOfASong();
	const { session, plan } = before;
	const lantern = plan.handOvers[0]!.section;
	const i9 = moved(
		session.instruments.i9!,
		{ type: 'broughtBack' },
		{ type: 'madeReady', atMs: at(21) },
	);
	const ready = (id: string) =>
		moved(session.instruments[id]!, { type: 'madeReady', atMs: at(22) });
	return {
		...before,
		nowMs: at(22, 50),
		session: {
			...session,
			...ENDED,
			list: played(session),
			phase: ended(session, 'changeover'),
			phaseSinceMs: END_MS,
			instruments: { ...session.instruments, i9, i4: ready('i4'), i7: ready('i7') },
		},
		plan: {
			...plan,
			sections: plan.sections.slice(1),
			handOvers: [
				...plan.handOvers,
				handOver(lantern, {
					player: 'cleo',
					from: 'i8',
					instrument: 'i9',
					tuning: tuning('B standard', 'baritone-6'),
					leave: 'fresh battery, volume full',
				}),
			],
			work: plan.work.slice(2),
		},
		prompt: {
			title: handOverTitle(null, 3),
			field: null,
			lines: [
				handOverLine('Ash', `4 Dace, drop D, ${capoWords(0)}`, checkFirst('volume 7, neck pickup')),
				handOverLine('Bo', `7 Briar, E standard, ${capoWords(3)}`, ''),
				handOverLine(
					'Cleo',
					`9 Heron, B standard, ${capoWords(0)}`,
					checkFirst('fresh battery, volume full'),
				),
			],
			choices: [{ key: 'enter', words: ANSWERS.all }],
		},
	};
}

function ended(session: Session, ahead: Ahead): Session['phase'] {
	const phase = advance(showLaw, session.phase, { type: 'songEnded', ahead });
	return phase as Session['phase'];
}

/** Five minutes into the interval: hands are empty and everything is to be tuned again. */
export function interval(): ScreenState {
	const before = middleOfASong();
	const { session, plan } = before;
	const oldmill = section('9', 'oldmill', at(47), { gapSeconds: null, isAfterInterval: true });
	const empty = { ...EMPTY_HANDS, sinceMs: at(27), pack: 'P1' };
	return {
		...before,
		nowMs: at(32),
		session: {
			...session,
			current: '7',
			next: '9',
			song: null,
			list: played(session),
			instruments: {
				...session.instruments,
				i1: moved(session.instruments.i1!, { type: 'returned', atMs: at(27) }),
				i5: moved(session.instruments.i5!, { type: 'returned', atMs: at(27) }),
			},
			phase: ended(session, 'interval'),
			phaseSinceMs: at(27),
			players: {
				ash: empty,
				bo: empty,
				cleo: { ...session.players.cleo!, holds: 'i8' },
			},
		},
		plan: {
			...plan,
			sections: [oldmill, ...plan.sections.slice(3)],
			handOvers: [
				handOver(oldmill, { from: null, instrument: 'i1', tuning: tuning('E standard') }),
				handOver(oldmill, {
					player: 'bo',
					from: null,
					instrument: 'i2',
					tuning: tuning('half-step down'),
					capo: 1,
				}),
			],
			work: [
				work(oldmill, {
					instrument: 'i1',
					to: tuning('E standard'),
					slackSeconds: 810,
					beginByMs: at(44, 15),
				}),
				work(oldmill, {
					player: 'bo',
					instrument: 'i2',
					to: tuning('half-step down'),
					capo: 1,
					seconds: 55,
					slackSeconds: 755,
					beginByMs: at(45),
				}),
			],
			warnings: [],
		},
	};
}

/** The list with the song that was on played. */
function played({ list }: Session): Session['list'] {
	return list.map((item) =>
		item.kind === 'song'
			? {
					...item,
					runs: item.runs.map((run) => ({ ...run, endedAtMs: END_MS, how: 'played' as const })),
				}
			: item,
	);
}

/** Waiting for the encore, whose hand-over is ready. */
export function encore(): ScreenState {
	const before = middleOfASong();
	const { session, plan } = before;
	const lamplight = section('11', 'lamplight', at(56), { gapSeconds: 90 });
	return {
		...before,
		nowMs: at(55, 10),
		session: {
			...session,
			current: '10',
			next: '11',
			song: null,
			list: played(session),
			phase: ended(session, 'encore'),
			phaseSinceMs: at(54, 50),
			instruments: {
				...session.instruments,
				i6: moved(session.instruments.i6!, { type: 'madeReady', atMs: at(50) }),
			},
		},
		plan: {
			...plan,
			sections: [lamplight],
			handOvers: [handOver(lamplight, { instrument: 'i6', tuning: tuning('open G'), leave: null })],
			work: [],
			warnings: [],
		},
	};
}

/** After the last song. */
export function over(): ScreenState {
	const before = middleOfASong();
	const { session, plan } = before;
	return {
		...before,
		nowMs: at(60),
		session: {
			...session,
			current: '11',
			next: null,
			song: null,
			list: played(session),
			phase: ended(session, 'over'),
			phaseSinceMs: at(59, 45),
		},
		plan: { ...plan, sections: [], handOvers: [], work: [], warnings: [] },
	};
}

/** The middle of the song with a disk that takes nothing any more. */
export function notSaved(): ScreenState {
	return {
		...middleOfASong(),
		message: asSentence(
			warningWords(show, {
				code: 'wrong-tuning',
				song: 'lantern',
				player: 'ash',
				instrument: 'i1',
				wrong: 'tuning',
				is: { tuning: 'E standard', capo: 0 },
				wants: { instrument: 'i4', tuning: 'drop D', capo: 0 },
				isOpen: false,
			}),
		),
		save: {
			...saved,
			state: 'unsaved',
			isSaved: false,
			savedSeq: 3,
			problem: { code: 'unsaved', trouble: 'ENOSPC' },
		},
	};
}

/** The middle of a song with all that is to come ready: nothing is to be done. */
export function calm(): ScreenState {
	const state = middleOfASong();
	const { session, plan } = state;
	const ready = (id: string) =>
		moved(session.instruments[id]!, { type: 'madeReady', atMs: at(19) });
	return {
		...state,
		session: {
			...session,
			instruments: { ...session.instruments, i4: ready('i4'), i7: ready('i7') },
		},
		plan: { ...plan, work: [], warnings: [] },
	};
}

/** Twice as many players, of whom four change at the end of the song. */
export function sixPlayers(): ScreenState {
	const state = middleOfASong();
	const { session, plan } = state;
	const more = [
		{ id: 'dan', name: 'Dan', plays: 'guitar', tech: null, key: 'd' },
		{ id: 'eve', name: 'Evangeline', plays: 'guitar', tech: null, key: 'e' },
		{ id: 'fin', name: 'Fin', plays: 'guitar', tech: null, key: 'f' },
	];
	const [first] = plan.handOvers;
	return {
		...state,
		session: {
			...session,
			show: { ...session.show, players: [...session.show.players, ...more] },
			players: { ...session.players, dan: EMPTY_HANDS, eve: EMPTY_HANDS, fin: EMPTY_HANDS },
		},
		plan: {
			...plan,
			handOvers: [
				...plan.handOvers,
				{
					...first!,
					player: 'dan',
					from: null,
					instrument: 'i6',
					tuning: tuning('double drop D'),
					pack: null,
				},
				{
					...first!,
					player: 'eve',
					from: null,
					instrument: 'is',
					tuning: tuning('half-step down'),
					leave: null,
					pack: null,
				},
			],
		},
	};
}

/** The same with a second rack of fourteen, all of it ready to be put away. */
export function bothRacks(): ScreenState {
	const state = fourteen();
	const { session } = state;
	const names =
		'Acre Barge Cairn Eddy Gorse Haven Islet Jetty Linen Moor Nettle Orchard Pebble Quill';
	const more = names
		.split(' ')
		.map((name) => instrument((name[0] as string).toLowerCase(), name, { id: `second${name}` }));
	const all: Show = { ...session.show, instruments: [...session.show.instruments, ...more] };
	const { instruments } = openSession(all);
	return {
		...state,
		session: { ...session, show: all, instruments: { ...instruments, ...session.instruments } },
	};
}

/** Gravel goes straight on into Lantern, and no cue is left before it. */
export function segueNext(): ScreenState {
	const state = middleOfASong();
	const { session } = state;
	const songs = session.show.songs.map((one) =>
		one.id === 'gravel'
			? { ...one, ends: 'segue' as const }
			: one.id === 'lantern'
				? { ...one, board: { bo: { drive: { on: true } } } }
				: one,
	);
	const gravel = songs.find(({ id }) => id === 'gravel')!;
	const atV2 = advanceSong(gravel, songBegun(gravel), { type: 'stepped' });
	const atLast = atV2 && advanceSong(gravel, atV2, { type: 'stepped' });
	return {
		...state,
		session: {
			...session,
			song: atLast,
			list: session.list.map((one) => (one.key === '7' ? { ...one, gapSeconds: 0 } : one)),
			show: { ...session.show, songs },
		},
		plan: { ...state.plan, warnings: state.plan.warnings.slice(1) },
	};
}

/** Four players and a rack of fourteen; all four change at the end of the song, in tunings of every length. */
export function fourteen(): ScreenState {
	const state = middleOfASong();
	const { session, plan } = state;
	const more = [
		instrument('d', 'Dozen', { kind: 'electric-12', tuning: tuning('E standard', 'electric-12') }),
		instrument('f', 'Fathom', { tuning: tuning('open G'), leave: 'slide in the pouch' }),
		instrument('k', 'Knoll', { kind: 'bass-5', tuning: tuning('standard', 'bass-5') }),
	];
	const all: Show = {
		...session.show,
		players: [
			...session.show.players,
			{ id: 'dan', name: 'Dan', plays: 'guitar', tech: null, key: 'd' },
		],
		instruments: [...session.show.instruments, ...more],
		boards: { ...session.show.boards, ash: [{ id: 'echo', name: 'Echo', extra: {} }] },
	};
	const { instruments, boards } = openSession(all);
	const i6 = moved(session.instruments.i6!, { type: 'handed', atMs: at(-1) });
	const [first] = plan.handOvers;
	return {
		...state,
		session: {
			...session,
			show: all,
			instruments: { ...instruments, ...session.instruments, i6 },
			boards: { ...boards, ...session.boards },
			players: { ...session.players, dan: { ...EMPTY_HANDS, holds: 'i6', sinceMs: at(-1) } },
		},
		plan: {
			...plan,
			handOvers: [
				...plan.handOvers,
				{
					...first!,
					player: 'cleo',
					from: 'i8',
					instrument: 'ik',
					tuning: tuning('standard', 'bass-5'),
					leave: 'fresh battery, volume full',
					pack: null,
				},
				{
					...first!,
					player: 'dan',
					from: 'i6',
					instrument: 'if',
					tuning: tuning('open G'),
					leave: 'slide in the pouch',
					pack: null,
				},
			],
		},
	};
}
