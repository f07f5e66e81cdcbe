// A night whose file could no longer be trusted goes on in another one. Here its files become one
// run of records again, each number once.

import type { JournalRead } from './read-journal.ts';
import { decodeLine, type HeaderLine } from './read-line.ts';
import type { Checkpoint, CheckpointEntry } from './record.ts';
import type { StoredLine } from './record-list.ts';

/** Sequence numbers from `from` to `to`, both included. */
export type SeqRange = { readonly from: number; readonly to: number };

/** A night put together from all its files. */
export type NightRead = {
	readonly id: string | null;
	readonly header: HeaderLine | null;
	/** One line for each number that is there, lowest first. */
	readonly lines: readonly StoredLine[];
	/** Lines that another writer wrote under a number already taken; kept out. */
	readonly conflicts: readonly StoredLine[];
	/** The last usable checkpoint. */
	readonly checkpoint: StoredLine | null;
	/** All usable ones, lowest number first. */
	readonly checkpoints: readonly StoredLine[];
	/** The highest number of any record, whether it can still be read or is only held by a checkpoint. */
	readonly lastSeq: number;
	/** Numbers of records that cannot be read. */
	readonly missing: readonly SeqRange[];
	/** The files, in the order given. */
	readonly reads: readonly JournalRead[];
	readonly isNewer: boolean;
};

/** One night from its files, oldest file first. Of equal lines the first is kept. */
export function joinSegments(reads: readonly JournalRead[]): NightRead {
	const header = reads.find((read) => read.header)?.header ?? null;
	const id = header?.header.journal ?? reads.find((read) => read.id !== null)?.id ?? null;
	const ours = reads.filter((read) => read.id === id);
	const all = ours.flatMap((read) => read.lines.map((line) => ({ bytes: read.bytes, line })));
	const records = all.filter((stored) => stored.line.kind === 'record');
	const { lines, conflicts } = oneBranch(records);
	const checkpoints = usableCheckpoints(
		all.filter((stored) => stored.line.kind === 'checkpoint'),
		conflicts,
	);
	const checkpoint = checkpoints.at(-1) ?? null;
	const lastSeq = Math.max(0, lines.at(-1)?.line.seq ?? 0, checkpoint?.line.seq ?? 0);
	return {
		id,
		header,
		lines,
		conflicts,
		checkpoint,
		checkpoints,
		lastSeq,
		missing: missingUpTo(lastSeq, lines),
		reads,
		isNewer: reads.some((read) => read.isNewer),
	};
}

/** The state that a checkpoint's line holds. */
export function decodeCheckpoint(stored: StoredLine): Checkpoint {
	const [entry] = decodeLine(stored.bytes, stored.line).e as readonly CheckpointEntry[];
	return { seq: stored.line.seq, state: entry?.state ?? null };
}

/**
 * Where two writers wrote the same number, the line of the one who led to the last record: what was
 * shown at the end of the night must be what is shown when it is taken up again.
 */
function oneBranch(records: readonly StoredLine[]): Pick<NightRead, 'lines' | 'conflicts'> {
	const sorted = records.toSorted((one, other) => one.line.seq - other.line.seq);
	const lines: StoredLine[] = [];
	const conflicts: StoredLine[] = [];
	let writer: string | null = null;
	for (let end = sorted.length; end > 0; ) {
		const seq = sorted[end - 1]?.line.seq;
		let start = end - 1;
		while (start > 0 && sorted[start - 1]?.line.seq === seq) start -= 1;
		const group = sorted.slice(start, end);
		const chosen: StoredLine | undefined =
			group.find((stored) => stored.line.writer === writer) ?? group[0];
		if (chosen) {
			lines.push(chosen);
			writer = chosen.line.writer;
			// A writer never uses a number twice: what else it has under this one is the same record,
			// perhaps as a later version of the program wrote it.
			conflicts.push(...group.filter((other) => other.line.writer !== writer));
		}
		end = start;
	}
	return { lines: lines.reverse(), conflicts };
}

/** The checkpoints whose writer had not yet left the branch that is followed; of equal numbers the last stands last. */
function usableCheckpoints(
	checkpoints: readonly StoredLine[],
	conflicts: readonly StoredLine[],
): readonly StoredLine[] {
	const leftAt = new Map<string, number>();
	for (const { line } of conflicts) {
		leftAt.set(line.writer, Math.min(line.seq, leftAt.get(line.writer) ?? line.seq));
	}
	return checkpoints
		.filter(({ line }) => line.seq < (leftAt.get(line.writer) ?? Number.POSITIVE_INFINITY))
		.toSorted((one, other) => one.line.seq - other.line.seq);
}

function missingUpTo(lastSeq: number, lines: readonly StoredLine[]): SeqRange[] {
	const missing: SeqRange[] = [];
	let next = 1;
	for (const { line } of lines) {
		if (line.seq > next) missing.push({ from: next, to: line.seq - 1 });
		next = line.seq + 1;
	}
	if (next <= lastSeq) missing.push({ from: next, to: lastSeq });
	return missing;
}
