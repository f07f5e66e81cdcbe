// A folder that a campaign made itself and the only place where it may fail, fill, cut or remove anything:
// campaigns run on machines with other people's files, now and then as root.

import { lstatSync, mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, sep } from 'node:path';
import { lastingTemporary } from '../lasting-temporary.ts';

/** Made new, for this user alone, below the folder for temporary files. */
export class OwnFolder {
	readonly path: string;
	readonly #identity: string;

	constructor(name: string) {
		this.path = realpathSync(mkdtempSync(join(lastingTemporary(tmpdir()), `rackside-${name}-`)));
		this.#identity = identityOf(this.path);
	}

	/** A path in it, checked now. Throws for one that leads anywhere else, by dots or by a link. */
	below(...names: readonly string[]): string {
		this.#check();
		const path = join(this.path, ...names);
		const found = lstatSync(path, { throwIfNoEntry: false });
		const real = found ? realpathSync(path) : join(realpathSync(dirname(path)), basename(path));
		if (!real.startsWith(this.path + sep)) throw new Error(`${path} is not below ${this.path}`);
		return real;
	}

	/** For a program that is started here: whatever it keeps by itself, compiled code among it, goes into this folder. */
	environment(): Readonly<Record<string, string>> {
		this.#check();
		const places = ['HOME', 'TMPDIR', 'XDG_CACHE_HOME', 'XDG_CONFIG_HOME', 'XDG_DATA_HOME'];
		return Object.fromEntries(places.map((name) => [name, this.path]));
	}

	/** Removes it with all that is in it; throws, and removes nothing, while anything is mounted there. */
	remove(): void {
		this.#check();
		const mounts = mountPoints().filter((at) => at === this.path || at.startsWith(this.path + sep));
		if (mounts.length > 0)
			throw new Error(`${mounts.join(', ')}: still mounted, nothing is removed`);
		rmSync(this.path, { recursive: true });
	}

	#check(): void {
		if (identityOf(this.path) === this.#identity) return;
		throw new Error(`${this.path} is not the folder that was made here`);
	}
}

/** From now on a campaign that is stopped half-way removes its folder, where it can. */
export function removeWhenStopped(own: OwnFolder): void {
	for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
		process.once(signal, () => {
			try {
				own.remove();
			} finally {
				// As the signal alone would have ended it.
				process.kill(process.pid, signal);
			}
		});
	}
}

function identityOf(path: string): string {
	const { dev, ino, uid } = lstatSync(path);
	return `${dev}:${ino}:${uid}`;
}

/** Where anything is mounted, on Linux: fifth field of each line, proc_pid_mountinfo(5); elsewhere nothing. */
function mountPoints(): string[] {
	if (process.platform !== 'linux') return [];
	const lines = readFileSync('/proc/self/mountinfo', 'utf8').trim().split('\n');
	return lines.map((line) => line.split(' ')[4] ?? '');
}
