// Commands that draw no screen, as whole processes, against a bare `node -e 0`.

import { singleFile } from '../single/single-file.ts';
import { processMs, takeTurns } from './rounds.ts';

const isChecked = (code: number | null): boolean => code === 0 || code === 1;

export async function benchCommands(rounds: number): Promise<readonly string[]> {
	const command =
		(...args: string[]) =>
		() =>
			processMs(process.execPath, ['dist/rackside.js', ...args], isChecked);
	const single =
		(...args: string[]) =>
		() =>
			processMs(singleFile(), args, isChecked);
	const [
		bare = Number.NaN,
		check = Number.NaN,
		plan = Number.NaN,
		tuning = Number.NaN,
		singleCheck = Number.NaN,
		festival = Number.NaN,
		singleFestival = Number.NaN,
	] = takeTurns(
		[
			{ name: 'bare', run: () => processMs(process.execPath, ['-e', '0']) },
			{ name: 'check', run: command('check', 'shows/club.yaml') },
			{ name: 'plan', run: command('plan', 'shows/club.yaml') },
			{
				name: 'tuning',
				run: command('tuning', 'shows/club.yaml', 'A1', '--to', 'drop D', '--json'),
			},
			{ name: 'single check', run: single('check', 'shows/club.yaml') },
			{ name: 'festival', run: command('check', 'shows/festival.yaml') },
			{ name: 'single festival', run: single('check', 'shows/festival.yaml') },
		],
		rounds,
	);
	const row = (name: string, ms: number, most = 5) =>
		`${name.padEnd(44)} ${ms.toFixed(0).padStart(6)} ms  ${(ms / bare).toFixed(2).padStart(6)} x bare node  (target <= ${most})`;
	return [
		`${'bare node -e 0'.padEnd(44)} ${bare.toFixed(0).padStart(6)} ms`,
		row('check of the 18-song show', check),
		row('plan of the 18-song show', plan),
		row('tuning --json of an instrument', tuning),
		row('check of the 18-song show, one file', singleCheck, 3),
		row('check of the festival show', festival),
		row('check of the festival show, one file', singleFestival, 3),
	];
}
