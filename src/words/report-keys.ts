// What each key of a report's data holds, for the JSON Schema of it.

import { type KeyTree, toldOf } from './key-tree.ts';

const TIME: KeyTree = {
	mark: ['On the show clock, whose zero is the first song; null before that is known.'],
	clock: ['By the clock on the wall.'],
	atMs: ['On the night clock: milliseconds since 1970 that never run backwards.'],
};
const LINE: KeyTree = { at: ['When it was.', TIME], words: ['What happened, one sentence.'] };

const PLANNED: KeyTree = {
	position: ['Place among the songs of the file, from 1.'],
	startSeconds: ['When it was to begin, on the show clock.'],
	began: ['The same by the clock on the wall; null where the file gives no start.', TIME],
	seconds: ['How long it was to be.'],
	isLengthGiven: ['The file gives a length; else it counts as the median of the others.'],
	gapSeconds: ['The gap before it; null at the first song and after an interval.'],
};

const SONG: KeyTree = {
	item: ["The song's key in the list of this night."],
	position: ['Place among the songs of the list, from 1; null for one that was dropped.'],
	song: ["The song's id."],
	title: ['What it is called.'],
	state: ['How it went.'],
	whyNotPlayed: ['Why it was never on; null where it was.'],
	isEncore: ['It stands in the encore.'],
	planned: [
		'What the running order of the show file said; null for a song that was added.',
		PLANNED,
	],
	isAdded: ['It was put in during the night.'],
	lengthSeconds: ['By the show file, on its list or not; null where it gives no length.'],
	isMoved: ['It was moved to another place by hand.'],
	runs: [
		'Each time that it was on, oldest first.',
		{
			began: ['When it began.', TIME],
			ended: ['When it ended; null while it is on.', TIME],
			seconds: ['How long it was on; null while it is on.'],
			how: ['How it ended; null while it is on.'],
			gapSeconds: ['From the end of the song before, whichever it was; null for the first.'],
		},
	],
	happened: ['Everything from the end of the song before until its own end.', LINE],
};

const HAND_OVER: KeyTree = {
	at: ['When it was.', TIME],
	atMs: ['The same on the night clock.'],
	song: ['The song that it was for; null where none was to come.'],
	item: ["That song's key in the list of this night."],
	player: ['Who was given it.'],
	playerId: ["The player's id."],
	instrument: ['Slot and name; null where hands were left empty.'],
	instrumentId: ["The instrument's id."],
	tuning: ['What it was in.'],
	capo: ['The fret of its capo, 0 for none.'],
	by: ['How it came to be known: the plan, a backup, or a swap typed in.'],
	readyAgeSeconds: ['Since it was made ready; null when it was not.'],
	isStale: ['It was ready once, but too long ago.'],
	readyIn: [
		'Tuning and capo that it was made ready in, where it was handed in another; else null.',
	],
	correctedFrom: ['What had been noted, where it was really another.'],
	noted: ['By a key of its own, with the start of its song, or after that song.'],
	wantedSeconds: ['The gap before its song; null where there is none.'],
	takenSeconds: [
		'From the end of the song before, its call, or the break; null where that is not known.',
	],
	isLate: ['Noted in its song, or after the gap was over; null where that is not known.'],
	tech: ['Whose hands, by the show file.'],
};

const LOST: KeyTree = {
	where: ['Before the first song, in a gap, in an interval, or in a song.'],
	at: ['When that part was to be over.', TIME],
	item: ['The key of the song, or of the one that it was before.'],
	song: ["That song's title."],
	seconds: ['How much longer than planned it took.'],
	incidents: ['Numbers of the incidents in that part.'],
	lateHandOvers: ['Places among the hand-overs, from 0, of those that were late for that song.'],
};

const SPAN: KeyTree = {
	fromMs: ['From here, on the night clock.'],
	toMs: ['Until here.'],
};

const REPORT: KeyTree = {
	format: ['The form of this data; a number that changes when a key changes its meaning.'],
	title: ['What the show is called.'],
	venue: ['Where it was.'],
	date: ['The day of the show.'],
	night: ['Id of the night.'],
	isRehearsal: ['Nobody was on stage.'],
	isOver: ['The last song has ended, or the show was closed.'],
	dayOffsetMinutes: ['What was added to UTC for the time of day.'],
	began: ['When the first song began.', TIME],
	ended: ['When the last song ended; null while it is not over.', TIME],
	hasTrouble: ['Something went wrong or is in doubt.'],
	isClean: ['Songs were played, the show was closed, and there was no trouble.'],
	songs: ['Every song of the list, in its order.', SONG],
	songsGone: [
		'Songs of the first list that the show file left out when it was read again.',
		{
			item: ["The song's key in that list."],
			song: ["The song's id."],
			title: ['What it is called.'],
			planned: ['What the first running order said.', PLANNED],
		},
	],
	players: [
		'Who plays.',
		{
			id: ["The player's id."],
			name: ['What they are called.'],
			plays: ['What they play, as the file says.'],
			tech: ['Whose hands are theirs.'],
		},
	],
	instruments: [
		'Each instrument, how it stands at the end.',
		{
			id: ["The instrument's id."],
			instrument: ['Slot and name.'],
			slot: ['Its place on the rack.'],
			kind: ['What it is.'],
			serial: ["The maker's number."],
			owner: ['Whose it is.'],
			hiredFrom: ['The firm it is hired from.'],
			secondsInHands: ['How long it was in hands.'],
			stringHours: ['Hours in hands of the strings that are on; null where nobody knows.'],
			place: ['Where it is.'],
			tuning: ['What it is in.'],
			capo: ['The fret of its capo, 0 for none.'],
			stringsDown: ['Numbers of strings still down; null for one that nobody named.'],
			faults: ['What is wrong with it.'],
			incidents: ['Numbers of the incidents that were on it.'],
			restrings: ['How often it was restrung.'],
		},
	],
	lanes: [
		'The night as intervals, which cover it without gap or overlap.',
		{
			...SPAN,
			instruments: [
				'By id of the instrument.',
				{
					...SPAN,
					place: ['Where it was.'],
					player: ['Id of who had it; null for nobody.'],
					tuning: ['What it was in.'],
					capo: ['The fret of its capo, 0 for none.'],
					readiness: ['Whether it was ready; null in hands.'],
					stringsDown: ['How many strings were down.'],
					hasFault: ['Something was wrong with it.'],
				},
			],
			players: [
				'By id of the player.',
				{
					...SPAN,
					instrument: ['Id of what was in hands; null for nothing.'],
					tuning: ['What that was in.'],
					capo: ['The fret of its capo.'],
				},
			],
		},
	],
	timing: [
		'Whether it ran to time.',
		{
			plannedStart: ['By the show file; null where it gives none.', TIME],
			plannedEnd: ['The same of the end.', TIME],
			plannedSeconds: ['Of the whole list, gaps and intervals in it.'],
			seconds: ['From the first beginning to the last end; null while it is not over.'],
			startLateSeconds: ['Negative where it began early.'],
			endLateSeconds: ['Negative where it ended early.'],
			overrunSeconds: ['How much longer it was than planned, whenever it began.'],
			curfew: [
				"The house's curfew; null where the file gives none.",
				{
					clock: ['As the file gives it.'],
					at: ['When that was.', TIME],
					overSeconds: ['The last end less it; negative where time was left.'],
					isMet: ['Whether it was over by then; null where that is not known.'],
				},
			],
			lost: ['Parts that took longer than planned, in order of time.', LOST],
		},
	],
	work: [
		'Each time that an instrument was made ready.',
		{
			at: ['When it was noted as done.', TIME],
			doneIn: [
				'The song that was on then; null where none was.',
				{ position: ['Its place.'], song: ['Its title.'] },
			],
			doneBefore: ['Between songs: the one that was to come.'],
			instrument: ['Slot and name.'],
			instrumentId: ["The instrument's id."],
			job: ['What was to be done, from how it stood.'],
			tuning: ['What it was in then.'],
			capo: ['The fret of its capo, 0 for none.'],
			isEarly: ['Pitches or strings put on early, the touch-up still to come.'],
			plannedSeconds: ["By the show's times."],
			takenSeconds: [
				'At the most: from its return until it was noted; null where the journal does not hold that.',
			],
			plannedLastSeconds: ['Of these, what comes last and is to be fresh.'],
			usedAt: ['The next hand-over of it; null where it was not handed again.', TIME],
			usedFor: ['The song of that hand-over.'],
			leftSeconds: ['From done until handed.'],
			isLate: ['Its song was on, or the gap over; null where no song asked for it.'],
			item: ['Key of the song that asked for it.'],
			wantedFor: ['Title of that song.'],
			position: ['Place of that song.'],
		},
	],
	missedCues: [
		'Cues of a played song that nobody stepped to.',
		{
			at: ['When the song ended.', TIME],
			item: ["The song's key in the list of this night."],
			position: ['Its place.'],
			song: ['Its title.'],
			cues: ['The cues, in their order.'],
			playerIds: ['Ids of the players whose boards they change.'],
		},
	],
	packs: [
		'What was typed of wireless packs, and each that was left off what it belongs to.',
		{
			at: ['When it was.', TIME],
			what: ['Put on, in doubt, fine again, with a fresh battery, or left off.'],
			player: ['Whose it is.'],
			playerId: ["The player's id."],
			pack: ['Its name.'],
			packId: ['Its id.'],
			from: ['What was worn before; with one that was left off, what stayed on.'],
			wearer: ['Who played on the one that was left off.'],
		},
	],
	takenBack: ['Steps that were taken back and stayed so; they are nowhere else in here.'],
	remark: ['What somebody wrote of the night afterwards.'],
	signed: ['Who signs the report.'],
	beforeShow: ['What happened before the first song.', LINE],
	handOvers: ['Every hand-over in order of time.', HAND_OVER],
	wrongHolds: [
		'When somebody held what the song did not ask for.',
		{
			at: ['Since when.', TIME],
			atMs: ['The same on the night clock.'],
			player: ['Who held it.'],
			playerId: ["The player's id."],
			held: ['What was held.'],
			song: ['The song.'],
			wanted: ['What it asks for.'],
			seconds: [
				'Until it was put right or its song was over; null where that is not in the journal.',
			],
		},
	],
	otherThanAsked: [
		'Songs played on something else than the show file says.',
		{
			at: ['Since when.', TIME],
			atMs: ['The same on the night clock.'],
			position: ['Place of the song.'],
			song: ['Its title.'],
			player: ['Who played.'],
			playerId: ["The player's id."],
			played: ['On what.'],
			playedId: ['Id of that instrument.'],
			asked: ['What the file says.'],
			askedId: ['Id of the named instrument; null where the choice is open.'],
			backupFor: ['The instrument that it stood in for.'],
			seconds: ['How long; null to the end of what is known.'],
		},
	],
	incidents: [
		'What went wrong, in the order in which it was noted.',
		{
			id: ['Its number.'],
			at: ['When it was.', TIME],
			position: ['Place of the song that was on.'],
			song: ['Its title; null where none was on.'],
			before: ['Where none was on: the song that was to come.'],
			kind: ['What it was.'],
			player: ['Whom it struck.'],
			playerId: ["The player's id."],
			instrument: ['Slot and name.'],
			instrumentId: ["The instrument's id."],
			string: ['Number of the string; null where nobody said.'],
			pedal: ['The pedal that does not switch.'],
			stringHours: ['Hours that the strings had been in hands; null where nobody knows.'],
			standIn: ['What was played instead.'],
			standInId: ['Id of that instrument.'],
			silenceSeconds: ['Until sound was back; null where that is not known.'],
			soundAt: ['When it was back.', TIME],
			isPlayedOn: ['Played on with what was in hands.'],
			isOpen: ['Still without an answer at the end.'],
			later: [
				'What came of it.',
				{
					backAt: [
						'When new strings were on, it was ready again, or the pedal switched again.',
						TIME,
					],
					backIn: [
						'The song that was on then; null where none was.',
						{ position: ['Its place.'], song: ['Its title.'] },
					],
					backBefore: ['Between songs: the one that was to come then.'],
					outSeconds: ['How long until then.'],
					songsOnOther: [
						'Songs that named it and were played on another until then.',
						{
							item: ["The song's key."],
							song: ['Its title.'],
							played: ['On what.'],
						},
					],
					isSongCutShort: ['The song that was on was cut short.'],
				},
			],
			words: ['What was typed of it.'],
			record: ['Identity of the record that noted it.'],
			remark: ['What somebody wrote of it afterwards.'],
		},
	],
	memos: ['What was typed as a memo.', LINE],
	boardsCorrected: ['Pedals that were otherwise than believed.', LINE],
	gaps: ['When the program was off, the machine slept, or its clock was set.', LINE],
	damage: ["What is wrong with the night's file."],
	tomorrow: ['What needs a hand before the next show.'],
	repairs: [
		'The same, by instrument.',
		{
			instrumentId: ['Null for a pedal or a pack.'],
			playerId: ['Id of the player whose pedal it is, or who wore the pack.'],
			words: ['What is to be done.'],
		},
	],
	stringsBroken: [
		'Strings that broke, by instrument.',
		{
			instrument: ['Slot and name.'],
			instrumentId: ["The instrument's id."],
			count: ['How many.'],
			strings: ['Numbers of those that were named.'],
		},
	],
	cautions: ['What to take care of in that work.'],
	forNext: [
		'What to buy, whom to tell, what the next show finds otherwise, by this night alone.',
		{
			kind: ['What is to be done with it.'],
			instrument: ["The instrument's id; null where it is about none."],
			slot: ['Its place on the rack.'],
			name: ["The instrument's name, or what it is about."],
			text: ['What is to be done.'],
			why: ['Why.'],
		},
	],
};

/** What is told of the key at the end of a path. */
export const reportKeyTold = toldOf(REPORT);
