// Prints the milliseconds of the first page of an instrument in a fresh process, as enter on the rack opens
// it: show and plan are there by then, nothing of the page was ever run. Started by tuning-page.ts.

import { pageOnRack } from './page-on-rack.ts';
import { workMs } from './rounds.ts';

console.log(workMs(pageOnRack()));
