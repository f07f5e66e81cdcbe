// What `check` finds: each finding from a show that has just that wrong with it, and nothing in one that
// has nothing wrong.

import { describe, expect, it } from 'vitest';
import { checkShow } from '../../src/showfile/check-show.ts';
import { findingWords } from '../../src/words/findings.ts';
import { showFrom, smallShow } from './show-files.ts';

type Text = Parameters<typeof smallShow>[0];

/** `severity code: text` of every finding. */
function found(text: Text): string[] {
	const show = showFrom(smallShow(text));
	return checkShow(show).map((one) => `${one.severity} ${one.code}: ${findingWords(show, one)}`);
}

const song = (id: string, more: string) => `  - {id: ${id}, length: "4:00", ${more}}`;
const HARBOUR = song('harbour', 'title: Harbour, hands: {ash: A1, bo: C1}');

describe('a show with nothing wrong', () => {
	it('gives no finding', () => {
		const songs = [HARBOUR, song('lantern', 'hands: {ash: A2}')].join('\n');
		expect(found({ songs, set: '[harbour, lantern, harbour]' })).toEqual([]);
	});
});

describe('offsets', () => {
	const both = [
		song('harbour', 'title: Harbour, hands: {ash: A1}'),
		song('lantern', 'title: Lantern, hands: {ash: none, bo: A1}'),
	].join('\n');

	it('finds an instrument that two players want otherwise in one tuning', () => {
		const more = '\noffsets: [{player: ash, cents: {3: -3}}]';
		const [only, ...others] = found({ songs: both, set: '[harbour, lantern]', more }).filter(
			(one) => one.includes('offsets'),
		);
		expect(only).toMatch(
			/^note offsets-differ: .* is played in E standard by Ash \(string 3 -3 c\) and Bo \(no offsets\): touch it up between them/,
		);
		expect(others).toEqual([]);
	});

	it('finds nothing where both want it alike', () => {
		const more = '\noffsets: [{cents: {3: -3}}]';
		const all = found({ songs: both, set: '[harbour, lantern]', more });
		expect(all.filter((one) => one.includes('offsets'))).toEqual([]);
	});
});

describe('chord shapes that a song names', () => {
	it('finds one that has not a fret for each string', () => {
		const songs = song(
			'harbour',
			'title: Harbour, hands: {ash: A1, bo: C1}, shapes: {ash: [022100, 02210]}',
		);
		expect(found({ songs, set: '[harbour]' })).toEqual([
			'note shape-strings: The shape 02210 for Ash in Harbour has 5 frets, but 1 Amber has 6 strings: give one fret for each, x where none sounds.',
		]);
	});

	it('finds shapes for empty hands', () => {
		const songs = song('harbour', 'title: Harbour, hands: {bo: C1}, shapes: {ash: 022100}');
		expect(found({ songs, set: '[harbour]' })).toContain(
			'note shape-without-hands: Harbour names chord shapes for Ash, who has nothing in hands there.',
		);
	});

	it('takes what a player keeps from the song before', () => {
		const songs = [HARBOUR, song('gravel', 'shapes: {ash: 022100}')].join('\n');
		expect(found({ songs, set: '[harbour, gravel]' })).toEqual([]);
	});
});

describe('hands', () => {
	it('finds an instrument in two hands at once, because it is kept', () => {
		const songs = [HARBOUR, song('lantern', 'title: Lantern, hands: {bo: A1}')].join('\n');
		expect(found({ songs, set: '[harbour, lantern]' })).toEqual([
			'risk two-hands: In Lantern, Bo is to have 1 Amber, but Ash keeps it. Bo plays a backup.',
		]);
	});

	it('says so once, not for every song that follows', () => {
		const songs = [HARBOUR, song('lantern', 'hands: {bo: A1}'), song('gravel', 'notes: x')].join(
			'\n',
		);
		expect(found({ songs, set: '[harbour, lantern, gravel]' })).toHaveLength(1);
	});

	it('finds nothing where one player put it down before', () => {
		const songs = [HARBOUR, song('lantern', 'hands: {ash: none, bo: A1}')].join('\n');
		expect(found({ songs, set: '[harbour, lantern]' })).toEqual([]);
	});

	it('finds a hand-over at a cue to an instrument that is in other hands', () => {
		const songs = song(
			'harbour',
			'title: Harbour, hands: {ash: A1, bo: C1}, cues: [{at: bridge, hand: {ash: C1}}]',
		);
		expect(found({ songs })).toEqual([
			'risk two-hands: In Harbour at bridge, Ash is to have 3 Coal, but Bo keeps it. Ash has nothing: no backup fits.',
		]);
	});

	it('finds one instrument named for two players, and who is left with nothing', () => {
		const both = song('harbour', 'title: Harbour, hands: {ash: A1, bo: A1}');
		expect(found({ songs: both })).toEqual([
			'risk two-hands: In Harbour, Ash and Bo are both to have 1 Amber. One of them plays a backup.',
		]);
		const basses = song('harbour', 'title: Harbour, hands: {ash: C1, bo: C1}');
		expect(found({ songs: basses })).toEqual([
			'risk two-hands: In Harbour, Ash and Bo are both to have 3 Coal. One of them has nothing: no backup fits.',
		]);
	});

	it('says so again after an interval only where the file names it again', () => {
		const songs = [HARBOUR, song('lantern', 'title: Lantern, hands: {bo: A1}')].join('\n');
		const more = '  - {id: S1, slot: s, kind: electric-6, tuning: E standard, spare: true}';
		const set = (after: string) => `[harbour, lantern, interval: 5m, ${after}]`;
		const quiet = `${songs}\n${song('gravel', 'notes: x')}`;
		expect(found({ more, songs: quiet, set: set('gravel') })).toHaveLength(1);
		expect(found({ more, songs, set: set('lantern') })).toHaveLength(1);
		const other = `${songs}\n${song('gravel', 'title: Gravel, hands: {bo: A1}')}`;
		expect(found({ more, songs: other, set: set('gravel') })).toEqual([
			expect.stringContaining('In Lantern, Bo is to have 1 Amber, but Ash keeps it.'),
			expect.stringContaining('In Gravel, Bo is to have 1 Amber, but Ash keeps it.'),
		]);
	});

	it('says of what is missing only in the song that names it', () => {
		const songs = [
			song('harbour', 'title: Harbour, hands: {ash: {needs: {kind: banjo-5, sounds: standard}}}'),
			song('lantern', 'hands: {bo: none}'),
		].join('\n');
		const missing = found({ songs, set: '[harbour, lantern]' }).filter((one) =>
			one.includes('needs-unmet'),
		);
		expect(missing).toHaveLength(1);
	});

	it('finds a player who keeps with nothing in hands', () => {
		const songs = [
			song('harbour', 'hands: {ash: A1}'),
			song('lantern', 'title: Lantern, hands: {bo: C1}'),
		].join('\n');
		expect(found({ songs, set: '[harbour, lantern]' })).toEqual([
			'risk nothing-to-keep: No song gives Bo anything until Lantern.',
		]);
		expect(found({ songs: song('harbour', 'hands: {ash: A1}') })).toEqual([
			'note nothing-to-keep: No song gives Bo anything.',
		]);
		expect(found({ songs: song('harbour', 'hands: {ash: A1, bo: none}') })).toEqual([]);
	});

	it('finds two players on one pack', () => {
		const songs = song('harbour', 'title: Harbour, hands: {ash: A1, bo: A2}');
		expect(found({ songs })).toEqual([
			'risk shared-pack: In Harbour, Ash and Bo are both on pack P1.',
		]);
		const other = song('harbour', 'hands: {ash: A1, bo: {instrument: A2, pack: P2}}');
		expect(found({ songs: other })).toEqual([]);
	});

	it('finds an instrument that is kept for somebody else', () => {
		const more =
			'  - {id: B1, name: Birch, slot: b, kind: electric-6, tuning: E standard, for: [bo]}';
		const songs = song('harbour', 'title: Harbour, hands: {ash: B1, bo: none}');
		expect(found({ more, songs })).toEqual([
			'risk for-others: In Harbour, Ash plays B Birch, which is for Bo.',
		]);
	});
});

describe('hand-overs', () => {
	const two = [HARBOUR, song('lantern', 'title: Lantern, hands: {ash: A2}')];

	it('finds one into a segue', () => {
		const [first, second] = two;
		const songs = [first?.replace('hands:', 'ends: segue, hands:'), second].join('\n');
		expect(found({ songs, set: '[harbour, lantern]' })).toEqual([
			'risk segue-hand-over: Lantern follows with no gap, but Ash gets 2 Anchor.',
		]);
	});

	it('finds more than the gap has room for', () => {
		const songs = [HARBOUR, song('lantern', 'title: Lantern, hands: {ash: A2, bo: C2}')].join('\n');
		const more = '  - {id: C2, slot: c, kind: bass-4, tuning: E standard}';
		expect(found({ more, songs, set: '[harbour, lantern]' })).toEqual([
			'risk gap-too-short: Before Lantern, hand-overs take 0:30 and the gap is 0:15: Ash gets 2 Anchor, Bo gets C C2.',
		]);
		expect(found({ more, songs, set: '[harbour, {song: lantern, gap: 30s}]' })).toEqual([]);
		const quick = `${more}\ntimes: {all: {hand-over: 7s}}`;
		expect(found({ more: quick, songs, set: '[harbour, lantern]' })).toEqual([]);
	});

	it('has room for all at the first song, after an interval and at a cue', () => {
		const cue = song('gravel', 'hands: {ash: A2}, cues: [{at: bridge, hand: {ash: A1}}]');
		const songs = [HARBOUR, cue].join('\n');
		expect(found({ songs, set: '[harbour, interval: 15m, gravel]' })).toEqual([]);
	});

	it('counts the backup of what cannot be had, without saying which', () => {
		const songs = [HARBOUR, song('lantern', 'title: Lantern, hands: {bo: A1}')].join('\n');
		expect(found({ songs, set: '[harbour, {song: lantern, gap: 9s}]' })).toEqual([
			expect.stringContaining('risk two-hands'),
			'risk gap-too-short: Before Lantern, hand-overs take 0:15 and the gap is 0:09: Bo gets a backup for 1 Amber.',
		]);
	});

	it('counts neither taking away nor a capo that the player moves', () => {
		const songs = [
			HARBOUR,
			song('lantern', 'hands: {ash: {instrument: A1, capo: 3}, bo: none}'),
		].join('\n');
		expect(found({ songs, set: '[harbour, {song: lantern, gap: 10s}]' })).toEqual([]);
		// Under ten seconds nobody moves a capo: it takes a hand-over.
		expect(found({ songs, set: '[harbour, {song: lantern, gap: 9s}]' })).toEqual([
			expect.stringContaining('risk gap-too-short'),
		]);
	});

	it('counts an instrument that comes back in another tuning', () => {
		const songs = [HARBOUR, song('lantern', 'hands: {ash: {instrument: A1, tuning: drop D}}')].join(
			'\n',
		);
		expect(found({ songs, set: '[harbour, {song: lantern, gap: 14s}]' })).toEqual([
			expect.stringContaining('risk gap-too-short'),
		]);
	});
});

describe('tunings and capos', () => {
	const part = (text: string) => song('harbour', `title: Harbour, hands: {ash: ${text}, bo: none}`);
	const floating =
		'  - {id: F1, name: Cobble, slot: f, kind: electric-6, tuning: E standard, bridge: floating}';

	it('finds what a floating bridge will not take, in a part and at a cue', () => {
		const text =
			'F Cobble is wanted in drop D, but its floating bridge stays in E standard tonight. Ash plays a backup.';
		expect(found({ more: floating, songs: part('{instrument: F1, tuning: drop D}') })).toEqual([
			`risk floating-retune: In Harbour, ${text}`,
		]);
		const cue = 'cues: [{at: out, hand: {ash: {instrument: F1, tuning: drop D}}}]';
		const songs = song('harbour', `title: Harbour, hands: {ash: A1, bo: none}, ${cue}`);
		expect(found({ more: floating, songs })).toEqual([
			`risk floating-retune: In Harbour at out, ${text}`,
		]);
		expect(found({ more: floating, songs: part('{instrument: F1, tuning: STD}') })).toEqual([]);
	});

	it('says what its own list gives in place of a floating bridge', () => {
		const songs = part('{instrument: F1, tuning: F#2 B2 E3 A3 C#4 F#4}');
		const of = (instead: string) =>
			found({ more: floating.replace('}', `, instead: ${instead}}`), songs }).map((one) =>
				one.replace(/^.* tonight\. /, ''),
			);
		expect(of('[]')).toEqual(['Ash has nothing: no backup fits.']);
		expect(of('[{instrument: F1, capo: 2}]')).toEqual(['Ash plays it with capo 2.']);
		// No capo makes a bass sound like that.
		expect(of('[C1]')).toEqual(['Ash has nothing: no backup fits.']);
		expect(of('[C1, A1]')).toEqual(['Ash plays a backup.']);
	});

	it('finds an entry of instead that cannot be as it says', () => {
		const entry = (text: string) => ({
			more: `${floating}\n  - {id: X, slot: x, kind: electric-6, tuning: E standard, instead: [${text}]}`,
		});
		expect(found(entry('{instrument: F1, tuning: drop D}'))).toEqual([
			'risk floating-retune: F Cobble is listed as a backup for X X in drop D, but its floating bridge stays in E standard tonight.',
		]);
		// Capos for basses exist; what is named is believed.
		expect(found(entry('{instrument: C1, capo: 2}'))).toEqual([]);
		expect(found(entry('F1, {instrument: A1, capo: 2}'))).toEqual([]);
	});

	it('finds a tuning too far from the strings, and none that is near', () => {
		expect(found({ songs: part('{instrument: A1, tuning: D standard}') })).toEqual([]);
		expect(found({ songs: part('{instrument: A1, tuning: open C}') })).toEqual([
			'risk far-tuning: In Harbour, 1 Amber is wanted in open C, too far from E standard, which its strings are for.',
		]);
		// Three strings up by two semitones are more than a neck should bear.
		expect(found({ songs: part('{instrument: A1, tuning: open A}') })).toEqual([
			expect.stringContaining('risk far-tuning'),
		]);
	});

	it('finds a capo on an upright, and believes one that is named for a bass', () => {
		const upright = '  - {id: U1, name: Hull, slot: u, kind: upright-4, tuning: E standard}';
		expect(found({ songs: part('{instrument: C1, capo: 2}') })).toEqual([]);
		expect(found({ more: upright, songs: part('{instrument: U1, capo: 1}') })).toEqual([
			expect.stringContaining('risk capo-on-bass'),
		]);
		expect(found({ songs: part('{instrument: A1, capo: 2}') })).toEqual([]);
	});
});

describe('parts that name no instrument', () => {
	const needs = (text: string, more = '') =>
		song('harbour', `title: Harbour, hands: {ash: {needs: {${text}}}, bo: none}${more}`);

	it('finds what nothing on the rack can be', () => {
		expect(found({ songs: needs('kind: banjo-5, sounds: standard') })).toEqual([
			'risk needs-unmet: In Harbour, Ash needs a five-string banjo sounding standard, but nothing on the rack can be that.',
		]);
		expect(
			found({ songs: needs('kind: electric-6, sounds: E standard, features: [arm]') }),
		).toEqual([expect.stringContaining('nothing on the rack')]);
		expect(found({ songs: needs('kind: electric-6, sounds: B1 E2 A2 D3 F#3 B3') })).toEqual([
			expect.stringContaining('nothing on the rack'),
		]);
		expect(found({ songs: needs('kind: electric-6, sounds: E standard') })).toEqual([]);
	});

	it('finds that all that would do is in other hands', () => {
		const songs = song(
			'harbour',
			'title: Harbour, hands: {ash: {needs: {kind: bass-4, sounds: E standard}}, bo: C1}',
		);
		expect(found({ songs })).toEqual([
			'risk needs-unmet: In Harbour, Ash needs a four-string bass sounding E standard, but 3 Coal is in other hands.',
		]);
	});

	it('reaches a sound by capo, but never beyond the seventh fret', () => {
		// E standard with a capo at the seventh and at the eighth fret; five semitones are too far to tune.
		const seventh = 'kind: electric-6, sounds: B2 E3 A3 D4 F#4 B4';
		const eighth = 'kind: electric-6, sounds: F3 Bb3 Eb4 Ab4 C5 F5';
		expect(found({ songs: needs(seventh) })).toEqual([]);
		expect(found({ songs: needs(eighth) })).toEqual([expect.stringContaining('risk needs-unmet')]);
	});

	it('finds a preference that cannot be met', () => {
		expect(found({ songs: needs('kind: electric-6, sounds: E standard, prefer: C1') })).toEqual([
			'note prefer-unfit: In Harbour, Ash prefers 3 Coal, which cannot play this part.',
		]);
	});
});

describe('boards', () => {
	const boards = 'boards: {bo: [{id: drive}]}';

	it('finds a pedal that the board lacks, at the start and at a cue, once a song', () => {
		const songs = song(
			'harbour',
			'title: Harbour, hands: {ash: A1, bo: C1}, board: {bo: {boost: on}}, cues: [{at: x, bo: {boost: off, drive: on}}, {at: y, bo: {delay: {time: eighth}}}]',
		);
		expect(found({ more: boards, songs })).toEqual([
			"risk pedal-missing: Harbour switches boost, which is not on Bo's board.",
			"risk pedal-missing: Harbour switches delay, which is not on Bo's board.",
		]);
	});

	it('finds a board cue for a player without a board', () => {
		const songs = song(
			'harbour',
			'title: Harbour, hands: {ash: A1, bo: C1}, board: {ash: {drive: on}}',
		);
		expect(found({ more: boards, songs })).toEqual([
			'risk pedal-missing: Harbour switches pedals for Ash, who has no board in this show.',
		]);
	});
});

describe('the clock', () => {
	const show = (start: string, curfew: string) => `show: {start: "${start}", curfew: "${curfew}"}`;

	it('finds a set that runs past the curfew, midnight or not', () => {
		const set = '[harbour, interval: 20m, harbour]';
		// 4:00 + 20:00 + 4:00 are 28 minutes.
		expect(found({ more: show('22:00', '22:28'), set })).toEqual([]);
		expect(found({ more: show('22:00', '22:27'), set })).toEqual([
			'risk past-curfew: The set ends at about 22:28, 1:00 after the curfew of 22:27.',
		]);
		expect(found({ more: show('23:50', '00:10'), set })).toEqual([
			'risk past-curfew: The set ends at about 00:18, 8:00 after the curfew of 00:10.',
		]);
	});

	it('counts gaps, segues and the wait before an encore', () => {
		const songs = [HARBOUR, song('lantern', 'ends: segue, notes: x')].join('\n');
		// 4 x 4:00, a gap of 15 s, one of nothing and one of 60 s: 17:15.
		const set = '[harbour, lantern, harbour, encore: [harbour]]';
		expect(found({ more: show('20:00', '20:18'), songs, set })).toEqual([]);
		expect(found({ more: show('20:00', '20:17'), songs, set })).toEqual([
			'risk past-curfew: The set ends at about 20:17, 0:15 after the curfew of 20:17.',
		]);
	});

	it('notes songs without a length', () => {
		const songs = `${HARBOUR}\n  - {id: lantern, title: Lantern}`;
		expect(found({ songs, set: '[harbour, lantern]' })).toEqual([
			'note no-length: Lantern has no length, so later times are a guess.',
		]);
	});

	it('notes a cue that is placed after the end of its song', () => {
		const songs = song(
			'harbour',
			'title: Harbour, hands: {ash: A1, bo: C1}, cues: [{at: V2, near: "4:30"}, {at: V1, near: "0:30"}]',
		);
		expect(found({ songs })).toEqual([
			'note near-past-end: In Harbour, V2 is near 4:30, but the song is over at 4:00.',
		]);
	});
});

describe('the rest', () => {
	it('notes songs that are not in the set, in one sentence', () => {
		const songs = [
			HARBOUR,
			...[1, 2, 3, 4, 5, 6, 7].map((n) => song(`s${n}`, `title: Song ${n}`)),
		].join('\n');
		expect(found({ songs })).toEqual([
			'note not-played: Song 1, Song 2, Song 3, Song 4, Song 5 and 2 more are not in the set.',
		]);
	});

	it('notes an instrument that is played and that no key names', () => {
		const more = '  - {id: A9, name: Ash tray, kind: electric-6, tuning: E standard}';
		const songs = song('harbour', 'hands: {ash: A9, bo: none}');
		expect(found({ more, songs })).toEqual([
			'note no-slot: Ash tray is played but has no slot, so no key names it.',
		]);
	});
});
