// What is typed after `--record`: names and lengths, such as `action 1.9 1.6, relief 0.2 mm`.

import { cleanText } from '../../base/clean-text.ts';
import { nearestName } from '../../base/nearest-name.ts';
import { MEASURE_NAMES } from '../../bench/measure-names.ts';
import { parseLength } from '../../tuning/length-unit.ts';
import { BAD_MEASURE, didYouMean, measuresExpected } from '../../words/requests.ts';
import type { Asked } from '../asked-number.ts';

/** No measure has more sides than bass and treble, but a nut has a slot a string. */
const MOST_LENGTHS = 12;

/** The measures of a text, in millimetres, or what in it cannot be used. */
export function readMeasures(text: string): Asked<Readonly<Record<string, readonly number[]>>> {
	const measures: Record<string, readonly number[]> = {};
	for (const part of text.split(/[,;]/).map((one) => one.trim())) {
		if (part === '') continue;
		const [, name = '', rest = ''] = /^([a-z-]+)[\s:]+(.*)$/i.exec(part) ?? [];
		const key = Object.hasOwn(MEASURE_NAMES, name) ? MEASURE_NAMES[name] : undefined;
		if (key === undefined) return refused(part, name);
		const lengths = lengthsOf(rest);
		if (lengths === null) return refused(part, name);
		measures[key] = lengths;
	}
	return Object.keys(measures).length === 0 ? refused(text, '') : { ok: true, value: measures };
}

/** Lengths one after the other; a unit may stand after each, or once after the last. */
function lengthsOf(text: string): readonly number[] | null {
	const words = text.trim().match(/\d+(?:\.\d+)?(?:\s*(?:mm|thou|\/\s*64(?:\s*in)?|64ths|in))?/gi);
	if (
		!words ||
		words.length > MOST_LENGTHS ||
		words.join('').length !== text.replace(/\s/g, '').length + spaces(words)
	)
		return null;
	const lastUnit = /[a-z/].*$/i.exec(words.at(-1) ?? '')?.[0] ?? '';
	const lengths = words.map((word) => parseLength(/[a-z/]/i.test(word) ? word : word + lastUnit));
	return lengths.every((one) => one !== null) ? lengths : null;
}

function spaces(words: readonly string[]): number {
	return words.join('').length - words.join('').replace(/\s/g, '').length;
}

function refused(found: string, name: string): Asked<never> {
	const near = nearestName(name, Object.keys(MEASURE_NAMES));
	const isKnown = Object.hasOwn(MEASURE_NAMES, name);
	return {
		ok: false,
		problems: [
			{
				code: 'bad-measure',
				what: BAD_MEASURE,
				found: cleanText(found),
				expected: measuresExpected(Object.keys(MEASURE_NAMES).join(', ')),
				...(near === null || isKnown ? {} : { hint: didYouMean(near) }),
			},
		],
	};
}
