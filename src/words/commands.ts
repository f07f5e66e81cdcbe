// The command line's help: what each command does, in a few words and in sentences, and its options.

export type CommandWords = {
	/** In the list of commands. */
	readonly brief: string;
	/** Sentences under the usage. */
	readonly about: string;
	/** By the option's name. */
	readonly options: Readonly<Record<string, string>>;
};

/** By the command's name; `start` is a start without one. */
export const COMMAND_WORDS = {
	start: {
		brief: 'the first page: the unfinished night, a show, the last report, the example',
		about:
			"Opens a page with everything you can begin with, each under a number: the unfinished night, tonight's show (the file in this folder with today's date, or the show run last), last night's report, the example show. Without a terminal it prints the example's run sheet.",
		options: {},
	},
	run: {
		brief: 'the live screen; an unfinished night of this show resumes where it left off',
		about:
			'Opens the live screen for a show. An unfinished night of this show resumes where it left off. Press ? there for all keys, q to quit.',
		options: {
			anew: 'if the unfinished night cannot be read, begin a new one without asking',
			midi: 'send the boards to this MIDI port: its name, or a device such as /dev/snd/midiC1D0; none for no port',
		},
	},
	follow: {
		brief: 'the night under way in a second window, to look at only',
		about:
			'Shows the night that is running in another window: the newest unfinished one, unless you name another. It opens with the far view; tab shows the others. It only reads: no key in it changes anything. q leaves.',
		options: {},
	},
	new: {
		brief: 'makes a show file: by questions, from a set list, or from an earlier night',
		about:
			'Asks for players, instruments and songs on the terminal and writes a show file: the file as it grows stands beside the question, the last answer can be undone, and esc keeps everything for the next time. --from makes the next night of an earlier one: the same gear and songs in the order as it was played, and what changed. --songs reads a table (CSV, tabs, semicolons): a column each for title, length, tempo, key, who starts, how it ends, notes, gap, and one for each player, whose cells are in shorthand: Amber DD c2, 3 drop D capo 2, DADGAD, - for none, empty keeps. --list reads lines as typed. What can be read in two ways is asked on a terminal; else it is listed with row and column, a comment stands at its place in the file, and the exit code is 1. No file is written over.',
		options: {
			songs:
				'a table as CSV, with tabs or semicolons, or the JSON of rackside list; - reads standard input',
			list: 'lines as people type them, or those of rackside list; - reads standard input',
			column: 'a heading and the player it is, such as "Gtr 1=ash"; for several, give it again',
			rack: 'take players and instruments from this show file or gear file',
			add: 'add to FILE if it is there; all that stands in it stays as it is',
			from: 'a night, or last: its gear, songs and order, and what changed in it',
			json: 'one JSON line at the end: rows, songs, cells understood, cells left open',
		},
	},
	list: {
		brief: 'the set list of a show as text, CSV or JSON',
		about:
			'Prints the set list of a show: songs in order with lengths and who plays what, intervals, encores. rackside new reads each form back.',
		options: { as: 'text (the default), csv or json' },
	},
	check: {
		brief: 'everything wrong or risky in a show before the doors open',
		about:
			'Reads a show file and lists everything wrong or risky in it, worst first. Ends with 0 when there is nothing to look at, 1 when there is, 2 when the file cannot be used.',
		options: {},
	},
	plan: {
		brief: 'who plays what when, the work between, backups; --sheet for the run sheet',
		about:
			'Shows who plays what in each song, the work between, and what could go wrong, as planned before the doors open. Times are by the clock on the wall if the show file has a start, else from the start of the first song.',
		options: {
			why: 'what was considered for this song, and what each choice would cost',
			sheet: 'the run sheet to tape to the case; the options below are for it',
			tonight: 'the sheet of the night under way, with its list as it is now',
			as: 'text (the default, 80 columns), or html: one file to print on A4 or Letter',
			page: 'one page alone: run, rack (labels to cut out), radio (packs), cues=bo (one board), floor=bo (the list at their feet)',
			player: 'only what is for this player',
			tech: 'only what is for the players of this technician',
			changes: 'only what changes in hands and the work for it, no cues',
			boards: 'each whole board beside what is pressed',
			out: 'write it to this file',
			pdf: 'write a PDF to this file, where chromium is installed',
			paper: 'a4 or letter; without it --pdf uses a4',
			force: 'replace the file of --out or --pdf if it is there',
		},
	},
	tuning: {
		brief: 'targets, steps and tension from one tuning to another',
		about:
			'Shows how to bring an instrument to a tuning: targets in Hz with all offsets, steps in the order that disturbs least, tension on the neck, and what equal temperament does to neighbouring strings and to the chord shapes that the songs in this tuning name. Ends with 1 when a string has less than 15 % of its strength left.',
		options: {
			to: 'a name or notes; without it, the one in the show file',
			from: 'what it is in now; without it, the one in the show file',
			capo: 'a capo on this fret, 0 to 12',
			covers: 'only these strings under the capo, such as "3 4 5"',
			reference: "A4 in Hz, 400 to 480; without it, the show's",
			shape: 'how a chord shape sounds too, such as 022100 or x32010',
		},
	},
	strings: {
		brief: 'what each string bears, how near it is to breaking, which gauge feels the same',
		about:
			'Shows what each string bears in a tuning: tension, stress, semitones to breaking, cents per °C, stiffness; and the gauges in stock that keep the tension of the present set in its own tuning. Plain steel is exact. Wound strings and nylon are estimated, with how far off that can be. Ends with 1 when a string has less than 15 % of its strength left.',
		options: {
			scale: 'another scale, such as "25.5 in" or "650 mm"',
		},
	},
	rig: {
		brief: 'sound paths, loads, supplies, batteries, every board by song',
		about:
			"Shows each player's sound path, what hangs on every amp and supply, how long batteries last, times that go by the tempo, and what each board is at every point of every song. Ends with 1 when something in the rig is a risk.",
		options: {},
	},
	fault: {
		brief: 'what to try next when a sound is gone, hums or crackles, and how sure it is',
		about:
			"Says the next best test on a player's sound path, from what is heard and what was answered: after a song the one with the least expected time to the cause, with --in-song the shortest way to sound. It never opens an amp and never lifts the safety earth. Ends with 1 when the answers contradict each other.",
		options: {
			symptom: 'silent, crackle, hum, thin, cuts-out, distorted, feedback or wireless; else silent',
			answers: 'what was tried, such as "bypass-board=same,swap-lead=sound"',
			instrument: 'what is in hands; else what the player has first',
			inSong: 'a song is on: sound first, the cause later',
		},
	},
	setup: {
		brief: 'saddle moves, targets, what drifted; --record keeps what was measured',
		about:
			'Says how far to move each saddle and which way, from what the 12th fret reads in cents against the octave, and what drifted from the targets in the show file. --record keeps what was measured, by instrument, in the data folder. Measure at pitch, in playing position. Ends with 1 when something is wrong with what is kept there, 3 when nothing could be kept.',
		options: {
			at12: 'what each 12th fret reads, highest-numbered string first',
			record:
				'keep these and --at12: action, action-first, relief, pickup, nut, bass side first; or intonation for --at12 alone',
			unit: 'mm (the default), thou or 64ths, for what is printed',
			same: 'yes or no: what was measured under this id before was this very instrument; kept for good',
			frets: 'where each fret belongs on this scale',
			feedback:
				'hertz or a note that rings: which string or part of the body, which notch; --record feedback keeps it',
			fret: 'how far out a fret is, by its distance from the nut, such as "12 323.85"',
		},
	},
	rehearse: {
		brief: 'timed keys from a script, or the live screen on a faster clock',
		about:
			'With --script, presses the keys of a file at their times on the show clock and prints the state where the script asks for it; no terminal needed, and no night is recorded. Without --script, opens the live screen; that night is recorded and marked as a rehearsal.',
		options: {
			script: 'the timed keys to play',
			quiet: 'leave out the state at the end of the script',
			size: 'the size of !screen where the script names none (80x24)',
			midi: 'with --script: every byte that the boards would be sent, one line a moment',
			force: 'replace the file that --midi names',
			speed: 'the live screen on a clock N times as fast, 1 to 100',
			like: 'a night, or last: songs, gaps and work take as long as in it; on the live screen the band plays by itself',
		},
	},
	walk: {
		brief: 'a first walk through a night, on the real screen, with the example show',
		about:
			'Leads you through eight moments of a night with the example show, on the real screen: each says what happens and which keys to press. Nothing of it is kept. Esc twice leaves.',
		options: {},
	},
	drill: {
		brief: 'practises what goes wrong, against the clock; --results for the table',
		about:
			'Takes you to moments of a show at which something goes wrong: a string, a pack, a pedal, a wrong instrument, a song that nobody expected. Log the right thing on the live screen as fast as you can; after 30 s a moment counts as missed. Only how fast you were is kept, by person, on this laptop. Without SHOW it uses the example show.',
		options: {
			seed: 'the same moments again, by the number that a drill ended with',
			moments: 'how many moments, 1 to 40; 8 without it',
			name: 'whose results these are, and those of later drills',
			results: 'print the table of results, and nothing else',
		},
	},
	report: {
		brief: 'the post-show report of a night, the last one unless named',
		about:
			"Prints the report of a night, the last one with a song played unless named: songs with their times, hand-overs, incidents, what to repair for tomorrow. A player, production and a hire firm get a page of their own. What --edit adds is kept beside the night and goes out with every form. Ends with 1 when the night is not finished or its file is damaged. In the CSV tables a text that could be taken for a formula begins with one extra '.",
		options: {
			show: 'the show file, where the night has lost its own copy',
			for: 'who reads it: tech (the default), production, player=ID, hire or hire=FIRM',
			as: 'markdown (the default), html, json, incidents, hand-overs, songs, work or strings (CSV)',
			nights:
				'the last N nights beside one another: breaks, seconds to sound, late, tight gaps; as a table: all rows of each',
			since: 'the nights from this day on beside one another',
			all: 'a page for every reader, the data and the tables, into one new folder',
			noNames: 'roles such as guitar 1 in place of names of people',
			edit: 'add a line on the night, a remark on an incident, who signs, in EDITOR or here',
			save: 'into a file of the working folder, with a name of its own',
			out: 'into this file, with --all this folder',
			force: 'replace the file of --out if it is there',
		},
	},
	tomorrow: {
		brief: 'what to restring, repair, buy, tell and carry over before the next show',
		about:
			'Lists what is to be done after a night, the last one that was played unless named, each line with its reason: strings by hours in hands and breaks over the nights before it, repairs with who had it and when, strings to buy against the stock of the show file, who must know what, and what stands otherwise than the file says. On a terminal lines are ticked off with space; ticks stay. With several nights the newest is the night, and strings are followed over all of them. Ends with 1 when the night is not finished or its file is damaged, 3 when a tick could not be kept.',
		options: {
			as: 'markdown, csv or json, printed instead of shown',
			next: 'the next show file: what its songs ask of the strings, and its stock',
		},
	},
	times: {
		brief: 'what hand-overs and work really took, to plan with if you want',
		about:
			'Shows what hand-overs and work took in the nights named, or in the last ten that were played: how often that was measured, the median, what nine of ten did not exceed, what the plan takes, and your own time. With fewer than five of a kind nothing is said of it. Nothing is changed without --use.',
		options: {
			each: 'every hand-over and piece of work that was measured, planned beside real',
			use: 'set the medians as your own times',
			careful: 'with --use: set what nine of ten did not exceed',
		},
	},
	nights: {
		brief: 'the nights recorded, with their state',
		about:
			'Lists the nights recorded, the newest first: when, which show, and whether it was closed. Ends with 1 when one is unfinished or cannot be read.',
		options: {
			verbose:
				'also what trouble the program noted and when, and what is wrong with the measurements that are kept',
		},
	},
	settings: {
		brief: 'preferences: show, set, reset; and where your files are',
		about:
			'Shows all preferences and where files are. With a name, shows that one; with a value too, sets it. Names: colours (white; amber, dim for backstage; grey; none, words without colour); time.WORK, your own time for a piece of work in place of the built-in one, for shows read from then on (what a show file says comes first); key.ACTION, the key of an action of the live screen; and midi, the port for boards, or none.',
		options: { reset: 'reset everything, or with NAME only that' },
	},
	doctor: {
		brief: 'whether this laptop is fit for a show, and what to fix',
		about:
			'Looks at this laptop before a show: size, colours and letters of the terminal, key repeat and foot switch (it asks you to press them; esc leaves that out), disk and free space, clock and time zone, whether it would sleep, lock or run out of battery, unfinished nights, and trouble that the program noted. Each line is fine, or says what to do, or is unknown where the system does not say. Ends with 1 when there is something to look at.',
		options: {},
	},
	schema: {
		brief: 'JSON Schema of the show file, for editors',
		about:
			'Prints the JSON Schema of the show file. Editors that know YAML schemas then offer the keys and underline mistakes.',
		options: {
			report: 'that of report --json instead',
			nights: 'that of report --nights N --json instead',
		},
	},
	completion: {
		brief: 'completion for your shell; the manual page',
		about:
			'Prints what bash, zsh or fish needs to complete commands, options, show files, instruments, songs and nights. One line installs it for new shells: "rackside completion bash >> ~/.bashrc", "rackside completion zsh >> ~/.zshrc", or "rackside completion fish >> ~/.config/fish/config.fish". "rackside completion man" prints the manual page; man finds it in ~/.local/share/man/man1/rackside.1.',
		options: {
			values: 'used by those scripts: what can stand for the last word after --',
		},
	},
} as const satisfies Readonly<Record<string, CommandWords>>;

/** Options that every command takes, or every one that reports. */
export const COMMON_WORDS = {
	data: 'keep nights and settings there (or set RACKSIDE_DATA)',
	noColor: 'no colour (or set NO_COLOR)',
	help: 'this help',
	json: 'one JSON document and nothing else',
} as const;

export const PROGRAM =
	'rackside tracks the show beside the guitar rack: who gets which instrument, in which tuning, ready when, and what happened.';
export const HELP = {
	all: 'All take:',
	begin: 'Begin here: rackside',
	one: 'Help for one command: rackside plan --help',
	version: 'The version: rackside --version',
	example: (line: string): string => `Example: ${line}`,
} as const;
