// Where in its files what was found of a rig stands: the line that somebody would change.

import type { Place } from '../base/problem.ts';
import { sectionOf } from '../showfile/section-of.ts';
import { childAt, type SourceNode } from '../showfile/source-node.ts';
import type { RigFinding } from './rig-finding.ts';

/**
 * The narrowest place that is known; that of the whole file where nothing narrower is.
 *
 * @example
 * placeOfRigFinding(TREE, { code: 'shared-channel', severity: 'risk', channel: 'G1', packs: ['P1', 'P2'] }).line // => 2
 */
export function placeOfRigFinding(root: SourceNode, finding: RigFinding): Place {
	return (nodeOf(root, finding) ?? root).place;
}

function nodeOf(root: SourceNode, finding: RigFinding): SourceNode | undefined {
	const ofPlayer = (player: string, id: string) =>
		entry(childAt(sectionOf(root, 'boards'), player), id) ??
		entry(childAt(sectionOf(root, 'rigs'), player), id);
	const consumer = ({ player, id }: { readonly player: string | null; readonly id: string }) =>
		player === null ? entry(sectionOf(root, 'instruments'), id) : ofPlayer(player, id);
	const song = (id: string) => entry(sectionOf(root, 'songs'), id);
	switch (finding.code) {
		case 'amp-load':
		case 'amp-no-load':
			return ofPlayer(finding.player, finding.amplifier);
		case 'cab-power':
			return ofPlayer(finding.player, finding.cab);
		case 'supply-load':
		case 'daisy-chain': {
			const supply = entry(sectionOf(root, 'supplies'), finding.supply);
			return entry(childAt(supply, 'outputs'), finding.output) ?? supply;
		}
		case 'supply-volts':
		case 'supply-centre':
		case 'supply-current':
			return consumer(finding);
		case 'battery-short':
			return finding.what === 'pack'
				? entry(sectionOf(root, 'packs'), finding.id)
				: consumer(finding);
		case 'shared-channel':
			return entry(sectionOf(root, 'packs'), finding.packs.at(-1) ?? '');
		case 'unknown-scene':
			return ofPlayer(finding.player, finding.pedal) ?? song(finding.song);
		case 'no-tempo':
			return song(finding.song);
		case 'thin-piezo':
		case 'dull-cord':
			return entry(sectionOf(root, 'instruments'), finding.instrument);
		case 'sources-cancel': {
			const { player, instrument, sources } = finding;
			if (player === null) return entry(sectionOf(root, 'instruments'), instrument ?? '');
			const { from } = sources[1];
			return 'kind' in from ? ofPlayer(player, from.id) : undefined;
		}
	}
}

function entry(list: SourceNode | undefined, id: string): SourceNode | undefined {
	if (list?.kind !== 'list') return undefined;
	return list.items.find((one) => {
		const node = childAt(one, 'id');
		return node?.kind === 'text' && node.text.trim().normalize('NFC') === id;
	});
}
