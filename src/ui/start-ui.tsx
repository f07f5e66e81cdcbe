// The live screen as an Ink app that is told everything: what to show, when, and where. It reads no
// keys and has no timer.

import { render } from 'ink';
import type { ScreenState } from '../screen/screen-state.ts';
import { FaultGuard } from './fault-guard.tsx';
import { ScreenView, type Suspend } from './screen-view.tsx';
import type { ScreenOptions } from './styled-row.ts';

export type UiParts = {
	readonly getScreen: () => ScreenState;
	/** Calls the listener whenever to draw; gives back how to stop that. */
	readonly subscribe: (draw: () => void) => () => void;
	/** Told what was thrown while drawing; nothing is drawn after. */
	readonly onFault: (error: unknown) => void;
	readonly stdout: NodeJS.WriteStream;
	/** A stream on which nothing arrives: keys are read elsewhere. */
	readonly stdin: NodeJS.ReadStream;
	readonly options: ScreenOptions;
};

export type Ui = {
	readonly unmount: () => void;
	/** Puts the terminal's modes right and draws everything anew, as after the program was stopped. */
	readonly redraw: () => Promise<void>;
};

// Closer keys than a frame would wait for it: at 120 frames the median wait is about 5 ms.
const MOST_FRAMES_A_SECOND = 120;

/** The screen, drawn from now on until it is unmounted. */
export function startUi(parts: UiParts): Ui {
	const { stdout, stdin, options } = parts;
	let suspend: Suspend | null = null;

	const app = render(
		<FaultGuard onFault={parts.onFault}>
			<ScreenView
				getScreen={parts.getScreen}
				onDraw={parts.subscribe}
				onSuspend={(given) => {
					suspend = given;
				}}
				isAscii={options.isAscii}
				colorDepth={options.colorDepth}
			/>
		</FaultGuard>,
		{
			stdout,
			stdin,
			// The alternate screen is entered before the renderer is loaded, and left after it.
			alternateScreen: false,
			incrementalRendering: true,
			maxFps: MOST_FRAMES_A_SECOND,
			exitOnCtrlC: false,
			interactive: true,
		},
	);
	return {
		unmount: () => app.unmount(),
		redraw: async () => {
			await suspend?.(() => {});
		},
	};
}
