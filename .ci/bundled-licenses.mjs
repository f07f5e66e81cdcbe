// The licences of everything that the bundle holds, which their authors ask to be handed on with it.

import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** For packages that leave their own licence file out. */
const KEPT_HERE = join(import.meta.dirname, 'licenses');

/**
 * One text: each bundled package with its version and its licence files, in the order of their names.
 * `inputs` are the bundler's, paths from `root`. Throws for a package whose licence is found nowhere.
 */
export async function bundledLicenses(inputs, root) {
	const folders = new Map();
	for (const path of Object.keys(inputs)) {
		const [folder, name] = /^.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path) ?? [];
		if (folder !== undefined) folders.set(folder, name);
	}
	const texts = new Map();
	for (const [folder, name] of folders) {
		const at = join(root, folder);
		const { version } = JSON.parse(await readFile(join(at, 'package.json'), 'utf8'));
		const names = (await readdir(at)).filter((file) => /^(licen[cs]e|notice)\b/i.test(file)).sort();
		const files = names.map((file) => join(at, file));
		if (files.length === 0) files.push(join(KEPT_HERE, `${name.replace('/', '-')}.txt`));
		const licenses = await Promise.all(files.map((file) => readFile(file, 'utf8')));
		texts.set(`${name} ${version}`, licenses.map((text) => text.trim()).join('\n\n'));
	}
	const sorted = [...texts].sort(([a], [b]) => a.localeCompare(b, 'en'));
	return sorted.map(([name, text]) => `${'='.repeat(72)}\n${name}\n\n${text}\n`).join('\n');
}
