// A value made when it is first asked for. Apart, since several folders put off what takes long.

/** Gives what `make` gave the first time. */
export function once<Value>(make: () => Value): () => Value {
	let made: { readonly value: Value } | null = null;
	return () => {
		made ??= { value: make() };
		return made.value;
	};
}

/** Gives for each thing what `make` gave of it the first time, as long as the thing is there. */
export function onceFor<Thing extends object, Value extends NonNullable<unknown>>(
	make: (thing: Thing) => Value,
): (thing: Thing) => Value {
	const made = new WeakMap<Thing, Value>();
	return (thing) => {
		const known = made.get(thing);
		if (known !== undefined) return known;
		const value = make(thing);
		made.set(thing, value);
		return value;
	};
}
