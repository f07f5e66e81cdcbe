// Who plays what: named, needed, kept or nothing, and what stands in the way.

import { describe, expect, test } from 'vitest';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { byId } from '../../src/words/call.ts';
import { unplayableWords } from '../../src/words/unplayable.ts';
import { clubShow } from './club-gear.ts';
import { allReady, mark, nightAfter, planAt, withEntries, withSongBegun } from './night-at.ts';
import { handOverLines, slotLines, warningLines } from './plan-figures.ts';
import { showFrom } from './show-from.ts';

/** The slots of each song, before the doors. */
function slotsOf(text: string, song: string): readonly string[] {
	return slotLines(planBeforeDoors(clubShow(text)), song);
}

/** Songs of four minutes, each with these parts, in this order. */
function set(...parts: readonly string[]): string {
	const songs = parts.map((part, index) => {
		return `  - {id: s${index + 1}, title: S${index + 1}, length: "4:00", hands: {${part}}}`;
	});
	return `songs:\n${songs.join('\n')}\nset: [${parts.map((_, index) => `s${index + 1}`).join(', ')}]\n`;
}

function why(text: string): readonly (string | null)[] {
	const show = clubShow(text);
	return planBeforeDoors(show).slots.map(
		(slot) => slot.why && unplayableWords(show, slot.why, byId),
	);
}

describe('named', () => {
	test('is had in its own tuning where the part gives none', () => {
		expect(slotsOf(set('ash: {instrument: A4}'), 's1')).toEqual(['ash A4 drop D']);
		expect(slotsOf(set('ash: {instrument: A1, tuning: DADGAD, capo: 2}'), 's1')).toEqual([
			'ash A1 DADGAD capo 2',
		]);
	});

	test('with nothing to play instead is missing, before the song before it has ended and after', () => {
		// The floating bridge is not re-pitched. What Ash has sounds the same, but the file lets nothing stand in: the
		// plan takes nothing, and what could be handed all the same is named.
		const show = showFrom(`
players: [{id: ash, name: Ash, plays: guitar}]
instruments:
  - {id: A2, name: Aspen, slot: "2", kind: electric-6, for: [ash], tuning: half-step down}
  - {id: A3, name: Argent, slot: "3", kind: electric-6, for: [ash], tuning: E standard, bridge: floating, instead: []}
${set('ash: {instrument: A2}', 'ash: {instrument: A3, tuning: half-step down}')}`);
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		const between = withEntries(on, { k: 'song-ended', at: mark('04:00'), how: 'played' });
		for (const plan of [planAt(on, '03:00'), planAt(between, '04:05')]) {
			expect(plan.cost).toMatchObject({ missing: 1, substituted: 0 });
			expect(slotLines(plan, 's2')).toEqual(['ash - half-step down']);
			expect(warningLines(plan, show)).toEqual([
				'missing: Nothing for Ash in S2; backup A2: A3 has a floating bridge and is in E standard',
			]);
			expect(plan.stays).toEqual([]);
		}
	});

	test('twice in a song is played on something else by the second', () => {
		const twice = set('ash: {instrument: S1}, bo: {instrument: S1}');
		expect(slotsOf(twice, 's1')).toEqual(['ash S1 E standard', 'bo B1 E standard']);
		expect(why(twice)).toEqual([null, 'Ash has S1']);
		expect(planBeforeDoors(clubShow(twice)).cost).toMatchObject({ missing: 0, substituted: 1 });
	});

	test('who has it already keeps it when somebody else is named for it too', () => {
		const twice = set('bo: {instrument: S1}', 'ash: {instrument: S1}, bo: {instrument: S1}');
		expect(slotsOf(twice, 's2')).toEqual(['ash A1 E standard', 'bo S1 E standard']);
	});

	test('is played on something else when somebody else keeps it', () => {
		const kept = set('bo: {instrument: S1}', 'ash: {instrument: S1}');
		expect(slotsOf(kept, 's2')).toEqual(['ash A1 E standard', 'bo S1 E standard']);
		expect(why(kept)).toEqual([null, 'Bo has S1', null]);
	});

	test('with a floating bridge is not re-pitched', () => {
		expect(why(set('ash: {instrument: A3, tuning: drop D}'))).toEqual([
			'A3 has a floating bridge and is in E standard',
		]);
		expect(why(set('ash: {instrument: A3, capo: 2}'))).toEqual([null]);
	});

	test('moves from one player to another at one hand-over', () => {
		const moves = set(
			'ash: {instrument: S1}',
			'ash: {instrument: A1}, bo: {instrument: S1}',
		).replace('[s1, s2]', '[s1, {song: s2, gap: 50s}]');
		const plan = planBeforeDoors(clubShow(moves));
		expect(handOverLines(plan).slice(1)).toEqual(['s2: ash S1 > A1', 's2: bo nothing > S1']);
		// Back 15 s after the first song, at 4:15; a minute of work, 5 s of it before the two hand-overs
		// that begin at 4:20 for 4:50, the other 55 s after them: 5:45, wanted at 4:20.
		expect(plan.work).toMatchObject([
			{ instrument: 'S1', fromMs: mark('04:15'), finishMs: mark('05:45'), slackSeconds: -85 },
		]);
	});
});

describe('out of reach', () => {
	const text = set('ash: {instrument: A1}', 'ash: {instrument: A4}');
	const open = openSession(clubShow(text));
	const reason = (session: Session) => planAt(session, '-10:00').slots[0]?.why;

	test('out tonight, faulty, and back again', () => {
		const out = withEntries(open, { k: 'put-aside', at: 0, instrument: 'A1', fault: null });
		expect(reason(out)).toEqual({ code: 'out', instrument: 'A1' });
		const faulty = withEntries(open, { k: 'put-aside', at: 0, instrument: 'A1', fault: 'crackle' });
		expect(reason(faulty)).toEqual({ code: 'faulty', instrument: 'A1', fault: 'crackle' });
		const back = withEntries(faulty, { k: 'brought-back', at: 1, instrument: 'A1' });
		expect(reason(back)).toBeNull();
	});

	test('what cannot be had is played on what stands in for it, as the same is asked', () => {
		const on = withSongBegun(nightAfter(open.show, allReady(open.show, '-01:00')), '00:00');
		const out = withEntries(on, { k: 'put-aside', at: 1000, instrument: 'A4', fault: null });
		const plan = planAt(out, '00:10');
		expect(slotLines(plan, 's2')).toEqual(['ash S1 drop D']);
		expect(plan.slots.at(-1)).toMatchObject({ for: 'A4', why: { code: 'out', instrument: 'A4' } });
		expect(plan.cost).toMatchObject({ missing: 0, substituted: 1, backup: 0 });
	});

	test('what nothing stands in for is missing, said once, and nothing is taken away for it', () => {
		const show = clubShow(set('ash: {instrument: A1}', 'ash: {instrument: B2}'));
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		const out = withEntries(on, { k: 'put-aside', at: 1000, instrument: 'B2', fault: null });
		const plan = planAt(out, '00:10');
		expect(slotLines(plan, 's2')).toEqual(['ash - E standard']);
		expect(plan.handOvers).toEqual([]);
		expect(warningLines(plan, show).filter((line) => line.startsWith('missing'))).toEqual([
			'missing: Nothing for Ash in S2: B2 is out tonight',
		]);
		expect(plan.cost.missing).toBe(1);
	});

	test('what is in the hands of who has to go without is there for another', () => {
		const show = clubShow(
			set(
				'ash: {instrument: S1}, bo: {instrument: B1}',
				'ash: {instrument: B2}, bo: {needs: {kind: electric-6, sounds: DADGAD, prefer: S1}}',
			),
		);
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		const out = withEntries(
			on,
			{ k: 'put-aside', at: 1000, instrument: 'B2', fault: null },
			{ k: 'song-ended', at: mark('04:00'), how: 'played' },
			{ k: 'song-began', at: mark('04:15'), item: '2' },
		);
		expect(slotLines(planAt(out, '04:20'), 's2')).toEqual(['ash - E standard', 'bo S1 DADGAD']);
	});

	test('a string down is work, not a reason', () => {
		const down = withEntries(open, {
			k: 'string-broke',
			at: 0,
			incident: '1',
			instrument: 'A1',
			player: null,
		});
		expect(reason(down)).toBeNull();
		expect(planAt(down, '-10:00').work[0]).toMatchObject({ job: 'restring', instrument: 'A1' });
	});
});

describe('needed', () => {
	const needs = (more = '') => `ash: {needs: {kind: electric-6, sounds: E standard${more}}}`;

	test('the first that the player may have, as the file orders them', () => {
		expect(slotsOf(set(needs()), 's1')).toEqual(['ash A1 E standard']);
		const bo = 'bo: {needs: {kind: electric-6, sounds: E standard}}';
		expect(slotsOf(set(bo), 's1')).toEqual(['bo B1 E standard']);
	});

	test('one that somebody else is named for is not theirs to have', () => {
		const named =
			'ash: {needs: {kind: electric-6, sounds: E standard, prefer: S1}}, bo: {instrument: S1}';
		expect(slotsOf(set(named), 's1')).toEqual(['ash A1 E standard', 'bo S1 E standard']);
	});

	test('what is preferred, though it is a spare', () => {
		expect(slotsOf(set(needs(', prefer: S1')), 's1')).toEqual(['ash S1 E standard']);
		const plan = planBeforeDoors(clubShow(set(needs(', prefer: S1'))));
		expect(plan.cost.preference).toBe(5);
	});

	test('what keeps its tuning before what is re-tuned, even with a capo', () => {
		const flat = 'ash: {needs: {kind: electric-6, sounds: "F2 Bb2 Eb3 Ab3 C4 F4"}}';
		expect(slotsOf(set(flat), 's1')).toEqual(['ash A1 E standard capo 1']);
	});

	test('what is in hands already stays, though another is preferred', () => {
		const stays = set('ash: {instrument: A1}', needs(', prefer: S1'));
		expect(slotsOf(stays, 's2')).toEqual(['ash A1 E standard']);
		expect(planBeforeDoors(clubShow(stays)).cost).toMatchObject({ handOvers: 0, preference: 10 });
	});

	test('with every feature asked for, or nothing', () => {
		const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: P, name: P, slot: "1", kind: electric-6, tuning: E standard}
  - {id: Q, name: Q, slot: "2", kind: electric-6, tuning: E standard, features: [arm, piezo]}
songs:
  - {id: s1, title: S1, hands: {ash: {needs: {kind: electric-6, sounds: E standard, features: [arm]}}}}
  - {id: s2, title: S2, hands: {ash: {needs: {kind: electric-6, sounds: E standard, features: [sitar]}}}}
set: [s1, s2]
`);
		const plan = planBeforeDoors(show);
		expect(slotLines(plan, 's1')).toEqual(['ash Q E standard']);
		expect(slotLines(plan, 's2')).toEqual(['ash - E standard']);
		expect(plan.slots[1]?.why).toEqual({
			code: 'none-free',
			kind: 'electric-6',
			sounds: 'E standard',
		});
	});

	test('no string goes further than two semitones from the tuning that the file gives', () => {
		const far = 'bo: {needs: {kind: acoustic-6, sounds: "C2 F2 Bb2 Eb3 G3 C4"}}';
		expect(slotsOf(set(far), 's1')).toEqual(['bo - C2 F2 Bb2 Eb3 G3 C4']);
		const near = 'bo: {needs: {kind: acoustic-6, sounds: D standard}}';
		expect(slotsOf(set(near), 's1')).toEqual(['bo B3 whole step down']);
	});

	test('what has a string down, or is only coming back, after what is whole and on the rack', () => {
		const down = withEntries(openSession(clubShow(set(needs()))), {
			k: 'string-broke',
			at: 0,
			incident: '1',
			instrument: 'A1',
			player: null,
		});
		expect(slotLines(planAt(down, '-10:00'), 's1')).toEqual(['ash A3 E standard']);
		const bo = 'bo: {needs: {kind: electric-6, sounds: E standard, prefer: S1}}';
		const back = set('ash: {instrument: S1}', `ash: {instrument: A1}, ${bo}`);
		expect(slotsOf(back, 's2')).toEqual(['ash A1 E standard', 'bo B1 E standard']);
	});

	test('what is broken in their own hands does not do for the song after', () => {
		const show = clubShow(set('ash: {instrument: A1}', '', needs()));
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		const broken = withEntries(
			on,
			{ k: 'string-broke', at: 1000, incident: '1', instrument: 'A1', player: 'ash' },
			{ k: 'played-on', at: 2000, incident: '1' },
		);
		// Nor for the song between, which names nobody: what sounds so is handed there, and stays.
		const plan = planAt(broken, '00:10');
		expect(handOverLines(plan)).toEqual(['s2: ash A1 > S1']);
		expect(slotLines(plan, 's3')).toEqual(['ash S1 E standard']);
	});

	test('two who need one kind get one each', () => {
		const both = `${needs()}, bo: {needs: {kind: electric-6, sounds: E standard}}`;
		expect(slotsOf(set(both), 's1')).toEqual(['ash A1 E standard', 'bo B1 E standard']);
	});
});

describe('stints', () => {
	const costOf = (text: string) => planBeforeDoors(clubShow(text)).cost;
	const A1 = 'ash: {instrument: A1}';

	test('go on over songs that do not name the player, and end with empty hands', () => {
		const plan = planBeforeDoors(clubShow(set(A1, '', 'ash: none', '', A1)));
		expect(handOverLines(plan)).toEqual([
			's1: ash nothing > A1',
			's3: ash A1 > nothing',
			's5: ash nothing > A1',
		]);
		expect(slotLines(plan, 's2')).toEqual(['ash A1 E standard']);
		expect(slotLines(plan, 's4')).toEqual([]);
		expect(plan.cost.handOvers).toBe(1);
		expect(plan.handOvers[1]?.seconds).toBe(0);
	});

	test('go on with another capo, which the player moves, unless the gap is under ten seconds', () => {
		const capo = 'ash: {instrument: A1, capo: 2}';
		const plan = planBeforeDoors(clubShow(set(A1, capo)));
		expect(handOverLines(plan)).toEqual(['s1: ash nothing > A1']);
		expect(plan.capoMoves).toMatchObject([{ player: 'ash', instrument: 'A1', capo: 2 }]);
		const short = set(A1, capo).replace('[s1, s2]', '[s1, {song: s2, gap: 9s}]');
		expect(handOverLines(planBeforeDoors(clubShow(short)))).toEqual([
			's1: ash nothing > A1',
			's2: ash A1 > A1',
		]);
	});

	test('end where the tuning changes, and count as re-tuned', () => {
		const tuned = set(A1, 'ash: {instrument: A1, tuning: drop D}', A1);
		expect(costOf(tuned)).toMatchObject({ handOvers: 2, retunings: 2 });
	});

	test('the first of each player costs no hand-over', () => {
		expect(costOf(set(A1, 'bo: {instrument: B1}', 'ash: {instrument: A4}'))).toMatchObject({
			handOvers: 1,
		});
	});

	test('an interval ends them all: who keeps takes the same again, at no cost', () => {
		const text = set(`${A1}, bo: {instrument: B1}`, 'ash: {instrument: A4}').replace(
			'[s1, s2]',
			'[s1, {interval: 20m}, s2]',
		);
		const plan = planBeforeDoors(clubShow(text));
		expect(handOverLines(plan).slice(2)).toEqual(['s2: ash nothing > A4', 's2: bo nothing > B1']);
		expect(plan.cost).toMatchObject({ handOvers: 0, overGap: 0 });
		// Back on the rack 15 s after the first song; fresh from 9:00 (24:00 less 15 min), wiped before that.
		const bo = plan.work.find(({ instrument }) => instrument === 'B1');
		expect(bo).toMatchObject({ fromMs: mark('08:45'), seconds: 60 });
	});

	test('during an interval, who keeps is to take what they had before it', () => {
		const text = set(`${A1}, bo: {instrument: B1}`, 'ash: {instrument: A4}').replace(
			'[s1, s2]',
			'[s1, {interval: 20m}, s2]',
		);
		const show = clubShow(text);
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		const interval = withEntries(
			on,
			{ k: 'song-ended', at: mark('04:00'), how: 'played' },
			{ k: 'came-back', at: mark('04:00'), instrument: 'A1' },
			{ k: 'came-back', at: mark('04:00'), instrument: 'B1' },
		);
		const plan = planAt(interval, '05:00');
		expect(handOverLines(plan)).toEqual(['s2: ash nothing > A4', 's2: bo nothing > B1']);
		expect(plan.cost.handOvers).toBe(0);
	});

	test('the first after an interval costs none, whatever was in hands before', () => {
		const text = set(A1, 'ash: {instrument: A4}').replace('[s1, s2]', '[s1, {interval: 20m}, s2]');
		const show = clubShow(text);
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		expect(planAt(on, '00:10').cost.handOvers).toBe(0);
		const second = clubShow(set(A1, 'ash: {instrument: A4}'));
		const begun = withSongBegun(nightAfter(second, allReady(second, '-01:00')), '00:00');
		expect(planAt(begun, '00:10').cost.handOvers).toBe(1);
	});

	test('so it is for whom the first song after it leaves with empty hands', () => {
		const text = set(A1, 'ash: none', A1).replace('[s1, s2, s3]', '[s1, {interval: 20m}, s2, s3]');
		const show = clubShow(text);
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		const interval = withEntries(
			on,
			{ k: 'song-ended', at: mark('04:00'), how: 'played' },
			{ k: 'came-back', at: mark('04:00'), instrument: 'A1' },
		);
		const second = withSongBegun(interval, '24:00');
		const plans = [planAt(on, '00:10'), planAt(interval, '05:00'), planAt(second, '24:10')];
		for (const plan of plans) {
			expect(handOverLines(plan).at(-1)).toBe('s3: ash nothing > A1');
			expect(plan.cost.handOvers).toBe(0);
		}
	});

	test('instead of the backup that was in hands as the interval began the named one is taken, where it can be had', () => {
		const show = clubShow(
			set(A1, 'bo: {instrument: B1}').replace('[s1, s2]', '[s1, {interval: 20m}, s2]'),
		);
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		const interval = withEntries(
			on,
			{ k: 'handed-over', at: mark('01:00'), by: 'exchange', player: 'ash', instrument: 'S1' },
			{ k: 'song-ended', at: mark('04:00'), how: 'played' },
			{ k: 'came-back', at: mark('04:00'), instrument: 'S1' },
		);
		expect(handOverLines(planAt(interval, '05:00'))).toEqual([
			's2: ash nothing > A1',
			's2: bo nothing > B1',
		]);
		const out = withEntries(interval, {
			k: 'put-aside',
			at: mark('04:30'),
			instrument: 'A1',
			fault: null,
		});
		expect(handOverLines(planAt(out, '05:00'))).toEqual([
			's2: ash nothing > S1',
			's2: bo nothing > B1',
		]);
	});

	test('a segue has room for no hand-over', () => {
		const segue = set(A1, 'ash: {instrument: A4}').replace(
			'length: "4:00"',
			'length: "4:00", ends: segue',
		);
		const plan = planBeforeDoors(clubShow(segue));
		expect(plan.cost.overGap).toBe(1);
		expect(plan.handOvers.map(({ fits, wantedMs }) => [fits, wantedMs])).toEqual([
			[true, -15_000],
			[false, 240_000],
		]);
	});

	test('a cue hands over inside its song, where there is always room', () => {
		const show = clubShow(`
songs:
  - id: s1
    title: S1
    length: "4:00"
    hands: {ash: {instrument: A1}}
    cues: [{at: bridge, near: "2:30", hand: {ash: A4}}]
set: [s1]
`);
		const plan = planBeforeDoors(show);
		expect(handOverLines(plan)).toEqual(['s1: ash nothing > A1', 's1: ash A1 > A4']);
		expect(plan.handOvers[1]).toMatchObject({ fits: true, wantedMs: mark('02:15') });
		expect(plan.cost.overGap).toBe(0);
	});

	const SHARED = '{needs: {kind: electric-6, sounds: E standard, prefer: S1}}';

	test('whom a cue does not name exchanges nothing at it, however well that would fit', () => {
		const show = clubShow(`
songs:
  - {id: s1, title: S1, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}, ends: segue}
  - id: s2
    title: S2
    length: "4:00"
    hands: {ash: ${SHARED}}
    cues: [{at: solo, near: "2:00", hand: {bo: B3}}]
    ends: segue
  - {id: s3, title: S3, length: "4:00", hands: {ash: {instrument: A2}}}
set: [s1, s2, s3]
`);
		const plan = planBeforeDoors(show);
		expect(slotLines(plan, 's2')).toEqual([
			'ash A1 E standard',
			'bo B1 E standard',
			'ash A1 E standard',
			'bo B3 E standard',
		]);
		// Into S3 there is no room; what is played in the one song counts once against what it prefers.
		expect(plan.cost).toMatchObject({ overGap: 1, handOvers: 2, preference: 10 });
	});

	test('what a cue takes from one does not go to another who plays something that sounds so by then', () => {
		const show = clubShow(`
songs:
  - {id: s1, title: S1, length: "4:00", hands: {ash: {instrument: S1}}}
  - id: s2
    title: S2
    length: "4:00"
    hands: {bo: {instrument: S1}}
    cues: [{at: solo, near: "2:00", hand: {ash: A1}}]
set: [s1, s2]
`);
		expect(slotLines(planBeforeDoors(show), 's2')).toEqual([
			'ash S1 E standard',
			'bo B1 E standard',
			'ash A1 E standard',
			'bo B1 E standard',
		]);
	});
});

describe('settled', () => {
	test('who has been given something else for this song keeps it through the song only', () => {
		const show = clubShow(set('ash: {instrument: A1}', '', 'ash: {instrument: A4}'));
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		const exchanged = withEntries(on, {
			k: 'handed-over',
			at: mark('01:00'),
			by: 'exchange',
			player: 'ash',
			instrument: 'S1',
		});
		const plan = planAt(exchanged, '01:10');
		expect(handOverLines(plan)).toEqual(['s3: ash S1 > A4']);
		expect(slotLines(plan, 's1')).toEqual(['ash S1 E standard']);
		expect(slotLines(plan, 's2')).toEqual(['ash S1 E standard']);
		expect(plan.slots[0]?.for).toBe('A1');
		expect(warningLines(plan, show).filter((line) => line.startsWith('wrong'))).toEqual([]);
	});

	test('is nobody for a song that comes before the one they exchanged in', () => {
		const show = clubShow(set('ash: {instrument: A4}', 'ash: {instrument: A1}'));
		const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
		const ended = withEntries(on, { k: 'song-ended', at: mark('04:00'), how: 'played' });
		const exchanged = withEntries(withSongBegun(ended, '04:15'), {
			k: 'handed-over',
			at: mark('05:00'),
			by: 'exchange',
			player: 'ash',
			instrument: 'S1',
		});
		const again = withEntries(
			exchanged,
			{ k: 'song-ended', at: mark('08:15'), how: 'played' },
			{ k: 'next-chosen', at: mark('08:16'), item: '1' },
		);
		expect(handOverLines(planAt(again, '08:20'))).toEqual(['s1: ash S1 > A4', 's2: ash A4 > A1']);
		const sameAgain = withEntries(
			exchanged,
			{ k: 'song-ended', at: mark('08:15'), how: 'played' },
			{ k: 'next-chosen', at: mark('08:16'), item: '2' },
		);
		expect(handOverLines(planAt(sameAgain, '08:20'))).toEqual(['s2: ash S1 > A1']);
		const onStill = withEntries(exchanged, { k: 'next-chosen', at: mark('05:10'), item: '1' });
		expect(handOverLines(planAt(onStill, '05:20'))).toEqual(['s1: ash S1 > A4', 's2: ash A4 > A1']);
	});
});
