// The drawn rows on the terminal: one text for each row, drawn again only when it differs.

import { Box, Transform, useWindowSize } from 'ink';
import { memo, useEffect, useReducer } from 'react';
import type { ScreenState } from '../screen/screen-state.ts';
import type { ScreenOptions } from './styled-row.ts';
import { styledScreen } from './styled-screen.ts';

export type ScreenViewProps = {
	readonly getScreen: () => ScreenState;
	/** Tells when to draw again; gives back how to stop that. */
	readonly onDraw: (draw: () => void) => () => void;
	readonly options: ScreenOptions;
};

/** The screen for the size that the terminal has now. */
export function ScreenView({ getScreen, onDraw, options }: ScreenViewProps) {
	const { columns, rows } = useWindowSize();
	const [, draw] = useReducer((count: number) => count + 1, 0);
	useEffect(() => onDraw(draw), [onDraw]);
	return (
		<Box flexDirection="column" width={columns} height={rows}>
			{styledScreen(getScreen(), { columns, rows }, options).map((row, index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place.
				<StyledRow key={index} row={row} />
			))}
		</Box>
	);
}

// Its place is known and its width is the screen's, so it is laid out as one blank: measured as what it
// is, each row that differs would be laid out anew.
const StyledRow = memo(({ row }: { readonly row: string }) => (
	<Transform transform={() => row}> </Transform>
));
