// A script played against a show on a clock of its own: the night is the real one, only time is not.

import { decodeCheckpoint } from '../../journal/join-segments.ts';
import type { MemoryJournal } from '../../journal/memory-journal.ts';
import { memoryJournal } from '../../journal/memory-journal.ts';
import { unkeptHeader } from '../../journal/night-header.ts';
import { readJournal } from '../../journal/read-journal.ts';
import { decodeLine } from '../../journal/read-line.ts';
import { unkeptDrafts } from '../../night/draft-store.ts';
import type { Night } from '../../night/night.ts';
import { openNight } from '../../night/night.ts';
import { plannedZero } from '../../night/planned-zero.ts';
import { unkeptPreferences } from '../../night/preference-store.ts';
import { drawnLines } from '../../screen/drawn-lines.ts';
import type { ScreenState } from '../../screen/screen-state.ts';
import type { Show } from '../../showfile/show.ts';
import { midiTape } from './midi-tape.ts';
import type { ScreenSize, ScriptStep } from './parse-script.ts';

/** What playing a script takes. */
export type ScriptPlay = {
	readonly show: Show;
	readonly steps: readonly ScriptStep[];
	/** Leave out the state at the end. */
	readonly isQuiet: boolean;
	/** The screen as lines of text; left out, plain ones. */
	readonly draw?: (state: ScreenState, size: ScreenSize) => readonly string[];
	/** Gets what the boards were sent, as a text, at the end. */
	readonly keepMidi?: (text: string) => void;
	/** Gets each line of what the script prints. */
	readonly print: (line: string) => void;
};

const TICK_MS = 1000;

/** A rehearsal has no day: any moment serves, so long as it is always the same. */
const REHEARSAL_MS = Date.UTC(2000, 0, 1, 12);

/** How long the machine has been up when the first song starts, so that it is up before it too. */
const UP_AT_ZERO_MS = 10 * 86_400_000;

/** Plays the steps in order, printing what they ask for. */
export function playScript(play: ScriptPlay): void {
	const { show, steps, isQuiet, draw = drawnLines, print, keepMidi } = play;
	const zeroMs = plannedZero(show, REHEARSAL_MS, 0);
	let atMs = steps[0]?.atMs ?? 0;
	const clock = { wallMs: () => zeroMs + atMs, upMs: () => UP_AT_ZERO_MS + atMs, bootId: '' };
	// What a user prefers outlasts a stop of the program, and so does what is typed.
	const preferences = unkeptPreferences(show.ownTimes);
	const drafts = unkeptDrafts();
	const tape =
		keepMidi && midiTape(show, () => zeroMs + atMs - (night.session().zeroAtMs ?? zeroMs));
	const open = (journal: MemoryJournal): Night =>
		openNight({
			show,
			journal,
			clock,
			plannedZeroMs: zeroMs,
			dayOffsetMinutes: 0,
			isRehearsal: true,
			preferences,
			drafts,
			...(tape && { effects: tape.effects }),
		});
	let journal = memoryJournal(unkeptHeader('rehearsal', show.title));
	let night = open(journal);
	const passTime = (untilMs: number): void => {
		const next = (Math.floor(atMs / TICK_MS) + 1) * TICK_MS;
		for (let tickMs = next; tickMs < untilMs; tickMs += TICK_MS) {
			atMs = tickMs;
			night.tick();
		}
		const hasPassed = untilMs > atMs;
		atMs = untilMs;
		if (hasPassed) night.tick();
	};
	for (const step of steps) {
		// While the program is dead nothing ticks; it is started again at the time of the step.
		if (step.act.do === 'kill') {
			atMs = step.atMs;
			journal = reread(journal.bytes());
			night = open(journal);
			continue;
		}
		passTime(step.atMs);
		if (step.act.do === 'press') night.press(step.act.key);
		else if (step.act.do === 'ready') night.submit({ do: 'make-all-ready' }, 'script');
		else if (step.act.do === 'state') print(JSON.stringify(night.state()));
		else for (const line of draw(night.screen(), step.act.size)) print(line.trimEnd());
	}
	if (!isQuiet) print(JSON.stringify(night.state()));
	if (tape) keepMidi?.(tape.text(zeroMs + atMs - (night.session().zeroAtMs ?? zeroMs)));
}

/** The journal as a new start of the program would read it from its file. */
function reread(bytes: Buffer): MemoryJournal {
	const { header, lines } = readJournal(bytes);
	if (!header) throw new Error('the journal in memory lost its header');
	const kept = lines
		.filter(({ kind }) => kind === 'checkpoint')
		.map((line) => decodeCheckpoint({ bytes, line }));
	return memoryJournal(header.header, {
		records: lines.filter(({ kind }) => kind === 'record').map((line) => decodeLine(bytes, line)),
		checkpoint: kept.at(-1) ?? null,
		earlier: kept.slice(0, -1),
	});
}
