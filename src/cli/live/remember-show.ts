// The show that was opened last, kept among the preferences for the first page to offer it again.

import { openSettings, type SettingsPlace, settingsNow } from '../../disk/settings.ts';
import type { Night } from '../../night/night.ts';

/**
 * Keeps the path once the disk has confirmed the night: preferences are confirmed on the thread that reads keys and
 * draws, and a disk that does not answer would hold both.
 */
export function rememberShow(
	night: Pick<Night, 'onChange' | 'saveStatus'>,
	{ path, place }: { readonly path: string; readonly place: SettingsPlace },
): void {
	if (settingsNow(place).values.lastShow === path) return;
	const stop = night.onChange(() => {
		if (!night.saveStatus().isSaved) return;
		stop();
		openSettings(place).then(
			(settings) => settings.change({ lastShow: path }),
			// No show ends for want of preferences.
			() => {},
		);
	});
}
