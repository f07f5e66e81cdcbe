// The small night that the examples in docstrings speak of: three songs, everything made ready at its
// first moment, nothing handed over yet.

import { shortfallOf } from '../../src/plan/advice/shortfall.ts';
import { ranksOf } from '../../src/plan/backups/stand-in-ranks.ts';
import { choicesOf } from '../../src/plan/choice/choices.ts';
import { chooseHands } from '../../src/plan/choice/choose-hands.ts';
import { allPossible, searchGraph } from '../../src/plan/choice/search-graph.ts';
import { seatingOf } from '../../src/plan/choice/seats.ts';
import type { NeedsPart } from '../../src/plan/demand/demand.ts';
import { instrumentById } from '../../src/plan/demand/instrument-by-id.ts';
import { type Outlook, outlookOf } from '../../src/plan/demand/outlook.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { scheduleOf, weigh } from '../../src/plan/schedule/schedule.ts';
import { chooseInTime } from '../../src/plan/timed-choice/choose-in-time.ts';
import { planCore } from '../../src/plan/timed-choice/plan-core.ts';
import { cellAt } from '../../src/session/cells.ts';
import { tuningCalled } from '../../src/tuning/tuning.ts';
import { clubShow } from './club-gear.ts';
import { allReady, nightAfter } from './night-at.ts';

const show = clubShow(`
songs:
  - id: harbour
    title: Harbour
    length: "4:00"
    hands: {ash: {instrument: A1}, bo: {instrument: B1}}
  - {id: lantern, title: Lantern, length: "3:30", hands: {ash: {instrument: A4}}}
  - {id: gravel, title: Gravel, length: "4:00", hands: {ash: {instrument: A1}, bo: none}}
  - {id: bridge, title: Bridge, length: "4:00", cues: [{at: bridge, hand: {ash: A1}}]}
set: [harbour, lantern, gravel]
`);

const session = nightAfter(show, allReady(show, '00:00'));
const moment = { session, nowMs: 0, plannedZeroMs: 0 };
const { plan } = planCore(moment);
const outlook = outlookOf(moment);
const seating = seatingOf(outlook, null);
const graph = searchGraph(seating);
const possible = allPossible(graph);
const choosing = chooseHands(graph, possible, { budget: { left: 10_000 }, before: null })!;
const choices = choicesOf(seating, choosing.hands);
const weighed = weigh(outlook, choices);
const { handOvers, stints, clock, pieces } = weighed;
const schedule = scheduleOf(outlook, weighed);
const eStandard = tuningCalled('E standard', 'electric-6')!;
const dropD = tuningCalled('drop D', 'electric-6')!;
const instruments = Object.fromEntries(instrumentById(show));
const songs = Object.fromEntries(show.songs.map((song) => [song.id, song]));
const states = session.instruments;
const section = plan.sections[1]!;
const needsEStandard: NeedsPart = {
	kind: 'needs',
	instrumentKind: 'electric-6',
	sounds: eStandard,
	features: [],
	prefer: null,
	leave: null,
	pack: null,
};

const held = { instrument: 'A1', tuning: eStandard, capo: 0 };
const asTheyStand = { isReady: true, readyInSeconds: 10 };
const rackOfAsh = {
	show,
	instruments: states,
	holder: () => null,
	asked: null,
	endMs: null,
	handOvers: plan.handOvers,
	nowMs: 0,
	player: 'ash',
	sound: { tuning: eStandard, kind: 'electric-6' as const, replaced: instruments.A1! },
};

/** Everything that an example may name. */
export const exampleNight: Readonly<Record<string, unknown>> = {
	show,
	session,
	plan,
	choices,
	outlook,
	stints,
	handOvers,
	pieces,
	work: schedule.work,
	slots: plan.slots,
	section,
	clock,
	instruments,
	songs,
	states,
	eStandard,
	dropD,
	needsEStandard,
	seating,
	graph,
	possible,
	toGo: choosing.toGo,
	choose: (asked: Outlook) =>
		chooseInTime({ outlook: asked, told: null, budget: { left: 10_000 } }),
	choosing,
	hands: choosing.hands,
	weighed,
	schedule,
	cellAt,
	held,
	handA1: held,
	namedA1: { kind: 'named', instrument: instruments.A1, tuning: eStandard, capo: 0, leave: null },
	handedA1: {
		instrument: instruments.A1,
		hand: held,
		state: states.A1,
		backMs: null,
		section: plan.sections[0],
	},
	beforeDoors: planBeforeDoors(show),
	shortfall: shortfallOf(show, plan),
	soundOfA1: { tuning: eStandard, kind: 'electric-6', replaced: instruments.A1 },
	ranks: ranksOf(rackOfAsh, { instrument: instruments.A3!, ...asTheyStand }),
	rankedS1: {
		instrument: instruments.S1!,
		hand: { instrument: 'S1', tuning: eStandard, capo: 0 },
		...asTheyStand,
		why: [{ code: 'same-tuning' }, { code: 'ready' }],
		later: [],
		ranks: ranksOf(rackOfAsh, { instrument: instruments.S1!, ...asTheyStand }),
	},
	rack: {
		show,
		instruments: states,
		holder: () => null,
		asked: null,
		endMs: null,
		handOvers: plan.handOvers,
		nowMs: 0,
		isStrung: () => true,
	},
};
