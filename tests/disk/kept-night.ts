// A night that a test keeps on a disk, with a clock that the test turns and a memory of all that
// was ever shown as saved.

import { expect } from 'vitest';
import { createNightFile } from '../../src/disk/create-night-file.ts';
import type { NightFile } from '../../src/disk/night-file.ts';
import type { NightServices } from '../../src/disk/night-services.ts';
import { type OpenedNight, openNightFile } from '../../src/disk/open-night-file.ts';
import type { SaveStatus } from '../../src/journal/night-journal.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { type FaultDisk, settle } from './fault-disk.ts';
import { nightName, stepEntry, stepsOf, subject } from './night-steps.ts';

export const nightsFolder = '/data/rackside/nights';
export const spareFolder = '/other/rackside';
export const nightPath = `${nightsFolder}/${nightName}.journal`;

/** What a night was told and what it showed. */
export class KeptNight {
	readonly disk: FaultDisk;
	readonly folders: readonly string[];
	/** Folders that a restart of the machine empties. */
	readonly wiped = new Set<string>();
	upMs = 1000;
	steps = 0;
	/** Steps that were ever shown as saved. */
	savedSteps = 0;
	status: SaveStatus | null = null;
	readonly statuses: SaveStatus[] = [];
	journal: NightFile | null = null;
	/** Step that each record holds, by its number. */
	readonly stepOf = new Map<number, number>();

	constructor(disk: FaultDisk, folders: readonly string[] = [nightsFolder]) {
		this.disk = disk;
		this.folders = folders;
	}

	services(writer: string): NightServices {
		return {
			disk: this.disk,
			folders: this.folders,
			writer,
			upMs: this.upMs,
			// Passes as soon as nothing else is left to happen.
			wait: async () => settle(),
			isWiped: (folder) => this.wiped.has(folder),
			onStatus: (status) => this.#note(status),
		};
	}

	async create(): Promise<void> {
		const night = await createNightFile(this.services('writer-1'), {
			id: nightName,
			wallMs: 1_781_289_000_000,
			subject,
		});
		this.#hold(night.journal);
	}

	open(writer = 'writer-2'): OpenedNight {
		const opened = openNightFile(this.services(writer), { id: nightName });
		this.#hold(opened.journal);
		return opened;
	}

	#hold(journal: NightFile | null): void {
		journal?.keepStates(() => ({ steps: this.steps }));
		this.journal = journal;
	}

	/** Opens the night and goes on after the steps that it holds. */
	resume(writer: string): OpenedNight {
		const opened = this.open(writer);
		for (const record of opened.records()) {
			const [step] = stepsOf([record]);
			if (step !== undefined) this.stepOf.set(record.s, step);
		}
		this.steps = Math.max(0, ...this.stepOf.values());
		return opened;
	}

	append(): JournalRecord {
		this.upMs += 10;
		const journal = this.journal;
		if (!journal) throw new Error('no night is open');
		const at = { wallMs: 1_781_289_000_000 + this.upMs, upMs: this.upMs };
		// The step counts as applied only once the journal has it, as in the program.
		const record = journal.append([stepEntry(this.steps + 1)], at);
		if (this.disk.isKilled) return record;
		this.steps += 1;
		this.stepOf.set(record.s, this.steps);
		return record;
	}

	tick(milliseconds: number): void {
		this.upMs += milliseconds;
		this.journal?.tick(this.upMs);
	}

	#note(status: SaveStatus): void {
		if (this.disk.isKilled) return;
		this.status = status;
		this.statuses.push(status);
		this.savedSteps = Math.max(this.savedSteps, this.stepOf.get(status.savedSeq) ?? 0);
	}
}

/** What a test knows of a night's steps. */
export type Told = {
	/** All steps up to this one were shown as saved. */
	readonly saved: number;
	/** The last step that was made. */
	readonly typed: number;
	/** Steps that a power cut took before they were shown as saved. */
	readonly lost?: ReadonlySet<number>;
};

/** Holds that no saved step is lost, none is there twice, none was invented, and they are in order. */
export function expectKept(opened: OpenedNight, { saved, typed, lost = new Set() }: Told): void {
	const steps = stepsOf(opened.records());
	expect(steps).toEqual([...new Set(steps)].toSorted((one, other) => one - other));
	const savedSteps = Array.from({ length: saved }, (_, index) => index + 1);
	expect(steps.filter((step) => step <= saved)).toEqual(
		savedSteps.filter((step) => !lost.has(step)),
	);
	expect(steps.at(-1) ?? 0).toBeLessThanOrEqual(typed);
	for (const record of opened.records()) {
		for (const entry of record.e) {
			if ('step' in entry) expect(entry).toEqual(stepEntry(Number(entry.step)));
		}
	}
}
