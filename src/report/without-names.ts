// A night without the names of people: roles stand for players and technicians, in what the show calls them and in what
// somebody typed alike. Done before anything is made of the night, so that no form can still hold one.

import type { Entry } from '../journal/entry.ts';
import type { Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import { ROLES } from '../words/report-readers.ts';
import type { NightReport, ReportParts } from './night-report.ts';
import type { Reader } from './reader.ts';

export type Roles = {
	/** The text with every name in it replaced by its role; words are found whole, in capitals or not. */
	readonly in: (text: string) => string;
	/** What stands for a player's id. */
	readonly idOf: (player: string) => string;
};

type Person = { readonly id: string; readonly name: string };

/** The parts of a report with roles for names; what is made of them holds ids still, see `withRoleIds`. */
export function partsWithoutNames(parts: ReportParts): {
	readonly parts: ReportParts;
	readonly roles: Roles;
} {
	const shows = new Set([
		parts.show,
		parts.opened.show,
		...parts.steps.map((one) => one.after.show),
	]);
	const named = namedRoles([...shows]);
	const roles: Roles = { in: replacer(named.names), idOf: (id) => named.ids.get(id) ?? id };
	const showOf = remembering((show: Show) => showWithRoles(show, roles, named.people));
	const sessionOf = remembering((session: Session) => ({
		...session,
		show: showOf(session.show),
		incidents: session.incidents.map((one) => ({
			...one,
			kind: one.kind === null ? null : roles.in(one.kind),
			words: one.words.map(roles.in),
		})),
		instruments: Object.fromEntries(
			Object.entries(session.instruments).map(([id, state]) => [
				id,
				{ ...state, context: { ...state.context, faults: state.context.faults.map(roles.in) } },
			]),
		),
	}));
	return {
		roles,
		parts: {
			...parts,
			show: showOf(parts.show),
			opened: sessionOf(parts.opened),
			steps: parts.steps.map((step) => ({
				...step,
				entry:
					step.entry.k === 'show-read-again'
						? { ...step.entry, show: showOf(step.after.show) }
						: entryWithRoles(step.entry, roles.in),
				before: sessionOf(step.before),
				after: sessionOf(step.after),
			})),
			...(parts.remarks && {
				remarks: {
					night: parts.remarks.night === null ? null : roles.in(parts.remarks.night),
					incidents: Object.fromEntries(
						Object.entries(parts.remarks.incidents).map(([id, text]) => [id, roles.in(text)]),
					),
					signed: null,
				},
			}),
		},
	};
}

/** The reader by what stands for their name in such a report. */
export function readerWithRole(reader: Reader, roles: Roles): Reader {
	if (reader.who === 'player') return { ...reader, id: roles.idOf(reader.id) };
	if (reader.who !== 'hire' || reader.firm === null) return reader;
	return { ...reader, firm: roles.in(reader.firm) };
}

/** A report with roles where players' ids stood, which are often their names. */
export function withRoleIds(report: NightReport, { idOf }: Roles): NightReport {
	const own = <Line extends { readonly playerId: string | null }>(lines: readonly Line[]): Line[] =>
		lines.map((line) => ({
			...line,
			playerId: line.playerId === null ? null : idOf(line.playerId),
		}));
	const holder = (id: string | null): string | null => (id === null ? null : idOf(id));
	return {
		...report,
		players: report.players.map((one) => ({ ...one, id: idOf(one.id) })),
		handOvers: own(report.handOvers),
		wrongHolds: own(report.wrongHolds),
		otherThanAsked: own(report.otherThanAsked),
		incidents: own(report.incidents),
		packs: own(report.packs),
		repairs: own(report.repairs),
		missedCues: report.missedCues.map((one) => ({ ...one, playerIds: one.playerIds.map(idOf) })),
		lanes: {
			...report.lanes,
			instruments: Object.fromEntries(
				Object.entries(report.lanes.instruments).map(([id, spans]) => [
					id,
					spans.map((span) => ({ ...span, player: holder(span.player) })),
				]),
			),
			players: Object.fromEntries(
				Object.entries(report.lanes.players).map(([id, spans]) => [idOf(id), spans]),
			),
		},
	};
}

/** Roles by name, longest name first, and by player's id. */
function namedRoles(shows: readonly Show[]) {
	const players = distinct(shows.flatMap((show) => show.players));
	const techs = distinct(shows.flatMap((show) => show.techs));
	const ids = new Map<string, string>();
	const people = new Map<Person, string>();
	const names = new Map<string, string>();
	const parts = new Set([ROLES.player, ROLES.tech, ...players.map(playsOf)]);
	const give = (person: Person, role: string): void => {
		people.set(person, role);
		for (const name of [person.name, ...person.name.split(/\s+/), person.id]) {
			const key = name.toLowerCase();
			// A short word that only says what somebody plays names nobody.
			if (key.length > 1 && !parts.has(key) && !names.has(key)) names.set(key, role);
		}
	};
	for (const player of players) {
		const alike = players.filter((one) => playsOf(one) === playsOf(player));
		const role = ROLES.numbered(playsOf(player), alike.indexOf(player) + 1, alike.length);
		give(player, role);
		ids.set(player.id, role.replaceAll(' ', '-'));
	}
	for (const tech of techs) {
		give(tech, ROLES.numbered(ROLES.tech, techs.indexOf(tech) + 1, techs.length));
	}
	const roleOf = (kind: readonly Person[], id: string): string | undefined => {
		const person = kind.find((one) => one.id === id);
		return person && people.get(person);
	};
	return {
		ids,
		names,
		people: {
			player: (id: string) => roleOf(players, id),
			tech: (id: string) => roleOf(techs, id),
		},
	};
}

function playsOf({ plays }: { readonly plays: string | null }): string {
	return plays ?? ROLES.player;
}

function distinct<One extends Person>(all: readonly One[]): readonly One[] {
	return all.filter((one, at) => all.findIndex(({ id }) => id === one.id) === at);
}

function replacer(names: ReadonlyMap<string, string>): (text: string) => string {
	if (names.size === 0) return (text) => text;
	const longestFirst = [...names.keys()].sort((one, other) => other.length - one.length);
	const any = new RegExp(
		`(?<![\\p{L}\\p{N}])(?:${longestFirst.map(escaped).join('|')})(?![\\p{L}\\p{N}])`,
		'giu',
	);
	return (text) => text.replace(any, (name) => names.get(name.toLowerCase()) ?? ROLES.somebody);
}

function escaped(text: string): string {
	return text.replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&');
}

function showWithRoles(
	show: Show,
	roles: Roles,
	people: {
		readonly player: (id: string) => string | undefined;
		readonly tech: (id: string) => string | undefined;
	},
): Show {
	return {
		...show,
		players: show.players.map((one) => ({ ...one, name: people.player(one.id) ?? ROLES.somebody })),
		techs: show.techs.map((one) => ({ ...one, name: people.tech(one.id) ?? ROLES.somebody })),
		instruments: show.instruments.map((one) => ({
			...one,
			name: roles.in(one.name),
			...(one.owner !== undefined && { owner: roles.in(one.owner) }),
			...(one.hiredFrom !== undefined && { hiredFrom: roles.in(one.hiredFrom) }),
		})),
		packs: show.packs.map((one) => ({
			...one,
			name: one.name === null ? null : roles.in(one.name),
		})),
	};
}

/** What somebody typed, in whatever entry. */
function entryWithRoles(entry: Entry, inText: (text: string) => string): Entry {
	switch (entry.k) {
		case 'memo-written':
			return { ...entry, words: inText(entry.words) };
		case 'incident-described':
			return {
				...entry,
				...(entry.words !== undefined && { words: inText(entry.words) }),
				...(entry.kind !== undefined && { kind: inText(entry.kind) }),
			};
		case 'put-aside':
			return { ...entry, fault: entry.fault === null ? null : inText(entry.fault) };
		default:
			return entry;
	}
}

function remembering<Thing extends object, Made>(
	make: (thing: Thing) => Made,
): (thing: Thing) => Made {
	const made = new WeakMap<Thing, Made>();
	return (thing) => {
		const known = made.get(thing);
		if (known !== undefined) return known;
		const fresh = make(thing);
		made.set(thing, fresh);
		return fresh;
	};
}
