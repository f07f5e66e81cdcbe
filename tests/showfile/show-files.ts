// Show files held in memory for the tests of reading: texts and bytes by name, as a folder would hold them.

import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';
import type { ShowReading } from '../../src/showfile/show-from-files.ts';
import { problemText } from '../../src/words/problem-text.ts';
import { problemOf } from '../../src/words/problems.ts';

/** A folder of files, by name. */
export type Folder = Readonly<Record<string, string | Uint8Array>>;

/** Loads files from a folder held in memory. */
export function loaderOf(folder: Folder): (path: string) => Uint8Array | null {
	return (path) => {
		const file = folder[path];
		return typeof file === 'string' ? new TextEncoder().encode(file) : (file ?? null);
	};
}

/** What reading `show.yaml` in a folder gives; a text alone is that file. */
function reading(folder: Folder | string): ShowReading {
	const files = typeof folder === 'string' ? { 'show.yaml': folder } : folder;
	return readShow(loaderOf(files), 'show.yaml');
}

/** The show, or an error that carries every problem. */
export function showFrom(folder: Folder | string): Show {
	const { show, problems } = reading(folder);
	if (!show) throw new Error(problems.map((one) => problemText(problemOf(one))).join('\n'));
	return show;
}

/** The problems as printed lines. */
export function linesFrom(folder: Folder | string): string[] {
	return reading(folder).problems.map((one) => problemText(problemOf(one)));
}

/** A show of two players and three instruments; `songs` and `set` as YAML, `more` top-level keys after them. */
export function smallShow(
	text: { readonly songs?: string; readonly set?: string; readonly more?: string } = {},
): string {
	return `format: rackside/1
players:
  - {id: ash, name: Ash}
  - {id: bo, name: Bo}
packs:
  - {id: P1}
  - {id: P2}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, pack: P1}
  - {id: A2, name: Anchor, slot: "2", kind: electric-6, tuning: drop D, pack: P1}
  - {id: C1, name: Coal, slot: "3", kind: bass-4, tuning: E standard, pack: P2}
${text.more ?? ''}
songs:
${text.songs ?? '  - {id: harbour, title: Harbour, length: "4:00", hands: {ash: A1, bo: C1}}'}
set: ${text.set ?? '[harbour]'}
`;
}
