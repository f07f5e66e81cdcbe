// How a port is asked for, on the command line and in the preferences.

/** Asks for no port, in place of the one of the preferences. */
export const NO_PORT = 'none';

/** The port, or null for none. */
export function portAsked(text: string): string | null {
	return text === '' || text === NO_PORT ? null : text;
}
