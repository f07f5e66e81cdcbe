// Hashes by Node's crypto, which is loaded with the first: it takes a fifth as long as Node itself to start, and most
// reports have none.

import type * as Crypto from 'node:crypto';
import { createRequire } from 'node:module';

/** The SHA-256 of a text in UTF-8 (FIPS 180-4). */
export function sha256(text: string, form: 'hex' | 'base64'): string {
	const { createHash }: typeof Crypto = createRequire(import.meta.url)('node:crypto');
	return createHash('sha256').update(text).digest(form);
}
