// Which pack goes on with what a player is handed, in a few words: on cards and under the question of a swap.

import type { PackHanded } from '../session/packs-handed.ts';
import type { Session } from '../session/session.ts';
import { wearersOf } from '../session/shared-packs.ts';
import { packName, playerName } from '../showfile/shown-names.ts';
import { keptSuspect, packElsewhere, packSuspect, packToPutOn } from './stage.ts';

/** What they are to be given in place of the one they wear, and who wears it now; empty where theirs stays on. */
export function packWords(
	session: Session,
	player: string,
	{ pack, handed }: { readonly pack: string | null; readonly handed: PackHanded },
): string {
	if (pack === null) return '';
	const { show, players, suspectPacks } = session;
	const worn = players[player]?.pack ?? null;
	const name = packName(show, pack);
	if (suspectPacks.includes(pack)) {
		return packSuspect(name, worn === pack ? null : keptName(session, worn));
	}
	if (handed.wearer !== null) {
		return packElsewhere(name, keptName(session, handed.worn), playerName(show, handed.wearer));
	}
	if (pack === worn) return '';
	const wearer = wearersOf(session, pack).find(
		({ id }) => id !== player && players[id]?.holds != null,
	);
	return packToPutOn(name, wearer === undefined ? null : playerName(show, wearer.id));
}

function keptName({ show, suspectPacks }: Session, kept: string | null): string | null {
	if (kept === null) return null;
	const name = packName(show, kept);
	return suspectPacks.includes(kept) ? keptSuspect(name) : name;
}
