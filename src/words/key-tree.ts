// What each key of some data holds, as a tree of sentences, for the JSON Schema of it.

/** A sentence for a key, and what stands under it. */
export type KeyTree = { readonly [key: string]: readonly [description: string, under?: KeyTree] };

/** What is told of the key at the end of a path of this tree. */
export function toldOf(
	tree: KeyTree,
): (path: readonly string[]) => { readonly description: string } | null {
	return (path) => {
		let under: KeyTree | undefined = tree;
		let description: string | null = null;
		for (const key of path) {
			const told: KeyTree[string] | undefined = under?.[key];
			description = told?.[0] ?? null;
			under = told?.[1];
		}
		return description === null ? null : { description };
	};
}
