// A show read without the YAML library is the show that the library gives; with anything amiss there is
// none, so that the library says what.

import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readPlainShow } from '../../src/showfile/read-plain-show.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import { loaderOf, smallShow } from './show-files.ts';

const fromDisk = (name: string) => {
	try {
		return readFileSync(new URL(`../../shows/${name}`, import.meta.url));
	} catch {
		return null;
	}
};

it.each(['club.yaml', 'festival.yaml', 'first.yaml', 'folk.yaml'])(
	'%s is the same show',
	(name) => {
		const plain = readPlainShow(fromDisk, name);
		expect(plain).not.toBeNull();
		expect(readShow(fromDisk, name)).toStrictEqual(plain);
	},
);

const gear = 'instruments: []\n';

it.each([
	['a fault in the YAML', { 'show.yaml': `${smallShow()}a: [b` }],
	['a value that does not fit', { 'show.yaml': smallShow({ set: '[harbour, nowhere]' }) }],
	['an included file that is missing', { 'show.yaml': smallShow({ more: 'include: gear.yaml' }) }],
	[
		'an included file that is written otherwise',
		{
			'show.yaml': smallShow({ more: 'include: gear.yaml' }),
			'gear.yaml': `%YAML 1.2\n---\n${gear}`,
		},
	],
	['no file at all', {}],
])('%s leaves the show to the library', (_, folder) => {
	expect(readPlainShow(loaderOf(folder), 'show.yaml')).toBeNull();
});

it('an included file that is written plainly is joined', () => {
	const load = loaderOf({
		'show.yaml': smallShow({ more: 'include: gear.yaml' }),
		'gear.yaml': gear,
	});
	const plain = readPlainShow(load, 'show.yaml');
	expect(plain).not.toBeNull();
	expect(readShow(load, 'show.yaml')).toStrictEqual(plain);
});
