// Loaded into the real program before it (`node --import`), so that it can have bugs: from the signal
// USR2 on, or from its start with FAULT_AT_ONCE, whatever runs under one of the functions named in
// FAULT_UNDER throws. `timer`, `rejection` and `heap` there are faults that no function need be under.

import process from 'node:process';
import { setImmediate, setTimeout } from 'node:timers';

const under = (process.env.FAULT_UNDER ?? '').split(' ').filter(Boolean);

function throwUnder(prototype: object, name: string): void {
	const methods = prototype as Record<string, (...args: unknown[]) => unknown>;
	const real = methods[name];
	methods[name] = function (...args) {
		const { stackTraceLimit } = Error;
		Error.stackTraceLimit = 60;
		const { stack } = new Error('looked at');
		Error.stackTraceLimit = stackTraceLimit;
		if (under.some((one) => new RegExp(`at (\\w+\\.)?${one} `).test(stack ?? '')))
			throw new Error('thrown on purpose');
		return real?.apply(this, args);
	};
}

function fail(): void {
	if (under.includes('timer'))
		setTimeout(() => {
			throw new Error('thrown on purpose');
		}, 1);
	if (under.includes('rejection')) Promise.reject(new Error('thrown on purpose'));
	if (under.includes('heap')) {
		const kept: object[] = [];
		const fill = (): void => {
			for (let count = 0; count < 100; count += 1) kept.push(new Array(10_000).fill({}));
			setImmediate(fill);
		};
		fill();
	}
	throwUnder(Array.prototype, 'map');
	throwUnder(Array.prototype, 'filter');
	throwUnder(Array.prototype, 'find');
	throwUnder(Array.prototype, 'join');
	throwUnder(Set.prototype, 'add');
	throwUnder(Set.prototype, 'has');
}

if (process.env.FAULT_AT_ONCE) fail();
else process.on('SIGUSR2', fail);
