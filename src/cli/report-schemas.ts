// The published forms of a report's data and of several nights', loaded when one is asked for: they stand beside commands
// that need none of it.

import './loaded-together.ts';

export { nightsJsonSchema } from '../report/nights-shape.ts';
export { reportJsonSchema } from '../report/report-shape.ts';
export { nightsKeyTold } from '../words/nights-keys.ts';
export { reportKeyTold } from '../words/report-keys.ts';
