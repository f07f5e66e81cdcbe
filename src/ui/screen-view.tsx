// The drawn rows on the terminal: one text for each row, drawn again only when it differs.

import { Box, Text, useApp, useWindowSize } from 'ink';
import { memo, useEffect, useReducer } from 'react';
import type { ColorDepth } from '../base/colors.ts';
import { drawScreen } from '../screen/draw-screen.ts';
import type { ScreenState } from '../screen/screen-state.ts';
import { styledRow, stylingOf } from './styled-row.ts';

/** Lends the terminal to the callback, then takes it back and draws everything anew. */
export type Suspend = (callback: () => void) => Promise<void>;

export type ScreenViewProps = {
	readonly getScreen: () => ScreenState;
	/** Tells when to draw again; gives back how to stop that. */
	readonly onDraw: (draw: () => void) => () => void;
	/** Given once drawn, and null once gone. */
	readonly onSuspend: (suspend: Suspend | null) => void;
	readonly isAscii: boolean;
	readonly colorDepth: ColorDepth;
};

/** The screen for the size that the terminal has now. */
export function ScreenView(props: ScreenViewProps) {
	const { getScreen, onDraw, onSuspend, isAscii, colorDepth } = props;
	const { suspendTerminal } = useApp();
	const { columns, rows } = useWindowSize();
	const [, draw] = useReducer((count: number) => count + 1, 0);
	useEffect(() => onDraw(draw), [onDraw]);
	useEffect(() => {
		onSuspend(suspendTerminal);
		return () => onSuspend(null);
	}, [onSuspend, suspendTerminal]);
	const state = getScreen();
	const drawn = drawScreen(state, { columns, rows }, { isAscii });
	const styling = stylingOf(state.preferences.looks, colorDepth);
	return (
		<Box flexDirection="column" width={columns} height={rows}>
			{drawn.map((row, index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place.
				<RowText key={index} text={styledRow(row, styling, columns)} />
			))}
		</Box>
	);
}

// A row without a letter still takes its line.
const RowText = memo(({ text }: { readonly text: string }) => (
	<Text wrap="truncate-end">{text === '' ? ' ' : text}</Text>
));
