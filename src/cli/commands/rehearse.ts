// `rackside rehearse`: timed keys from a script on a virtual clock, or the live screen on a clock that
// can run faster.

import { resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { diskErrorCode } from '../../disk/disk.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { likeNight } from '../../history/like-night.ts';
import { readSource } from '../../showfile/read-source.ts';
import type { Show } from '../../showfile/show.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskTrouble } from '../../words/disk.ts';
import { problemOf } from '../../words/problems.ts';
import {
	CHECK_NAME,
	MIDI_LIVE,
	MIDI_OF_SCRIPT,
	NO_SCRIPT,
	SIZE_EXPECTED,
	SIZE_NEEDS,
	scriptUnreadable,
} from '../../words/requests.ts';
import { askedNumber } from '../asked-number.ts';
import type { CliCommand, Request } from '../command.ts';
import { optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { runLive } from '../live/live.ts';
import { manyNights } from '../nights/many-nights.ts';
import { openShow } from '../open-show.ts';
import type { ScreenSize, ScriptReading } from '../rehearsal/parse-script.ts';
import { DEFAULT_SIZE, parseScreenSize, parseScript } from '../rehearsal/parse-script.ts';
import { playScript } from '../rehearsal/play-script.ts';
import { tellProblems } from '../tell-problems.ts';
import { writeNamed } from '../write-named.ts';

/** A script of more is a mistake: a whole night takes some thousand bytes. */
const LARGEST_SCRIPT_BYTES = 1_000_000;

/** Times faster than the clock on the wall. */
const MOST_SPEED = 100;

export const rehearseCommand: CliCommand = {
	usage: 'rehearse SHOW',
	about: [COMMAND_WORDS.rehearse.about],
	example: 'rackside rehearse shows/club.yaml --script opening.txt',
	options: {
		script: { value: 'FILE', words: COMMAND_WORDS.rehearse.options.script },
		quiet: { words: COMMAND_WORDS.rehearse.options.quiet },
		size: { value: 'COLSxROWS', words: COMMAND_WORDS.rehearse.options.size },
		midi: { value: 'FILE', words: COMMAND_WORDS.rehearse.options.midi },
		force: { words: COMMAND_WORDS.rehearse.options.force },
		speed: { value: 'N', words: COMMAND_WORDS.rehearse.options.speed },
		like: { value: 'NIGHT', words: COMMAND_WORDS.rehearse.options.like },
	},
	words: { least: 1, most: 1 },
	run: async (request, io) => {
		const file = request.words[0] ?? '';
		const asPlayed = playedLike(request, io);
		if (typeof asPlayed === 'number') return asPlayed;
		const scriptFile = optionText(request, 'script');
		if (scriptFile === null && request.options.midi !== undefined) {
			return tellProblems([{ code: 'needs-script', what: MIDI_OF_SCRIPT, hint: MIDI_LIVE }], io);
		}
		if (scriptFile === null) {
			const speed = askedNumber(request, 'speed', { from: 1, to: MOST_SPEED, otherwise: 1 });
			if (!speed.ok) return tellProblems(speed.problems, io);
			return runLive(
				{ file, request, speed: speed.value, isRehearsal: true, ...(asPlayed && { asPlayed }) },
				io,
			);
		}
		const size = readSize(request);
		if (size === null) {
			return tellProblems(
				[
					{
						code: 'size',
						what: SIZE_NEEDS,
						found: cleanText(optionText(request, 'size') ?? ''),
						expected: SIZE_EXPECTED,
					},
				],
				io,
			);
		}
		const midiFile = optionText(request, 'midi');
		const { show, problems } = await openShow(file, request, io);
		if (!show) return tellProblems(problems, io);
		const script = readScript(scriptFile, size, io);
		if (!script.ok) return tellProblems(script.problems, io);
		let midi: string | null = null;
		playScript({
			show: asPlayed?.(show) ?? show,
			steps: script.steps,
			isQuiet: request.options.quiet === true,
			print: (line) => io.write(`${line}\n`),
			...(midiFile !== null && {
				keepMidi: (text) => {
					midi = text;
				},
			}),
		});
		if (midiFile === null || midi === null) return EXIT.fine;
		const done = writeNamed({ name: midiFile, content: midi, option: '--midi' }, request, io);
		return 'problem' in done ? tellProblems([done.problem], io) : EXIT.fine;
	},
};

/** What `--like` takes for the newest night that was played. */
const LAST = 'last';

/** What makes a show as it was played in the night of `--like`; null without it, the exit code where that night cannot be read. */
function playedLike(request: Request, io: Io): ((show: Show) => Show) | null | number {
	const like = optionText(request, 'like');
	if (like === null) return null;
	const nights = manyNights(
		{ named: like === LAST ? [] : [like], most: 1, since: null },
		request,
		io,
	);
	if (typeof nights === 'number') return nights;
	const [night] = nights;
	return night === undefined ? null : (show) => likeNight(show, night.facts);
}

function readScript(file: string, size: ScreenSize, io: Io): ScriptReading {
	let bytes: Uint8Array;
	try {
		// Never waits: at a pipe that nobody writes into it would for ever.
		bytes = realDisk.read(resolve(io.cwd, file), { start: 0, length: LARGEST_SCRIPT_BYTES + 1 });
	} catch (error) {
		const trouble = diskErrorCode(error);
		return {
			ok: false,
			problems: [
				{
					code: 'no-script',
					what: trouble === 'ENOENT' ? NO_SCRIPT : scriptUnreadable(diskTrouble(trouble)),
					where: { file: cleanText(file) },
					hint: CHECK_NAME,
				},
			],
		};
	}
	const source = readSource(cleanText(file), bytes, LARGEST_SCRIPT_BYTES);
	return source.ok
		? parseScript(source.text, file, size)
		: { ok: false, problems: source.problems.map(problemOf) };
}

function readSize(request: Request): ScreenSize | null {
	const text = optionText(request, 'size');
	return text === null ? DEFAULT_SIZE : parseScreenSize(text);
}
