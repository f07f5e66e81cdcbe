// A text that a spreadsheet would take for a formula begins with one extra ', as in the report's tables.

const FORMULA = /^'*[=+\-@]/;

export function withGuard(text: string): string {
	return FORMULA.test(text) ? `'${text}` : text;
}

export function withoutGuard(text: string): string {
	return text.startsWith("'") && FORMULA.test(text) ? text.slice(1) : text;
}
