// What the build changes in libraries, so that a start and a frame cost less; each throws when the library
// is no longer what it was.

import { readFile } from 'node:fs/promises';

/**
 * When it is loaded, the width library makes a pattern of all emoji and a splitter of graphemes, each of
 * which costs tens of milliseconds at every start. Here they are made when the first text comes that
 * needs them: every emoji has one of these properties.
 */
export const lateWidths = {
	name: 'late-widths',
	setup({ onLoad }) {
		onLoad({ filter: /string-width[\\/]index\.js$/ }, async ({ path }) => {
			const source = await readFile(path, 'utf8');
			const eager = 'const rgiEmojiRegex = /^\\p{RGI_Emoji}$/v;';
			const eagerSplitter = 'const segmenter = new Intl.Segmenter();';
			if (!source.includes(eager) || !source.includes(eagerSplitter)) {
				throw new Error(`${path} has changed: look at lateWidths again`);
			}
			const late = `
				const mayBeEmoji = /[\\p{Extended_Pictographic}\\p{Regional_Indicator}\\p{Emoji_Modifier}\\u20E3]/u;
				let allEmoji;
				const rgiEmojiRegex = {
					test: (text) => mayBeEmoji.test(text) && (allEmoji ??= new RegExp('^\\\\p{RGI_Emoji}$', 'v')).test(text),
				};`;
			const lateSplitter = `
				let splitter;
				const segmenter = { segment: (text) => (splitter ??= new Intl.Segmenter()).segment(text) };`;
			return {
				contents: source.replace(eager, () => late).replace(eagerSplitter, () => lateSplitter),
				loader: 'js',
			};
		});
	},
};
