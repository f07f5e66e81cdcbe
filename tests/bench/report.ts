// The report of a night as a whole process, by processor time: against a bare `node -e 0`, and of a night of 10,000
// records in milliseconds.

import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encodeLine, headerSeed, seedOf } from '../../src/journal/line.ts';
import { recordBeside } from '../../src/journal/new-record.ts';
import { nightName, sampleHeader } from '../journal/sample-journal.ts';
import { busyNight } from '../report/busy-night.ts';
import { CLUB_NIGHT } from '../report/looked-at-nights.ts';
import { nightOf } from '../report/script-night.ts';
import { processorMs, takeTurns } from './rounds.ts';

const MOST_RECORDS = 10_000;
/** Milliseconds that the report of such a night may take. */
const MOST_MS = 1000;

export async function benchReport(rounds: number): Promise<readonly string[]> {
	const folder = mkdtempSync(join(tmpdir(), 'rackside-bench-'));
	try {
		const script = readFileSync(new URL(`../rehearsals/${CLUB_NIGHT}`, import.meta.url), 'utf8');
		const usual = kept(folder, 'usual', nightOf(CLUB_NIGHT, script).bytes);
		const busy = kept(folder, 'busy', busyBytes());
		const report =
			(data: string, ...more: string[]) =>
			() =>
				processorMs(process.execPath, ['dist/rackside.js', 'report', '--data', data, ...more]);
		const [bare = Number.NaN, text = Number.NaN, page = Number.NaN, long = Number.NaN] = takeTurns(
			[
				{ name: 'bare', run: () => processorMs(process.execPath, ['-e', '0']) },
				{ name: 'report', run: report(usual) },
				{ name: 'page', run: report(usual, '--as', 'html') },
				{ name: 'busy', run: report(busy) },
			],
			rounds,
		);
		const row = (name: string, ms: number) =>
			`${name.padEnd(44)} ${ms.toFixed(0).padStart(6)} ms  ${(ms / bare).toFixed(2).padStart(6)} x bare node`;
		return [
			`${row('report of a club night', text)}  (target <= 4)`,
			row('the same as a page', page),
			`${row('report of a night of 10,000 records', long)}  (target <= ${MOST_MS} ms)`,
		];
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}

/** A data folder with this night in it. */
function kept(folder: string, name: string, bytes: Uint8Array): string {
	const data = join(folder, name);
	mkdirSync(join(data, 'nights'), { recursive: true, mode: 0o700 });
	writeFileSync(join(data, 'nights', `${nightName}.journal`), bytes, { mode: 0o600 });
	return data;
}

function busyBytes(): Uint8Array {
	const { show, records } = busyNight(MOST_RECORDS);
	const header = { ...sampleHeader(), title: show.title, show };
	const seed = seedOf(header.journal);
	const begun = recordBeside({ s: 0, w: 'bench', e: [header], at: { wallMs: 0, upMs: 0 } });
	return Buffer.concat([
		encodeLine(begun, headerSeed),
		...records.map((record) => encodeLine(record, seed)),
	]);
}
