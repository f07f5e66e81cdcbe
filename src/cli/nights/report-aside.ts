// What one report in many asks for, loaded together and late: the page with its picture, several nights beside one
// another, the remarks.

import '../reports-together.ts';

export { reportHtml } from '../../report/report-html.ts';
export { editRemarks } from './edit-remarks.ts';
export { nightsBeside } from './nights-beside.ts';
