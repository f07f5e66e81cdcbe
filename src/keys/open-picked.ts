// What enter opens in the rack, set and log views: the picked row in full, as one sentence or two.

import { findSong } from '../session/find.ts';
import type { KeyContext } from './key-context.ts';

/** The picked row in words; null in the views where nothing is picked. */
export function pickedWords(context: KeyContext): string | null {
	switch (context.view) {
		case 'rack':
			return instrumentWords(context);
		case 'set':
			return songWords(context);
		case 'log':
			return context.logWords(context.picked) ?? 'Nothing has happened yet.';
		default:
			return null;
	}
}

function instrumentWords({ session, picked }: KeyContext): string {
	const { instruments } = session.show;
	const instrument = instruments[Math.min(picked, instruments.length - 1)];
	const state = instrument && session.instruments[instrument.id];
	if (!instrument || !state) return 'Nothing is on the rack.';
	const { tuning, capo, stringHours, faults } = state.context;
	return [
		`${instrument.name}: ${tuning.name} (${tuning.notes.join(' ')})`,
		capo === 0 ? 'no capo' : `capo ${capo}`,
		stringHours === null
			? 'strings of unknown age'
			: `strings ${stringHours.toFixed(1)} h in hands`,
		...(instrument.pack ? [`pack ${instrument.pack}`] : []),
		...(instrument.case ? [`case ${instrument.case}`] : []),
		...faults,
		...(instrument.leave ? [`check ${instrument.leave}`] : []),
		...(instrument.notes ? [instrument.notes] : []),
	].join(', ');
}

function songWords({ session, picked }: KeyContext): string {
	const item = session.list[Math.min(picked, session.list.length - 1)];
	if (!item) return 'The set is empty.';
	if (item.kind === 'interval') return `Interval of ${Math.round(item.seconds / 60)} minutes.`;
	const song = findSong(session, item.song);
	if (!song) return item.song;
	return [
		song.title,
		...(song.tempo === null ? [] : [`${song.tempo} beats a minute`]),
		`ends: ${song.ends}`,
		`cue points: ${song.cues.map(({ at }) => at).join(', ') || 'none'}`,
		...(song.notes ? [song.notes] : []),
	].join('; ');
}
