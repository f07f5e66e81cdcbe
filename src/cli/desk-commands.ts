// The commands that answer once, from a show file, to somebody who waits at a desk or for a build.

/** What the build makes a script of its own of, in which all is put together beforehand. */
export const DESK_COMMANDS: readonly string[] = ['check', 'plan', 'tuning', 'strings', 'setup'];
