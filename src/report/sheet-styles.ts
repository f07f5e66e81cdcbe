// How printed sheets look.

// 14 points is the least; what is looked for first is larger: a capital of 24 points is 6 mm high, which fills 20
// minutes of arc at a metre.
export const SHEET_STYLES = `
body { font-size: 14pt; }
main > section + section { break-before: page; margin-top: 3rem; }
@media print { main > section + section { margin-top: 0; } }
h1 { font-size: 24pt; margin: 0; line-height: 1.1; }
h2 { font-size: 22pt; margin: .5em 0 .2em; line-height: 1.1; }
section > h2:first-child { margin-top: 0; }
h3 { font-size: 20pt; margin: 0; line-height: 1.1; }
p { margin: .15em 0; }
ul, ol { list-style: none; margin: 0; padding: 0; }
.quiet { font-size: 14pt; margin: .2em 0; }
.since { border: 2px solid var(--line); padding: .2em .5em; margin: .4em 0; }
.since h2 { font-size: 16pt; margin: 0; }
.row, .interval {
	border-top: 2.5px solid var(--line);
	padding: .3em 0 .35em;
	break-inside: avoid;
}
.head { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0 .6em; align-items: baseline; }
.said { display: flex; flex-wrap: wrap; gap: 0 .7em; align-items: baseline; min-width: 0; }
.head .clock { font-size: 22pt; font-weight: bold; }
.facts { display: flex; flex-wrap: wrap; gap: 0 .8em; margin: 0; }
.off { font-weight: bold; }
.badge { border: 2px solid var(--mark); color: var(--mark); font-size: 14pt; font-weight: bold; padding: 0 .25em; white-space: nowrap; }
.changes > li { display: grid; grid-template-columns: 1.4em fit-content(9em) minmax(0, 1fr); gap: 0 .4em; align-items: baseline; padding: .08em 0; }
.box { display: inline-block; width: .95em; height: .95em; border: 2px solid var(--ink); align-self: center; vertical-align: -.1em; }
.who { font-weight: bold; font-size: 18pt; min-width: 3.5em; }
.thing { display: flex; flex-wrap: wrap; gap: 0 .45em; align-items: baseline; }
.slot { font-size: 26pt; font-weight: bold; border: 2px solid var(--ink); padding: 0 .2em; line-height: 1; }
.tuning { font-size: 24pt; font-weight: bold; line-height: 1.1; }
.name { font-size: 18pt; }
.act { font-weight: bold; font-size: 18pt; border-bottom: 3px solid var(--ink); }
.under { grid-column: 3; }
.points { display: flex; flex-wrap: wrap; gap: 0 1.4em; border-left: 4px solid var(--line); padding-left: .5em; margin: .2em 0; }
.points li { min-width: 0; }
.at { font-weight: bold; margin-right: .35em; }
.work { margin: .2em 0; }
.work li { padding-left: 1.8em; text-indent: -1.8em; }
.work li.mark { padding-left: 2.2em; }
.work .place { font-weight: bold; }
.mark { font-weight: bold; color: var(--mark); border-left: 6px solid var(--mark); padding-left: .4em; }
.interval h3 { font-size: 24pt; }
.row h3, .interval h3 { break-after: auto; }
.rack .slot { border: 0; padding: 0; }
th { white-space: nowrap; overflow-wrap: normal; }
.rack { table-layout: fixed; line-height: 1.15; }
.rack td { padding: .12em .5em .12em 0; }
.rack col:nth-child(1) { width: 8%; }
.rack col:nth-child(2) { width: 38%; }
.rack col:nth-child(3) { width: 18%; }
.rack col:nth-child(4) { width: 15%; }
.rack col:nth-child(5) { width: 10%; }
.cautions { line-height: 1.15; }
.labels { padding-right: 2px; display: grid; grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr)); gap: 0; }
.labels li { border: 1.5px dashed var(--line); padding: .5em .6em; break-inside: avoid; }
.labels .slot { font-size: 60pt; border: 0; padding: 0; float: right; margin-left: .2em; }
.labels .name, .labels .pitch { font-size: 22pt; font-weight: bold; line-height: 1.1; }
.floor li { border-top: 1.5px solid var(--line); padding: .13em 0; font-size: 20pt; line-height: 1.15; break-inside: avoid; display: flex; flex-wrap: wrap; gap: 0 .6em; align-items: baseline; }
.large li { font-size: 28pt; padding: .2em 0; }
.floor .number { min-width: 1.6em; }
.floor .has { font-weight: bold; margin-left: auto; }
.floor .starts { font-size: 16pt; font-weight: bold; }
.radio + p { margin-top: .6em; }
.pressing, .boards, .further { table-layout: fixed; }
:is(.pressing, .boards, .further) col:nth-child(1) { width: 18%; }
:is(.pressing, .boards, .further) col:nth-child(2) { width: 36%; }
:is(.pressing, .boards, .further) col:nth-child(4) { width: 20%; }
.boards td:nth-child(-n+2) { font-weight: bold; }
:is(.pressing, .boards, .further) tr:last-child td { border-bottom: 0; }
.further thead { position: absolute; clip-path: inset(50%); width: 1px; height: 1px; overflow: hidden; }
:is(.pressing, .further) td { font-size: 18pt; }
:is(.pressing, .further) td:nth-child(2) { font-weight: bold; font-size: 20pt; }
:is(.pressing, .further) td:nth-child(n+3) { font-size: 14pt; }
@media screen and (max-width: 40rem) {
	table { font-size: 10pt; }
	th { white-space: normal; overflow-wrap: anywhere; }
	:is(.pressing, .further) td:nth-child(n) { font-size: 12pt; }
}
`;
