// A value made when it is first asked for. Apart, since several folders put off what takes long.

/** Gives what `make` gave the first time. */
export function once<Value>(make: () => Value): () => Value {
	let made: { readonly value: Value } | null = null;
	return () => {
		made ??= { value: make() };
		return made.value;
	};
}
