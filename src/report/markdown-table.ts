// A table in Markdown (GitHub's extension of CommonMark).

/** Lines of a table of cells that are Markdown already; none without rows. */
export function markdownTable(
	names: readonly string[],
	rows: readonly (readonly string[])[],
): readonly string[] {
	if (rows.length === 0) return [];
	const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
	return [line(names), line(names.map(() => '---')), ...rows.map(line)];
}
