// What each key of a show file is for, with an example of its value: for editors, which show both while a file
// is written. Sets of keys that stand in several places are told once.

export type KeyTold = { readonly description: string; readonly example: unknown };

/** How a key is told, and the keys within it. */
type Told = readonly [description: string, example: unknown, within?: Tree];
type Tree = { readonly [key: string]: Told };

const WORK: Tree = {
	'touch-up': ['From nearly in tune to in tune and checked.', '45s'],
	'one-string': ['Into another tuning that moves one string, touch-up and all.', '1m'],
	'two-strings': ['Into another tuning that moves two strings, touch-up and all.', '1m15s'],
	'all-strings': ['All strings by the same interval, touch-up and all.', '1m30s'],
	'other-tuning': ['Any other change of tuning, touch-up and all.', '2m'],
	wipe: ['Wiping strings and neck when it comes back.', '15s'],
	capo: ['Putting a capo on, moving it or taking it off.', '10s'],
	walk: ['From the rack to the player, one way.', '10s'],
	restring: ['One string, settled and tuned; wiping is in it.', '4m30s'],
	'further-string': ['Each further string of the same restring.', '1m30s'],
	'hand-over': ['One instrument off the player, the other on.', '15s'],
};

const NEEDS: Tree = {
	kind: ['The kind of instrument.', 'electric-6'],
	sounds: ['What is heard, capo and all: a tuning by name or by notes.', 'E standard'],
	features: ['What it must have, by the words of the instruments.', ['arm']],
	prefer: ['The instrument to take if it fits.', 'A1'],
};

const PART: Tree = {
	instrument: ['The instrument, by its id; nothing else is planned while it can be had.', 'A1'],
	tuning: ['The tuning it is to be in; left out, its own.', 'drop D'],
	capo: ['The fret of the capo, 0 for none.', 2],
	needs: [
		'Any instrument that can be this; the plan chooses.',
		{ kind: 'electric-6', sounds: 'E standard' },
		NEEDS,
	],
	leave: ['To be checked before it leaves the rack for this song.', 'volume 10, bridge pickup'],
	pack: ['The wireless pack for this song.', 'P2'],
};

const CUE: Tree = {
	at: ['What is heard or seen: a cue never hangs on the clock.', 'Ch1'],
	near: ['About where in the song; helps the plan, starts nothing.', '1:32'],
	say: ['A few words to see at the cue.', 'solo is eight bars'],
	hand: ['Who gets which instrument here, in the middle of the song.', { ash: 'A1' }, PART],
};

const INSTEAD: Tree = {
	instrument: ['The backup, by its id.', 'A2'],
	tuning: ['The tuning it is played in, used as written.', 'E standard'],
	capo: ['The fret of its capo.', 1],
};

const SET_UP: Tree = {
	action: [
		'String height at the last fret that is measured, bass side then treble side.',
		[1.9, 1.6],
	],
	'action-first': ['String height at the first fret, bass side then treble side.', [0.5, 0.4]],
	relief: ['Bow of the neck: mm, thou or 64ths.', '8 thou'],
	pickup: ['From the strings to the pickup, bass side then treble side.', [2.4, 2]],
	nut: ['Height of the nut slots over the fingerboard, bass side then treble side.', [1.2, 1]],
	'saddle-screw': ['How far one turn of a saddle screw moves the saddle, in mm.', 0.7],
};

const POWER: Tree = {
	supply: ['The supply that feeds it.', 'S1'],
	output: ['The output of that supply.', 'a'],
	ma: ['What it draws, in milliamps.', 35],
	volts: ['What it wants.', 9],
	centre: ['Which pole it wants in the middle of the plug.', 'negative'],
	current: ['Whether it wants alternating or direct current.', 'ac'],
	battery: ['What its own battery holds, where it has one.', '500 mAh'],
	'hours-used': ['Hours that this battery has run already.', 10],
};

const MESSAGE: Tree = {
	bank: ['The bank, sent as controllers 0 and 32 before the program.', 300],
	program: ['The program, 0 to 127.', 11],
	cc: ['The number of a controller.', 64],
	value: ['The value of that controller.', 127],
	note: ['The number of a note.', 60],
	velocity: ['How hard; 0 is note off.', 127],
};

const MIDI: Tree = {
	channel: ['Its channel, 1 to 16.', 1],
	on: ['What switches it on.', [{ cc: 64, value: 127 }], MESSAGE],
	off: ['What switches it off.', [{ cc: 64, value: 0 }], MESSAGE],
	scenes: [
		'What each of its scenes is sent, by the name that cues use.',
		{ wide: [{ bank: 300, program: 11 }], dry: [{ program: 0 }] },
		MESSAGE,
	],
	tempo: [
		"How the song's tempo reaches it: clock, or the controller that four taps go to.",
		{ cc: 93, value: 127 },
		{ cc: ['The number of the controller.', 93], value: ['The value of a tap.', 127] },
	],
};

const FAULT: Tree = {
	chance: ['How likely it is the faulty one, beside the others.', 3],
	test: ['How long it takes to test it.', '20s'],
	swap: ['How long it takes to replace it.', '30s'],
	spare: ['What replaces it.', 'spare head in case 4'],
};

const ARRIVAL: Tree = {
	distance: ['How far the microphone is from what it picks up.', '30 cm'],
	delay: ['The delay that it adds.', '1.5 ms'],
	polarity: ['Inverted where it flips the polarity.', 'inverted'],
};

const INSTRUMENT: Tree = {
	id: ['The short word that all other lines use.', 'A1'],
	name: ['What it is called; people read it after the slot, "4 Anchor".', 'Amber'],
	slot: ['Its place on the rack and the key that names it: one character without shift.', '1'],
	kind: ['What it is, and how many strings it has.', 'electric-6'],
	for: ['Who may have it; left out, anybody who plays such.', ['ash']],
	tuning: [
		'What it is in when the night begins: a name, or notes from the highest-numbered string to string 1.',
		'E standard',
	],
	scale: ['Length of the open strings, with its unit.', '25.5 in'],
	strings: [
		'Gauges, string 1 first, in thousandths of an inch; w is wound. Pairs one after the other, the octave string first.',
		[10, 13, 17, '26w', '36w', '46w'],
	],
	bridge: ['A floating bridge stays in its tuning all night.', 'floating'],
	features: ['What it has that a part may ask for.', ['arm']],
	pickups: ['What its pickups are.', 'piezo under the saddle'],
	pack: ['The wireless pack it goes with.', 'P1'],
	case: ['The case it travels in.', '3'],
	spare: ['Kept back as a backup.', true],
	instead: [
		'Backups for this one, best first; with an empty list the plan takes none by itself, left out any that sounds the same.',
		['S1', { instrument: 'A2', tuning: 'E standard', capo: 1 }],
		INSTEAD,
	],
	output: [
		'What it gives: the ohms of its electronics, the picofarads of a piezo, or a microphone by its name; a list for more than one.',
		[{ pf: 500 }, { name: 'microphone', distance: '30 cm' }],
		{
			ohms: ['Ohms, for active electronics.', '10 k'],
			pf: ['Picofarads, for a piezo.', 500],
			name: ['What it is called; a microphone has this, its distance, or both.', 'microphone'],
			...ARRIVAL,
		},
	],
	power: ['The battery of an active one.', { battery: '500 mAh', ma: 1 }, POWER],
	gear: ['This very instrument in every file and year, for what was measured on it.', 'quay-amber'],
	serial: ["The maker's number on it, for those who own it and for customs.", 'QS-01447'],
	owner: ['Whose it is.', 'Ash'],
	'hired-from': ['The firm it is hired from; its items have a report of their own.', 'Quay Hire'],
	'recheck-after': ['How long ready lasts on this one.', '10m'],
	strung: [
		'When it got its strings, and their hours in hands.',
		{ on: '2026-06-10', hours: 3.5 },
		{
			on: ['The day it was strung.', '2026-06-10'],
			hours: ['Hours that these strings have been in hands.', 3.5],
		},
	],
	times: [
		'How long work on this one takes; comes before all other times.',
		{ restring: '5m' },
		WORK,
	],
	leave: ['To be checked before it leaves the rack.', 'volume 7, neck pickup'],
	notes: ['Anything else about it.', 'buzz at the ninth fret'],
	'unit-mass': ['Grams per metre by gauge, from the maker or a balance.', { '46w': 7 }],
	setup: ['What its player likes, to be measured against.', { action: [1.9, 1.6] }, SET_UP],
};

const SONG: Tree = {
	id: ['The short word that the set uses.', 'lantern'],
	title: ['What it is called.', 'Lantern'],
	length: ['How long it is; without it the usual length of the others.', '3:30'],
	tempo: ['Beats per minute.', 104],
	hands: [
		'Who plays what. A player left out keeps what the song above in the set says; none puts it down.',
		{ ash: { instrument: 'A4', tuning: 'drop D' }, cleo: 'none' },
		PART,
	],
	shapes: [
		'Chords heard exposed, one fret a string or course, x where none sounds.',
		{ ash: ['022100'] },
	],
	board: [
		'How each board begins the song: what is not named is off. A pedal with channels or scenes says which: {preamp: {channel: lead}}.',
		{ bo: { drive: 'on', preamp: { channel: 'lead' } } },
	],
	order: [
		'Pedals that stand in another order for this song; those that are not named stay where they are.',
		{ bo: ['chorus', 'drive'] },
	],
	cues: [
		'What happens within the song, in its order. A board in a cue is the whole board: what is left out is off.',
		[{ at: 'solo', bo: { drive: 'on', preamp: { channel: 'lead' } } }],
		CUE,
	],
	starts: ['Who begins it.', 'bo'],
	count: ['How many clicks are counted in.', 4],
	ends: ['How it ends: stop, ring, straight into the next, or with talk.', 'segue'],
	notes: ['Anything else about it.', 'ends on a long fade'],
};

const SET_SONG: Tree = {
	song: ['The song, by its id.', 'lantern'],
	gap: ['From the end of the song before to the start of this one; usually 15 s.', '30s'],
};

const SET_ITEM: Tree = {
	...SET_SONG,
	interval: ['How long the players are off the stage.', '20m'],
	encore: [
		'The songs after the last one, if they are called for.',
		['oldmill', { song: 'harbour', gap: '10s' }],
		SET_SONG,
	],
};

const KEYS: Tree = {
	format: ['Always this: it says how the rest is to be read.', 'rackside/1'],
	include: [
		'Files in the same folder that hold some of the lists, such as the gear.',
		['gear.yaml', 'songs.yaml'],
	],
	show: [
		'Where and when.',
		{ title: 'First night', start: '20:30' },
		{
			title: ['What this night is called.', 'First night'],
			venue: ['Where it is.', 'the hall by the river'],
			date: ['The day of the show.', '2026-06-12'],
			start: ['When the first song is to begin, in quotes.', '20:30'],
			curfew: ['When the last note must have ended, in quotes.', '22:45'],
			reference: ['Hz for A4.', 440],
			'recheck-after': ['How long ready lasts; 8m outdoors.', '15m'],
			notes: ['Anything else about the night; on the run sheet.', 'load-in by the side door'],
			'recheck-new': ['The same for strings with less than an hour in hands.', '5m'],
		},
	],
	techs: [
		'The technicians.',
		[{ id: 'lou', name: 'Lou' }],
		{ id: ['The short word for this technician.', 'lou'], name: ['Their name.', 'Lou'] },
	],
	players: [
		'Who is on stage.',
		[{ id: 'ash', name: 'Ash', plays: 'guitar' }],
		{
			id: ['The short word that all other lines use.', 'ash'],
			name: ['What they are called.', 'Ash'],
			plays: ['What they play, in words.', 'guitar'],
			tech: ['Whose hands look after them.', 'lou'],
			key: ['The letter that names them in questions; usually the first of the name.', 'a'],
		},
	],
	instruments: [
		'Everything that hangs on the rack.',
		[{ id: 'A1', name: 'Amber', slot: '1', kind: 'electric-6', tuning: 'E standard' }],
		INSTRUMENT,
	],
	songs: [
		'The catalogue; what is not in the set can be called for.',
		[{ id: 'lantern', title: 'Lantern' }],
		SONG,
	],
	set: [
		'The running order.',
		['harbour', { song: 'lantern', gap: '15s' }, { interval: '20m' }, 'gravel'],
		SET_ITEM,
	],
	boards: [
		"Each player's pedals in their order; a pedal may say more than its name, which is kept.",
		{
			bo: [
				{ id: 'drive', name: 'Drive' },
				{ id: 'preamp', name: 'Preamp', channels: ['clean', 'lead'] },
			],
		},
		{
			id: ['The short word that songs use; at, near, say and hand are taken.', 'drive'],
			name: ['What it is called.', 'Drive'],
			input: ['Ohms of its input.', '500 k'],
			output: ['Ohms of its output.', '1 k'],
			controls: ['Its controls in the words of the player.', ['drive', 'tone', 'level']],
			switched: ['Who changes it.', 'tech'],
			power: ['What it runs on.', { supply: 'S1', output: 'a', ma: 35 }, POWER],
			midi: [
				'What it is sent: whole states, numbers as they are sent.',
				{ channel: 1, on: [{ cc: 64, value: 127 }], off: [{ cc: 64, value: 0 }] },
				MIDI,
			],
			...FAULT,
		},
	],
	rigs: [
		"Each player's sound path from the strings to the desk; the instrument comes before the first part.",
		{
			bo: [
				{ id: 'lead', kind: 'cord', length: '6 m', 'pf-per-m': 100 },
				{ id: 'board', kind: 'board' },
				{ id: 'head', kind: 'amp', watts: 30, tap: 8, taps: [4, 8, 16], tube: true },
				{ id: 'cab1', kind: 'cab', ohms: 8, watts: 60 },
			],
		},
		{
			id: ['The short word for this part.', 'head'],
			kind: ['What it is; board stands for the pedals of that player, in their order.', 'amp'],
			name: ['What it is called.', 'Head'],
			length: ['How long a cord is.', '6 m'],
			'pf-per-m': ['Picofarads of one metre of the cord.', 100],
			input: ['Ohms of its input.', '1 M'],
			output: ['Ohms of its output.', '600'],
			ohms: ['Ohms of a cabinet.', 8],
			watts: ['What an amplifier gives, or what a cabinet takes.', 30],
			tap: ['Ohms of the tap that the cabinets are on.', 8],
			taps: ['Ohms of all its taps.', [4, 8, 16]],
			tube: ['Whether it has tubes: such an amplifier never plays without its load.', true],
			wired: ['How a cabinet is joined to the cabinets before it.', 'parallel'],
			switched: ['Who changes it.', 'feet'],
			power: ['What it runs on.', { supply: 'S1', output: 'b', ma: 100 }, POWER],
			...ARRIVAL,
			...FAULT,
		},
	],
	supplies: [
		'Boxes that feed pedals, each with its outputs.',
		[{ id: 'S1', outputs: [{ id: 'a', volts: 9, ma: 100, centre: 'negative' }] }],
		{
			id: ['The short word for this supply.', 'S1'],
			name: ['What is written on it.', 'board left'],
			outputs: [
				'Its outputs.',
				[{ id: 'a', volts: 9, ma: 100, centre: 'negative' }],
				{
					id: ['The short word for this output.', 'a'],
					volts: ['Its voltage.', 9],
					ma: ['The most it gives, in milliamps.', 100],
					centre: ['Which pole is in the middle of its plug.', 'negative'],
					current: ['Whether it gives alternating or direct current.', 'ac'],
				},
			],
		},
	],
	packs: [
		'The wireless packs.',
		[{ id: 'P1', channel: '11' }],
		{
			id: ['The short word for this pack.', 'P1'],
			name: ['What is written on it.', 'red tape'],
			channel: ['What the desk knows it by.', '11'],
			battery: [
				'Hours that a fresh battery gives, and those already used.',
				{ hours: 6, used: 2.5 },
				{ hours: ['Hours of a fresh one.', 6], used: ['Hours already used.', 2.5] },
			],
		},
	],
	times: [
		'How long work takes, for all instruments or by kind.',
		{ all: { 'hand-over': '10s' }, 'bass-4': { 'touch-up': '30s' } },
	],
	stock: [
		'What is in the box of strings.',
		[{ gauge: '10', count: 12 }],
		{ gauge: ['The gauge, as in strings.', '46w'], count: ['How many there are.', 12] },
	],
	gauges: ['Gauges that you can get.', [9, 9.5, 10, '46w']],
	'unit-mass': ['Grams per metre by gauge, for all instruments.', { '36w': 4.3 }],
	offsets: [
		'Cents in every target, by player, instrument or tuning; what is left out is any.',
		[{ player: 'ash', cents: { 3: -3 } }],
		{
			player: ['Whose hands.', 'ash'],
			instrument: ['Which instrument.', 'A1'],
			tuning: ['In which tuning.', 'drop D'],
			cents: ['Cents by string number; negative is flat.', { 3: -3 }],
		},
	],
	stage: [
		'How warm and damp it will be.',
		{ soundcheck: 18, temperature: 26, humidity: 60 },
		{
			temperature: ['°C on stage during the show.', 26],
			soundcheck: ['°C when the instruments are tuned.', 18],
			humidity: ['Relative humidity in per cent.', 60],
		},
	],
	abbreviations: ['What this act calls its tunings on paper.', { OPG: 'open G' }],
};

const TIMES_OF: Told = ['Times of this kind of instrument, or of all.', { 'touch-up': '45s' }];

/**
 * What is told of the key at the end of this path of keys; list places and names that users choose are left
 * out of it. Null where nothing is.
 *
 * @example
 * keyTold(['show', 'start']).example // => '20:30'
 */
export function keyTold([first = '', ...rest]: readonly string[]): KeyTold | null {
	if (first === 'times' && rest.length > 0) {
		const [description, example] = rest.length === 1 ? TIMES_OF : (WORK[rest[1] ?? ''] ?? []);
		return description === undefined ? null : { description, example };
	}
	let told = KEYS[first];
	for (const key of rest) told = told?.[2]?.[key];
	return told === undefined ? null : { description: told[0], example: told[1] };
}
