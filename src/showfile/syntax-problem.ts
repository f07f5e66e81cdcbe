// What a slip in the YAML itself is: names of our own in place of the library's.

import type { ErrorCode } from 'yaml';
import type { Place } from '../base/problem.ts';
import type { ShowFault, ShowFaultSaid, SyntaxSlip } from './show-fault.ts';

const slip = (what: SyntaxSlip): ShowFaultSaid => ({ code: 'syntax', slip: what });

const FAULTS: Readonly<Partial<Record<ErrorCode, ShowFaultSaid>>> = {
	ALIAS_PROPS: { code: 'alias', found: null },
	BAD_ALIAS: { code: 'alias', found: null },
	BAD_DIRECTIVE: { code: 'yaml-directive', version: null },
	BAD_DQ_ESCAPE: slip('escape'),
	BAD_INDENT: slip('indent'),
	BAD_SCALAR_START: slip('text-start'),
	BLOCK_AS_IMPLICIT_KEY: slip('nested'),
	BLOCK_IN_FLOW: slip('block-in-brackets'),
	KEY_OVER_1024_CHARS: slip('long-key'),
	MISSING_CHAR: slip('missing-sign'),
	MULTILINE_IMPLICIT_KEY: slip('key-over-lines'),
	MULTIPLE_ANCHORS: { code: 'anchor', found: null },
	MULTIPLE_DOCS: { code: 'many-documents' },
	MULTIPLE_TAGS: { code: 'tag', found: null },
	NON_STRING_KEY: { code: 'odd-key' },
	TAB_AS_INDENT: slip('tab'),
	TAG_RESOLVE_FAILED: { code: 'tag', found: null },
	UNEXPECTED_TOKEN: slip('unexpected'),
};

/** The fault that the YAML library finds, at its place; what is not in the table keeps the library's words. */
export function syntaxProblem(code: ErrorCode, message: string, where: Place): ShowFault {
	return { ...(FAULTS[code] ?? slip({ other: message })), where };
}
