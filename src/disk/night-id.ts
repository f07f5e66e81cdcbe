// The id of a new night, which is also the name of its files and what a user types to name it.

import { slug } from '../base/slug.ts';

/** What makes a night's id: when it began on the wall clock, and something that no other night has. */
export type NightIdParts = {
	readonly title: string;
	readonly startedAt: Date;
	/** At least four characters of a-z and 0-9. */
	readonly chance: string;
};

/** Longest part of an id that comes from the show's title. */
const titleLength = 40;

/** `2026-06-12-203000-quay-street-second-night-7f3a`, the time being local. */
export function nightId({ title, startedAt, chance }: NightIdParts): string {
	const day = [startedAt.getFullYear(), startedAt.getMonth() + 1, startedAt.getDate()];
	const time = [startedAt.getHours(), startedAt.getMinutes(), startedAt.getSeconds()];
	return `${day.map(twoDigits).join('-')}-${time.map(twoDigits).join('')}-${namePart(title)}-${chance}`;
}

const PATTERN = /^\d{4}-\d\d-\d\d-\d{6}-(.*)-[a-z0-9]{4,}$/;

/** Whether a night may have this id. */
export function isNightId(text: string): boolean {
	return PATTERN.test(text);
}

/** Whether a night with this id was begun with a show of this title, or of one that is written alike. */
export function isIdOf(id: string, title: string): boolean {
	return PATTERN.exec(id)?.[1] === namePart(title);
}

function namePart(title: string): string {
	return slug(title).slice(0, titleLength).replace(/-$/, '');
}

function twoDigits(value: number): string {
	return String(value).padStart(2, '0');
}
