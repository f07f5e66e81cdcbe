// Commands that draw no screen, as whole processes, against a bare `node -e 0`.

import { processMs, takeTurns } from './rounds.ts';

const isChecked = (code: number | null): boolean => code === 0 || code === 1;

export async function benchCommands(rounds: number): Promise<readonly string[]> {
	const command =
		(...args: string[]) =>
		() =>
			processMs(process.execPath, ['dist/rackside.js', ...args], isChecked);
	const [bare = Number.NaN, check = Number.NaN, plan = Number.NaN, tuning = Number.NaN] = takeTurns(
		[
			{ name: 'bare', run: () => processMs(process.execPath, ['-e', '0']) },
			{ name: 'check', run: command('check', 'shows/club.yaml') },
			{ name: 'plan', run: command('plan', 'shows/club.yaml') },
			{
				name: 'tuning',
				run: command('tuning', 'shows/club.yaml', 'A1', '--to', 'drop D', '--json'),
			},
		],
		rounds,
	);
	const row = (name: string, ms: number) =>
		`${name.padEnd(44)} ${ms.toFixed(0).padStart(6)} ms  ${(ms / bare).toFixed(2).padStart(6)} x bare node  (target <= 5)`;
	return [
		`${'bare node -e 0'.padEnd(44)} ${bare.toFixed(0).padStart(6)} ms`,
		row('check of the 18-song show', check),
		row('plan of the 18-song show', plan),
		row('tuning --json of an instrument', tuning),
	];
}
