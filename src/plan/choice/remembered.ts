// What is worked out once for whatever it is asked of.

/**
 * The same function, made once for each that it is asked of.
 *
 * @example
 * remembered((count) => count + 1)(1) // => 2
 */
export function remembered<Of, Made>(make: (of: Of) => Made): (of: Of) => Made {
	const made = new Map<Of, Made>();
	return (of) => {
		const found = made.get(of) ?? make(of);
		made.set(of, found);
		return found;
	};
}
