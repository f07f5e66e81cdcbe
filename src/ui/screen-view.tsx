// The drawn rows on the terminal: one text for each row, drawn again only when it differs.

import { Box, Text, useApp, useWindowSize } from 'ink';
import { memo, useEffect, useReducer } from 'react';
import { drawScreen } from '../screen/draw-screen.ts';
import { type Row, rowText, type Span, type SpanStyle } from '../screen/row.ts';
import type { ScreenState } from '../screen/screen-state.ts';

/** Lends the terminal to the callback, then takes it back and draws everything anew. */
export type Suspend = (callback: () => void) => Promise<void>;

export type ScreenViewProps = {
	readonly getScreen: () => ScreenState;
	/** Tells when to draw again; gives back how to stop that. */
	readonly onDraw: (draw: () => void) => () => void;
	/** Given once drawn, and null once gone. */
	readonly onSuspend: (suspend: Suspend | null) => void;
	readonly isAscii: boolean;
	readonly hasColor: boolean;
};

type TextLook = { readonly dimColor?: boolean; readonly bold?: boolean; readonly color?: string };

// Few bright cells: only the accent has a colour, and every state has its words besides.
const LOOKS: Readonly<Record<SpanStyle, TextLook>> = {
	plain: {},
	dim: { dimColor: true },
	title: { dimColor: true },
	bright: { bold: true },
	accent: { bold: true, color: 'yellow' },
};

/** The screen for the size that the terminal has now. */
export function ScreenView(props: ScreenViewProps) {
	const { getScreen, onDraw, onSuspend, isAscii, hasColor } = props;
	const { suspendTerminal } = useApp();
	const { columns, rows } = useWindowSize();
	const [, draw] = useReducer((count: number) => count + 1, 0);
	useEffect(() => onDraw(draw), [onDraw]);
	useEffect(() => {
		onSuspend(suspendTerminal);
		return () => onSuspend(null);
	}, [onSuspend, suspendTerminal]);
	const drawn = drawScreen(getScreen(), { columns, rows }, { isAscii });
	return (
		<Box flexDirection="column" width={columns} height={rows}>
			{drawn.map((row, index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place.
				<RowText key={index} row={row} hasColor={hasColor} />
			))}
		</Box>
	);
}

type RowProps = { readonly row: Row; readonly hasColor: boolean };

const RowText = memo(
	({ row, hasColor }: RowProps) => (
		<Text wrap="truncate-end">
			{rowText(row) === '' ? ' ' : row.map((one, index) => spanText(one, index, hasColor))}
		</Text>
	),
	(before, after) => before.hasColor === after.hasColor && isSameRow(before.row, after.row),
);

function spanText({ text, style }: Span, index: number, hasColor: boolean) {
	if (!hasColor || style === 'plain') return text;
	return (
		<Text key={index} {...LOOKS[style]}>
			{text}
		</Text>
	);
}

function isSameRow(before: Row, after: Row): boolean {
	return (
		before.length === after.length &&
		before.every(({ text, style }, index) => {
			const other = after[index];
			return other !== undefined && other.text === text && other.style === style;
		})
	);
}
