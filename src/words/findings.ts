// What `check` says of each thing that it finds: one or two whole sentences.

import { minutesSeconds } from '../base/duration.ts';
import type { Finding, Gets } from '../showfile/finding.ts';
import type { Show } from '../showfile/show.ts';
import { packName, playerName, songTitle } from '../showfile/shown-names.ts';
import { byId, type Call, onRack } from './call.ts';
import { oneOfKind } from './kinds.ts';
import { driftWords, humidityWords } from './warmth.ts';

/** More titles than these make no sentence. */
const MOST_TITLES = 5;
const DAY_MINUTES = 1440;

/** For people: instruments by slot and name. */
export function findingWords(show: Show, finding: Finding): string {
	return words(show, finding, onRack(show));
}

/** As scripts read it: instruments by id. */
export function findingText(show: Show, finding: Finding): string {
	return words(show, finding, byId);
}

type Of<Code extends Finding['code']> = Extract<Finding, { code: Code }>;

function words(show: Show, finding: Finding, call: Call): string {
	switch (finding.code) {
		case 'two-hands':
			return twoHandsWords(show, finding, call);
		case 'nothing-to-keep': {
			const until = finding.until === null ? '' : ` until ${placeWords(show, finding.until)}`;
			return `No song gives ${playerName(show, finding.player)} anything${until}.`;
		}
		case 'segue-hand-over':
			return `${songTitle(show, finding.song)} follows with no gap, but ${givenWords(show, finding, call)}.`;
		case 'gap-too-short': {
			const takes = `hand-overs take ${minutesSeconds(finding.seconds)}`;
			const gap = `the gap is ${minutesSeconds(finding.gapSeconds)}`;
			return `Before ${songTitle(show, finding.song)}, ${takes} and ${gap}: ${givenWords(show, finding, call)}.`;
		}
		case 'no-gap':
			return noGapWords(show, finding);
		case 'floating-retune': {
			const stays = `but its floating bridge stays in ${finding.stays} tonight.`;
			if ('entry' in finding) {
				return `${call(finding.entry)} is listed as a backup for ${call(finding.instrument)} in ${finding.tuning}, ${stays}`;
			}
			const who = playerName(show, finding.player);
			return `${inWords(show, finding)}, ${call(finding.instrument)} is wanted in ${finding.tuning}, ${stays} ${getsWords(who, finding.gets)}`;
		}
		case 'far-tuning':
			return `${inWords(show, finding)}, ${call(finding.instrument)} is wanted in ${finding.tuning}, too far from ${finding.from}, which its strings are for.`;
		case 'capo-on-bass': {
			const not = `capo ${finding.capo}, but no capo goes on ${oneOfKind(finding.kind)}.`;
			return 'entry' in finding
				? `${call(finding.entry)} is listed as a backup for ${call(finding.instrument)} with ${not}`
				: `${inWords(show, finding)}, ${call(finding.instrument)} has ${not}`;
		}
		case 'for-others':
			return `${inWords(show, finding)}, ${playerName(show, finding.player)} plays ${call(finding.instrument)}, which is for ${namesWords(show, finding.owners)}.`;
		case 'needs-unmet': {
			const taken = finding.inOtherHands.map(call);
			const are = taken.length === 1 ? 'is' : 'are';
			const why =
				taken.length === 0
					? 'nothing on the rack can be that'
					: `${taken.join(' and ')} ${are} in other hands`;
			const what = `${oneOfKind(finding.kind)} sounding ${finding.sounds}`;
			return `${inWords(show, finding)}, ${playerName(show, finding.player)} needs ${what}, but ${why}.`;
		}
		case 'prefer-unfit':
			return `${inWords(show, finding)}, ${playerName(show, finding.player)} prefers ${call(finding.instrument)}, which cannot play this part.`;
		case 'shared-pack': {
			const are = finding.players.length === 2 ? 'are both' : 'are all';
			return `${inWords(show, finding)}, ${namesWords(show, finding.players)} ${are} on pack ${packName(show, finding.pack)}.`;
		}
		case 'pedal-missing': {
			const who = playerName(show, finding.player);
			return finding.pedal === null
				? `${songTitle(show, finding.song)} switches pedals for ${who}, who has no board in this show.`
				: `${songTitle(show, finding.song)} switches ${finding.pedal}, which is not on ${who}'s board.`;
		}
		case 'past-curfew': {
			const over = `${minutesSeconds(finding.overSeconds)} after the curfew of ${dayTimeWords(finding.curfewMinutes)}`;
			return `The set ends at about ${dayTimeWords(finding.endMinutes)}, ${over}.`;
		}
		case 'no-slot':
			return `${call(finding.instrument)} is played but has no slot, so no key names it.`;
		case 'not-played':
			return `${titlesWords(show, finding.songs)} ${finding.songs.length === 1 ? 'is' : 'are'} not in the set.`;
		case 'no-length':
			return `${titlesWords(show, finding.songs)} ${finding.songs.length === 1 ? 'has' : 'have'} no length, so later times are a guess.`;
		case 'near-past-end': {
			const near = `${finding.cue} is near ${minutesSeconds(finding.nearSeconds)}`;
			return `In ${songTitle(show, finding.song)}, ${near}, but the song is over at ${minutesSeconds(finding.lengthSeconds)}.`;
		}
		case 'string-tension':
			return tensionWords(finding, call);
		case 'octaves-spoilt': {
			const [low, high] = finding.strings;
			const far = `${Math.abs(finding.cents).toFixed(1)} c ${finding.cents > 0 ? 'wide' : 'narrow'}`;
			return `The offsets for ${call(finding.instrument)} in ${finding.tuning} put the octave on strings ${low} and ${high} ${far}, more than ${finding.mostCents} c.`;
		}
		case 'offsets-differ': {
			const who = finding.wanted.map(
				({ player, offsets }) => `${playerName(show, player)} (${offsets || 'no offsets'})`,
			);
			return `${call(finding.instrument)} is played in ${finding.tuning} by ${who.join(' and ')}: touch it up between them; the plan counts no time for it.`;
		}
		case 'shape-strings': {
			const frets = `${finding.frets} ${finding.frets === 1 ? 'fret' : 'frets'}`;
			const strings = `${finding.strings} ${finding.isInCourses ? 'courses' : 'strings'}`;
			const whose = `for ${playerName(show, finding.player)} in ${songTitle(show, finding.song)}`;
			return `The shape ${finding.shape} ${whose} has ${frets}, but ${call(finding.instrument)} has ${strings}: give one fret for each, x where none sounds.`;
		}
		case 'shape-without-hands':
			return `${songTitle(show, finding.song)} names chord shapes for ${playerName(show, finding.player)}, who has nothing in hands there.`;
		case 'stage-drift':
			return `Expected since soundcheck, ${driftWords(show, finding.drifted, call)} The order is surer than the figures: wood moves too.`;
		case 'stage-humidity':
			return humidityWords(finding.is, finding.percent);
	}
}

function noGapWords(show: Show, finding: Of<'no-gap'>): string {
	const { songs, needs, gapSeconds, encoreGapSeconds } = finding;
	const before =
		encoreGapSeconds === null ? '' : `, ${minutesSeconds(encoreGapSeconds)} before the encore`;
	const named = songs
		.slice(0, MOST_TITLES)
		.map((song, at) => `${songTitle(show, song)} (${minutesSeconds(needs[at] ?? 0)})`);
	const more = songs.length - named.length;
	const all = [...named, ...(more > 0 ? [`${more} more`] : [])].join(', ');
	const where = all.replace(/, ([^,]*)$/, ' and $1');
	return `No gap is given, so ${minutesSeconds(gapSeconds)} is assumed between songs${before}. Hand-overs fill it or need more before ${where}.`;
}

function twoHandsWords(show: Show, finding: Of<'two-hands'>, call: Call): string {
	const { instrument, named, keeper, gets } = finding;
	const where = inWords(show, finding);
	const names = namesWords(show, named);
	if (keeper !== null) {
		const keeps = `${playerName(show, keeper)} keeps it`;
		return `${where}, ${names} is to have ${call(instrument)}, but ${keeps}. ${getsWords(names, gets)}`;
	}
	const both = named.length === 2 ? 'are both' : 'are all';
	const at = `${where}, ${names} ${both} to have ${call(instrument)}.`;
	const [who, has, plays] =
		named.length === 2 ? ['One of them', 'has', 'plays'] : ['All but one of them', 'have', 'play'];
	return gets === 'nothing'
		? `${at} ${who} ${has} nothing: no backup fits.`
		: `${at} ${who} ${plays} a backup.`;
}

function getsWords(who: string, gets: Gets): string {
	if (gets === 'nothing') return `${who} has nothing: no backup fits.`;
	return gets === 'backup' ? `${who} plays a backup.` : `${who} plays it with capo ${gets.capo}.`;
}

function givenWords(
	show: Show,
	{ given }: Of<'gap-too-short' | 'segue-hand-over'>,
	call: Call,
): string {
	return given
		.map(({ player, instrument, isBackup }) => {
			const what = `${isBackup ? 'a backup for ' : ''}${call(instrument)}`;
			return `${playerName(show, player)} gets ${what}`;
		})
		.join(', ');
}

function tensionWords(finding: Of<'string-tension'>, call: Call): string {
	const { instrument, string, tuning, percentLeft, isEstimated } = finding;
	const which = `String ${string} of ${call(instrument)}`;
	const guess = isEstimated ? ' (estimated)' : '';
	if (percentLeft <= 0) return `${which} breaks before ${tuning}${guess}. Do not tune up to it.`;
	return `${which} has ${percentLeft} % of its strength left in ${tuning}${guess} and may break. Wear eye protection, or choose another string.`;
}

type At = { readonly song: string; readonly cue?: string };

function inWords(show: Show, at: At): string {
	return `In ${placeWords(show, at)}`;
}

/** `Harbour at bridge`. */
function placeWords(show: Show, { song, cue }: At): string {
	const title = songTitle(show, song);
	return cue === undefined ? title : `${title} at ${cue}`;
}

function namesWords(show: Show, players: readonly string[]): string {
	return players.map((player) => playerName(show, player)).join(' and ');
}

function titlesWords(show: Show, songs: readonly string[]): string {
	const named = songs.slice(0, MOST_TITLES).map((song) => songTitle(show, song));
	const more = songs.length - named.length;
	return [...named, ...(more > 0 ? [`${more} more`] : [])]
		.join(', ')
		.replace(/, ([^,]*)$/, ' and $1');
}

function dayTimeWords(minutes: number): string {
	const whole = Math.floor(minutes) % DAY_MINUTES;
	return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}
