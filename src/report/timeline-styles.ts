// Styles of the picture of a night. The heights are those that `timeline-svg.ts` draws by.

import { type FilledMark, TIMELINE_COLOURS } from './timeline-colours.ts';

type Theme = keyof typeof TIMELINE_COLOURS;

const MARKS = Object.keys(TIMELINE_COLOURS.light) as FilledMark[];

/** The colours of a theme as variables of the page. */
function variables(theme: Theme): string {
	const all = MARKS.flatMap((what) => {
		const { fill, text } = TIMELINE_COLOURS[theme][what];
		return [`--${what}:${fill};`, `--on-${what}:${text};`];
	});
	return all.join('\n');
}

function fills(what: FilledMark): string {
	const fill = `{fill:var(--${what})}`;
	return [
		`.${what}>rect${fill}`,
		`.${what} path${fill}`,
		`.${what} text{fill:var(--on-${what})}`,
	].join('\n');
}

const SHAPES = `
.tl { margin: 1rem 0; padding-right: 4rem;
	print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.row { display: grid; grid-template-columns: 8.5rem minmax(0, 1fr); column-gap: .6rem; break-inside: avoid; }
.row:focus-within { position: relative; z-index: 2; }
.name { font-size: .85rem; line-height: 24px; text-align: right; overflow: hidden; white-space: nowrap; text-overflow: ellipsis; }
.tl svg.lane, .tl svg.axis { width: 100%; height: 24px; overflow: visible; display: block; }
.tl svg.axis { height: 32px; }
.tl svg.songs { height: 116px; }
.tl svg.load { height: 44px; }
.tl svg svg { overflow: visible; }
svg text { font-size: 12px; fill: currentColor; }
svg .pattern { stroke: currentColor; stroke-width: 1.2; fill: none; }
.patterns { position: absolute; width: 0; height: 0; }
.grid { stroke: var(--line); stroke-width: .5; stroke-dasharray: 1 3; }
.curfew { stroke: currentColor; stroke-width: 2; }
text.curfew { stroke: none; }
.m rect, .m path { stroke: currentColor; stroke-width: 1; }
.m.cut-short rect { fill: url(#slant); }
.m.cut-short text { fill: currentColor; paint-order: stroke; stroke: var(--paper); stroke-width: 4px; }
.m.recheck rect { stroke-dasharray: 3 2; }
.m.not-ready rect { fill: url(#dots); stroke: none; }
.m.out rect { fill: url(#cross); }
.m.many rect { fill: url(#bars); }
.m.waiting rect { fill: transparent; stroke: none; }
.m.waiting text { paint-order: stroke; stroke: var(--paper); stroke-width: 3px; }
.m.break text, .m.incident text, .m.cue text { font-weight: bold; }
.m text.said { fill: currentColor; font-weight: normal; paint-order: stroke; stroke: var(--paper); stroke-width: 4px; stroke-linejoin: round; }
.gap { fill: url(#slant); opacity: .5; stroke: none; }
.steps path { fill: var(--steps); stroke: currentColor; stroke-width: 1; vector-effect: non-scaling-stroke; }
.tl .steps { width: 100%; height: 44px; }
.n { display: none; }
.m foreignObject { display: none; }
.m:focus { outline: 3px solid currentColor; }
.m:focus foreignObject { display: block; }
.m p { margin: 4px 0 0; padding: .3rem .5rem; width: fit-content; border: 2px solid currentColor; background: var(--paper); color: var(--ink); font-size: .9rem; }
.key, .marks { list-style: none; padding: 0; margin: .6rem 0; }
.key { display: flex; flex-wrap: wrap; gap: .2rem 1.2rem; font-size: .85rem; }
.key li, .marks li { display: flex; align-items: flex-start; gap: .4rem; }
.marks li { margin: .2rem 0; }
.sample { width: 30px; height: 24px; flex: none; }
.skip { font-size: .85rem; color: var(--quiet); }
.skip a { color: inherit; }
@media (max-width: 40rem) {
	.tl { padding-right: 0; }
	.row { grid-template-columns: minmax(0, 1fr); }
	.name { text-align: left; line-height: 1.3; margin-top: .3rem; }
	.tl svg.songs { height: 24px; }
	.w { display: none; }
	.n { display: inline; }
}
@media print {
	.skip, details { display: none; }
	.m foreignObject { display: none; }
}
`;

const COLOURS = `:root { color-scheme: light dark;
${variables('light')} }
@media screen and (prefers-color-scheme: dark) { :root { color-scheme: light dark;
${variables('dark')} } }`;

/** For light and dark by the reader's own setting; paper is light. */
export const TIMELINE_STYLES = [COLOURS, ...MARKS.map(fills), SHAPES].join('\n');
