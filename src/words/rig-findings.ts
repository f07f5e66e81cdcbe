// What `check` says of a show's rig: whole sentences, with the caution where the work can hurt somebody.

import type { RigFinding } from '../rig/rig-finding.ts';
import type { Show } from '../showfile/show.ts';
import { packName, pedalName, playerName, songTitle } from '../showfile/shown-names.ts';
import { byId, type Call, onRack } from './call.ts';
import { TUBE_LOAD } from './cautions.ts';
import {
	bothWords,
	delayWords,
	figure,
	hertzWords,
	hourWords,
	partInWords,
	RIG_PAGE,
} from './rig.ts';

/** The pole of a plug or a socket, as it is marked on them. */
const POLE = { positive: 'plus', negative: 'minus' } as const;

/** For people: instruments by slot and name, everything else by its name. */
export function rigFindingWords(show: Show, finding: RigFinding): string {
	return words(show, finding, onRack(show));
}

/** As scripts read it: instruments by id. */
export function rigFindingText(show: Show, finding: RigFinding): string {
	return words(show, finding, byId);
}

function words(show: Show, finding: RigFinding, call: Call): string {
	switch (finding.code) {
		case 'amp-load': {
			const { player, ohms, tapOhms } = finding;
			const amp = partName(show, player, finding.amplifier);
			return `${whose(show, player)} ${amp} is set to ${tapOhms} ohms, but the cabinets on it are ${figure(ohms)} ohms together.`;
		}
		case 'amp-no-load':
			return `${whose(show, finding.player)} ${partName(show, finding.player, finding.amplifier)} has tubes and no cabinet in the rig. ${TUBE_LOAD}`;
		case 'cab-power':
			return `${whose(show, finding.player)} ${partName(show, finding.player, finding.cab)} takes ${figure(finding.ratedWatts)} W and can get ${figure(finding.watts)} W.`;
		case 'supply-load': {
			const used = `Supply ${supplyName(show, finding.supply)} output ${finding.output}: ${figure(finding.usedMa)} mA`;
			return finding.isOver
				? `${used} are drawn, and it gives ${figure(finding.ratedMa)} mA.`
				: `${used} of its ${figure(finding.ratedMa)} mA are drawn, more than four fifths.`;
		}
		case 'supply-volts':
			return `${consumer(show, finding, call)} needs ${figure(finding.wants)} V, and supply ${supplyName(show, finding.supply)} output ${finding.output} gives ${figure(finding.gives)} V.`;
		case 'supply-centre':
			return `${consumer(show, finding, call)} needs ${POLE[finding.wants]} in the middle of its plug, and supply ${supplyName(show, finding.supply)} output ${finding.output} has ${POLE[finding.gives]} there.`;
		case 'supply-current':
			return `${consumer(show, finding, call)} needs ${finding.wants.toUpperCase()}, and supply ${supplyName(show, finding.supply)} output ${finding.output} gives ${finding.gives.toUpperCase()}.`;
		case 'daisy-chain':
			return `${listed(finding.on.map((one) => consumer(show, one, call)))} share supply ${supplyName(show, finding.supply)} output ${finding.output}: a chain can hum.`;
		case 'battery-short': {
			const what =
				finding.what === 'pack'
					? `Pack ${packName(show, finding.id)}`
					: consumer(show, finding, call);
			return `${what} has ${hourWords(finding.hoursLeft)} left in its battery, ${finding.hoursLeft < finding.hoursNeeded ? 'but the show takes' : 'too little to spare for a show of'} ${hourWords(finding.hoursNeeded)}.`;
		}
		case 'shared-channel':
			return `Packs ${listed(finding.packs.map((id) => packName(show, id)))} are ${finding.packs.length === 2 ? 'both' : 'all'} on channel ${finding.channel}.`;
		case 'unknown-scene':
			return `In ${songTitle(show, finding.song)}, ${pedalOf(show, finding.player, finding.pedal)} is asked for the scene ${finding.scene}, which it does not have.`;
		case 'no-tempo':
			return `In ${songTitle(show, finding.song)}, ${pedalOf(show, finding.player, finding.pedal)} goes by the tempo (${finding.value}), and the song has none.`;
		case 'thin-piezo':
			return `${call(finding.instrument)} loses ${Math.abs(finding.decibels).toFixed(0)} dB at its lowest string in ${whose(show, finding.player)} first input.`;
		case 'dull-cord':
			return `${call(finding.instrument)} loses its highs from ${(finding.hertz / 1000).toFixed(1)} kHz on in ${whose(show, finding.player)} cord.`;
		case 'sources-cancel': {
			const { player, instrument, sources, offset, isLows } = finding;
			const of = player === null ? `${call(instrument ?? '')}'s` : whose(show, player);
			const both = `${of} ${bothWords(sources)}`;
			return isLows
				? `${both} reach the desk with opposite polarity: the lows cancel.`
				: `${both} reach the desk ${delayWords(offset.milliseconds)} apart and cancel around ${hertzWords(Math.round(offset.cancelledHertz ?? 0))}.`;
		}
	}
}

/** In one row, for a glance in the middle of a show; what is only found before the doors in its whole sentence. */
export function rigFindingInShort(show: Show, finding: RigFinding): string {
	const at = (one: { readonly supply: string; readonly output: string }) =>
		`${supplyName(show, one.supply)} ${one.output}`;
	switch (finding.code) {
		case 'amp-load':
			return `${playerName(show, finding.player)} ${partName(show, finding.player, finding.amplifier)}: load ${figure(finding.ohms)} ohms, set to ${finding.tapOhms} ohms`;
		case 'amp-no-load':
			return `${playerName(show, finding.player)} ${partName(show, finding.player, finding.amplifier)}: ${RIG_PAGE.noLoad}`;
		case 'cab-power':
			return `${playerName(show, finding.player)} ${partName(show, finding.player, finding.cab)}: gets ${figure(finding.watts)} W, takes ${figure(finding.ratedWatts)} W`;
		case 'supply-load':
			return `${at(finding)}: ${figure(finding.usedMa)} mA of ${figure(finding.ratedMa)} mA`;
		case 'supply-volts':
			return `${consumer(show, finding, onRack(show))}: wants ${figure(finding.wants)} V, ${at(finding)} gives ${figure(finding.gives)} V`;
		case 'supply-centre':
			return `${consumer(show, finding, onRack(show))}: wants centre ${finding.wants}, ${at(finding)} is ${finding.gives}`;
		case 'supply-current':
			return `${consumer(show, finding, onRack(show))}: wants ${finding.wants.toUpperCase()}, ${at(finding)} gives ${finding.gives.toUpperCase()}`;
		case 'shared-channel':
			return `packs ${listed(finding.packs.map((id) => packName(show, id)))}: one channel, ${finding.channel}`;
		default:
			return rigFindingWords(show, finding);
	}
}

/** `Bo's`. */
function whose(show: Show, player: string): string {
	return `${playerName(show, player)}'s`;
}

function pedalOf(show: Show, player: string, pedal: string): string {
	return `${whose(show, player)} ${pedalName(show, player, pedal)}`;
}

/** `amp head`, `cabinet cab1`. */
function partName(show: Show, player: string, id: string): string {
	const part = show.rigs?.[player]?.find((one) => one.id === id);
	return part === undefined ? id : partInWords(part);
}

function supplyName(show: Show, id: string): string {
	return show.supplies?.find((one) => one.id === id)?.name ?? id;
}

function consumer(
	show: Show,
	{ player, id }: { readonly player: string | null; readonly id: string },
	call: Call,
): string {
	if (player === null) return call(id);
	const isPedal = show.boards[player]?.some((one) => one.id === id) === true;
	return isPedal
		? pedalOf(show, player, id)
		: `${whose(show, player)} ${partName(show, player, id)}`;
}

function listed(names: readonly string[]): string {
	return names.join(', ').replace(/, ([^,]*)$/, ' and $1');
}
