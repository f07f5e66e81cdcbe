// `rackside rehearse`: timed keys from a script on a virtual clock, or the live screen on a clock that
// can run faster.

import { basename, dirname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { diskErrorCode } from '../../disk/disk.ts';
import { writeExport } from '../../disk/export-file.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { likeNight } from '../../history/like-night.ts';
import { readSource } from '../../showfile/read-source.ts';
import type { Show } from '../../showfile/show.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskTrouble, exportProblem } from '../../words/disk.ts';
import { problemOf } from '../../words/problems.ts';
import {
	CHECK_NAME,
	MIDI_LIVE,
	MIDI_OF_SCRIPT,
	NO_SCRIPT,
	range,
	SIZE_EXPECTED,
	SIZE_NEEDS,
	SPEED_NEEDS,
	scriptUnreadable,
} from '../../words/requests.ts';
import type { CliCommand, Request } from '../command.ts';
import { optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { runLive } from '../live.ts';
import { manyNights } from '../many-nights.ts';
import { openShow } from '../open-show.ts';
import type { ScreenSize, ScriptReading } from '../parse-script.ts';
import { DEFAULT_SIZE, parseScreenSize, parseScript } from '../parse-script.ts';
import { playScript } from '../play-script.ts';
import { tellProblems } from '../tell-problems.ts';

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
			const speed = readSpeed(request);
			if (speed === null) {
				return tellProblems(
					[
						{
							code: 'speed',
							what: SPEED_NEEDS,
							found: cleanText(optionText(request, 'speed') ?? ''),
							expected: range(1, MOST_SPEED),
						},
					],
					io,
				);
			}
			return runLive(
				{ file, request, speed, isRehearsal: true, ...(asPlayed && { asPlayed }) },
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
		return midiFile === null || midi === null
			? EXIT.fine
			: keepMidi({ file: midiFile, text: midi, request }, io);
	},
};

/** What makes a show as it was played in the night of `--like`; null without it, the exit code where that night cannot be read. */
function playedLike(request: Request, io: Io): ((show: Show) => Show) | null | number {
	const like = optionText(request, 'like');
	if (like === null) return null;
	const nights = manyNights({ named: [like], most: 1, since: null }, request, io);
	if (typeof nights === 'number') return nights;
	const [night] = nights;
	return night === undefined ? null : (show) => likeNight(show, night.facts);
}

/** The bytes that were sent, into a file that must not be there yet. */
function keepMidi(
	{
		file,
		text,
		request,
	}: { readonly file: string; readonly text: string; readonly request: Request },
	io: Io,
): number {
	const target = resolve(io.cwd, file);
	const done = writeExport(realDisk, {
		folder: dirname(target),
		name: basename(target),
		text,
		isDefaultName: false,
		isForced: request.options.force === true,
	});
	return 'fault' in done ? tellProblems([exportProblem(done.fault, '--midi')], io) : EXIT.fine;
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

function readSpeed(request: Request): number | null {
	const text = optionText(request, 'speed');
	if (text === null) return 1;
	const speed = /^\d{1,3}(?:\.\d{1,3})?$/.test(text) ? Number(text) : Number.NaN;
	return speed >= 1 && speed <= MOST_SPEED ? speed : null;
}
