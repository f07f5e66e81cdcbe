// Names that every object in JavaScript has. As a key or an id they would be found where nobody put them.

const INHERITED_NAMES = new Set(Object.getOwnPropertyNames(Object.prototype));

/** Whether every object has this name, `constructor` and `__proto__` among them. */
export function isInheritedName(name: string): boolean {
	return INHERITED_NAMES.has(name);
}
