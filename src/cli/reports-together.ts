// What the parts of the program that tell of recorded nights load beside `loaded-together.ts`, for the same reason.

import '../history/broken-strings.ts';
import '../report/report-csv.ts';
import '../report/report-json.ts';
import '../report/report-markdown.ts';
import './nights/chosen-night.ts';
import './nights/report-of-night.ts';
import './loaded-together.ts';
