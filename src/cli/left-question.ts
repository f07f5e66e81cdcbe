// A question that was left with Ctrl-C. Apart from the asking, which a start that asks nothing need not load.

/** Thrown where a question is left: nothing is wanted any more. */
export class LeftQuestion extends Error {}
