// Small files of JSON that the program keeps for its user, such as ticks and results: changed by what they hold at that
// moment and put in place whole. One that is not ours or makes no sense is said, and never written over.

import { dirname } from 'node:path';
import type { DiskFault } from '../base/disk-fault.ts';
import { type Disk, diskError, diskErrorCode } from './disk.ts';
import { ensureFolder } from './folders.ts';
import { whyNotOwn } from './own-file.ts';
import { replaceWhole } from './write-whole.ts';

/** One such file, with the form of what it holds. */
export type SmallFile<Value> = {
	readonly disk: Disk;
	readonly path: string;
	/** Longer is none of ours. */
	readonly largestBytes: number;
	/** What is kept while there is no file. */
	readonly none: Value;
	/** Throws what `damaged` gives for what makes no sense. */
	readonly valueOf: (stored: unknown) => Value;
};

/** So often another program may be quicker before something is wrong. */
const MOST_ROUNDS = 100;

/** What is kept; `none` where there is nothing, or where it cannot be read, which `problem` says. */
export function readSmallFile<Value>(file: SmallFile<Value>): {
	readonly value: Value;
	readonly problem: DiskFault | null;
} {
	try {
		return { value: valueIn(file), problem: null };
	} catch (error) {
		const { path, none } = file;
		return { value: none, problem: { code: 'file-unreadable', path, trouble: troubleOf(error) } };
	}
}

/** Keeps what `change` makes of what is kept now; says when that cannot be. */
export function changeSmallFile<Value>(
	file: SmallFile<Value>,
	change: (before: Value) => unknown,
): Extract<DiskFault, { code: 'export-failed' }> | null {
	const { disk, path } = file;
	try {
		ensureFolder(disk, dirname(path));
		for (let round = 0; round < MOST_ROUNDS; round += 1) {
			const before = standing(file);
			const bytes = Buffer.from(`${JSON.stringify(change(valueIn(file)))}\n`);
			const isStill = () => standing(file) === before;
			if (replaceWhole(disk, { path, bytes, isStill })) return null;
		}
		throw diskError('EBUSY');
	} catch (error) {
		return { code: 'export-failed', path, trouble: troubleOf(error) };
	}
}

/** The error of a file that can be read and makes no sense. */
export function damaged(): Error {
	return diskError('DAMAGED');
}

/** Which file it is; another one as soon as anybody has kept something. */
function standing({ disk, path }: Pick<SmallFile<unknown>, 'disk' | 'path'>): string {
	const { identity, modifiedMs, sizeBytes } = disk.stat(path) ?? {};
	return `${identity} ${modifiedMs} ${sizeBytes}`;
}

function valueIn<Value>({ disk, path, ...file }: SmallFile<Value>): Value {
	const stat = disk.stat(path);
	if (stat === null) return file.none;
	const trouble = whyNotOwn(disk, path, 'file');
	if (trouble !== null) throw diskError(trouble);
	if (stat.sizeBytes > file.largestBytes) throw damaged();
	return file.valueOf(JSON.parse(Buffer.from(disk.read(path)).toString('utf8')));
}

function troubleOf(error: unknown): string {
	return error instanceof SyntaxError ? 'DAMAGED' : diskErrorCode(error);
}
