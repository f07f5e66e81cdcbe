// A report's data fits its published JSON Schema, by ajv (JSON Schema draft 2020-12), for rehearsed nights and for nights
// of chance; and each key of it has its sentence.

import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { nightsJsonSchema } from '../../src/report/nights-shape.ts';
import { reportJson } from '../../src/report/report-json.ts';
import { reportJsonSchema } from '../../src/report/report-shape.ts';
import { nightsKeyTold } from '../../src/words/nights-keys.ts';
import { reportKeyTold } from '../../src/words/report-keys.ts';
import { chanceNights, NIGHTS } from './chance-nights.ts';
import { scriptReport } from './script-night.ts';

const SCRIPTS = new URL('../rehearsals/', import.meta.url);
const names = readdirSync(SCRIPTS).filter((name) => name.endsWith('.txt'));
const schema = reportJsonSchema(reportKeyTold);
const fits = new Ajv2020({ allErrors: true }).compile(schema);

describe('the data of a report fits its schema', () => {
	test.each(names)('%s', (name) => {
		const report = scriptReport(name, readFileSync(new URL(name, SCRIPTS), 'utf8'));
		expect([fits(JSON.parse(reportJson(report))), fits.errors]).toEqual([true, null]);
	});

	test.each(NIGHTS)('a night of chance, %s', (seed) => {
		const { report } = chanceNights(seed);
		expect([fits(JSON.parse(reportJson(report))), fits.errors]).toEqual([true, null]);
	});
});

test('a form of another number, and a key that nobody knows, do not fit it', () => {
	const name = 'club-opening.txt';
	const report = scriptReport(name, readFileSync(new URL(name, SCRIPTS), 'utf8'));
	const data = JSON.parse(reportJson(report));
	expect(fits({ ...data, format: 1 })).toBe(false);
	expect(fits({ ...data, moon: 1 })).toBe(false);
});

test.each([
	['one night', schema],
	['several nights', nightsJsonSchema(nightsKeyTold)],
])('every key of the schema of %s has a sentence', (_, whole) => {
	const untold: string[] = [];
	const look = (one: unknown, path: string): void => {
		if (typeof one !== 'object' || one === null) return;
		for (const [key, value] of Object.entries(one)) {
			if (key !== 'properties') {
				look(value, path);
				continue;
			}
			for (const [name, property] of Object.entries(value as Record<string, object>)) {
				if (!('description' in property)) untold.push(`${path}/${name}`);
				look(property, `${path}/${name}`);
			}
		}
	};
	look(whole, '');
	expect(untold).toEqual([]);
});
