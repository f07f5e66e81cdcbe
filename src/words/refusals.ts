// Why a key does nothing now: the sentence of each refusal.

import type { Refusal } from '../session/refusal.ts';
import type { Show } from '../showfile/show.ts';
import {
	packName,
	pedalName,
	playerName,
	shownInstrument,
	songTitle,
} from '../showfile/shown-names.ts';

/** One or two whole sentences for the person at the keys. */
export function refusalWords(show: Show, refusal: Refusal): string {
	switch (refusal.code) {
		case 'show-closed':
			return 'The show is closed. Nothing more is logged.';
		case 'set-over':
			return 'The set is over. j plays one more song, q ends the show.';
		case 'no-song-on':
			return 'No song is on.';
		case 'no-song-to-step-back':
			return 'No song is on. left goes back to the song before.';
		case 'at-song-start':
			return 'This is the start of the song. left goes to the song before.';
		case 'no-song-beside': {
			const hint = refusal.side === 'after' && refusal.isOn ? ' d ends it.' : '';
			return `No song ${refusal.side} this one.${hint}`;
		}
		case 'unknown-song':
			return 'No such song in this show.';
		case 'unknown-player':
			return 'No such player in this show.';
		case 'unknown-instrument':
			return 'No such instrument in this show.';
		case 'unknown-pedal':
			return 'No such pedal on that board.';
		case 'not-on-list':
			return 'No such song on the list.';
		case 'next-already':
			return `${songTitle(show, refusal.song)} is already next.`;
		case 'dropped-already':
			return `${songTitle(show, refusal.song)} is already dropped.`;
		case 'listed-already':
			return `${songTitle(show, refusal.song)} is already on the list.`;
		case 'there-already':
			return `${songTitle(show, refusal.song)} is already there.`;
		case 'on-now':
			return `${songTitle(show, refusal.song)} is on now. d ends it.`;
		case 'played':
			return `${songTitle(show, refusal.song)} was played. p adds it again.`;
		case 'behind-what-is-on':
			return 'That place is before the current song.';
		case 'interval-stays':
			return 'An interval stays where it is. Move the songs.';
		case 'encore-takes-songs':
			return 'Only songs go into the encore.';
		case 'named-already':
			return `${playerName(show, refusal.player)} already has that in this song.`;
		case 'nothing-new-in-file':
			return 'The show file has nothing new.';
		case 'no-hand-over-open':
			return 'No hand-over is open.';
		case 'no-break-open':
			return 'No break is waiting for an answer.';
		case 'given-since':
			return `${playerName(show, refusal.player)} got something else since then. x alone logs it as of now.`;
		case 'has-already': {
			const who = playerName(show, refusal.player);
			return refusal.instrument === null
				? `${who}'s hands are already empty.`
				: `${who} already has ${shownInstrument(show, refusal.instrument)}.`;
		}
		case 'in-hands':
			return `${playerName(show, refusal.player)} has ${shownInstrument(show, refusal.instrument)}.`;
		case 'worked-in-hands':
			return `${playerName(show, refusal.player)} has ${shownInstrument(show, refusal.instrument)}: not to be marked ready. c logs its tuning or capo.`;
		case 'string-down':
			return `${shownInstrument(show, refusal.instrument)} has a string down. t once it is restrung.`;
		case 'not-ready-as-it-stands':
			return `${shownInstrument(show, refusal.instrument)} has a string down: not ready as it stands.`;
		case 'out':
			return `${shownInstrument(show, refusal.instrument)} is out tonight. r brings it back.`;
		case 'out-already':
			return `${shownInstrument(show, refusal.instrument)} is already out. r brings it back.`;
		case 'faulty':
			return `${shownInstrument(show, refusal.instrument)} is on the bench, faulty. r brings it back.`;
		case 'not-put-aside':
			return `${shownInstrument(show, refusal.instrument)} is not on the bench or out.`;
		case 'not-on-rack':
			return `${shownInstrument(show, refusal.instrument)} is not on the rack.`;
		case 'nothing-to-mark-ready':
			return 'Nothing on the rack can be marked ready.';
		case 'no-incident':
			return 'No incident to add to. i marks one.';
		case 'nothing-added':
			return 'Nothing was added.';
		case 'empty-memo':
			return 'The memo is empty.';
		case 'time-already':
			return 'Tonight already uses that time.';
		case 'stuck-already':
			return `${whosePedal(show, refusal)} is already marked stuck. r 0 clears it.`;
		case 'not-stuck':
			return `${whosePedal(show, refusal)} is not marked stuck.`;
		case 'no-fault-open':
			return 'No fault is being looked for.';
		case 'no-pack-on':
			return `${playerName(show, refusal.player)} has no pack on.`;
		case 'no-battery':
			return 'Nothing of that name runs on a battery.';
		case 'suspect-already':
			return `Pack ${packName(show, refusal.pack)} is already suspect. w - clears it.`;
		case 'not-suspect':
			return `Pack ${packName(show, refusal.pack)} is not suspect.`;
	}
}

function whosePedal(show: Show, { player, pedal }: { player: string; pedal: string }): string {
	return `${playerName(show, player)}'s ${pedalName(show, player, pedal)}`;
}
