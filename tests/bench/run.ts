// The benchmarks: `npm run bench`, or `npm run bench -- replay` for those whose name contains a word;
// `npm run bench -- against REF` compares this checkout with that commit.
// Each row prints its figure beside its target; a busy machine moves the figures, hardly the ratios.

import { benchAgainst } from './against.ts';
import { benchBreak } from './break.ts';
import { benchCommands } from './commands.ts';
import { benchFault } from './fault.ts';
import { benchGrown } from './grown.ts';
import { benchKeys } from './keys.ts';
import { benchMidi } from './midi.ts';
import { benchPlan } from './plan.ts';
import { benchPlanClock } from './plan-clock.ts';
import { benchReplay } from './replay.ts';
import { benchReport } from './report.ts';
import { benchStart } from './start.ts';
import { benchTuningPage } from './tuning-page.ts';

const [only = '', ref = 'HEAD'] = process.argv.slice(2);
const rounds = Number(process.env.BENCH_ROUNDS ?? 7);

if (only === 'against') benchAgainst(ref);
for (const { name, run } of [
	{ name: 'commands', run: benchCommands },
	{ name: 'tuning-page', run: benchTuningPage },
	{ name: 'start', run: benchStart },
	{ name: 'replay', run: benchReplay },
	{ name: 'report', run: benchReport },
	{ name: 'break', run: benchBreak },
	{ name: 'fault', run: benchFault },
	{ name: 'keys', run: benchKeys },
	{ name: 'midi', run: benchMidi },
	{ name: 'grown', run: benchGrown },
	{ name: 'plan', run: benchPlan },
	{ name: 'plan-clock', run: benchPlanClock },
]) {
	if (name.includes(only)) for (const row of await run(rounds)) console.log(row);
}
