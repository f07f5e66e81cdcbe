// Where Node may keep the program's compiled code, so that it starts faster next time. Apart from the
// other folders because it is asked for before anything else is loaded.

/**
 * A folder of the user's own (XDG Base Directory Specification 0.8, `XDG_CACHE_HOME`), or nothing where
 * there is no home. Never Node's default, which is shared by all users of the machine.
 */
export function compileCacheFolder(
	environment: Readonly<Record<string, string | undefined>>,
): string | undefined {
	const { XDG_CACHE_HOME: caches, HOME: home } = environment;
	if (caches?.startsWith('/')) return `${caches}/rackside/code`;
	return home?.startsWith('/') ? `${home}/.cache/rackside/code` : undefined;
}
