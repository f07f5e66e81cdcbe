// The compiled code of short commands, so that already the first start is a quick one. It fits the Node that
// builds; any other, and whatever is not run here, keeps its own when it is used.

import { execFile } from 'node:child_process';
import { chmod, copyFile, mkdir, mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Has each command run once on the example, and puts the code that it kept into the folder. */
export async function keepCode(dist, show) {
	const folder = join(dist, 'code');
	const commands = [
		['check', show],
		['plan', show],
		['tuning', show, 'A1', '--to', 'drop D'],
		['strings', show, 'A1'],
		['setup', show, 'A1'],
		['nights'],
		['settings'],
		['--help'],
		[],
	];
	const home = await mkdtemp(join(tmpdir(), 'rackside-build-'));
	const env = { PATH: process.env.PATH, XDG_CACHE_HOME: home, RACKSIDE_DATA: join(home, 'data') };
	const entry = join(dist, 'rackside.js');
	const run = (args) =>
		new Promise((done) => execFile(process.execPath, [entry, ...args], { env }, done));
	await rm(folder, { recursive: true, force: true });
	await Promise.all(commands.map(run));
	await mkdir(folder);
	const kept = join(home, 'rackside/code');
	for (const name of await readdir(kept).catch(() => [])) {
		await copyFile(join(kept, name), join(folder, name));
		await chmod(join(folder, name), 0o644);
	}
	await rm(home, { recursive: true });
}
