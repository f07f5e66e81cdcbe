// A whole day of keys and resizes in a real pty: whether memory stands still and the clocks cost little.
// SOAK_MINUTES says how long (480, eight hours, before a release), SOAK_KEYS how many keys a second, and
// SOAK_CLOCK how many times as fast the clock of the program goes (by libfaketime, where the machine has it):
// minutes and keys are counted by that clock, so at 16 the eight hours take half of one. What V8 has not collected yet
// goes up and down by a hundred megabytes: so the program is made to collect everything before each look.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
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

/** Has the program write, once a minute by its clock, the bytes of its heap and of all its memory that are left. */
const tellMemory = (file: string): string =>
	`data:text/javascript,${encodeURIComponent(`
		import { appendFileSync } from 'node:fs';
		import { setFlagsFromString } from 'node:v8';
		import { runInNewContext } from 'node:vm';
		setFlagsFromString('--expose-gc');
		const collect = runInNewContext('gc');
		setInterval(() => {
			collect();
			const { heapUsed, rss } = process.memoryUsage();
			appendFileSync(${JSON.stringify(file)}, heapUsed + ' ' + rss + '\\n');
		}, 60_000).unref();
	`)}`;

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
const told = join(own.path, 'memory');
const live = new BenchPty(
	['--import', tellMemory(told), 'dist/rackside.js', 'run', 'shows/club.yaml'],
	{
		...own.environment(),
		RACKSIDE_DATA: own.path,
		...(library !== null && clock !== 1 && { LD_PRELOAD: library, FAKETIME: `+0 x${clock}` }),
	},
);
await live.until('dark');
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
	const busy = (live.processorMs() / (Date.now() - beganMs)) * 100;
	if (minute % 10 !== 9 && minute !== minutes - 1) continue;
	const [heap = Number.NaN, all = Number.NaN] = samples().at(-1) ?? [];
	console.log(
		`${minute + 1} min, ${keys} keys: heap ${heap.toFixed(1)} MB, all ${all.toFixed(0)} MB, ${busy.toFixed(1)} % of a core`,
	);
}
const settled = samples().slice(Math.min(30, Math.floor(minutes / 2)));
await live.kill();
own.remove();
const growths = [0, 1].map((which) =>
	slope(settled.map((sample, minute) => [minute / 60, sample[which] as number])),
);
console.log(
	`growth an hour: heap ${growths[0]?.toFixed(2)} MB, all ${growths[1]?.toFixed(2)} MB (at most ${MOST_MB_AN_HOUR})`,
);
process.exitCode = growths.every((growth) => growth <= MOST_MB_AN_HOUR) ? 0 : 1;

/** Megabytes of the heap and of all memory, minute by minute. */
function samples(): readonly (readonly number[])[] {
	return readFileSync(told, 'utf8')
		.trim()
		.split('\n')
		.map((line) => line.split(' ').map((bytes) => Number(bytes) / MB));
}
