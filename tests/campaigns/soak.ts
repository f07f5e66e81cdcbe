// A whole day of keys and resizes in a real pty: whether memory stands still and the clocks cost little.
// SOAK_MINUTES says how long (480, eight hours, before a release), SOAK_KEYS how many keys a second, and
// SOAK_CLOCK how many times as fast the clock of the program goes (by libfaketime, where the machine has it):
// minutes and keys are counted by that clock, so at 4 the eight hours take two.

import { setTimeout as wait } from 'node:timers/promises';
import { BenchPty } from '../bench/bench-pty.ts';
import { fakeClock } from './fake-clock.ts';
import { OwnFolder, removeWhenStopped } from './own-folder.ts';

const minutes = Number(process.env.SOAK_MINUTES ?? 480);
const keysASecond = Number(process.env.SOAK_KEYS ?? 2);
const clock = Number(process.env.SOAK_CLOCK ?? 1);
const MB = 1_048_576;
/** Growth allowed after a first part in which the program fills its caches. */
const MOST_MB_AN_HOUR = 1;

/** What a technician presses, and what slips in between; nothing that ends the night. */
const PRESSES = [
	...[' ', ' ', ' ', '\x7f', 't\r', 't1', 't4', 'b1\r', 'b\r', '\r', 'i', 'e3\r', 'mtowels\r'],
	...['x2', 'x1', 'u', 'u', 'y', 'd', '\x1b[C', '\x1b[D', 'jgr\r', 'ca4\r', 'f2\r', 'r2', 's1'],
	...['a\r', 'ob1', 'wa2', 'zz', 'l', 'l\x1b', '\t', '\x1b[B', '\x1b[A', '\x1b', '?', '\x1b'],
];

/** The slope of a line through the points, least squares. */
function slope(points: readonly (readonly [x: number, y: number])[]): number {
	const mean = (of: 0 | 1) => points.reduce((sum, point) => sum + point[of], 0) / points.length;
	const [x, y] = [mean(0), mean(1)];
	const above = points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0);
	return above / points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0);
}

const own = new OwnFolder('soak');
removeWhenStopped(own);
const library = fakeClock();
if (clock !== 1 && library === null) throw new Error('a faster clock needs libfaketime');
const live = new BenchPty(['dist/rackside.js', 'run', 'shows/club.yaml'], {
	...own.environment(),
	RACKSIDE_DATA: own.path,
	...(library !== null && clock !== 1 && { LD_PRELOAD: library, FAKETIME: `+0 x${clock}` }),
});
await live.until('dark');
const samples: (readonly [hours: number, megabytes: number])[] = [];
let keys = 0;
const beganMs = Date.now();
const passedMs = () => (Date.now() - beganMs) * clock;
for (let minute = 0; minute < minutes; minute++) {
	while (passedMs() < (minute + 1) * 60_000) {
		const press = PRESSES[Math.floor(Math.random() * PRESSES.length)] ?? ' ';
		for (const key of press.startsWith('\x1b[') ? [press] : press) {
			live.write(key);
			keys += 1;
			await wait(1000 / keysASecond / clock);
		}
	}
	live.resize(80 + (minute % 3) * 20, 24 + (minute % 4) * 4);
	samples.push([passedMs() / 3_600_000, live.residentBytes() / MB]);
	const busy = (live.processorMs() / (Date.now() - beganMs)) * 100;
	if (minute % 10 === 9 || minute === minutes - 1)
		console.log(
			`${minute + 1} min, ${keys} keys: ${samples.at(-1)?.[1].toFixed(0)} MB, ${busy.toFixed(1)} % of a core`,
		);
}
await live.kill();
own.remove();
const settled = samples.slice(Math.min(30, Math.floor(samples.length / 2)));
const growth = slope(settled);
console.log(`growth ${growth.toFixed(2)} MB an hour (at most ${MOST_MB_AN_HOUR})`);
process.exitCode = growth <= MOST_MB_AN_HOUR ? 0 : 1;
