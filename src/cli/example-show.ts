// Where the example show is that comes with the program.

import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Path of the example show, from the bundle as from the sources. */
export function exampleShowPath(): string {
	const places = ['../shows/club.yaml', '../../shows/club.yaml'].map((place) =>
		fileURLToPath(new URL(place, import.meta.url)),
	);
	return places.find((place) => existsSync(place)) ?? places[0] ?? '';
}
