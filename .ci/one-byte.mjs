// Code with one byte for each sign, which Node reads fastest: a single other sign, be it in a comment, has it take two
// for every sign of the file. The bundler leaves those in comments and patterns alone.

/** The same code with every other sign written as its number. */
export function oneByteEach(code) {
	return code.replace(
		/[\u0080-\uffff]/g,
		(sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
	);
}
