// The sentence of each warning, without a full stop: it stands in lists.

import { minutesSeconds } from '../base/duration.ts';
import type { Tuned, Warning } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';
import { packName, pedalName, playerName, songTitle } from '../showfile/shown-names.ts';
import { byId, type Call, onRack } from './call.ts';
import { capoSaid } from './capo-words.ts';
import { listedWords } from './later-costs.ts';
import { handOverCount, leftWords } from './paper.ts';
import { leftOutWords, unplayableWords } from './unplayable.ts';

/** For people: instruments by slot and name. */
export function warningWords(show: Show, warning: Warning): string {
	return words(show, warning, onRack(show));
}

/** As scripts read it: instruments by id. */
export function warningText(show: Show, warning: Warning): string {
	return words(show, warning, byId);
}

function words(show: Show, warning: Warning, call: Call): string {
	switch (warning.code) {
		case 'wrong-tuning':
			return wrongWords(show, warning, call);
		case 'empty-hands': {
			const what = warning.instrument === undefined ? warning.tuning : call(warning.instrument);
			return `${playerName(show, warning.player)}'s hands are empty; ${songTitle(show, warning.song)} wants ${what}`;
		}
		case 'tight-gap':
			return gapWords(show, warning);
		case 'missing':
			// The reason last: on a narrow screen it is cut first.
			return `Nothing for ${playerName(show, warning.player)} in ${songTitle(show, warning.song)}${backupWords(warning, call)}: ${unplayableWords(show, warning.why, call)}`;
		case 'substituted': {
			const { why } = warning;
			const plays = `${playerName(show, warning.player)} plays ${call(warning.instrument)}`;
			const where = `in ${songTitle(show, warning.song)}`;
			const reason = unplayableWords(show, why, call);
			const isNamed = warning.instrument === warning.for;
			// The reason names what is stood in for already.
			if (!isNamed && 'instrument' in why && why.instrument === warning.for) {
				return `${reason}: ${plays} ${where}`;
			}
			const instead = isNamed ? 'another way' : `for ${call(warning.for)}`;
			return `${plays} ${instead} ${where}: ${reason}`;
		}
		case 'kept-unsaid':
			return `${songTitle(show, warning.song)} does not say what ${playerName(show, warning.player)} plays: keeps ${call(warning.instrument)}`;
		case 'no-stand-in':
			return aloneWords(show, warning, call);
		case 'short-curfew':
			return `The set ends ${minutesSeconds(warning.overSeconds)} after the curfew`;
		case 'shared-pack': {
			const names = warning.players.map((player) => playerName(show, player));
			const are = names.length === 2 ? 'are both' : 'are all';
			return `${names.join(' and ')} ${are} on pack ${packName(show, warning.pack)}`;
		}
		case 'crossed-packs': {
			const [one, other] = warning.players.map((player) => playerName(show, player));
			const [worn, others] = warning.packs.map((pack) => packName(show, pack));
			return `${one} and ${other} wear each other's packs: ${one} ${worn}, ${other} ${others}`;
		}
		case 'no-pack': {
			const { player, pack, wearer } = warning;
			const own = packName(show, pack);
			const where =
				wearer === null
					? `${call(warning.instrument)} goes with ${own}`
					: `${own} is on ${playerName(show, wearer)}`;
			return `${playerName(show, player)} has no pack on: ${where}`;
		}
		case 'suspect-pack':
			return suspectWords(show, warning, call);
		case 'pack-channel':
			return `${playerName(show, warning.player)} changed packs; tell desk and radio coordinator: ${channelWords(show, warning)}`;
		case 'unmarked': {
			const { instrument, tuning, capo } = warning;
			const logged = [
				...(tuning === null ? [] : [`in ${tuning}`]),
				...(capo === null ? [] : [`with ${capoSaid(capo)}`]),
			].join(' ');
			return `${call(instrument)} was logged ${logged}, which nobody marked`;
		}
		case 'stuck-pedal': {
			const whose = `${playerName(show, warning.player)}'s`;
			const stays = `does not switch, stays ${warning.isOn ? 'on' : 'off'}`;
			return `${whose} ${pedalName(show, warning.player, warning.pedal)} ${stays}`;
		}
		case 'missed-hand-over': {
			const whose = `${playerName(show, warning.player)}'s hand-over`;
			const of = warning.instrument === undefined ? '' : ` of ${call(warning.instrument)}`;
			return `${whose}${of} for ${songTitle(show, warning.song)} was not logged`;
		}
		case 'stale':
			return `RECHECK ${call(warning.instrument)} for ${songTitle(show, warning.song)}`;
		case 'not-ready':
			return warning.song === undefined
				? `${playerName(show, warning.player)}'s ${call(warning.instrument)} has a string down${backupWords(warning, call)}`
				: `${call(warning.instrument)} is not ready for ${songTitle(show, warning.song)}`;
		case 'late':
			return lateWords(show, warning, call);
	}
}

type Of<Code extends Warning['code']> = Extract<Warning, { code: Code }>;

function backupWords({ standIn }: { readonly standIn?: string }, call: Call): string {
	return standIn === undefined ? '' : `; backup ${call(standIn)}`;
}

/** `No backup for 8 Coal in Harbour and Lantern: 9 Cellar is out tonight`. */
function aloneWords(
	show: Show,
	{ instrument, leftOut, songs }: Of<'no-stand-in'>,
	call: Call,
): string {
	const where =
		songs === undefined ? '' : ` in ${listedWords(songs.map((song) => songTitle(show, song)))}`;
	const why = leftOut.length === 0 ? '' : `: ${leftOutWords(show, leftOut, call)}`;
	return `No backup for ${call(instrument)}${where}${why}`;
}

function lateWords(show: Show, late: Of<'late'>, call: Call): string {
	const title = songTitle(show, late.song);
	const by = `${minutesSeconds(late.shortSeconds)} short for ${title}`;
	const isWhat = late.isRestring ? ': restring' : ' is';
	const unlessBegun = late.isRestring ? ' if not begun' : '';
	return `${call(late.instrument)}${isWhat} ${by}${otherwiseWords(show, late, call)}${unlessBegun}`;
}

/** What they could have instead. */
function otherwiseWords(show: Show, late: Of<'late'>, call: Call): string {
	if (late.keeps === undefined || late.standIn === undefined) return backupWords(late, call);
	const { capo } = late.keeps;
	const moved = capo === null ? '' : capo === 0 ? ' without capo' : ` with capo ${capo}`;
	return `; ${playerName(show, late.player)} can keep ${call(late.standIn)}${moved}`;
}

/** What the hand-overs take of the gap, and what is left of it. */
function gapWords(show: Show, { song, handOvers, seconds, gapSeconds }: Of<'tight-gap'>): string {
	const given = handOvers === 1 ? 'hand-over' : handOverCount(handOvers);
	const takes = `${given} ${minutesSeconds(seconds)}, gap ${minutesSeconds(gapSeconds)}`;
	return `Before ${songTitle(show, song)}: ${takes}, ${leftWords(gapSeconds - seconds)}`;
}

function suspectWords(show: Show, warning: Of<'suspect-pack'>, call: Call): string {
	const { player, pack, worn, instrument } = warning;
	const who = playerName(show, player);
	if (instrument === undefined)
		return `${who} is on pack ${packName(show, pack)}, which is suspect`;
	const stays = worn === null ? 'has no pack on' : `stays on ${packName(show, worn)}`;
	return `Pack ${packName(show, pack)} of ${call(instrument)} is suspect; ${who} ${stays}`;
}

/** A pack without a channel in the file is known at the desk by its own name, if at all. */
function channelWords(show: Show, { from, to }: Of<'pack-channel'>): string {
	const called = (id: string) =>
		show.packs.find((one) => one.id === id)?.channel ?? `pack ${packName(show, id)}`;
	return from === null ? called(to) : `${called(from)} → ${called(to)}`;
}

function wrongWords(show: Show, warning: Of<'wrong-tuning'>, call: Call): string {
	const { song, player, instrument, wrong, is, wants, isOpen } = warning;
	const title = songTitle(show, song);
	const who = playerName(show, player);
	if (wrong === 'instrument' && wants.instrument !== null)
		return `${who} has ${call(instrument)}; ${title} wants ${call(wants.instrument)}`;
	if (wrong === 'capo')
		return `${who}'s ${call(instrument)} has ${capoSaid(is.capo)}; ${title} wants ${capoSaid(wants.capo)}`;
	const what = wants.instrument !== null ? `${call(wants.instrument)} in ` : isOpen ? '' : 'it in ';
	// Short, so that at 80 columns what is wanted is not cut.
	return `${who}: ${call(instrument)} in ${tunedWords(is)}; ${title} wants ${what}${tunedWords(wants)}`;
}

/** `drop D with capo 2`. */
export function tunedWords({ tuning, capo }: Tuned): string {
	return capo === 0 ? tuning : `${tuning} with capo ${capo}`;
}
