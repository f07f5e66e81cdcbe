// A program in a real pty, watched for what it writes and when.

import { readFileSync } from 'node:fs';
import { type IPty, spawn } from '@lydell/node-pty';
import { COLUMNS, ROWS } from './minimal-app.ts';

const PATIENCE_MS = 20_000;

export class BenchPty {
	readonly #pty: IPty;
	readonly #ended: Promise<void>;
	#seen = '';
	#watch: { readonly text: string; readonly done: () => void } | null = null;
	/** Bytes written since the start. */
	bytes = 0;

	constructor(
		args: readonly string[],
		env: Readonly<Record<string, string>> = {},
		program = process.execPath,
	) {
		this.#pty = spawn(program, [...args], {
			cols: COLUMNS,
			rows: ROWS,
			env: { ...process.env, TERM: 'xterm-256color', ...env },
		});
		this.#ended = new Promise((done) => this.#pty.onExit(() => done()));
		this.#pty.onData((data) => {
			this.bytes += Buffer.byteLength(data);
			if (!this.#watch) return;
			this.#seen += data;
			if (!this.#seen.includes(this.#watch.text)) return;
			const { done } = this.#watch;
			this.#watch = null;
			done();
		});
	}

	/** Milliseconds until the text is written, from now on; the keys are pressed first. */
	async until(text: string, keys = ''): Promise<number> {
		this.#seen = '';
		const began = process.hrtime.bigint();
		const shown = new Promise<void>((resolve, reject) => {
			const late = setTimeout(() => reject(new Error(`never shown: ${text}`)), PATIENCE_MS);
			this.#watch = {
				text,
				done: () => {
					clearTimeout(late);
					resolve();
				},
			};
		});
		if (keys !== '') this.#pty.write(keys);
		await shown;
		return Number(process.hrtime.bigint() - began) / 1e6;
	}

	write(keys: string): void {
		this.#pty.write(keys);
	}

	resize(columns: number, rows: number): void {
		this.#pty.resize(columns, rows);
	}

	/** Bytes of memory in use, shared pages included. */
	residentBytes(): number {
		const [, pages = '0'] = readFileSync(`/proc/${this.#measured()}/statm`, 'utf8').split(' ');
		return Number(pages) * 4096;
	}

	/** Milliseconds of processor time used since the start. */
	processorMs(): number {
		const stat = readFileSync(`/proc/${this.#measured()}/stat`, 'utf8');
		// After the name in brackets: the 12th and 13th fields are user and system time, in hundredths.
		const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
		return (Number(fields[11]) + Number(fields[12])) * 10;
	}

	/** Waits until the program has ended by itself. */
	async end(): Promise<void> {
		await this.#ended;
	}

	async kill(): Promise<void> {
		process.kill(this.#measured(), 'SIGKILL');
		await this.#ended;
	}

	/** The program itself: where a launcher waits for it, what that has started. */
	#measured(): number {
		const { pid } = this.#pty;
		const started = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim();
		return started === '' ? pid : Number(started.split(' ')[0]);
	}
}
