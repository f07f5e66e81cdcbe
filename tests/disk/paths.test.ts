// Which folder the program uses for its own files.

import { readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { findPaths, isWipedByRestart, showIdentity } from '../../src/disk/paths.ts';
import { scratchFolder } from './scratch-folder.ts';

const home = '/home/lou';
const base = { dataOption: undefined, environment: {}, home, platform: 'linux' };

test('the option comes first, then the environment, then the platform', () => {
	const environment = { RACKSIDE_DATA: '/tour', XDG_DATA_HOME: '/xdg' };
	expect(findPaths({ ...base, dataOption: '/here', environment })).toEqual({
		data: '/here',
		nights: '/here/nights',
		settings: '/here',
	});
	expect(findPaths({ ...base, environment }).nights).toBe('/tour/nights');
	expect(findPaths({ ...base, environment: { XDG_DATA_HOME: '/xdg' } })).toEqual({
		data: '/xdg/rackside',
		nights: '/xdg/rackside/nights',
		settings: '/home/lou/.config/rackside',
	});
	expect(findPaths(base).data).toBe('/home/lou/.local/share/rackside');
	expect(findPaths({ ...base, environment: { XDG_CONFIG_HOME: '/conf' } }).settings).toBe(
		'/conf/rackside',
	);
});

test('empty values and a relative XDG_DATA_HOME count for nothing', () => {
	const environment = { RACKSIDE_DATA: '', XDG_DATA_HOME: 'relative', XDG_CONFIG_HOME: '' };
	expect(findPaths({ ...base, dataOption: '', environment }).data).toBe(
		'/home/lou/.local/share/rackside',
	);
	expect(findPaths({ ...base, dataOption: 'relative' }).data).toBe(resolve('relative'));
});

test('macOS has places of its own', () => {
	expect(findPaths({ ...base, platform: 'darwin' }).data).toBe(
		'/home/lou/Library/Application Support/rackside',
	);
	expect(findPaths({ ...base, platform: 'darwin' }).settings).toBe(
		'/home/lou/Library/Preferences/rackside',
	);
});

// Known folders of Windows, FOLDERID_LocalAppData and FOLDERID_RoamingAppData (from memory).
test('Windows has places of its own', () => {
	const windows = { ...base, platform: 'win32', home: 'C:\\Users\\Lou' };
	const environment = { LOCALAPPDATA: 'D:\\local', APPDATA: 'D:\\roaming' };
	expect(findPaths({ ...windows, environment }).nights).toBe('D:\\local\\rackside\\nights');
	expect(findPaths({ ...windows, environment }).settings).toBe('D:\\roaming\\rackside');
	expect(findPaths(windows).data).toBe('C:\\Users\\Lou\\AppData\\Local\\rackside');
	expect(findPaths({ ...windows, dataOption: 'E:/stick\\tour' }).nights).toBe(
		'E:\\stick\\tour\\nights',
	);
	// On the drive that a shell stands on, which is the system's to know.
	const xdg = { ...environment, XDG_DATA_HOME: 'D:relative', XDG_CONFIG_HOME: 'D:\\conf' };
	expect(findPaths({ ...windows, environment: xdg }).data).toBe('D:\\local\\rackside');
	expect(findPaths({ ...windows, environment: xdg }).settings).toBe('D:\\conf\\rackside');
});

test('a show is the same through every link', () => {
	const folder = scratchFolder();
	writeFileSync(join(folder, 'show.yaml'), '');
	symlinkSync(join(folder, 'show.yaml'), join(folder, 'tonight.yaml'));
	expect(showIdentity(join(folder, 'tonight.yaml'))).toBe(showIdentity(join(folder, 'show.yaml')));
	expect(showIdentity('not-there.yaml')).toBe(resolve('not-there.yaml'));
});

test('what a restart of the machine empties, by the Filesystem Hierarchy Standard 3.0 (from memory)', () => {
	for (const folder of ['/tmp/a/b', '/tmp', '/run/user/1000', '/dev/shm/x'])
		expect(isWipedByRestart(folder, '/tmp'), folder).toBe(true);
	expect(isWipedByRestart('/home/lou/tmp/x', '/home/lou/tmp')).toBe(true);
	for (const folder of ['/var/tmp/x', '/home/lou/nights', '/tmpfile'])
		expect(isWipedByRestart(folder, '/tmp'), folder).toBe(false);
	expect(isWipedByRestart('/var/tmp/x', '/var/tmp')).toBe(false);
});

// A home in memory has no name that tells; tmpfs(5) and statfs(2) do.
test.runIf(process.platform === 'linux')(
	'the file system is asked first, and for what is yet to be made',
	() => {
		const mounts = readFileSync('/proc/self/mounts', 'utf8').trim().split('\n');
		const inMemory = mounts.flatMap((line) => {
			const [, at = '', type] = line.split(' ');
			return type === 'tmpfs' && at.startsWith('/') ? [at] : [];
		});
		expect(inMemory.length).toBeGreaterThan(0);
		for (const at of inMemory)
			expect(isWipedByRestart(join(at, 'lou/nights'), '/tmp'), at).toBe(true);
		expect(isWipedByRestart('/etc/lou/nights', '/tmp')).toBe(false);
	},
);
