// How long a line under a question may be. In a file of its own since many questions ask for it.

/** Columns of the narrowest screen that is complete, less the lines' indent. */
export const LINE_COLUMNS = 76;
