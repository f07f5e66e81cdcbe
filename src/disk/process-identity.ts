// What tells one running program from another that later got its number.

import { readFileSync } from 'node:fs';

/** A running program: its number, when it began, and the machine's start that both count from. */
export type ProcessIdentity = {
	readonly pid: number;
	/** Clock ticks after the machine's start; null where the system does not tell. */
	readonly startTicks: number | null;
	/** Empty where the system does not tell. */
	readonly boot: string;
};

/** Place of the start time among the fields of `/proc/PID/stat` after the name (proc(5), field 22). */
const startField = 19;

/** This program. */
export function ownIdentity(): ProcessIdentity {
	return { pid: process.pid, startTicks: startTicks(process.pid), boot: bootId() };
}

/** The id of the machine's present start; empty where the system has none (all but Linux). */
export function bootId(): string {
	try {
		return readFileSync('/proc/sys/kernel/random/boot_id', 'latin1').trim();
	} catch {
		return '';
	}
}

/** Whether that very program is still running. */
export function isRunning({ pid, startTicks: began, boot }: ProcessIdentity): boolean {
	const present = bootId();
	if (boot !== '' && present !== '' && boot !== present) return false;
	try {
		process.kill(pid, 0);
	} catch (error) {
		// It is there, but somebody else's.
		if (error instanceof Error && 'code' in error && error.code === 'EPERM') return true;
		return false;
	}
	const now = startTicks(pid);
	return began === null || now === null || began === now;
}

function startTicks(pid: number): number | null {
	try {
		const text = readFileSync(`/proc/${pid}/stat`, 'latin1');
		// The name stands in brackets and may itself hold spaces and brackets.
		const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
		const ticks = Number(fields[startField]);
		return Number.isSafeInteger(ticks) ? ticks : null;
	} catch {
		return null;
	}
}
