// Power cuts by the thousand: every night of `power-cuts.ts` is cut off after each of its calls, by chance and
// after each byte. RACKSIDE_CUTS says how many cuts by chance (20,000; 1,000,000 before a release), RACKSIDE_SEED
// which. Touches only a folder that it made itself.

import { mkdirSync } from 'node:fs';
import { whyNoInjection } from './injected-faults.ts';
import { OwnFolder, removeWhenStopped } from './own-folder.ts';
import { NIGHTS, powerCuts } from './power-cuts.ts';

const count = Number(process.env.RACKSIDE_CUTS ?? 20_000);
const seed = Number(process.env.RACKSIDE_SEED ?? Date.now() % 1_000_000);
const why = whyNoInjection();
if (why !== null) throw new Error(why);
const own = new OwnFolder('power');
removeWhenStopped(own);
let isWell = true;
console.log(`seed ${seed}, ${count} cuts by chance`);
for (const [number, failing] of NIGHTS.entries()) {
	const name = `night-${number}`;
	mkdirSync(own.below(name));
	const share = Math.ceil(count / NIGHTS.length);
	const wanted = { own, name, failing, steps: 20, count: share, seed: seed + number };
	const { calls, cuts, faults } = await powerCuts({ ...wanted, isEachByte: true });
	console.log(`${JSON.stringify(failing)}: ${calls} calls, ${cuts} cuts, ${faults.length} faults`);
	for (const fault of faults.slice(0, 20)) console.log(`  ${fault}`);
	isWell &&= faults.length === 0;
}
if (isWell) own.remove();
process.exitCode = isWell ? 0 : 1;
