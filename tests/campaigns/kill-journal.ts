// Thousands of kills of a program that keeps a night. RACKSIDE_KILLS says how many (10,000 before a
// release), RACKSIDE_NIGHT_KILLS how many of them fall on one night.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { killRounds } from './kill-rounds.ts';

const kills = Number(process.env.RACKSIDE_KILLS ?? 1000);
const perNight = Number(process.env.RACKSIDE_NIGHT_KILLS ?? 50);
let faults = 0;
for (let done = 0; done < kills; done += perNight) {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-kills-'));
	const count = Math.min(perNight, kills - done);
	const result = await killRounds({ folder, count, chance: Math.random });
	console.log(
		`${done + count} kills, ${result.steps} steps in this night, ${result.faults.length} faults`,
	);
	for (const fault of result.faults) console.log(`  ${folder}: ${fault}`);
	faults += result.faults.length;
	// A night with a fault is kept to be looked at.
	if (result.faults.length === 0) rmSync(folder, { recursive: true });
}
process.exitCode = faults === 0 ? 0 : 1;
