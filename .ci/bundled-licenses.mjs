// The licences of everything that the bundle holds, which their authors ask to be handed on with it.

import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** For packages that leave their own licence file out. */
const KEPT_HERE = join(import.meta.dirname, 'licenses');

/**
 * One text: each of the packages with its version and its licence files. Throws for a package whose
 * licence is found nowhere.
 */
export async function bundledLicenses(packages) {
	const texts = [];
	for (const { name, version, folder } of packages) {
		const names = (await readdir(folder)).filter((file) => /^(licen[cs]e|notice)\b/i.test(file));
		const files = names.sort().map((file) => join(folder, file));
		if (files.length === 0) files.push(join(KEPT_HERE, `${name.replace('/', '-')}.txt`));
		const licenses = await Promise.all(files.map((file) => readFile(file, 'utf8')));
		const text = licenses.map((license) => license.trim()).join('\n\n');
		texts.push(`${'='.repeat(72)}\n${name} ${version}\n\n${text}\n`);
	}
	return texts.join('\n');
}
