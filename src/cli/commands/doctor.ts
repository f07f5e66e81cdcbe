// `rackside doctor`: what this terminal, keyboard, disk and clock can do, each fine or with what to do.

import { cleanText } from '../../base/clean-text.ts';
import { folderDoubts } from '../../disk/own-file.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { settingsNow } from '../../disk/settings.ts';
import { syncTrial } from '../../disk/sync-trial.ts';
import { readTroubles } from '../../disk/trouble-log.ts';
import { usableKeys } from '../../keys/key-choices.ts';
import { type Clock, nodeClock } from '../../terminal/clock.ts';
import { drawnWidth } from '../../terminal/drawn-width.ts';
import { askKeys } from '../../terminal/key-trial.ts';
import { terminalAbilities } from '../../terminal/terminal-kind.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import {
	doctorSum,
	HOLD_KEY,
	KEYS_LEFT_OUT,
	KEYS_NOT_FOR_JSON,
	LETTERS_TRIED,
	PRESS_SWITCH,
} from '../../words/doctor.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { type Asked, keysLeftOut, repeatLine, switchLine } from '../doctor/doctor-keys.ts';
import { type DoctorLine, lineText } from '../doctor/doctor-line.ts';
import {
	folderLine,
	nightsLine,
	spaceLine,
	syncLine,
	troublesLine,
	versionsLine,
} from '../doctor/doctor-program.ts';
import { clockLines, powerLine, sleepLines } from '../doctor/doctor-system.ts';
import { terminalLines } from '../doctor/doctor-terminal.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { type Machine, thisMachine } from '../machine.ts';
import { seenNights } from '../nights/night-places.ts';
import { placesOf } from '../places.ts';

export const doctorCommand: CliCommand = {
	usage: 'doctor',
	about: [COMMAND_WORDS.doctor.about],
	example: 'rackside doctor',
	options: JSON_OPTION,
	words: { least: 0, most: 0 },
	run: (request, io) => {
		const clock = nodeClock();
		const machine = thisMachine();
		return examine(request, io, { machine, clock, asked: askedOf(io, clock) });
	},
};

export type DoctorParts = {
	readonly machine: Machine;
	readonly clock: Clock;
	readonly asked: Asked;
};

/** Prints every line, asks for keys where there is somebody to ask, and gives back the exit code. */
export async function examine(
	request: Request,
	io: Io,
	{ machine, clock, asked }: DoctorParts,
): Promise<number> {
	const isJson = request.options.json === true;
	const lines: DoctorLine[] = [];
	const tell = (more: readonly DoctorLine[]): void => {
		lines.push(...more);
		if (!isJson) io.write(more.map(lineText).map(keepLines).join(''));
	};
	const canAsk = io.isInputTerminal && io.isOutputTerminal && !isJson;
	const { values } = settingsNow({ disk: realDisk, folder: placesOf(request, io).settings });
	const abilities = terminalAbilities({
		env: io.env,
		platform: process.platform,
		isInputTerminal: io.isInputTerminal,
		isOutputTerminal: io.isOutputTerminal,
		isColorRefused: request.options['no-color'] === true,
	});
	tell(
		terminalLines({
			size: io.isOutputTerminal ? machine.terminalSize : null,
			abilities,
			isColourRefused: request.options['no-color'] === true || (io.env.NO_COLOR ?? '') !== '',
			colours: values.colours,
			drawnCells:
				canAsk && abilities.kind === 'screen' && abilities.isUnicode
					? await asked.drawnCells(LETTERS_TRIED)
					: null,
		}),
	);
	tell(await diskLines(request, io, { machine, clock }));
	tell(clockLines(machine, io.wallMs()));
	tell(sleepLines(machine, io.env));
	tell([powerLine(machine), ...nightLines(request, io, machine), versionsLine(machine)]);
	if (!canAsk) tell(keysLeftOut(isJson ? KEYS_NOT_FOR_JSON : KEYS_LEFT_OUT));
	else {
		const repeat = await asked.holdKey();
		if (repeat.kind === 'interrupted') return EXIT.interrupted;
		tell([repeatLine(repeat)]);
		const pedals = repeat.kind === 'left' ? repeat : await asked.pressSwitch();
		if (pedals.kind === 'interrupted') return EXIT.interrupted;
		tell([switchLine(pedals, usableKeys(values.keys).keys)]);
	}
	const countOf = (state: DoctorLine['state']) => lines.filter((one) => one.state === state).length;
	if (isJson) io.write(`${JSON.stringify({ lines })}\n`);
	else io.write(`\n${doctorSum(countOf('look'), countOf('unknown'))}\n`);
	return countOf('look') > 0 ? EXIT.toLookAt : EXIT.fine;
}

/** What a folder or a title may hide is seen, and the line stays a line. */
function keepLines(text: string): string {
	return text
		.split('\n')
		.map((row) => cleanText(row))
		.join('\n');
}

/** Enough for the slow ones among them to show. */
const APPENDS = 25;

async function diskLines(
	request: Request,
	io: Io,
	{ machine, clock }: Pick<DoctorParts, 'machine' | 'clock'>,
): Promise<readonly DoctorLine[]> {
	const { data } = placesOf(request, io);
	const mark = `${process.pid}-${io.wallMs()}`;
	const trial = await syncTrial({
		disk: realDisk,
		folder: data,
		nowMs: clock.nowMs,
		mark,
		appends: APPENDS,
	});
	return [
		folderLine(data, 'code' in trial ? [trial] : folderDoubts(realDisk, data)),
		syncLine(trial),
		spaceLine(machine.freeBytes(data)),
	];
}

function nightLines(request: Request, io: Io, machine: Machine): readonly DoctorLine[] {
	const places = placesOf(request, io);
	const { nights, isPart } = seenNights(places, io);
	const wallMs = io.wallMs();
	const moment = { wallMs, offsetMinutes: machine.offsetMinutes(wallMs) };
	return [nightsLine(nights, isPart), troublesLine(readTroubles(realDisk, places.data), moment)];
}

/** Long enough to find the switch in the dark. */
const WAIT_MS = 20_000;
const HOLD_MS = 2000;
const NEXT_PEDAL_MS = 3000;

function askedOf(io: Io, clock: Clock): Asked {
	const ask = (words: string) => {
		io.write(`\n${words}\n`);
		return { stdin: process.stdin, clock, waitMs: WAIT_MS };
	};
	return {
		drawnCells: (text) => drawnWidth(text, { stdin: process.stdin, write: io.write, clock }),
		holdKey: () => askKeys({ ...ask(HOLD_KEY), takeMs: HOLD_MS, from: 'first' }),
		pressSwitch: () =>
			askKeys({ ...ask(PRESS_SWITCH), takeMs: NEXT_PEDAL_MS, from: 'last', none: 'n' }),
	};
}
