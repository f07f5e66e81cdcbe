// Where Node may keep the program's compiled code, so that it starts faster next time. Apart from the
// other folders because it is asked for before anything else is loaded.

/**
 * The folders to be made one by one, outermost first; the last is the one. They are the user's own (XDG
 * Base Directory Specification 0.8, `XDG_CACHE_HOME`), never Node's default, which all users of the
 * machine share. Empty where there is no home.
 */
export function compileCacheFolders(
	environment: Readonly<Record<string, string | undefined>>,
): readonly string[] {
	const { XDG_CACHE_HOME: caches, HOME: home } = environment;
	if (caches?.startsWith('/')) return [`${caches}/rackside`, `${caches}/rackside/code`];
	if (!home?.startsWith('/')) return [];
	const inHome = `${home}/.cache`;
	return [inHome, `${inHome}/rackside`, `${inHome}/rackside/code`];
}
