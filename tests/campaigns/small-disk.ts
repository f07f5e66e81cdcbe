// A night on a disk of 64 KB that others fill and free again, in memory and in a namespace of its own: nobody
// else sees it, and it is gone with this program. Linux, started by `faults.ts` under unshare(1), never alone:
//   unshare --mount --map-root-user node small-disk.ts NAMESPACE-OF-THE-CALLER ROUNDS

import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, readlinkSync, rmSync, writeFileSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { lookAtSteps, saidIn } from './kill-rounds.ts';
import { OwnFolder } from './own-folder.ts';

const program = fileURLToPath(new URL('kill-writer.ts', import.meta.url));
const [, , callers = '', rounds = '1'] = process.argv;
/** Left to the night at first: less than two blocks of 4 KB, which its steps fill in a moment. */
const fillerBytes = 56 * 1024;
const patienceMs = 10_000;

/** Fills the disk under a night, frees it, and kills the program; what did not hold. */
async function fillAndFree(own: OwnFolder, round: number): Promise<string[]> {
	const faults: string[] = [];
	const filler = own.below('small', 'filler');
	const folder = own.below('small', 'nights');
	writeFileSync(filler, Buffer.alloc(fillerBytes));
	// A name of another length each time, so that the disk is full in another place of a record.
	const child = spawn(process.execPath, [program, folder, `writer-${'x'.repeat(round)}`], {
		stdio: ['ignore', 'pipe', 'inherit'],
	});
	const ended = new Promise((done) => child.once('close', done));
	let text = '';
	child.stdout.on('data', (data) => {
		text += data;
	});
	const comesTo = async (isSo: () => boolean): Promise<boolean> => {
		for (let ms = 0; ms < patienceMs && !isSo(); ms += 50) await setTimeout(50);
		return isSo();
	};
	const isFull = () => saidIn(text).typed > saidIn(text).saved + 50;
	if (!(await comesTo(isFull))) faults.push('the disk was never full');
	const saved = saidIn(text).saved;
	// Half of them are killed while it is full.
	if (round % 2 === 0) {
		rmSync(own.below('small', 'filler'));
		if (!(await comesTo(() => saidIn(text).saved > saved)))
			faults.push('nothing was saved once there was room');
	}
	child.kill('SIGKILL');
	await ended;
	const said = saidIn(text);
	const { steps, faults: wrong } = lookAtSteps(folder);
	faults.push(...wrong);
	if (steps < said.saved) faults.push(`${said.saved} shown as saved, ${steps} there`);
	if (steps > said.typed + 1) faults.push(`${steps} there, ${said.typed} made`);
	rmSync(own.below('small', 'filler'), { force: true });
	rmSync(own.below('small', 'nights'), { recursive: true });
	return faults;
}

if (readlinkSync('/proc/self/ns/mnt') === callers || callers === '') {
	throw new Error('started outside a namespace of its own: nothing is mounted');
}
const own = new OwnFolder('small');
const small = own.below('small');
mkdirSync(small);
execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'rackside-small', own.below('small')]);
const faults: string[] = [];
for (let round = 1; round <= Number(rounds); round += 1) {
	faults.push(...(await fillAndFree(own, round)).map((fault) => `round ${round}: ${fault}`));
}
execFileSync('umount', [own.below('small')]);
own.remove();
console.log(JSON.stringify(faults));
