// The drawn rows placed on the terminal, one text for each.

import { Box, Text, useApp } from 'ink';
import { useLayoutEffect } from 'react';

/** Lets go of the terminal while the callback runs, and draws everything after. */
export type SuspendTerminal = (callback: () => void) => Promise<void>;

export type ScreenViewProps = {
	/** As many as the terminal is high, each as wide as it at the most. */
	readonly rows: readonly string[];
	/** Only what is mounted can suspend the terminal, so this hands out how. */
	readonly onMount: (suspendTerminal: SuspendTerminal) => void;
};

export function ScreenView({ rows, onMount }: ScreenViewProps) {
	const { suspendTerminal } = useApp();
	useLayoutEffect(() => onMount(suspendTerminal), [onMount, suspendTerminal]);
	return (
		<Box flexDirection="column">
			{rows.map((row, index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place.
				<Text key={index} wrap="truncate">
					{/* An empty text would have no height. */}
					{row || ' '}
				</Text>
			))}
		</Box>
	);
}
