// Keys of a show file in the making, without those that would say nothing.

export type Keys = Readonly<Record<string, unknown>>;

/** What has a value; null is what a show has for nothing. */
export function given(keys: Keys): Keys {
	return Object.fromEntries(
		Object.entries(keys).filter(([, value]) => value !== null && value !== undefined),
	);
}

/** These keys; undefined for none. */
export function someKeys(keys: Keys): Keys | undefined {
	return Object.keys(keys).length === 0 ? undefined : keys;
}

/** The same keys with what each value comes to. */
export function mapValues<Value>(
	keys: Readonly<Record<string, Value>>,
	map: (value: Value) => unknown,
): Keys {
	return Object.fromEntries(Object.entries(keys).map(([key, value]) => [key, map(value)]));
}
