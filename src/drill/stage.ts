import type { Chance } from './chance.ts';
import type { DrillMoment } from './moment.ts';
import type { KeyOf } from './right-keys.ts';
import type { TrialNight } from './trial-night.ts';

/** What a moment is set up with: the night where it happens, chance, and the keys that the user has. */
export type Staged = { readonly trial: TrialNight; readonly by: Chance; readonly keyOf: KeyOf };

/** What happens there. */
export type Happening = Pick<DrillMoment, 'words' | 'keys' | 'isAnswered'>;

export type Stage = {
	/** While a song is on, or as soon as it has ended. */
	readonly isBetweenSongs: boolean;
	/** What has happened before one looks on; false where it cannot. */
	readonly before?: (staged: Staged) => boolean;
	readonly happens: (staged: Staged) => Happening | null;
};

type Held = { readonly player: string; readonly instrument: string };

/** Who has what in hands, in an order of chance. */
export function hands({ trial, by }: Staged): readonly Held[] {
	const { show, players } = trial.night.session();
	const held = show.players.flatMap(({ id: player }) => {
		const instrument = players[player]?.holds ?? null;
		return instrument === null ? [] : [{ player, instrument }];
	});
	return by.shuffled(held);
}
