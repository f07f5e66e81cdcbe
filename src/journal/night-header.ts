// The header that a night is begun with, or is given again when its own was lost.

import { longLimitBytes } from './limits.ts';
import { type NightHeader, type NightSubject, nightFormat } from './record.ts';

/** The header of the night with this id; a show that is too long to be copied is still known by its file and hash. */
export function nightHeader(id: string, subject: NightSubject): NightHeader {
	const { boot, title, showPath, showHash, show, isRehearsal } = subject;
	const whole: NightHeader = {
		k: 'header',
		format: nightFormat,
		journal: id,
		boot,
		title,
		showPath,
		showHash,
		show,
		isRehearsal,
		from: 1,
	};
	const isTooLong = Buffer.byteLength(JSON.stringify(whole)) > longLimitBytes - 1024;
	return isTooLong ? { ...whole, show: null } : whole;
}

/** The header of a night that no file keeps, nor its show. */
export function unkeptHeader(id: string, title: string): NightHeader {
	const nowhere = { boot: '', showPath: '', showHash: '', show: null };
	return nightHeader(id, { ...nowhere, title, isRehearsal: true });
}
