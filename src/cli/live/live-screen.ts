// A night on the terminal: its keys go in, its rows come out, from the first picture to the way out. What
// night that is, and whether it is kept here, is nothing to this.

import { PassThrough } from 'node:stream';
import type { Night } from '../../night/night.ts';
import type { Area } from '../../screen/row.ts';
import type { Clock } from '../../terminal/clock.ts';
import { redrawOnContinue } from '../../terminal/continue.ts';
import { createInputSource } from '../../terminal/input-source.ts';
import type { InputEvent } from '../../terminal/key.ts';
import { keepSizeKnown } from '../../terminal/known-size.ts';
import type { Shutdown } from '../../terminal/shutdown.ts';
import { createPaintGate, hasBacklog, oncePerTurn, unblock } from '../../terminal/stall.ts';
import { type TerminalAbilities, terminalAbilities } from '../../terminal/terminal-kind.ts';
import {
	BEGIN_FRAME,
	ENTER_MODES,
	ENTER_SCREEN,
	FIRST_CELL,
	LEAVE_SCREEN,
	RESET,
} from '../../terminal/terminal-modes.ts';
import type { Ui } from '../../ui/start-ui.tsx';
import type { ScreenOptions } from '../../ui/styled-row.ts';
import { CANNOT_PLACE, NEEDS_TERMINAL } from '../../words/program.ts';
import type { Request } from '../command.ts';
import type { Io } from '../io.ts';

/** What a terminal needs of a night, or of whatever else takes keys and is shown. */
export type ShownNight = Pick<
	Night,
	'press' | 'paste' | 'burst' | 'tick' | 'onChange' | 'wantsToLeave'
>;

/** What the terminal can show; null where it cannot show a screen, which is said. */
export function screenAbilities(request: Request, io: Io): TerminalAbilities | null {
	const abilities = terminalAbilities({
		env: io.env,
		isInputTerminal: io.isInputTerminal,
		isOutputTerminal: io.isOutputTerminal,
		platform: process.platform,
		isColorRefused: request.options['no-color'] === true,
	});
	if (abilities.kind === 'screen') return abilities;
	io.complain(`${abilities.kind === 'none' ? NEEDS_TERMINAL : CANNOT_PLACE}\n`);
	return null;
}

/** How rows are written on such a terminal. */
export function screenOptions({ isUnicode, colorDepth }: TerminalAbilities): ScreenOptions {
	return { isAscii: !isUnicode, colorDepth };
}

/** How a night is shown, and what leads out. */
export type LiveScreen = {
	readonly night: ShownNight;
	/** Its rows on a terminal of this size, each as it is sent. */
	readonly rowsAt: (size: Area) => readonly string[];
	readonly clock: Clock;
	readonly shutdown: Shutdown;
	/** The exit code where it was left by a key. */
	readonly codeAtEnd: () => number;
	/** The clock by which hands are judged; time asleep counts. */
	readonly handMs: () => number;
	readonly tickMs: number;
};

/** Shows the night from now on, and gives it the keys; what goes wrong leads out. */
export async function showLive(screen: LiveScreen): Promise<void> {
	try {
		await draw(screen);
	} catch (error) {
		screen.shutdown.begin({ kind: 'fault', error });
	}
}

async function draw({ night, rowsAt, clock, shutdown, ...stage }: LiveScreen): Promise<void> {
	const { stdin, stdout, stderr } = process;
	unblock([stdout, stderr]);
	const leaveIfWanted = (): void => {
		if (!night.wantsToLeave()) return;
		shutdown.begin({ kind: 'quit', code: stage.codeAtEnd() });
	};
	const onEvent = (event: InputEvent): void => {
		if (event.kind === 'key') night.press(event.key, event.atMs);
		else if (event.kind === 'paste') night.paste(event.text);
		else if (event.kind === 'burst') night.burst(event.count, event.text);
		else shutdown.begin({ kind: 'signal', signal: 'SIGINT' });
		leaveIfWanted();
	};
	let ui: Ui | null = null;
	let isInScreen = true;
	keepSizeKnown(stdout, clock);
	let shown: readonly string[] = [];
	const showFirst = (): void => {
		shown = rowsAt(stdout);
		stdout.write(ENTER_SCREEN + shown.join('\r\n') + FIRST_CELL);
	};
	const input = createInputSource({
		stdin,
		clock: { ...clock, nowMs: stage.handMs },
		onEvent,
		onCooked: () => takeBack(),
	});
	const takeBack = redrawOnContinue({
		process,
		clock,
		retake: input.retake,
		write: (text) => stdout.write(text),
		redraw: () => {
			if (ui === null) {
				showFirst();
				return;
			}
			// Ink first erases its last frame, from the cursor upwards: on this screen, or it would do so
			// on the one that the shell is on.
			stdout.write(BEGIN_FRAME + ENTER_SCREEN);
			ui.redraw();
		},
	});
	shutdown.hold({
		stopInput: input.stop,
		unmount: () => {
			ui?.unmount();
			stdout.write(LEAVE_SCREEN);
			isInScreen = false;
		},
	});
	// Where the way out took too long and was given up, this is the last chance.
	process.once('exit', () => {
		if (isInScreen) stdout.write(RESET);
	});
	// Shown and listening at once; the renderer, which takes longer to load than all else, goes on from
	// there.
	stdout.write(ENTER_MODES);
	showFirst();
	input.start();
	const { startUi } = await import('../../ui/start-ui.tsx');
	if (shutdown.hasBegun()) return;
	const started = startUi({
		shown,
		rowsAt,
		onFault: (error) => shutdown.begin({ kind: 'fault', error }),
		stdout,
		// Nothing ever arrives there: the keys are read by the input source.
		stdin: Object.assign(new PassThrough(), {
			isTTY: true,
			setRawMode: () => {},
			ref: () => {},
			unref: () => {},
		}) as unknown as NodeJS.ReadStream,
	});
	ui = started;
	const { offer } = createPaintGate({
		hasBacklog: () => hasBacklog(stdout),
		paint: started.draw,
		// What is written, though it is nothing, goes out after all that waits.
		afterSending: (run) => stdout.write('', run),
	});
	night.onChange(oncePerTurn(offer));
	offer();
	const beat = (): void => {
		if (shutdown.hasBegun()) return;
		night.tick();
		clock.after(stage.tickMs, beat);
	};
	clock.after(stage.tickMs, beat);
}
