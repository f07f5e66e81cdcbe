// What is typed: incidents in a few letters, songs by the beginnings of their words.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ACTIONS, actionOf } from '../../src/keys/actions.ts';
import { matchingSongs, songsFromNext } from '../../src/keys/song-prompt.ts';
import { readIncidentText } from '../../src/keys/text-prompts.ts';
import { openSession } from '../../src/session/open-session.ts';
import { loadShow } from '../scenarios/load-show.ts';

describe('an incident in a few letters', () => {
	test.each([
		['3', { string: 3, kind: null, words: '' }],
		['3 s', { string: 3, kind: 'string-break', words: '' }],
		['3s', { string: 3, kind: 'string-break', words: '' }],
		['b at the wireless', { string: null, kind: 'battery', words: 'at the wireless' }],
		['2 near the saddle', { string: 2, kind: null, words: 'near the saddle' }],
		['2 battery', { string: 2, kind: 'battery', words: '' }],
		['Amp went quiet', { string: null, kind: 'amp', words: 'went quiet' }],
		['burr on the nut', { string: null, kind: null, words: 'burr on the nut' }],
		['', { string: null, kind: null, words: '' }],
	])('%j', (text, meaning) => {
		expect(readIncidentText(text)).toEqual(meaning);
	});
});

describe('songs', () => {
	const session = openSession(loadShow(join(import.meta.dirname, '../../shows/club.yaml')));
	const titles = (typed: string) => matchingSongs(session, typed).map(({ title }) => title);
	test('those that begin with what was typed come before those with a word or a part that does', () => {
		expect(titles('old')[0]).toBe('Old Mill');
		expect(titles('MILL')).toContain('Old Mill');
		expect(titles('no such song')).toEqual([]);
		expect(titles('')).toHaveLength(session.show.songs.length);
	});
	test('from the next one on before those that are over or off the list', () => {
		const [, , third] = session.list;
		const later = { ...session, next: third?.key ?? null };
		const offered = songsFromNext(later).map(({ id }) => id);
		const toCome = later.list.slice(2).flatMap((item) => (item.kind === 'song' ? [item.song] : []));
		expect(offered.slice(0, 3)).toEqual(toCome.slice(0, 3));
		expect(new Set(offered)).toEqual(new Set(session.show.songs.map(({ id }) => id)));
		expect(offered.indexOf('lantern')).toBeGreaterThan(offered.indexOf('gravel'));
	});
});

describe('the actions', () => {
	test('share no key, and each says in words what it does', () => {
		const keys = ACTIONS.flatMap((action) => action.keys);
		expect(new Set(keys).size).toBe(keys.length);
		for (const { words } of ACTIONS) expect(words).not.toBe('');
	});
	test('are the same in upper case, and go where the user puts them', () => {
		expect(actionOf('T')?.id).toBe('ready');
		expect(actionOf('n', { memo: 'n' })?.id).toBe('memo');
		expect(actionOf('m', { memo: 'n' })).toBeNull();
	});
	test('leave [ and O alone, which cut escape sequences would press', () => {
		expect(actionOf('[')).toBeNull();
		expect(ACTIONS.flatMap(({ keys }) => keys)).not.toContain('O');
	});
});
