// The live screen as an Ink app that is told everything: what to show, when, and where. It reads no
// keys and has no timer; a terminal that stops reading holds the drawing, never the night.

import { render } from 'ink';
import type { ScreenState } from '../screen/screen-state.ts';
import { ScreenView, type Suspend } from './screen-view.tsx';

export type UiParts = {
	readonly getScreen: () => ScreenState;
	/** Calls the listener at every change and once a second; gives back how to stop that. */
	readonly subscribe: (listener: () => void) => () => void;
	readonly stdout: NodeJS.WriteStream;
	/** A stream on which nothing arrives: keys are read elsewhere. */
	readonly stdin: NodeJS.ReadStream;
	readonly options: {
		readonly isAscii: boolean;
		/** False draws words only. */
		readonly hasColor: boolean;
		/** Whether the terminal has stopped reading; by default more than 64 KB unsent says so. */
		readonly isStalled?: () => boolean;
	};
};

export type Ui = {
	readonly unmount: () => void;
	/** Rejects with whatever was thrown while drawing. */
	readonly waitUntilExit: () => Promise<unknown>;
	/** Puts the terminal's modes right and draws everything anew, as after the program was stopped. */
	readonly redraw: () => Promise<void>;
};

const STALL_BYTES = 65_536;

// Closer keys than a frame would wait for it: at 120 frames the median wait is about 5 ms.
const MOST_FRAMES_A_SECOND = 120;

/** The screen, drawn from now on until it is unmounted. */
export function startUi({ getScreen, subscribe, stdout, stdin, options }: UiParts): Ui {
	const isStalled = options.isStalled ?? (() => stdout.writableLength > STALL_BYTES);
	let suspend: Suspend | null = null;

	function onDraw(draw: () => void): () => void {
		let isHeld = false;
		const offer = () => {
			// Held above the renderer: a frame dropped below it would leave the screen wrong.
			isHeld = isStalled();
			if (!isHeld) draw();
		};
		const onDrain = () => {
			if (isHeld) offer();
		};
		stdout.on('drain', onDrain);
		const stop = subscribe(offer);
		return () => {
			stdout.off('drain', onDrain);
			stop();
		};
	}

	const app = render(
		<ScreenView
			getScreen={getScreen}
			onDraw={onDraw}
			onSuspend={(given) => {
				suspend = given;
			}}
			isAscii={options.isAscii}
			hasColor={options.hasColor}
		/>,
		{
			stdout,
			stdin,
			alternateScreen: true,
			incrementalRendering: true,
			maxFps: MOST_FRAMES_A_SECOND,
			exitOnCtrlC: false,
			interactive: true,
		},
	);
	return {
		unmount: () => app.unmount(),
		waitUntilExit: () => app.waitUntilExit(),
		redraw: async () => {
			await suspend?.(() => {});
		},
	};
}
