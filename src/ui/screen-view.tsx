// The drawn rows on the terminal: one text for each row, drawn again only when it differs.

import { Box, Transform, useWindowSize } from 'ink';
import { memo, useEffect, useReducer } from 'react';
import type { Area } from '../screen/row.ts';

export type ScreenViewProps = {
	readonly rowsAt: (size: Area) => readonly string[];
	/** Tells when to draw again; gives back how to stop that. */
	readonly onDraw: (draw: () => void) => () => void;
};

/** The screen for the size that the terminal has now. */
export function ScreenView({ rowsAt, onDraw }: ScreenViewProps) {
	const { columns, rows } = useWindowSize();
	const [, draw] = useReducer((count: number) => count + 1, 0);
	useEffect(() => onDraw(draw), [onDraw]);
	return (
		<Box flexDirection="column" width={columns} height={rows}>
			{rowsAt({ columns, rows }).map((row, index) => (
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
