// Which packages the bundle holds.

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * Each package once, in the order of their names: its folder, what its package.json says (name, version,
 * license as an SPDX expression), and the checksum of what npm fetched (`integrity`, as in the lock file).
 * `inputs` are the bundler's, paths from `root`.
 */
export async function bundledPackages(inputs, root) {
	const lock = JSON.parse(await readFile(join(root, 'package-lock.json'), 'utf8')).packages;
	const packages = new Map();
	for (const path of Object.keys(inputs)) {
		const [at] = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path) ?? [];
		if (at === undefined) continue;
		const folder = join(root, at);
		const { name, version, license } = JSON.parse(
			await readFile(join(folder, 'package.json'), 'utf8'),
		);
		// The folder of packages may be a link to that of another checkout.
		const { integrity } = lock[at.slice(at.indexOf('node_modules/'))];
		packages.set(`${name} ${version}`, { name, version, license, folder, integrity });
	}
	const sorted = [...packages].sort(([a], [b]) => a.localeCompare(b, 'en'));
	return sorted.map(([, bundled]) => bundled);
}
