// The page of an instrument, made from show and session: all targets, steps and tensions.

import { readFileSync } from 'node:fs';
import { tuningCard } from '../../src/plan/tuning-card.ts';
import { readPlainShow } from '../../src/showfile/read-plain-show.ts';
import { readTuning } from '../../src/tuning/tuning.ts';
import { median, quantile, workMs } from './rounds.ts';

const CARDS = 200;

export async function benchTuningPage(rounds: number): Promise<readonly string[]> {
	const folder = new URL('../../shows/', import.meta.url);
	const show = readPlainShow((path) => readFileSync(new URL(path, folder)), 'club.yaml');
	const instrument = show?.instruments.find(({ id }) => id === 'A1');
	const dropD = readTuning('drop D', 'electric-6', {});
	if (!show || !instrument || !dropD.ok) throw new Error('the club show has lost its first guitar');
	const asked = { instrument, from: instrument.tuning, to: dropD.tuning, capo: 2, player: 'ash' };
	const taken = Array.from({ length: rounds * CARDS }, () =>
		workMs(() => tuningCard(show, { ...asked, referenceHertz: 440 })),
	);
	const row = (name: string, ms: number) =>
		`${name.padEnd(44)} ${ms.toFixed(3).padStart(8)} ms  (target <= 2)`;
	return [
		row('tuning page of an instrument, first', taken[0] ?? Number.NaN),
		row('tuning page of an instrument, median', median(taken)),
		row('tuning page of an instrument, 99 %', quantile(taken, 0.99)),
	];
}
