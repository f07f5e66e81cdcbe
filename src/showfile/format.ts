// What a show file begins with. Apart from its shape, so that it can be said without the library for shapes.

/** The format that is read. */
export const FORMAT = 'rackside/1';
