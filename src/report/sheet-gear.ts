// The rack and the radio packs behind a run sheet: what each instrument is and is in, for whom it is kept back, and
// who wears which pack from when.

import { gaugeWords } from '../bench/strings-page.ts';
import type { NightMs } from '../journal/entry.ts';
import type { Plan, Slot } from '../plan/plan.ts';
import type { Session } from '../session/session.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { Instrument, Pack, Show } from '../showfile/show.ts';
import { packName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import { capoWords } from '../words/capo-words.ts';
import { kindWords, shortKindWords } from '../words/kinds.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { packsAlong } from './packs-along.ts';

/** What a sheet is made of. */
export type SheetSource = {
	/** Its show's list is the one to print. */
	readonly session: Session;
	readonly plan: Plan;
	/** When the show clock is at zero, or the hour at which the show is to start. */
	readonly zeroMs: NightMs;
	/** What could be handed by hand where a slot has nothing, an instrument's id. */
	readonly backupOf: (slot: Slot) => string | null;
};

/** An instrument in its place on the rack. */
export type RackPlace = {
	readonly slot: string | null;
	readonly name: string;
	/** `six-string electric guitar`. */
	readonly kind: string;
	/** `six-string electric`, where there is little room. */
	readonly shortKind: string;
	/** What it is in now, its capo too. */
	readonly tuning: string;
	/** Names of those who have it tonight or may have it; none for anybody. */
	readonly players: readonly string[];
	readonly isSpare: boolean;
	/** String 1 first, as sets are labelled; empty where the file gives none. */
	readonly strings: string;
	readonly case: string | null;
	readonly pack: string | null;
	readonly leave: string | null;
	readonly notes: string | null;
};

/** The rack in the order of the file, which is that of its slots. */
export function rackOf(source: SheetSource): readonly RackPlace[] {
	const { show } = source.session;
	return show.instruments.map((instrument) => ({
		slot: instrument.slot?.toUpperCase() ?? null,
		name: instrument.name,
		kind: kindWords(instrument.kind),
		shortKind: shortKindWords(instrument.kind),
		tuning: tuningNow(source, instrument),
		players: playersOf(source, instrument).map((player) => playerName(show, player)),
		isSpare: instrument.spare,
		strings: instrument.strings.map(gaugeWords).join(' '),
		case: instrument.case,
		pack: instrument.pack === null ? null : packWords(show, instrument.pack),
		leave: instrument.leave,
		notes: instrument.notes,
	}));
}

function tuningNow({ session }: SheetSource, { id, tuning }: Instrument): string {
	const { show } = session;
	const now = session.instruments[id]?.context;
	const name = shortTuning(show, now?.tuning ?? tuning);
	return now === undefined || now.capo === 0 ? name : `${name}, ${capoWords(now.capo)}`;
}

/** Whose it is; of what nobody owns, a spare's are those who play its kind tonight, and others' those who get it. */
function playersOf({ plan, session }: SheetSource, instrument: Instrument): readonly string[] {
	if (instrument.for !== null && instrument.for.length > 0) return instrument.for;
	const isTheirs = (slot: Slot) =>
		instrument.spare ? slot.kind === instrument.kind : slot.instrument === instrument.id;
	return session.show.players
		.map(({ id }) => id)
		.filter((player) => plan.slots.some((slot) => slot.player === player && isTheirs(slot)));
}

/** The channel as it stands on the radio. */
export function channelOf({ packs }: Pick<Show, 'packs'>, pack: string): string | null {
	return packs.find(({ id }) => id === pack)?.channel ?? null;
}

/** `P2 (G2)`. */
function packWords(show: Show, pack: string): string {
	const channel = channelOf(show, pack);
	return channel === null ? packName(show, pack) : `${packName(show, pack)} (${channel})`;
}

export type Radio = {
	readonly worn: readonly WornPack[];
	/** Packs that nobody is planned to wear. */
	readonly spare: readonly { readonly pack: string; readonly channel: string | null }[];
	/** The technicians who have to be told, by name; a desk always has to. */
	readonly told: readonly string[];
};

/** A pack that a player puts on before a song. */
export type WornPack = {
	readonly player: string;
	readonly who: string;
	readonly pack: string;
	readonly channel: string | null;
	/** `3 Gravel`. */
	readonly song: string;
	/** `4 Anchor`. */
	readonly instrument: string;
	/** The first that they wear; else it is a change, and who mixes has to be told. */
	readonly isFirst: boolean;
};

/** Who wears which pack from which song on. */
export function radioOf(source: SheetSource): Radio {
	const { plan, session } = source;
	const { show } = session;
	const titles = new Map(runningOrder(show).map((one) => [one.position, one.song.title]));
	const along = packsAlong(source);
	const worn = show.players.flatMap(({ id: player }) =>
		along.flatMap(({ handOver, before, worn: pack }): readonly WornPack[] => {
			const { instrument, section } = handOver;
			if (handOver.player !== player || instrument === null) return [];
			if (pack === null || pack === before) return [];
			const { position } = section;
			return [
				{
					player,
					who: playerName(show, player).toUpperCase(),
					pack: packName(show, pack),
					channel: channelOf(show, pack),
					song: `${position} ${titles.get(position) ?? ''}`.trimEnd(),
					instrument: shownInstrument(show, instrument),
					isFirst: before === null,
				},
			];
		}),
	);
	const used = new Set(plan.slots.map(({ pack }) => pack));
	const isFree = ({ id }: Pack) =>
		!used.has(id) && !Object.values(session.players).some(({ pack }) => pack === id);
	return {
		worn,
		spare: show.packs
			.filter(isFree)
			.map(({ id, channel }) => ({ pack: packName(show, id), channel })),
		told: show.techs.map(({ name }) => name),
	};
}
