// A program that takes the lock of a folder, says whether it has it, and lets go when told.

import { takeLock } from '../../src/disk/lock.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { diskFaultWords } from '../../src/words/disk.ts';

const lock = await takeLock({ disk: realDisk, folder: process.argv[2] ?? '.', name: 'show-1' });
process.stdout.write(lock.isHeld ? 'held\n' : `${diskFaultWords(lock.fault)}\n`);
process.stdin.on('end', () => {
	if (lock.isHeld) lock.release();
	process.exit(0);
});
process.stdin.resume();
