// Which strings to buy: what the restringing takes and what breaks, against the stock of the show file.

import { enoughFor } from '../history/break-chance.ts';
import { breaksANight } from '../history/broken-strings.ts';
import type { StockItem, StringGauge } from '../showfile/show.ts';
import { gaugeText, parseGauge } from '../showfile/string-measure.ts';
import { BUY } from '../words/tomorrow.ts';
import type { TomorrowLine, TomorrowParts } from './tomorrow-line.ts';

/** So many nights the stock is to last: order at three to five nights' remaining stock (common practice, no source). */
const NIGHTS_AHEAD = 3;
/** How often that is to be enough. */
const SURE = 0.95;
/** From fewer nights no rate can be told (common practice, no source). */
const LEAST_NIGHTS = 3;

type Need = {
	readonly label: string;
	/** What the restringing takes. */
	readonly taken: number;
	/** To have at hand for what breaks. */
	readonly forBreaks: number;
	readonly why: readonly string[];
};

/** A line for each gauge that runs short, thin ones first, and one for all that nobody counts; `taken`: what the restringing takes. */
export function linesToBuy(
	parts: TomorrowParts,
	taken: readonly StringGauge[],
): readonly TomorrowLine[] {
	const { nights, show, next } = parts;
	const broken = nights.flatMap(({ breaks }) => breaks.flatMap(({ gauge }) => gauge ?? []));
	const gauges = new Map([...taken, ...broken].map((gauge) => [gaugeText(gauge), gauge]));
	const stock = next?.show.stock ?? show.stock;
	// What the next show file counts is counted after the night.
	const used = next === null ? usedTonight(parts) : [];
	const needs = [...gauges]
		.toSorted(([, one], [, other]) => one.millimetres - other.millimetres)
		.map(([, gauge]) => needOf(parts, gauge, taken));
	const uncounted = needs.filter(({ label }) => countOf(stock, label) === null);
	return [
		...needs.flatMap(({ label, taken: own, forBreaks, why }): TomorrowLine[] => {
			const count = countOf(stock, label);
			if (count === null) return [];
			const gone = used.filter((one) => one === label).length;
			const missing = own + forBreaks - Math.max(0, count - gone);
			if (missing <= 0) return [];
			return [line(label, BUY.text(missing, label), [BUY.stock(count, gone), ...why].join('; '))];
		}),
		...(uncounted.length === 0
			? []
			: [
					line(
						null,
						BUY.see(
							uncounted
								.map(({ label, taken: own, forBreaks }) => BUY.text(own + forBreaks, label))
								.join(', '),
						),
						BUY.uncounted,
					),
				]),
	];
}

function line(name: string | null, text: string, why: string): TomorrowLine {
	return { kind: 'buy', instrument: null, slot: null, name, text, why };
}

function needOf({ nights }: TomorrowParts, gauge: StringGauge, all: readonly StringGauge[]): Need {
	const label = gaugeText(gauge);
	const taken = all.filter((one) => gaugeText(one) === label).length;
	const rate = breaksANight(nights, gauge);
	const broken = Math.round(rate * nights.length);
	const isTold = nights.length >= LEAST_NIGHTS;
	const forBreaks = isTold && rate > 0 ? enoughFor(rate * NIGHTS_AHEAD, SURE) : broken;
	const breaks = isTold ? BUY.breaks(rate, NIGHTS_AHEAD, forBreaks) : BUY.asMany(broken);
	return {
		...{ label, taken, forBreaks },
		why: [...(taken === 0 ? [] : [BUY.restringing(taken)]), ...(broken === 0 ? [] : [breaks])],
	};
}

function countOf(stock: readonly StockItem[], label: string): number | null {
	const found = stock.find(({ gauge }) => {
		const own = parseGauge(gauge);
		return own !== null && gaugeText(own) === label;
	});
	return found?.count ?? null;
}

/** The gauges of all strings that were put on in the night. */
function usedTonight({ nights, show, gearOf }: TomorrowParts): readonly string[] {
	return show.instruments.flatMap((instrument) => {
		const night = nights.at(-1)?.instruments.find(({ gear }) => gear === gearOf(instrument));
		return (night?.restrings ?? []).flatMap(({ strings }) => {
			const gauges =
				strings.length === 0
					? instrument.strings
					: strings.flatMap((one) => (one === null ? [] : (instrument.strings[one - 1] ?? [])));
			return gauges.map(gaugeText);
		});
	});
}
