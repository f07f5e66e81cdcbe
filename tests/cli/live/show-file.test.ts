// A show file changed on disk while a night goes on: said, read when asked, taken back, and carried
// through a stop of the program. With real files and the real keys.

import { readFileSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Io } from '../../../src/cli/io.ts';
import { showFileOf } from '../../../src/cli/live/show-file.ts';
import { type MemoryJournal, memoryJournal } from '../../../src/journal/memory-journal.ts';
import { type Night, openNight } from '../../../src/night/night.ts';
import { type PreferenceStore, unkeptPreferences } from '../../../src/night/preference-store.ts';
import { drawScreen } from '../../../src/screen/draw-screen.ts';
import { screenText } from '../../../src/screen/row.ts';
import { scratchFolder } from '../../disk/scratch-folder.ts';
import { sampleHeader } from '../../journal/sample-journal.ts';
import { loadShow } from '../../scenarios/load-show.ts';

const START_MS = Date.UTC(2026, 5, 12, 20, 0);

const GEAR = `players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
`;
const SHOW = `format: rackside/1
include: [gear.yaml]
show: {title: Quay}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: two, title: Two, length: "4:00"}
set: [one, two]
`;

type Evening = {
	readonly file: string;
	readonly gear: string;
	readonly night: () => Night;
	readonly press: (...keys: readonly string[]) => void;
	readonly screen: () => string;
	/** The program is stopped and started again. */
	readonly restart: () => void;
	/** Writes a file as if at this moment of the day. */
	readonly write: (path: string, text: string, clock?: string) => void;
};

function evening(preferences?: PreferenceStore): Evening {
	const folder = scratchFolder();
	const file = join(folder, 'show.yaml');
	const gear = join(folder, 'gear.yaml');
	let atMs = 0;
	const write = (path: string, text: string, clock = '20:12'): void => {
		writeFileSync(path, text);
		const when = new Date(`2026-06-12T${clock}:00Z`);
		utimesSync(path, when, when);
	};
	write(gear, GEAR, '19:00');
	write(file, SHOW, '19:00');
	const opening = loadShow(file);
	const io = { cwd: folder, wallMs: () => START_MS + atMs } as Io;
	const open = (journal: MemoryJournal): Night => {
		const opened = openNight({
			show: opening,
			journal,
			clock: { wallMs: () => START_MS + atMs, upMs: () => 1_000_000 + atMs, bootId: 'boot' },
			plannedZeroMs: START_MS,
			dayOffsetMinutes: 0,
			isRehearsal: true,
			...(preferences && { preferences }),
		});
		opened.watchShow(showFileOf('show.yaml', io));
		return opened;
	};
	let journal = memoryJournal(sampleHeader());
	let night = open(journal);
	const wait = (): void => {
		atMs += 1000;
		night.tick();
	};
	return {
		file,
		gear,
		night: () => night,
		press: (...keys) => {
			for (const key of keys) {
				wait();
				night.press(key);
			}
			wait();
		},
		screen: () =>
			screenText(drawScreen(night.screen(), { columns: 100, rows: 30 }, { isAscii: false })),
		restart: () => {
			const records = JSON.parse(JSON.stringify(journal.records()));
			journal = memoryJournal(sampleHeader(), { records, checkpoint: null });
			night = open(journal);
			wait();
		},
		write,
	};
}

const titles = (night: Night) => night.session().show.songs.map(({ title }) => title);
const CHANGED = 'The show file changed at 20:12. v in the list view reloads it.';

test('a change is said once, and in the list view as long as it stands', () => {
	const { file, press, screen, write, night } = evening();
	press('space');
	expect(screen()).not.toContain('changed');
	write(file, SHOW.replace('Two', 'Second'));
	press();
	expect(screen()).toContain(CHANGED);
	expect(titles(night())).toEqual(['One', 'Two']);
	press('i');
	expect(screen()).not.toContain(CHANGED);
	press('tab', 'tab');
	expect(screen()).toContain('LIST  file changed 20:12');
});

test('so is one of a file that it includes; one written again as it was is none', () => {
	const { file, gear, press, screen, write } = evening();
	write(file, SHOW, '20:30');
	press();
	expect(screen()).not.toContain('changed');
	write(gear, GEAR.replace('Amber', 'Umber'));
	press();
	expect(screen()).toContain(CHANGED);
});

test('read again it shows what differs, and counts from enter on; undo brings the old one back', () => {
	const { file, press, screen, write, night } = evening();
	press('space', 'tab', 'tab');
	write(file, SHOW.replace('Two', 'Second').replace('set: [one, two]', 'set: [one, one, two]'));
	press('v');
	expect(screen()).toContain('songs changed: Second');
	expect(screen()).toContain('the list: 2 to come, next One');
	expect(titles(night())).toEqual(['One', 'Two']);
	press('enter');
	expect(titles(night())).toEqual(['One', 'Second']);
	expect(night().state().song).toMatchObject({ id: 'one', position: 1, of: 3 });
	expect(screen()).not.toContain('file changed');
	press('u');
	expect(titles(night())).toEqual(['One', 'Two']);
	expect(screen()).toContain('file changed');
	press('y');
	expect(titles(night())).toEqual(['One', 'Second']);
	expect(screen()).not.toContain('file changed');
	write(file, SHOW, '20:50');
	press();
	expect(screen()).toContain('file changed 20:50');
});

test('a file with a mistake changes nothing, and says where it is', () => {
	const { file, press, screen, write, night } = evening();
	press('space', 'tab', 'tab');
	write(file, SHOW.replace('set: [one, two]', 'set: [one, nobody]'));
	press('v');
	expect(screen()).toMatch(/Nothing changes: show.yaml:7:12: .*nobody/);
	expect(titles(night())).toEqual(['One', 'Two']);
	rmSync(file);
	press('v');
	expect(screen()).toContain('Nothing changes: show.yaml');
});

test('a night taken up again goes by what was read, and knows whether the file is still that', () => {
	const { file, press, restart, screen, write, night } = evening();
	press('space', 'tab', 'tab');
	write(file, SHOW.replace('Two', 'Second'));
	press('v', 'enter', 'esc');
	restart();
	expect(titles(night())).toEqual(['One', 'Second']);
	expect(screen()).not.toContain('changed');
	write(file, SHOW.replace('Two', 'Last'), '20:40');
	restart();
	expect(titles(night())).toEqual(['One', 'Second']);
	expect(screen()).toContain('The show file changed at 20:40');
});

test('a file put in the place of the old one is read like one written over it', () => {
	const { file, press, screen, write, night } = evening();
	write(`${file}.new`, readFileSync(file, 'utf8').replace('Two', 'Second'));
	renameSync(`${file}.new`, file);
	press('tab', 'tab');
	expect(screen()).toContain('file changed 20:12');
	press('v', 'enter');
	expect(titles(night())).toEqual(['One', 'Second']);
});

test('own times changed elsewhere count from the next reading on, and are no change of the file', () => {
	const preferences = unkeptPreferences();
	const { press, screen, night, restart } = evening(preferences);
	const capo = () => night().session().show.instruments[0]?.times.capo;
	press('space');
	preferences.change({ times: { capo: 6 } });
	restart();
	press('tab', 'tab');
	expect(screen()).not.toContain('changed');
	expect(capo()).toBe(10);
	press('v');
	expect(screen()).toContain('changed: your own times');
	expect(screen()).not.toContain('instruments changed');
	press('enter');
	expect(capo()).toBe(6);
	restart();
	expect(capo()).toBe(6);
	press('u');
	expect(capo()).toBe(10);
});
