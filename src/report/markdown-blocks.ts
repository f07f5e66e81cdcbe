// The blocks of a Markdown page; what stands in them is escaped already.

/** A heading and what stands under it; nothing where nothing does. */
export function markdownSection(title: string, lines: readonly string[]): string[] {
	return lines.length === 0 ? [] : ['', `## ${title}`, '', ...lines];
}

/** A table with a row of names; nothing without rows. */
export function markdownTable(
	names: readonly string[],
	rows: readonly (readonly string[])[],
): string[] {
	if (rows.length === 0) return [];
	const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
	return [line(names), line(names.map(() => '---')), ...rows.map(line)];
}
