// The small rigs that the examples of src/rig speak of, read from show files as a user writes them.

import { apply } from '../../src/session/apply.ts';
import { openSession } from '../../src/session/open-session.ts';
import { joinFiles } from '../../src/showfile/join-files.ts';
import { readYaml } from '../../src/showfile/read-yaml.ts';
import type { RigPart } from '../../src/showfile/rig.ts';
import { showFrom } from '../showfile/show-files.ts';

/** A show of one player on one song, with further top-level keys. */
export function rigShow(more: string, song = '{id: one, tempo: 120, hands: {bo: B1}}') {
	return showFrom(`format: rackside/1
players: [{id: bo, name: Bo}]
songs: [${song}]
set: [one]
${more}
`);
}

const B1 = 'instruments: [{id: B1, kind: electric-6, tuning: E standard}]';

/** A file's tree. */
function treeOf(text: string) {
	const load = () => new TextEncoder().encode(text);
	return joinFiles({ load, mainFile: 'show.yaml', readYaml }).root;
}

const CORDS =
	rigShow(`instruments: [{id: B1, kind: electric-6, tuning: E standard, output: {ohms: 10 k}}]
rigs: {bo: [{id: lead, kind: cord, length: 6 m, pf-per-m: 100}, {id: head, kind: amp, input: 1 M}]}
`);

export const exampleRig = {
	TREE: treeOf('format: rackside/1\npacks: [{id: P1, channel: G1}, {id: P2, channel: G1}]\n'),
	amp: (id: string, tap: number): RigPart => ({ id, name: id, kind: 'amp', tap }),
	cab: (id: string, ohms: number): RigPart => ({ id, name: id, kind: 'cab', ohms }),
	BOARD: rigShow(`${B1}
supplies: [{id: S1, outputs: [{id: a, ma: 100}, {id: b, ma: 100}]}]
boards:
  bo:
    - {id: drive, power: {supply: S1, output: a, ma: 35}}
    - {id: boost, power: {supply: S1, output: a, ma: 70}}
`),
	TWO_WAYS: rigShow(`${B1}
rigs:
  bo:
    - {id: box, kind: direct-box}
    - {id: head, kind: amp}
    - {id: cab, kind: cab, ohms: 8, distance: 30 cm}
`),
	PACKS: rigShow(`${B1}\npacks: [{id: P1, battery: {hours: 6, used: 2.5}}]`),
	CORDS,
	/** Before the show nothing is heard of Bo, whose hands are empty. */
	SOUGHT: apply(
		openSession(CORDS),
		{ k: 'fault-sought', at: 0, player: 'bo', symptom: 'silent' },
		'here:1',
	),
	DELAY: rigShow(
		`${B1}\nboards: {bo: [{id: delay}]}`,
		'{id: one, tempo: 120, hands: {bo: B1}, board: {bo: {delay: {time: quarter}}}}',
	),
};
