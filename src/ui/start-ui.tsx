// The live screen as an Ink app that is told what to show and when. It reads no keys and has no timer,
// and the alternate screen is not its own: the first picture is there before it is loaded.

import { render } from 'ink';
import type { Area } from '../screen/row.ts';
import { FaultGuard } from './fault-guard.tsx';
import { ScreenView, type SuspendTerminal } from './screen-view.tsx';

export type UiParts = {
	/** What the terminal shows already, its cursor in the first cell. */
	readonly shown: readonly string[];
	/** The rows to show now on a terminal of this size, each as it is sent. */
	readonly rowsAt: (size: Area) => readonly string[];
	/** Told what was thrown while drawing. */
	readonly onFault: (error: unknown) => void;
	readonly stdout: NodeJS.WriteStream;
	/** A stream on which nothing arrives: keys are read elsewhere. */
	readonly stdin: NodeJS.ReadStream;
};

export type Ui = {
	/** Shows the rows of now. */
	readonly draw: () => void;
	/** Shows everything anew on an empty screen, from the first cell on. */
	readonly redraw: () => void;
	readonly unmount: () => void;
};

/** The screen, drawn from now on at every new size and whenever it is asked for. */
export function startUi({ shown, rowsAt, onFault, stdout, stdin }: UiParts): Ui {
	let suspendTerminal: SuspendTerminal = async () => {};
	let isSuspended = false;
	const onMount = (suspend: SuspendTerminal): void => {
		suspendTerminal = suspend;
	};
	const view = (rows: readonly string[]) => (
		<FaultGuard onFault={onFault}>
			<ScreenView rows={rows} onMount={onMount} />
		</FaultGuard>
	);
	const draw = (): void => {
		try {
			const { columns, rows } = stdout;
			app.rerender(view(rowsAt({ columns, rows })));
		} catch (error) {
			onFault(error);
		}
	};
	// Before Ink listens: at a new size it first draws what it has, which must have that size already.
	stdout.on('resize', draw);
	// What the terminal shows is drawn over itself; where it differed, nothing would take the rest away.
	const app = render(view(shown), {
		stdout,
		stdin,
		incrementalRendering: true,
		// At its usual 30 a key that follows another closely would wait up to 50 ms.
		maxFps: 120,
		exitOnCtrlC: false,
		// Also where CI is set.
		interactive: true,
	});
	app.waitUntilExit().catch(onFault);
	return {
		draw,
		redraw: () => {
			// One that is under way draws what is asked for here.
			if (isSuspended) return;
			isSuspended = true;
			suspendTerminal(() => {})
				.catch(onFault)
				.finally(() => {
					isSuspended = false;
				});
		},
		unmount: () => {
			stdout.off('resize', draw);
			app.unmount();
		},
	};
}
