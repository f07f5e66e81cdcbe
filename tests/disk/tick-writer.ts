// Ticks so many lines off, one after the other, as a copy of the program does; fails where one is not taken.

import { realDisk } from '../../src/disk/real-disk.ts';
import { keepTick } from '../../src/disk/ticks-file.ts';

const [, , folder = '.', night = '', name = '', count = '1'] = process.argv;
for (let line = 0; line < Number(count); line += 1) {
	const fault = keepTick({ disk: realDisk, folder, night }, `${name} ${line}`, true);
	if (fault !== null) throw new Error(JSON.stringify(fault));
}
