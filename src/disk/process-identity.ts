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
/** Place of the state among them: `Z` and `X` have ended (proc(5), field 3). */
const stateField = 0;

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

/** Slack between a file's clock and the machine's, in milliseconds. */
const SLACK_MS = 60_000;
/** Before this (2026-01-01) no clock of a machine is right that runs this. */
const CLOCK_SET_MS = 1_767_225_600_000;

/**
 * Whether a file of a time (as the disk says it) was written before the machine's present start, so that no program
 * that is running wrote it. Only where no start has an id, as on macOS and Windows, where a number is soon another
 * program's; never by a clock that was not set.
 */
export function isFromEarlierStart(
	modifiedMs: number,
	{ boot, machineStartMs }: { readonly boot: string; readonly machineStartMs: number },
): boolean {
	return boot === '' && modifiedMs > CLOCK_SET_MS && modifiedMs < machineStartMs - SLACK_MS;
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
	const fields = statFields(pid);
	// One that has ended stays listed until its parent has heard of it, which may be never.
	if (fields[stateField] === 'Z' || fields[stateField] === 'X') return false;
	const now = ticksOf(fields);
	return began === null || now === null || began === now;
}

function startTicks(pid: number): number | null {
	return ticksOf(statFields(pid));
}

function ticksOf(fields: readonly string[]): number | null {
	const ticks = Number(fields[startField]);
	return Number.isSafeInteger(ticks) ? ticks : null;
}

/** The fields of `/proc/PID/stat` after the name; none where the system has no such file. */
function statFields(pid: number): readonly string[] {
	try {
		const text = readFileSync(`/proc/${pid}/stat`, 'latin1');
		// The name stands in brackets and may itself hold spaces and brackets.
		return text.slice(text.lastIndexOf(')') + 2).split(' ');
	} catch {
		return [];
	}
}
