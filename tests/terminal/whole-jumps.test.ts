// The short form of the campaign's row on clocks: the wall clock jumps forth, through a kill, and back.

import { expect, test } from 'vitest';
import { nightWithJumps, whyNoJumps } from '../campaigns/jumping-clock.ts';
import { OwnFolder } from '../campaigns/own-folder.ts';

const why = whyNoJumps();

test.skipIf(why !== null)(
	`order, show clock and report go by the time that passed ${why ?? ''}`,
	async () => {
		const own = new OwnFolder('jumps');
		expect(await nightWithJumps(own, 'night', [7200, -7200])).toEqual([]);
		own.remove();
	},
);
