// What is asked of the machine beside its disk: passed in, so that a test can be any laptop.

import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, statfsSync } from 'node:fs';
import { arch, release } from 'node:os';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Area } from '../screen/row.ts';
import { localOffsetMinutes } from './local-offset.ts';

export type Machine = {
	readonly platform: string;
	/** Kind of processor and the system's own version. */
	readonly system: string;
	readonly node: string;
	/** Null where what says it did not come along. */
	readonly program: string | null;
	/** Name of the time zone; null where the system has none. */
	readonly timeZone: string | null;
	/** Minutes to add to UTC now. */
	readonly offsetMinutes: (atMs: number) => number;
	/** Null where the output is no terminal, or does not know its size. */
	readonly terminalSize: Area | null;
	/** A small file of the system as text; null where it cannot be read. */
	readonly text: (path: string) => string | null;
	/** The names in a folder of the system; none where it cannot be listed. */
	readonly names: (path: string) => readonly string[];
	/** What a program of the system prints; null where it is not there, fails or does not answer. */
	readonly printedBy: (program: string, words: readonly string[]) => string | null;
	/** Bytes that are free for this user on the disk of a folder that need not be there yet; null where unknown. */
	readonly freeBytes: (folder: string) => number | null;
};

/** A program that takes longer is not waited for. */
const ANSWER_MS = 2000;

/** This machine. */
export function thisMachine(): Machine {
	const { columns, rows } = process.stdout;
	return {
		platform: process.platform,
		system: `${arch()} ${release()}`,
		node: process.versions.node,
		program: programVersion(),
		timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone ?? null,
		offsetMinutes: localOffsetMinutes,
		terminalSize: columns > 0 && rows > 0 ? { columns, rows } : null,
		text,
		names: (path) => orNull(() => readdirSync(path)) ?? [],
		printedBy: (program, words) => {
			const { status, stdout } = spawnSync(program, words, {
				encoding: 'utf8',
				timeout: ANSWER_MS,
				stdio: ['ignore', 'pipe', 'ignore'],
				env: { ...process.env, LC_ALL: 'C' },
			});
			return status === 0 ? stdout : null;
		},
		freeBytes,
	};
}

function text(path: string): string | null {
	return orNull(() => readFileSync(path, 'utf8'));
}

function freeBytes(folder: string): number | null {
	const found = orNull(() => statfsSync(folder));
	if (found !== null) return found.bavail * found.bsize;
	const above = dirname(folder);
	return above === folder ? null : freeBytes(above);
}

/** The program's own, from the bundle as from the sources. */
export function programVersion(): string | null {
	for (const place of ['../package.json', '../../package.json']) {
		const found = orNull(() =>
			JSON.parse(readFileSync(fileURLToPath(new URL(place, import.meta.url)), 'utf8')),
		);
		if (found?.name === 'rackside' && typeof found.version === 'string') return found.version;
	}
	return null;
}

/** What a system does not have, or does not let us see, it does not tell. */
function orNull<T>(ask: () => T): T | null {
	try {
		return ask();
	} catch {
		return null;
	}
}
