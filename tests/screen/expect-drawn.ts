// Drawn screens as files, a demand on the code.

import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

/** The drawing is the demand: it is written only on purpose, by WRITE_SCREENS=1, and then looked at. */
export function expectDrawn(name: string, drawn: string): void {
	const path = fileURLToPath(new URL(`drawn/${name}.txt`, import.meta.url));
	if (process.env.WRITE_SCREENS) writeFileSync(path, `${drawn}\n`);
	else expect(`${drawn}\n`).toBe(readFileSync(path, 'utf8'));
}
