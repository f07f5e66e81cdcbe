// The live screen as an Ink app that is told everything: what to show, when, and where. It reads no
// keys and has no timer.

import { render } from 'ink';
import type { Area } from '../screen/row.ts';
import { FaultGuard } from './fault-guard.tsx';
import type { FramePainter } from './frame-painter.ts';
import { ScreenView } from './screen-view.tsx';

export type UiParts = {
	/** The rows to show now on a terminal of this size, each as it is sent. */
	readonly rowsAt: (size: Area) => readonly string[];
	/** Calls the listener whenever to draw; gives back how to stop that. */
	readonly subscribe: (draw: () => void) => () => void;
	/** Told what was thrown while drawing; nothing is drawn after. */
	readonly onFault: (error: unknown) => void;
	/** The terminal, asked for its size and told nothing. */
	readonly stdout: NodeJS.WriteStream;
	/** Shows what is drawn. */
	readonly painter: Pick<FramePainter, 'paint'>;
	/** A stream on which nothing arrives: keys are read elsewhere. */
	readonly stdin: NodeJS.ReadStream;
};

/** The screen, drawn from now on until it is unmounted by what is given back. */
export function startUi({ stdout, stdin, painter, ...parts }: UiParts): () => void {
	const app = render(
		<FaultGuard onFault={parts.onFault}>
			<ScreenView rowsAt={parts.rowsAt} onDraw={parts.subscribe} />
		</FaultGuard>,
		{
			stdout: frameStream(stdout, painter),
			stdin,
			// Each frame is given out whole and at once; what of it is sent is the painter's.
			debug: true,
			exitOnCtrlC: false,
			interactive: true,
		},
	);
	return () => {
		try {
			app.unmount();
		} catch {
			// It draws once more on its way out; what is wrong there was handed out when it was drawn before.
		}
	};
}

/** The terminal as the renderer sees it. */
function frameStream(
	stdout: NodeJS.WriteStream,
	{ paint }: Pick<FramePainter, 'paint'>,
): NodeJS.WriteStream {
	const stream = {
		isTTY: true,
		writable: true,
		get columns() {
			return stdout.columns;
		},
		get rows() {
			return stdout.rows;
		},
		on: stdout.on.bind(stdout),
		off: stdout.off.bind(stdout),
		write: (frame: string, whenDone?: () => void) => {
			// Without a row it is only asked when all before has gone out.
			if (frame !== '') paint(frame);
			whenDone?.();
			return true;
		},
	};
	return stream as unknown as NodeJS.WriteStream;
}
