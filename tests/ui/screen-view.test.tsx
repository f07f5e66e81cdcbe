// The component that places the drawn rows: it draws what it is told, when it is told.

import { render } from 'ink-testing-library';
import { expect, test } from 'vitest';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { ScreenView } from '../../src/ui/screen-view.tsx';
import { styledScreen } from '../../src/ui/styled-screen.ts';
import { beforeTheShow, middleOfASong } from '../screen/states.ts';

test('the screen shows the newest state once it is told to draw, and not before', async () => {
	let state: ScreenState = beforeTheShow();
	let draw: (() => void) | null = null;
	const { lastFrame, unmount } = render(
		<ScreenView
			rowsAt={(size) => styledScreen(state, size, { isAscii: true, colorDepth: 1 })}
			onDraw={(given) => {
				draw = given;
				return () => {
					draw = null;
				};
			}}
		/>,
	);
	const first = lastFrame();
	state = { ...middleOfASong(), message: 'Amber is in E standard' };
	expect(lastFrame()).toBe(first);
	await expect.poll(() => draw !== null).toBe(true);
	(draw as (() => void) | null)?.();
	await expect.poll(() => lastFrame()).toContain('Amber is in E standard');
	unmount();
	expect(draw).toBeNull();
});
