// The manual page, as far as it says what no command's help says.

export const MANUAL = {
	volume: 'User commands',
	name: 'tracks the show beside the guitar rack',
	command: 'command',
	sections: [
		{
			title: 'EXIT STATUS',
			rows: [
				['0', 'Fine.'],
				['1', 'Done, and there is something to look at.'],
				['2', 'The request or a file could not be used.'],
				['3', "The night's data could not be kept."],
				['70', "A fault of the program's own; it says where the trace is."],
				['128 + n', 'Ended by signal n.'],
			],
		},
		{
			title: 'ENVIRONMENT',
			rows: [
				['RACKSIDE_DATA', 'The folder for nights and settings, as with --data.'],
				['NO_COLOR', 'Set to anything: no colour, as with --no-color.'],
				[
					'XDG_DATA_HOME, XDG_CONFIG_HOME',
					'Where the folders for nights and for settings are made.',
				],
			],
		},
		{
			title: 'FILES',
			rows: [
				[
					'~/.local/share/rackside/nights',
					'The nights; on macOS in ~/Library/Application Support.',
				],
				['~/.config/rackside', 'Settings; rackside settings says where they are.'],
			],
		},
	],
} as const;
