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
	const { show, problems } = readShow(() => new TextEncoder().encode(TEXT), 'small.yaml');
	if (!show) throw new Error(JSON.stringify(problems));
	return show;
}
