// Names of chance, so that no two programs take the same.

/** So many random bytes as hexadecimal digits. By the Web Crypto that Node has without an import: what makes no name does not wait for it. */
export function randomHex(bytes: number): string {
	return Buffer.from(crypto.getRandomValues(new Uint8Array(bytes))).toString('hex');
}
