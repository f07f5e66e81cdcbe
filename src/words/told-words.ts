// What changed of what people were told, in words: who plays a coming song on another instrument now.

import type { Entry } from '../journal/entry.ts';
import { itemConcerned } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { slotNamed, toldAt } from '../session/told.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { listedWords } from './later-costs.ts';

/**
 * One sentence without its full stop; empty where nobody was told otherwise before, which nobody needs to
 * read. What happens now is said by its own entry.
 */
export function toldWords(
	{ hands, slots }: Extract<Entry, { k: 'plan-told' }>,
	session: Session | undefined,
): string {
	if (session === undefined) return '';
	const { show, list } = session;
	const now = itemConcerned(session);
	const changes = new Map<string, Change>();
	for (const [name, place] of Object.entries(slots)) {
		const { item, player } = slotNamed(name);
		const before = toldAt(session, slotNamed(name));
		const listed = list.find(({ key }) => key === item);
		const from = before?.instrument ?? null;
		const to = place === null ? null : (hands[place]?.instrument ?? null);
		if (before === undefined || from === to || item === now || listed?.kind !== 'song') continue;
		const key = JSON.stringify([player, from, to]);
		const change = changes.get(key) ?? { player, from, to, titles: new Set() };
		changes.set(key, change);
		change.titles.add(songTitle(show, listed.song));
	}
	return [...changes.values()].map((change) => changeWords(change, show)).join('; ');
}

type Change = {
	readonly player: string;
	readonly from: string | null;
	readonly to: string | null;
	readonly titles: Set<string>;
};

function changeWords({ player, from, to, titles }: Change, show: Show): string {
	const name = playerName(show, player);
	const songs = listedWords([...titles]);
	if (to === null) return `${name} has nothing for ${songs}`;
	const instead = from === null ? '' : `, not ${shownInstrument(show, from)}`;
	return `${name} gets ${shownInstrument(show, to)} for ${songs}${instead}`;
}
