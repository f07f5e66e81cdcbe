// The reader of shows that knows all of YAML, with what its callers have loaded already.

import './loaded-together.ts';

export { readShow, readYaml } from '../showfile/read-show.ts';
