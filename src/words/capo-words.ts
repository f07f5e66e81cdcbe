// How a capo is called: on screens in capitals, in sentences without.

/**
 * On a screen.
 *
 * @example
 * capoWords(3) // => 'CAPO 3'
 * capoWords(0) // => 'no capo'
 */
export function capoWords(capo: number): string {
	return capo > 0 ? `CAPO ${capo}` : 'no capo';
}

/**
 * In a sentence.
 *
 * @example
 * capoSaid(3) // => 'capo 3'
 * capoSaid(0) // => 'no capo'
 */
export function capoSaid(capo: number): string {
	return capo > 0 ? `capo ${capo}` : 'no capo';
}

/**
 * What is to be done with it.
 *
 * @example
 * capoAct(3) // => 'CAPO ON 3'
 * capoAct(0) // => 'CAPO OFF'
 */
export function capoAct(capo: number): string {
	return capo > 0 ? `CAPO ON ${capo}` : 'CAPO OFF';
}
