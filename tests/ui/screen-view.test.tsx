// The component that places the drawn rows: as many as it is given, whatever they hold.

import { render } from 'ink-testing-library';
import { expect, test } from 'vitest';
import { ScreenView } from '../../src/ui/screen-view.tsx';
import { styledScreen } from '../../src/ui/styled-screen.ts';
import { middleOfASong } from '../screen/states.ts';

const onMount = () => {};

test('the rows stand one below the other, and those without a word keep their place', () => {
	const options = { isAscii: true, colorDepth: 1 } as const;
	const rows = styledScreen(middleOfASong(), { columns: 80, rows: 24 }, options);
	expect(rows.some((row) => row.trim() === '')).toBe(true);
	const { lastFrame, rerender, unmount } = render(<ScreenView rows={rows} onMount={onMount} />);
	const trimmed = (all: readonly string[]) => all.map((row) => row.trimEnd()).join('\n');
	expect(lastFrame()).toBe(trimmed(rows));
	const changed = ['', 'Amber is in E standard', ...rows.slice(2)];
	rerender(<ScreenView rows={changed} onMount={onMount} />);
	expect(lastFrame()).toBe(trimmed(changed));
	unmount();
});

test('a row that the terminal is too narrow for is cut, and moves none below it', () => {
	const rows = ['x'.repeat(150), 'below'];
	const { lastFrame, unmount } = render(<ScreenView rows={rows} onMount={onMount} />);
	expect(lastFrame()?.split('\n')[1]).toBe('below');
	unmount();
});
