// Lengths and speeds as people type them into a list.

import { parseSeconds } from '../base/duration.ts';

/** Seconds; `unknown` where it says that nobody knows yet; null for what cannot be read or means two things. */
export type LengthSaid = { readonly seconds: number | null; readonly isTurned: boolean } | null;

const LONGEST_SONG = 3600;
const UNKNOWN = /^(?:\?+|tb[ac]|n\/?a|-+|–|—)$/i;
const PRIMES = /^(\d{1,3})\s*(?:'|′|m|min)\s*([0-5]?\d)?\s*(?:"|″|''|s|sec)?$/i;
const CLOCK = /^(\d{1,2}):([0-5]\d):([0-5]\d)$/;

/**
 * Seconds from `4:05`, `245`, `4'05`, `4m05`, `4 min`; `isMinutes` where the column says so. A spreadsheet
 * writes 4:05 as 04:05:00, four hours, which no song takes: it is turned. Two digits alone could be either.
 */
export function readLength(text: string, isMinutes = false): LengthSaid {
	const said = text
		.trim()
		.replace(/[’´`]/g, "'")
		.replace(/[”″]/g, '"')
		.replace(/^(?:~|ca\.?|approx\.?)\s*/i, '')
		.replace(/^\((.*)\)$/, '$1')
		.replace(/\s*am$/i, '')
		.replace(/\b(?:mins?|minutes?)\b/i, 'm')
		.replace(/\b(?:secs?|seconds?)\b/i, 's');
	const exactly = (seconds: number): LengthSaid =>
		seconds >= 1 && seconds <= 86_400 ? { seconds, isTurned: false } : null;
	if (UNKNOWN.test(said)) return { seconds: null, isTurned: false };
	if (isMinutes && /^\d{1,2}(?:[.,]5)?$/.test(said))
		return exactly(Number(said.replace(',', '.')) * 60);
	// Fewer than three digits are minutes to one and seconds to another.
	if (/^\d{1,2}$/.test(said) && Number(said) < 30) return null;
	if (/^\d+[.,]\d+$/.test(said)) return null;
	const clock = CLOCK.exec(said);
	if (clock) {
		const [, first, second, third] = clock.map(Number);
		const hours = first === 12 && /am$/i.test(text.trim()) ? 0 : (first ?? 0);
		const seconds = hours * 3600 + (second ?? 0) * 60 + (third ?? 0);
		if (seconds >= LONGEST_SONG && third === 0) {
			return { seconds: hours * 60 + (second ?? 0), isTurned: true };
		}
		return exactly(seconds);
	}
	const primes = PRIMES.exec(said);
	if (primes) return exactly(Number(primes[1]) * 60 + Number(primes[2] ?? 0));
	const seconds = parseSeconds(said);
	return seconds === null ? null : exactly(seconds);
}

/** Beats a minute from `104`, `104 bpm`, `♩=104`; null for what is none. */
export function readTempo(text: string): number | null {
	const [, digits] =
		/^(?:[♩♪q]?\s*=\s*|~|ca\.?\s*)?(\d{2,3}(?:[.,]\d{1,3})?)\s*(?:bpm)?$/i.exec(text.trim()) ?? [];
	const tempo = Number(digits?.replace(',', '.') ?? Number.NaN);
	return tempo >= 20 && tempo <= 400 ? tempo : null;
}

const ENDS: readonly (readonly [RegExp, 'stop' | 'ring' | 'segue' | 'talk'])[] = [
	[/^(?:stops?|cold|dead|hard stop|short|tight|cut)$/i, 'stop'],
	[/^(?:rings?|ring[- ]out|let ring|rings out|big ending)$/i, 'ring'],
	[/^(?:segue|>+|→|straight (?:in|on|into.*)|into .*|attacca)$/i, 'segue'],
	[/^(?:talks?|chat|speech|hello|banter)$/i, 'talk'],
];

/** How a song ends by the trade's words; null for others. */
export function readEnds(text: string): 'stop' | 'ring' | 'segue' | 'talk' | null {
	return ENDS.find(([words]) => words.test(text.trim()))?.[1] ?? null;
}
