// Prints the milliseconds of the first page of an instrument in a fresh process. Started by tuning-page.ts
// with the folder of the shows.

import { pageOnRack } from './page-on-rack.ts';
import { workMs } from './rounds.ts';

console.log(workMs(pageOnRack(new URL(process.argv[2] ?? ''))));
