// A show of three songs and two players, invented, for the tests of reports.

import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';

const TEXT = `format: rackside/1
show: {title: "Small <b>show</b>", start: "20:00"}
players:
  - {id: ash, name: Ash, plays: guitar}
  - {id: cleo, name: Cleo, plays: bass}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: A4, name: Anchor, slot: "4", kind: electric-6, for: [ash], tuning: drop D}
  - {id: S1, name: Spare, slot: s, kind: electric-6, tuning: E standard, spare: true}
  - {id: C1, name: Cedar, slot: "8", kind: bass-4, for: [cleo], tuning: E standard}
songs:
  - id: harbour
    title: Harbour
    length: "4:00"
    hands: {ash: {instrument: A1}, cleo: {instrument: C1}}
    cues: [{at: Ch1}]
  - {id: lantern, title: Lantern, length: "3:30", hands: {ash: {instrument: A4}}}
  - {id: tide, title: Tide, length: "3:00", hands: {ash: {instrument: A1, capo: 2}}}
  - {id: gravel, title: "=Gravel|x", length: "3:00", hands: {ash: {instrument: A1}}}
boards: {ash: [{id: drive, name: Drive}]}
set: [harbour, {song: lantern, gap: 30s}, gravel, tide]
`;

/** The show. */
export function smallShow(): Show {
	return read(TEXT);
}

/** The same, but that nobody gave Lantern a length: the median of the others, 3:00, counts. */
export function unmeasuredShow(): Show {
	const show = smallShow();
	const songs = show.songs.map((song) =>
		song.id === 'lantern' ? { ...song, lengthSeconds: null } : song,
	);
	return { ...show, songs };
}

/** A show with a board, packs, an interval, a retune and a capo, whose ids are no words of it; its file. */
export const rackText = `format: rackside/1
show: {title: Small rack, venue: A room, date: 2026-06-12, start: "20:00"}
techs: [{id: tec, name: Lou}]
players:
  - {id: ply, name: Ash, plays: guitar, tech: tec}
  - {id: bob, name: Bo, plays: guitar}
packs: [{id: P1, channel: "11"}, {id: P2, channel: "12"}, {id: P3, channel: "13"}]
boards: {bob: [{id: drv, name: Drive}, {id: dly, name: Delay}]}
instruments:
  - {id: xa, name: Amber, slot: "1", kind: electric-6, for: [ply], tuning: E standard, strings: [10, 13, 17, 26w, 36w, 46w], pack: P1, case: red, leave: volume 7}
  - {id: xb, name: Birch, slot: "5", kind: acoustic-6, for: [bob], tuning: E standard}
  - {id: xs, name: Spruce, slot: s, kind: electric-6, tuning: E standard, spare: true}
songs:
  - id: sg1
    title: Harbour
    length: "4:00"
    tempo: 100
    hands: {ply: xa, bob: xb}
    board: {bob: {drv: off}}
    cues:
      - {at: Ch1, bob: {drv: on}}
      - {at: solo, bob: {dly: {time: eighth}}, say: eight bars}
    starts: ply
    count: 4
  - {id: sg2, title: Lantern, length: "3:30", hands: {ply: {instrument: xa, tuning: drop D, pack: P2}}, ends: ring}
  - {id: sg3, title: Tide, length: "3:00", hands: {bob: {instrument: xb, capo: 2}}, starts: drums}
  - {id: sg4, title: Gravel, length: "3:00", hands: {bob: {instrument: xb}}}
set: [sg1, {interval: 20m}, sg2, sg3, sg4]
`;

/** That show. */
export function rackShow(): Show {
	return read(rackText);
}

function read(text: string): Show {
	const { show, problems } = readShow(() => new TextEncoder().encode(text), 'small.yaml');
	if (!show) throw new Error(JSON.stringify(problems));
	return show;
}
