// Thousands of kills of a program that keeps a night. RACKSIDE_KILLS says how many (1,000; 10,000 before a
// release), RACKSIDE_NIGHT_KILLS how many of them fall on one night, RACKSIDE_SEED when each comes. Touches only a
// folder that it made itself, where nights with a fault are kept.

import { chance } from '../plan/oracle/chance.ts';
import { killRounds } from './kill-rounds.ts';
import { OwnFolder, removeWhenStopped } from './own-folder.ts';

const kills = Number(process.env.RACKSIDE_KILLS ?? 1000);
const perNight = Number(process.env.RACKSIDE_NIGHT_KILLS ?? 50);
const seed = Number(process.env.RACKSIDE_SEED ?? Date.now() % 1_000_000);
const WHOLE = 1_000_000;
const by = chance(seed);
const own = new OwnFolder('kills');
removeWhenStopped(own);
let faults = 0;
console.log(`seed ${seed}, ${kills} kills`);
for (let done = 0; done < kills; done += perNight) {
	const folder = () => own.below(`night-${done / perNight + 1}`);
	const count = Math.min(perNight, kills - done);
	const result = await killRounds({ folder, count, chance: () => by.below(WHOLE) / WHOLE });
	console.log(
		`${done + count} kills, ${result.steps} steps in this night, ${result.faults.length} faults`,
	);
	for (const fault of result.faults) console.log(`  ${folder()}: ${fault}`);
	faults += result.faults.length;
}
if (faults === 0) own.remove();
process.exitCode = faults === 0 ? 0 : 1;
