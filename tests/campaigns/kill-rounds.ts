// Kills a program that keeps a night, again and again, and holds after each kill that the night has
// all that was said to be in it.

import { spawn } from 'node:child_process';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { lookAtNight } from '../../src/disk/open-night-file.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { nightName, stepEntry, stepsOf } from '../disk/night-steps.ts';

const program = fileURLToPath(new URL('kill-writer.ts', import.meta.url));

export type KillRounds = {
	readonly folder: string;
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
		const said = await killOnce(folder, round, chance);
		const typed = Math.max(steps, said.typed);
		saved = Math.max(saved, said.saved);
		if (said.open !== null && said.open !== steps) {
			faults.push(`round ${round}: ${steps} steps were there, ${said.open} were taken up`);
		}
		const night = lookAtNight({ disk: realDisk, folders: [folder] }, { id: nightName });
		const found = stepsOf(night.records());
		const isWhole = found.every((step, index) => step === index + 1);
		const isTrue = night
			.records()
			.every(
				({ e }) =>
					JSON.stringify(e) === JSON.stringify([stepEntry(stepsOf([{ e } as never])[0] ?? 0)]),
			);
		if (!isWhole || !isTrue) faults.push(`round ${round}: the steps are not those that were made`);
		if (found.length < typed)
			faults.push(`round ${round}: ${typed} steps made, ${found.length} there`);
		if (found.length < saved)
			faults.push(`round ${round}: ${saved} shown as saved, ${found.length} there`);
		if (found.length > typed + 1)
			faults.push(`round ${round}: ${found.length} there, ${typed} made`);
		if (night.findings.some((finding) => finding.isWarning && finding.code !== 'night-missing')) {
			faults.push(`round ${round}: ${night.findings.map((finding) => finding.text).join(' ')}`);
		}
		steps = found.length;
	}
	return { kills: count, steps, faults };
}

type Said = { readonly open: number | null; readonly typed: number; readonly saved: number };

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
	const last = (word: string): number | null => {
		const all = [...text.matchAll(new RegExp(`^${word} (\\d+)\\n`, 'gm'))];
		return all.length === 0 ? null : Number(all.at(-1)?.[1]);
	};
	return { open: last('open'), typed: last('typed') ?? 0, saved: last('saved') ?? 0 };
}
