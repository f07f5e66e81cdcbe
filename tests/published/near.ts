// A value from outside within its tolerance.

import { expect } from 'vitest';

export function expectNear(found: number, wanted: number, tolerance: number): void {
	expect(Math.abs(found - wanted), `${found} is not ${wanted} ± ${tolerance}`).toBeLessThanOrEqual(
		tolerance,
	);
}
