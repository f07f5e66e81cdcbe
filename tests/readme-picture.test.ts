// The picture in the README is what the program draws, and stays so.

import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { parseScript } from '../src/cli/parse-script.ts';
import { playScript } from '../src/cli/play-script.ts';
import { drawnLines } from '../src/screen/drawn-lines.ts';
import { loadShow } from './scenarios/load-show.ts';

const path = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const readme = path('../README.md');

function picture(): string {
	const script = parseScript(readFileSync(path('rehearsals/readme-picture.txt'), 'utf8'), 'script');
	if (!script.ok) throw new Error('the script of the picture cannot be read');
	const lines: string[] = [];
	playScript({
		show: loadShow(path('../shows/club.yaml')),
		steps: script.steps,
		isQuiet: true,
		draw: drawnLines,
		print: (line) => lines.push(line),
	});
	// A rehearsal says that it is one; the picture is of a night.
	return lines.join('\n').replace(/ *REHEARSAL/, '');
}

test('the picture in the README is what is drawn; WRITE_PICTURE=1 writes it', () => {
	const text = readFileSync(readme, 'utf8');
	const [, before = '', shown, after = ''] = /^(.*?```\n)(.*?)(\n```.*)$/s.exec(text) ?? [];
	if (process.env.WRITE_PICTURE) writeFileSync(readme, before + picture() + after);
	else expect(shown).toBe(picture());
});
