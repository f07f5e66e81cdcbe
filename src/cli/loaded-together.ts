// What nearly every command loads, named by each part of the program that is loaded by itself. The bundler makes a file
// of all that the same parts ask for: without this list some fifty small ones, and finding a file takes longer than
// what is in it. Nothing here may be large that one of them does not need.

import '../base/clean-text.ts';
import '../base/show-clock.ts';
import '../base/text-table.ts';
import '../words/requests.ts';
import '../words/program.ts';
import '../words/paper.ts';
import '../words/given-words.ts';
import '../words/own-times.ts';
import '../words/problem-text.ts';
import '../words/entry-words.ts';
import '../words/told-words.ts';
import '../words/later-costs.ts';
import '../words/night-file.ts';
import '../words/disk.ts';
import '../words/commands.ts';
import '../words/report.ts';
import '../disk/real-disk.ts';
import '../disk/own-file.ts';
import '../disk/folders.ts';
import '../disk/write-whole.ts';
import '../disk/export-file.ts';
import '../disk/small-file.ts';
import '../journal/remarks.ts';
import '../gear/gear-id.ts';
import '../showfile/form-pieces.ts';
import '../showfile/string-measure.ts';
import '../showfile/show-record.ts';
import '../showfile/work-times.ts';
import '../showfile/own-times.ts';
import '../session/apply.ts';
import '../session/show-differences.ts';
import '../night/planned-zero.ts';
import '../report/paper.ts';
import '../report/night-steps.ts';
import '../terminal/terminal-kind.ts';
import './write-named.ts';
import './places.ts';
import './tell-problems.ts';
import './not-among.ts';
