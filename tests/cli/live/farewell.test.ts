// What is said after the live screen was left.

import { expect, test } from 'vitest';
import { farewell } from '../../../src/cli/live/farewell.ts';

const NO_REMARK = { elsewhere: null, wipedHome: null, remark: null };

test('says where the night stands and what to type', () => {
	const left = { file: 'my show.yaml', isRehearsal: false, isOver: false, ...NO_REMARK };
	expect(farewell(left)).toContain("stays open. rackside or rackside run 'my show.yaml'");
	expect(farewell({ ...left, file: 'a.yaml', isRehearsal: true })).toContain('rehearse a.yaml');
	expect(farewell({ ...left, isOver: true })).toContain('rackside report');
});

test('says where a night is that its own folder did not take, and what becomes of it there', () => {
	const left = { file: 'a.yaml', isRehearsal: false, isOver: true, ...NO_REMARK };
	const place = { folder: '/tmp/b', home: '/home/lou/nights', trouble: 'ENOSPC', isWiped: true };
	const [first, second] = farewell({ ...left, elsewhere: place }).split('\n');
	expect(first).toContain('The show is closed');
	expect(second).toContain('/tmp/b, since /home/lou/nights takes nothing, the disk is full');
	expect(second).toContain('written, not safe: a restart of the machine empties that folder');
	expect(farewell({ ...left, elsewhere: { ...place, isWiped: false } })).not.toContain('not safe');
});

test('says what is to be known of the folder of a night that is left in it', () => {
	const left = { file: 'a.yaml', isRehearsal: false, isOver: false, ...NO_REMARK };
	const remark = 'Nights are where a restart empties them.';
	expect(farewell({ ...left, remark }).split('\n')[1]).toBe(remark);
});

test('says so of a folder that a restart empties, unless there is more to be said of it', () => {
	const left = { file: 'a.yaml', isRehearsal: false, isOver: false, ...NO_REMARK };
	const wipedHome = '/dev/shm/nights';
	expect(farewell({ ...left, wipedHome })).toContain(
		'Written, not safe: a restart of the machine empties /dev/shm/nights,',
	);
	expect(farewell({ ...left, wipedHome, remark: 'No home.' }).split('\n')[1]).toBe('No home.');
});
