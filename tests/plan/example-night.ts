// The small night that the examples in docstrings speak of: three songs, everything made ready at its
// first moment, nothing handed over yet.

import { aloneIn } from '../../src/plan/alone-in.ts';
import { boardOf } from '../../src/plan/board.ts';
import { busyWindows } from '../../src/plan/busy-windows.ts';
import { choicesOf } from '../../src/plan/choices.ts';
import { chooseHands } from '../../src/plan/choose-hands.ts';
import type { NeedsPart } from '../../src/plan/demand.ts';
import { demandAt } from '../../src/plan/demand.ts';
import { freeClock } from '../../src/plan/free-clock.ts';
import { groupSetting } from '../../src/plan/group-setting.ts';
import { handOversAhead } from '../../src/plan/hand-overs-ahead.ts';
import { instrumentById } from '../../src/plan/instrument-by-id.ts';
import { outlookOf } from '../../src/plan/outlook.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { planCore } from '../../src/plan/plan-core.ts';
import { seatingOf } from '../../src/plan/seats.ts';
import { shortfallOf } from '../../src/plan/shortfall.ts';
import { ranksOf } from '../../src/plan/stand-in-ranks.ts';
import { stintsAhead } from '../../src/plan/stints.ts';
import { workAhead } from '../../src/plan/work-ahead.ts';
import { tuningCalled } from '../../src/tuning/tuning.ts';
import { clubShow } from './club-gear.ts';
import { allReady, nightAfter } from './night-at.ts';

const show = clubShow(`
songs:
  - id: harbour
    title: Harbour
    length: "4:00"
    parts: {ash: {instrument: A1}, bo: {instrument: B1}}
  - {id: lantern, title: Lantern, length: "3:30", parts: {ash: {instrument: A4}}}
  - {id: gravel, title: Gravel, length: "4:00", parts: {ash: {instrument: A1}, bo: none}}
  - {id: bridge, title: Bridge, length: "4:00", cues: [{at: bridge, hand: {ash: A1}}]}
set: [harbour, lantern, gravel]
`);

const session = nightAfter(show, allReady(show, '00:00'));
const moment = { session, nowMs: 0, plannedZeroMs: 0 };
const { plan } = planCore(moment);
const outlook = outlookOf(moment);
const seating = seatingOf(outlook, null);
const board = boardOf(seating);
const chosen = chooseHands(board, { left: 10_000 })!;
const setting = groupSetting(board, [0]);
const [alone] = aloneIn(board, [0], { setting, budget: { left: 10_000 } })!;
const choices = choicesOf(outlook, seating, chosen.hands);
const handOvers = handOversAhead(outlook, choices);
const clock = freeClock(busyWindows(outlook.cues, handOvers));
const stints = stintsAhead(outlook, choices);
const eStandard = tuningCalled('E standard', 'electric-6')!;
const dropD = tuningCalled('drop D', 'electric-6')!;
const instruments = Object.fromEntries(instrumentById(show));
const songs = Object.fromEntries(show.songs.map((song) => [song.id, song]));
const states = session.instruments;
const section = plan.sections[1]!;
const needsElectric: NeedsPart = {
	kind: 'needs',
	instrumentKind: 'electric-6',
	sounds: eStandard,
	features: [],
	prefer: null,
	leave: null,
	pack: null,
};

const asTheyStand = { isReady: true, readyInSeconds: 10, tuning: eStandard, capo: 0 };
const rackOfAsh = {
	show,
	instruments: states,
	holder: () => null,
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
	work: workAhead(outlook, stints, { handOvers, clock }).work,
	slots: plan.slots,
	section,
	clock,
	instruments,
	songs,
	states,
	eStandard,
	dropD,
	needsElectric,
	seating,
	board,
	chosen,
	may: board.may,
	steps: board.steps,
	possible: board.possible,
	ways: alone!.hubWays.ways,
	alone,
	lanternForAsh: demandAt(show, { song: songs.lantern!, point: 0, player: 'ash' }),
	bridgeSong: songs.bridge,
	held: { instrument: 'A1', tuning: eStandard, capo: 0 },
	beforeDoors: planBeforeDoors(show),
	shortfall: shortfallOf(show, plan),
	soundOfA1: { tuning: eStandard, kind: 'electric-6', replaced: instruments.A1 },
	ranks: ranksOf(rackOfAsh, instruments.A3!, asTheyStand),
	rankedS1: {
		instrument: instruments.S1!,
		found: { ...asTheyStand, words: ['same tuning', 'ready'] },
		later: [],
		ranks: ranksOf(rackOfAsh, instruments.S1!, asTheyStand),
	},
	rack: {
		show,
		instruments: states,
		holder: () => null,
		handOvers: plan.handOvers,
		nowMs: 0,
	},
};
