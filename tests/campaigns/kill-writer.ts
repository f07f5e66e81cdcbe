// A program that keeps a night and says what it did, until somebody kills it or it has made as many
// steps as it was told. Says `open N` with the steps it found, `typed N` for each step it made, `saved N`
// for what the disk has confirmed; nothing when there is a night that cannot be read at the moment. After
// the number of steps it takes folders where the night may go on when its own fails.

import { writeSync } from 'node:fs';
import { setImmediate, setTimeout } from 'node:timers/promises';
import { createNightFile } from '../../src/disk/create-night-file.ts';
import type { NightServices } from '../../src/disk/night-services.ts';
import { openNightFile } from '../../src/disk/open-night-file.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { nightName, stepEntry, stepsOf, subject } from '../disk/night-steps.ts';

const [, , folder = '.', writer = 'writer-1', most = 'Infinity', ...spares] = process.argv;
const started = performance.now();
const upMs = () => performance.now() - started;
const stepOf = new Map<number, number>();
let steps = 0;
let saved = 0;

function say(word: string, step: number): void {
	writeSync(1, `${word} ${step}\n`);
}

const services: NightServices = {
	disk: realDisk,
	folders: [folder, ...spares],
	writer,
	upMs: 0,
	wait: setTimeout,
	onStatus: ({ savedSeq }) => {
		const step = stepOf.get(savedSeq) ?? 0;
		if (step > saved) {
			saved = step;
			say('saved', step);
		}
	},
};

const opened = openNightFile(services, { id: nightName });
opened.journal?.keepStates(() => ({ steps }));
for (const record of opened.records()) {
	for (const step of stepsOf([record])) {
		stepOf.set(record.s, step);
		steps = Math.max(steps, step);
	}
}
const isThere = opened.findings.every(({ code }) => code !== 'night-missing');
if (isThere && !opened.journal) process.exit();
const journal =
	opened.journal ??
	(await createNightFile(services, { id: nightName, wallMs: 1, subject })).journal;
say('open', steps);
for (let made = 0; made < Number(most); made += 1) {
	steps += 1;
	const record = journal.append([stepEntry(steps)], { wallMs: steps, upMs: upMs() });
	stepOf.set(record.s, steps);
	say('typed', steps);
	journal.tick(upMs());
	if (steps % 3 === 0) await setTimeout(steps % 7);
	else await setImmediate();
}
// A fault that passes is made good after a few seconds at most.
for (let tenth = 0; tenth < 50 && saved < steps; tenth += 1) {
	await setTimeout(100);
	journal.tick(upMs());
}
await journal.close();
