// The instruments that most of these tests share: three players, nine instruments of theirs and one
// stand-in for whoever needs it. All of it is invented.

import type { Show } from '../../src/showfile/show.ts';
import { showFrom } from './show-from.ts';

const GEAR = `
players:
  - {id: ash, name: Ash, plays: guitar}
  - {id: bo, name: Bo, plays: guitar}
  - {id: cleo, name: Cleo, plays: bass}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: A2, name: Aspen, slot: "2", kind: electric-6, for: [ash], tuning: half-step down}
  - {id: A3, name: Argent, slot: "3", kind: electric-6, for: [ash], tuning: E standard, bridge: floating}
  - {id: A4, name: Anvil, slot: "4", kind: electric-6, for: [ash], tuning: drop D}
  - {id: B1, name: Birch, slot: "5", kind: electric-6, for: [bo], tuning: E standard}
  - {id: B2, name: Bellow, slot: "6", kind: electric-12, for: [bo], tuning: E standard}
  - {id: B3, name: Briar, slot: "7", kind: acoustic-6, for: [bo], tuning: E standard}
  - {id: C1, name: Cask, slot: "8", kind: bass-4, for: [cleo], tuning: E standard}
  - {id: C2, name: Coal, slot: "9", kind: bass-5, for: [cleo], tuning: B standard}
  - {id: S1, name: Spare, slot: s, kind: electric-6, tuning: E standard, spare: true}
`;

/** A show with this gear; `rest` has at least `songs` and `set`, and may have `show`. */
export function clubShow(rest: string): Show {
	return showFrom(`${GEAR}${rest}`);
}
