// Kills a program that keeps a night, again and again, and holds after each kill that the night has
// all that was said to be in it.

import { spawn } from 'node:child_process';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { lookAtNight } from '../../src/disk/open-night-file.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { nightFindingWords } from '../../src/words/night-file.ts';
import { nightName, stepEntry, stepsOf } from '../disk/night-steps.ts';

const program = fileURLToPath(new URL('kill-writer.ts', import.meta.url));

export type KillRounds = {
	/** Where the night is kept, asked for anew before each kill. */
	readonly folder: () => string;
	readonly count: number;
	/** Gives a number from 0 up to 1. */
	readonly chance: () => number;
};

export type KillResult = {
	readonly kills: number;
	readonly steps: number;
	readonly faults: readonly string[];
};

/** Kills the program so many times at random moments of one night; `faults` is empty when all is well. */
export async function killRounds({ folder, count, chance }: KillRounds): Promise<KillResult> {
	const faults: string[] = [];
	let steps = 0;
	let saved = 0;
	for (let round = 1; round <= count; round += 1) {
		const said = await killOnce(folder(), round, chance);
		const typed = Math.max(steps, said.typed);
		saved = Math.max(saved, said.saved);
		if (said.open !== null && said.open !== steps) {
			faults.push(`round ${round}: ${steps} steps were there, ${said.open} were taken up`);
		}
		const seen = lookAtSteps(folder());
		steps = seen.steps;
		for (const fault of [...seen.faults, ...missingSteps(seen.steps, { typed, saved })]) {
			faults.push(`round ${round}: ${fault}`);
		}
	}
	return { kills: count, steps, faults };
}

/** How many steps the night in this folder holds, and what is wrong with it. */
export function lookAtSteps(folder: string): { readonly steps: number; readonly faults: string[] } {
	const night = lookAtNight({ disk: realDisk, folders: [folder] }, { id: nightName });
	const records = night.records();
	const isWhole = stepsOf(records).every((step, index) => step === index + 1);
	const isTrue = records.every((record) => {
		const entries = stepsOf([record]).map(stepEntry);
		return JSON.stringify(record.e) === JSON.stringify(entries);
	});
	const warnings = night.findings.filter(
		({ isWarning, code }) => isWarning && code !== 'night-missing',
	);
	return {
		steps: records.length,
		faults: [
			...(isWhole && isTrue ? [] : ['the steps are not those that were made']),
			...warnings.map(nightFindingWords),
		],
	};
}

/** What a night with so many steps lacks of what was said, or has beyond the one step in hand. */
export function missingSteps(
	steps: number,
	{ typed, saved }: { readonly typed: number; readonly saved: number },
): string[] {
	return [
		...(steps < typed ? [`${typed} steps made, ${steps} there`] : []),
		...(steps < saved ? [`${saved} shown as saved, ${steps} there`] : []),
		...(steps > typed + 1 ? [`${steps} there, ${typed} made`] : []),
	];
}

/** What the program said: the last number after each word; null when it never came to it. */
export function saidIn(text: string): Said {
	const last = (word: string): number | null => {
		const all = [...text.matchAll(new RegExp(`^${word} (\\d+)\\n`, 'gm'))];
		return all.length === 0 ? null : Number(all.at(-1)?.[1]);
	};
	return { open: last('open'), typed: last('typed') ?? 0, saved: last('saved') ?? 0 };
}

export type Said = { readonly open: number | null; readonly typed: number; readonly saved: number };

async function killOnce(folder: string, round: number, chance: () => number): Promise<Said> {
	const child = spawn(process.execPath, [program, folder, `writer-${round}`], {
		stdio: ['ignore', 'pipe', 'inherit'],
	});
	const ended = new Promise((done) => child.once('close', done));
	let text = '';
	const heard = new Promise<void>((done) => {
		child.stdout.on('data', (data) => {
			text += data;
			done();
		});
	});
	// Half of them while the night is being taken up, the others while it is under way.
	if (chance() < 0.5) await setTimeout(chance() * 200);
	else {
		await Promise.race([heard, ended]);
		await setTimeout(chance() * 60);
	}
	child.kill('SIGKILL');
	await ended;
	return saidIn(text);
}
