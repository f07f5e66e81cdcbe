// What the program is made of, as CycloneDX 1.6, so that anybody can ask whether a part has a known fault.

/**
 * The document as JSON text. `program` is our package.json, `packages` are those of `bundledPackages`. It
 * holds neither time nor serial number: the same bundle gives the same bytes.
 */
export function billOfMaterials(program, packages) {
	const bill = {
		$schema: 'http://cyclonedx.org/schema/bom-1.6.schema.json',
		bomFormat: 'CycloneDX',
		specVersion: '1.6',
		version: 1,
		metadata: { lifecycles: [{ phase: 'build' }], component: component('application', program) },
		components: packages.map(part),
	};
	return `${JSON.stringify(bill, null, '\t')}\n`;
}

function component(type, { name, version, license }) {
	const isOne = /^[\w.-]+$/.test(license);
	const licenses = isOne ? [{ license: { id: license } }] : [{ expression: license }];
	return { type, name, version, licenses };
}

/** A package URL escapes the `@` of a scope, and nothing else that npm lets a name hold. */
function part(bundled) {
	const purl = `pkg:npm/${bundled.name.replace('@', '%40')}@${bundled.version}`;
	const hashes = bundled.integrity.split(' ').map(hash);
	return { ...component('library', bundled), 'bom-ref': purl, purl, hashes };
}

/** From `sha512-` and base64 (Subresource Integrity) to the name and the hex digits that CycloneDX asks for. */
function hash(integrity) {
	const [, bits, base64] = /^sha(\d+)-(.+)$/.exec(integrity) ?? [];
	return { alg: `SHA-${bits}`, content: Buffer.from(base64, 'base64').toString('hex') };
}
