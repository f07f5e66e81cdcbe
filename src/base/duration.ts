// Lengths of time as people write them in a show file, and as they are read from two metres.

const DAY_SECONDS = 86_400;
const PLAIN = /^\d+(?:\.\d+)?$/;
const CLOCK = /^(?:(\d{1,2}):(?=\d\d:))?(\d{1,4}):([0-5]\d)$/;
const UNITS =
	/^(?=\d)(?:(\d+(?:\.\d+)?)\s*h)?\s*(?:(\d+(?:\.\d+)?)\s*m(?:in)?)?\s*(?:(\d+(?:\.\d+)?)\s*s)?$/i;

/**
 * Seconds, from `3:30`, `1:02:03`, `15m`, `45s`, `4m30s`, `1h10m` or plain seconds, spaces around
 * and between allowed; null for anything else, for a sign, and for more than 24 hours.
 */
export function parseSeconds(text: string): number | null {
	const trimmed = text.trim();
	const seconds = PLAIN.test(trimmed)
		? Number(trimmed)
		: (clockSeconds(trimmed) ?? unitSeconds(trimmed));
	return seconds === null || seconds > DAY_SECONDS ? null : seconds;
}

function clockSeconds(text: string): number | null {
	const [, hours, minutes, seconds] = CLOCK.exec(text) ?? [];
	if (minutes === undefined || (hours !== undefined && Number(minutes) > 59)) return null;
	return Number(hours ?? 0) * 3600 + Number(minutes) * 60 + Number(seconds);
}

function unitSeconds(text: string): number | null {
	const found = UNITS.exec(text);
	if (!found) return null;
	const [, hours, minutes, seconds] = found;
	return Number(hours ?? 0) * 3600 + Number(minutes ?? 0) * 60 + Number(seconds ?? 0);
}

/**
 * `m:ss`, over an hour `h:mm:ss`, with `-` before what is past (`-0:30`); parts of a second are cut
 * off towards zero, so a countdown never shows more than is left. `-:--` when it is not finite.
 */
export function minutesSeconds(seconds: number): string {
	if (!Number.isFinite(seconds)) return '-:--';
	// Sums of tenths leave 44.999…; to the thousandth first, so that it is not cut to 44.
	const whole = Math.trunc(Math.round(Math.abs(seconds) * 1000) / 1000);
	const sign = seconds < 0 && whole > 0 ? '-' : '';
	const hours = Math.floor(whole / 3600);
	const minutes = Math.floor(whole / 60) % 60;
	const tail = String(whole % 60).padStart(2, '0');
	if (hours === 0) return `${sign}${minutes}:${tail}`;
	return `${sign}${hours}:${String(minutes).padStart(2, '0')}:${tail}`;
}
