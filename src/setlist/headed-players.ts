// The players of a table, each made once from the heading that first names them.

import { headingKey } from './columns.ts';
import { kindIn } from './guess-kind.ts';
import type { ListPlayer } from './list-row.ts';
import { idFrom, isUsableId } from './player-ids.ts';
import type { Headed } from './table-headings.ts';

/** A heading is cut here; nobody has a longer name. */
export const LONGEST_NAME = 200;

export type KnownPlayer = { readonly id: string; readonly name: string };

export class HeadedPlayers {
	readonly #headed: Headed;
	readonly #known: readonly KnownPlayer[];
	readonly #players = new Map<string, ListPlayer>();
	readonly #taken = new Set<string>();

	constructor(headed: Headed, known: readonly KnownPlayer[]) {
		this.#headed = headed;
		this.#known = known;
	}

	isKnown(heading: string): boolean {
		const key = headingKey(heading);
		return this.#known.some(({ id, name }) => [headingKey(id), headingKey(name)].includes(key));
	}

	/** The player called so, under the heading of a column; `asked`: the id that somebody gives them. */
	named(name: string, column = name, asked?: string): ListPlayer {
		const key = asked ?? headingKey(name);
		const found = this.#players.get(key);
		if (found) return found;
		const known = this.#known.find(
			(one) => one.id === asked || headingKey(one.name) === key || headingKey(one.id) === key,
		);
		const isOwn = asked !== undefined && isUsableId(asked) && !this.#taken.has(asked);
		const id = known?.id ?? (isOwn ? asked : idFrom(asked ?? name, 'player', this.#taken));
		this.#taken.add(id);
		const { headings, groups, areGroupsKinds } = this.#headed;
		const group = areGroupsKinds ? groups[headings.indexOf(column)] : '';
		const own = asked === undefined ? nameIn(name, headings) : name;
		const player = {
			...{ id, name: known?.name ?? own.slice(0, LONGEST_NAME), column },
			...(group && { group }),
		};
		this.#players.set(key, player);
		return player;
	}
}

/** `Jo` of `Jo (gtr)` and of `Gtr 1 (Jo)`, where nobody else is called so. */
function nameIn(heading: string, headings: readonly string[]): string {
	const bare = (text: string) => {
		const [, before = '', inside = ''] = /^(.*\S)\s*[([]([^()[\]]*)[)\]]$/.exec(text) ?? [];
		if (before === '') return text;
		if (kindIn(inside) !== null) return before;
		const isName = /^\p{Lu}\p{L}+$/u.test(inside) && !ROLE.test(inside);
		return isName && kindIn(before) !== null ? inside : text;
	};
	const name = bare(heading);
	const isOwn = headings.filter((one) => headingKey(bare(one)) === headingKey(name)).length === 1;
	return isOwn && kindIn(name) === null ? name : heading;
}

/** What somebody does, and no name. */
const ROLE = /^(?:lead|rhythm|solo|left|right|main|drop|tuned|low|high|new|old|spare|backup)$/i;
