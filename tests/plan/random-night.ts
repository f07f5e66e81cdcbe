// Shows and nights made up by chance, small and awkward: shared instruments, floating bridges, segues,
// an interval, hand-overs at cues, breaks and exchanges in the middle.

import fc from 'fast-check';
import { planCore } from '../../src/plan/timed-choice/plan-core.ts';
import { applyAll } from '../../src/session/apply.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import type { Instrument, Part, SetItem, Show, Song } from '../../src/showfile/show.ts';
import { workTimesOf } from '../../src/showfile/work-times.ts';
import { tuningCalled } from '../../src/tuning/tuning.ts';

/** These nights are planned thousands of times: what holds of a plan holds however far it was looked. */
export const SEARCHED = { budget: 20_000 } as const;

const PLAYERS = ['ash', 'bo', 'cleo'] as const;
const KINDS = ['electric-6', 'acoustic-6'] as const;
const TUNINGS = ['E standard', 'drop D', 'half-step down', 'DADGAD'].map(
	(name) => tuningCalled(name, 'electric-6')!,
);

const EMPTY: Show = {
	title: 'By chance',
	venue: null,
	date: null,
	startMinutes: null,
	curfewMinutes: null,
	referenceHertz: 440,
	staleAfterSeconds: 900,
	staleNewSeconds: 300,
	techs: [],
	players: PLAYERS.map((player) => ({
		id: player,
		name: player,
		plays: null,
		tech: null,
		key: player.charAt(0),
	})),
	instruments: [],
	songs: [],
	set: [],
	boards: {},
	packs: [],
	times: {},
	stock: [],
	abbreviations: {},
};

const BARE = {
	scaleMillimetres: null,
	strings: [],
	features: [],
	pack: null,
	case: null,
	strung: { on: null, hours: null },
	leave: null,
	notes: null,
	pickups: null,
} as const;

const SILENT = { tempo: null, board: {}, starts: null, count: null, notes: null } as const;

const id = (index: number): string => `I${index + 1}`;

const instrument = fc.record({
	kind: fc.constantFrom(...KINDS),
	tuning: fc.constantFrom(...TUNINGS),
	bridge: fc.constantFrom(
		'fixed' as const,
		'fixed' as const,
		'fixed' as const,
		'floating' as const,
	),
	spare: fc.boolean(),
	forWhom: fc.option(fc.constantFrom(...PLAYERS), { nil: null }),
});

const NO_MORE = { leave: null, pack: null } as const;

const part = (count: number): fc.Arbitrary<Part | null> =>
	fc.oneof(
		{ weight: 4, arbitrary: fc.constant(null) },
		{
			weight: 4,
			arbitrary: fc.record({
				kind: fc.constant('named' as const),
				instrument: fc.nat(count - 1).map(id),
				tuning: fc.option(fc.constantFrom(...TUNINGS), { nil: null, freq: 2 }),
				capo: fc.constantFrom(0, 0, 2),
				leave: fc.constant(null),
				pack: fc.constant(null),
			}),
		},
		{
			weight: 3,
			arbitrary: fc
				.record({
					instrumentKind: fc.constantFrom(...KINDS),
					sounds: fc.constantFrom(...TUNINGS),
				})
				.map(
					(needs): Part => ({ kind: 'needs', features: [], prefer: null, ...NO_MORE, ...needs }),
				),
		},
		{ weight: 1, arbitrary: fc.constant({ kind: 'none' as const }) },
	);

const parts = (count: number): fc.Arbitrary<Readonly<Record<string, Part>>> =>
	fc.tuple(part(count), part(count), part(count)).map((each) =>
		Object.fromEntries(
			PLAYERS.flatMap((player, index) => {
				const one = each[index];
				return one ? [[player, one]] : [];
			}),
		),
	);

const song = (count: number) =>
	fc.record({
		lengthSeconds: fc.constantFrom(60, 210, 300, null),
		ends: fc.constantFrom('ring' as const, 'ring' as const, 'segue' as const),
		parts: parts(count),
		cue: fc.option(parts(count), { nil: null, freq: 3 }),
		gapSeconds: fc.constantFrom(null, null, 5, 40, 120),
		isAfterInterval: fc.nat(5).map((chance) => chance === 0),
	});

/** A show of two to six songs for three players who share three to six instruments. */
export const randomShow: fc.Arbitrary<Show> = fc.integer({ min: 3, max: 6 }).chain((count) =>
	fc
		.record({
			instruments: fc.array(instrument, { minLength: count, maxLength: count }),
			songs: fc.array(song(count), { minLength: 2, maxLength: 6 }),
			staleAfterSeconds: fc.constantFrom(480, 900),
		})
		.map(({ instruments, songs, staleAfterSeconds }) => ({
			...EMPTY,
			staleAfterSeconds,
			instruments: instruments.map(
				({ forWhom, ...one }, index): Instrument => ({
					...BARE,
					...one,
					id: id(index),
					name: id(index),
					slot: String(index + 1),
					for: forWhom === null ? null : [forWhom],
					times: workTimesOf(one.kind, one.bridge, []),
				}),
			),
			songs: songs.map(
				({ lengthSeconds, ends, parts, cue }, index): Song => ({
					...SILENT,
					id: `s${index + 1}`,
					title: `S${index + 1}`,
					lengthSeconds,
					ends,
					parts,
					cues:
						cue === null
							? []
							: [{ at: 'bridge', nearSeconds: null, say: null, hand: cue, boards: {} }],
				}),
			),
			set: songs.flatMap(({ gapSeconds, isAfterInterval }, index): readonly SetItem[] => [
				...(isAfterInterval && index > 0 ? [{ kind: 'interval', seconds: 1200 } as const] : []),
				{ kind: 'song', song: `s${index + 1}`, gapSeconds, isEncore: false },
			]),
		})),
);

export type Happening =
	| { readonly do: 'step' | 'wait' | 'make-all-ready' | 'do-next' | 'hand-over' | 'doubt-all' }
	| {
			readonly do: 'break' | 'aside' | 'exchange';
			readonly index: number;
			readonly player: string;
	  };

const happening: fc.Arbitrary<Happening> = fc.oneof(
	{ weight: 6, arbitrary: fc.record({ do: fc.constantFrom('step' as const) }) },
	{
		weight: 4,
		arbitrary: fc.record({
			do: fc.constantFrom(
				'wait' as const,
				'make-all-ready' as const,
				'do-next' as const,
				'hand-over' as const,
				'doubt-all' as const,
			),
		}),
	},
	{
		weight: 2,
		arbitrary: fc.record({
			do: fc.constantFrom('break' as const, 'aside' as const, 'exchange' as const),
			index: fc.nat(5),
			player: fc.constantFrom(...PLAYERS),
		}),
	},
);

/** A night of such a show after up to a dozen things have happened, and the time it then is. */
export const randomNight: fc.Arbitrary<{ readonly session: Session; readonly nowMs: number }> = fc
	.tuple(
		randomShow,
		fc.array(fc.tuple(happening, fc.integer({ min: 1, max: 150 })), { maxLength: 12 }),
	)
	.map(([show, happenings]) => {
		let session = openSession(show);
		let nowMs = -60_000;
		for (const [what, seconds] of happenings) {
			nowMs += seconds * 1000;
			session = after(session, what, nowMs);
		}
		return { session, nowMs };
	});

function after(session: Session, what: Happening, nowMs: number): Session {
	const command = commandFor(session, what, nowMs);
	if (command === null) return session;
	const decision = decide(session, command, nowMs);
	return decision.ok ? applyAll(session, decision.entries) : session;
}

function commandFor(session: Session, what: Happening, nowMs: number): Command | null {
	const { plan } = planCore({ session, nowMs, plannedZeroMs: 0 }, SEARCHED);
	switch (what.do) {
		case 'wait':
			return null;
		case 'step':
			return { do: 'step', handOvers: reachedByStep(session, nowMs) };
		case 'make-all-ready':
			return { do: 'make-all-ready' };
		case 'doubt-all':
			return { do: 'doubt-all', celsius: null };
		case 'do-next': {
			const [next] = plan.work;
			if (next === undefined) return null;
			const due = { tuning: next.to, capo: next.capo };
			return { do: 'make-ready', instrument: next.instrument, due };
		}
		case 'hand-over': {
			const [first] = plan.handOvers;
			if (first === undefined) return null;
			return {
				do: 'hand-over',
				handOvers: plan.handOvers.filter(({ section }) => section === first.section),
			};
		}
		default: {
			const one = session.show.instruments[what.index % session.show.instruments.length];
			if (one === undefined) return null;
			if (what.do === 'break') return { do: 'report-break', instrument: one.id };
			if (what.do === 'aside') return { do: 'put-aside', instrument: one.id, fault: null };
			return { do: 'exchange', player: what.player, instrument: one.id };
		}
	}
}

/** The hand-overs of the section that the next step reaches, if it reaches one. */
export function reachedByStep(session: Session, nowMs: number) {
	const { plan } = planCore({ session, nowMs, plannedZeroMs: 0 }, SEARCHED);
	const reached = plan.sections.find(({ hasBegun }) => !hasBegun);
	return plan.handOvers.filter(({ section }) => section === reached);
}
