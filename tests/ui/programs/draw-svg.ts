// node tests/ui/programs/draw-svg.ts SHOW SCRIPT [COLOURS] > screen.svg
// Writes a picture of the last screen that a rehearsal script asks for, to be looked at.

import process from 'node:process';
import xterm from '@xterm/headless';
import { COLOUR_SETS } from '../../../src/base/colours.ts';
import { drawScreen } from '../../../src/screen/draw-screen.ts';
import { screenText } from '../../../src/screen/row.ts';
import { styledRow, stylingOf } from '../../../src/ui/styled-row.ts';
import { screenSvg } from '../screen-svg.ts';
import { scriptedScreen } from '../scripted-screen.ts';
import { seenCells } from '../seen-cells.ts';

const [show, script, wanted = 'dark'] = process.argv.slice(2);
const colours = COLOUR_SETS.find((name) => name === wanted);
if (show === undefined || script === undefined || colours === undefined) {
	process.stderr.write(`draw-svg SHOW SCRIPT [${COLOUR_SETS.join('|')}]\n`);
	process.exit(2);
}
const { state, size } = scriptedScreen(show, script);
const rows = drawScreen(state, size, { isAscii: false });
const terminal = new xterm.Terminal({
	cols: size.columns,
	rows: size.rows,
	allowProposedApi: true,
});
const styling = stylingOf(colours, 24);
terminal.write(rows.map((row) => styledRow(row, styling, size.columns)).join('\r\n'), () => {
	process.stdout.write(screenSvg(seenCells(terminal), screenText(rows)));
	terminal.dispose();
});
