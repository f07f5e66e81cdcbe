// Hours of the day as people type them.

import { parseDayTime } from '../base/show-clock.ts';

/** `20:30` from `20:30`, `20.30`, `20h30`, `2030`, `20` or `8:30 pm`; null for anything else. */
export function readTime(text: string): string | null {
	const [, hour, minute = '00', half] =
		/^(\d{1,2})(?:[:.h]?(\d\d)|h)?\s*([ap]m?)?$/i.exec(text.trim()) ?? [];
	if (hour === undefined) return null;
	const isHalf = half !== undefined;
	if (isHalf && (Number(hour) < 1 || Number(hour) > 12)) return null;
	const hours = isHalf ? (Number(hour) % 12) + (/^p/i.test(half) ? 12 : 0) : Number(hour);
	const time = `${String(hours).padStart(2, '0')}:${minute}`;
	return parseDayTime(time) === null ? null : time;
}
