// The clock, and what could put the screen out in the middle of a song: sleep, lid, lock and a battery. Only
// what the system itself says counts; what it does not say is said to be unknown.

import {
	CLOCK_NOT_SYNCED,
	CLOCK_SYNCED,
	CLOCK_WRONG,
	COMPARE_CLOCK,
	CONSOLE_NEVER,
	clockFound,
	clockUnkept,
	consoleBlank,
	displayAfter,
	HELD_AWAKE,
	idleAction,
	LID_BY_DESKTOP,
	LID_IGNORED,
	LID_MAC,
	LID_OPEN,
	LOOK_IN_LOCK,
	LOOK_IN_LOCK_MAC,
	LOOK_IN_POWER,
	LOOK_IN_SYSTEM,
	lidAction,
	NEVER_BY_LOGIND,
	NOT_TOLD,
	ON_BATTERY,
	ON_MAINS,
	PLUG_IN,
	SLEEP_NEVER,
	STOP_BLANK,
	STOP_IDLE,
	STOP_SLEEP_MAC,
	sleepAfter,
	UNKNOWN,
	WHAT,
	withCharge,
	ZONE_UTC,
	zoneFound,
} from '../../words/doctor.ts';
import { localDay, localTime } from '../local-day.ts';
import type { Machine } from '../machine.ts';
import { type DoctorLine, fine, look, unknown } from './doctor-line.ts';

/** No laptop that runs this shows an earlier year by a clock that is set. */
const FIRST_YEAR = 2026;
const LAST_YEAR = 2099;

/** Whether the clock is set, what keeps it so, and the time zone. */
export function clockLines(machine: Machine, wallMs: number): readonly DoctorLine[] {
	const offset = machine.offsetMinutes(wallMs);
	const day = localDay(wallMs, offset);
	const year = Number.parseInt(day, 10);
	const found = clockFound(day, localTime(wallMs, offset));
	return [
		year < FIRST_YEAR || year > LAST_YEAR
			? look(WHAT.clock, found, CLOCK_WRONG)
			: fine(WHAT.clock, found),
		keptLine(machine),
		zoneLine(machine, offset),
	];
}

function keptLine({ platform, printedBy, text }: Machine): DoctorLine {
	if (platform !== 'linux') return unknown(WHAT.clockKept, clockUnkept(null), COMPARE_CLOCK);
	const said = printedBy('timedatectl', ['show', '--property=NTPSynchronized', '--value'])?.trim();
	if (said === 'yes') return fine(WHAT.clockKept, CLOCK_SYNCED);
	if (said === 'no') return look(WHAT.clockKept, CLOCK_NOT_SYNCED, COMPARE_CLOCK);
	// The third line is UTC or LOCAL (adjtime_config(5)).
	const adjusted = text('/etc/adjtime')?.split('\n')[2]?.trim() ?? '';
	const known = adjusted === 'UTC' || adjusted === 'LOCAL' ? adjusted : null;
	return unknown(WHAT.clockKept, clockUnkept(known), COMPARE_CLOCK);
}

function zoneLine({ timeZone }: Machine, offset: number): DoctorLine {
	const whole = Math.abs(offset);
	const hours = String(Math.floor(whole / 60));
	const minutes = whole % 60 === 0 ? '' : `:${String(whole % 60).padStart(2, '0')}`;
	const found = zoneFound(timeZone, `${offset < 0 ? '-' : '+'}${hours}${minutes}`);
	// No stage stands in it: a machine that has it was never told where it is.
	const isUtc = timeZone === null || /^(Etc\/.*|UTC|GMT)$/.test(timeZone);
	return isUtc ? look(WHAT.zone, found, ZONE_UTC) : fine(WHAT.zone, found);
}

/** Whether the laptop would sleep, go dark or lock by itself. */
export function sleepLines(
	machine: Machine,
	env: Readonly<Record<string, string | undefined>>,
): readonly DoctorLine[] {
	switch (machine.platform) {
		case 'linux':
			return linuxSleep(machine, env.TERM === 'linux');
		case 'darwin':
			return macSleep(machine);
		default:
			return [
				unknown(WHAT.sleep, UNKNOWN, LOOK_IN_SYSTEM),
				unknown(WHAT.lock, UNKNOWN, LOOK_IN_SYSTEM),
			];
	}
}

/** A folder that is there where systemd runs the machine (sd_booted(3)). */
const SYSTEMD_RUNS = '/run/systemd/system';
const LIDS = '/proc/acpi/button/lid';
const BLANK_AFTER = '/sys/module/kernel/parameters/consoleblank';

function linuxSleep(machine: Machine, isConsole: boolean): DoctorLine[] {
	const hasLogind = machine.names(SYSTEMD_RUNS).length > 0;
	const hasLid = machine.names(LIDS).length > 0;
	if (!hasLogind) {
		return [
			unknown(WHAT.sleep, UNKNOWN, LOOK_IN_POWER),
			...(hasLid ? [unknown(WHAT.lid, UNKNOWN, LOOK_IN_POWER)] : []),
			lockLine(machine, isConsole),
		];
	}
	const login = logindSettings(machine);
	const held = heldNow(machine);
	return [
		idleLine({ login, held, isConsole }),
		...(hasLid ? [lidLine(login, held)] : []),
		lockLine(machine, isConsole),
	];
}

function idleLine({
	login,
	held,
	isConsole,
}: {
	readonly login: ReadonlyMap<string, string>;
	readonly held: readonly string[];
	readonly isConsole: boolean;
}): DoctorLine {
	// Defaults of logind.conf(5).
	const action = login.get('IdleAction') ?? 'ignore';
	const isHeld = held.includes('idle');
	if (action !== 'ignore' && !isHeld)
		return look(WHAT.sleep, idleAction(action, login.get('IdleActionSec') ?? '30min'), STOP_IDLE);
	const found = action === 'ignore' ? NEVER_BY_LOGIND : HELD_AWAKE;
	// A desktop has its own mind, and does not tell it here.
	return isConsole ? fine(WHAT.sleep, found) : unknown(WHAT.sleep, found, LOOK_IN_POWER);
}

function lidLine(login: ReadonlyMap<string, string>, held: readonly string[]): DoctorLine {
	if (held.includes('handle-lid-switch')) return unknown(WHAT.lid, LID_BY_DESKTOP, LOOK_IN_POWER);
	const action = login.get('HandleLidSwitch') ?? 'suspend';
	const onMains = login.get('HandleLidSwitchExternalPower') ?? action;
	if (action === 'ignore' && onMains === 'ignore') return fine(WHAT.lid, LID_IGNORED);
	return look(WHAT.lid, lidAction(action === 'ignore' ? onMains : action), LID_OPEN);
}

function lockLine(machine: Machine, isConsole: boolean): DoctorLine {
	if (!isConsole) return unknown(WHAT.lock, UNKNOWN, LOOK_IN_LOCK);
	// Seconds, 0 for never (the kernel's parameter consoleblank).
	const said = machine.text(BLANK_AFTER)?.trim() ?? '';
	if (!/^\d+$/.test(said)) return unknown(WHAT.lock, NOT_TOLD, STOP_BLANK);
	return said === '0'
		? fine(WHAT.lock, CONSOLE_NEVER)
		: look(WHAT.lock, consoleBlank(Number(said)), STOP_BLANK);
}

/** Folders of drop-ins, those before which others go last (logind.conf(5), systemd.syntax(7)). */
const DROP_INS = [
	'/usr/lib/systemd/logind.conf.d',
	'/usr/local/lib/systemd/logind.conf.d',
	'/run/systemd/logind.conf.d',
	'/etc/systemd/logind.conf.d',
] as const;
/** The first that is there counts. */
const MAIN_FILES = [
	'/etc/systemd/logind.conf',
	'/run/systemd/logind.conf',
	'/usr/lib/systemd/logind.conf',
] as const;

/** What is set of the login manager, the later file before the earlier; what is not is at its default. */
function logindSettings({ text, names }: Machine): ReadonlyMap<string, string> {
	const main = Iterator.from(MAIN_FILES)
		.map(text)
		.find((one) => one !== null);
	const dropIns = new Map<string, string>();
	for (const folder of DROP_INS) {
		for (const name of names(folder)) {
			if (name.endsWith('.conf')) dropIns.set(name, `${folder}/${name}`);
		}
	}
	const inOrder = [...dropIns].toSorted(([one], [other]) => (one < other ? -1 : 1));
	const settings = new Map<string, string>();
	for (const content of [main ?? '', ...inOrder.map(([, path]) => text(path) ?? '')]) {
		for (const [, key = '', value = ''] of content.matchAll(
			/^[ \t]*(\w+)[ \t]*=[ \t]*(.*?)[ \t]*$/gm,
		)) {
			// An empty value sets the default again.
			if (value === '') settings.delete(key);
			else settings.set(key, value);
		}
	}
	return settings;
}

/** What is kept from happening now, as the login manager says (org.freedesktop.login1(5), BlockInhibited). */
function heldNow({ printedBy }: Machine): readonly string[] {
	const said = printedBy('busctl', [
		'get-property',
		'org.freedesktop.login1',
		'/org/freedesktop/login1',
		'org.freedesktop.login1.Manager',
		'BlockInhibited',
	]);
	return /"(.*)"/.exec(said ?? '')?.[1]?.split(':') ?? [];
}

function macSleep({ printedBy }: Machine): DoctorLine[] {
	const said = printedBy('pmset', ['-g']) ?? '';
	// Minutes, 0 for never (pmset(1)).
	const minutes = (name: string) => {
		const found = new RegExp(`^\\s*${name}\\s+(\\d+)`, 'm').exec(said)?.[1];
		return found === undefined ? null : Number(found);
	};
	const sleep = minutes('sleep');
	const display = minutes('displaysleep');
	const sleepLine = (): DoctorLine => {
		if (sleep === null) return unknown(WHAT.sleep, NOT_TOLD, LOOK_IN_LOCK_MAC);
		if (sleep > 0) return look(WHAT.sleep, sleepAfter(sleep), STOP_SLEEP_MAC);
		if (display === null) return unknown(WHAT.sleep, NOT_TOLD, LOOK_IN_LOCK_MAC);
		if (display > 0) return look(WHAT.sleep, displayAfter(display), STOP_SLEEP_MAC);
		return fine(WHAT.sleep, SLEEP_NEVER);
	};
	return [
		sleepLine(),
		unknown(WHAT.lid, UNKNOWN, LID_MAC),
		unknown(WHAT.lock, UNKNOWN, LOOK_IN_LOCK_MAC),
	];
}

/** On mains or on battery. */
export function powerLine(machine: Machine): DoctorLine {
	const found =
		machine.platform === 'linux'
			? linuxPower(machine)
			: machine.platform === 'darwin'
				? macPower(machine)
				: null;
	if (found === null) return unknown(WHAT.power, NOT_TOLD, PLUG_IN);
	const { isOnMains, percent } = found;
	return isOnMains
		? fine(WHAT.power, withCharge(ON_MAINS, percent))
		: look(WHAT.power, withCharge(ON_BATTERY, percent), PLUG_IN);
}

type Power = { readonly isOnMains: boolean; readonly percent: number | null };

const SUPPLIES = '/sys/class/power_supply';

/** By the kernel's files (Documentation/ABI/testing/sysfs-class-power). */
function linuxPower({ names, text }: Machine): Power | null {
	const supplies = names(SUPPLIES).map((name) => {
		const of = (file: string) => text(`${SUPPLIES}/${name}/${file}`)?.trim() ?? '';
		return { type: of('type'), online: of('online'), scope: of('scope'), of };
	});
	// A mouse or a headset has a battery too, and says that it is a device's.
	const own = supplies.filter(({ scope }) => scope !== 'Device');
	const battery = own.find(({ type }) => type === 'Battery');
	const capacity = battery?.of('capacity') ?? '';
	const percent = /^\d+$/.test(capacity) ? Number(capacity) : null;
	const plugs = own.filter(({ type, online }) => type !== 'Battery' && /^[012]$/.test(online));
	if (plugs.some(({ online }) => online !== '0')) return { isOnMains: true, percent };
	if (battery?.of('status') === 'Discharging') return { isOnMains: false, percent };
	return plugs.length > 0 && battery !== undefined ? { isOnMains: false, percent } : null;
}

function macPower({ printedBy }: Machine): Power | null {
	const said = printedBy('pmset', ['-g', 'batt']) ?? '';
	const source = /drawing from '(AC|Battery) Power'/.exec(said)?.[1];
	if (source === undefined) return null;
	const percent = /(\d+)%/.exec(said)?.[1];
	return { isOnMains: source === 'AC', percent: percent === undefined ? null : Number(percent) };
}
