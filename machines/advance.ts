// The one place where a machine is moved: by XState's pure function, on plain data that a journal can carry. No
// actor ever runs. A machine says where a thing goes and by name what then happens to its data; the data itself
// is none of the machine's, so that the same question has always the same answer and is worked out once.

import { type AnyStateMachine, transition } from 'xstate';

/** A machine's condition as plain data. */
export type Condition<Value extends string, Context> = {
	readonly value: Value;
	readonly context: Context;
};

type Kind = { readonly type: string };

/** A machine's own events: each kind of event with what the guards ask. */
export type Question<Event extends Kind, Asked> = Event extends Kind
	? Pick<Event, 'type'> & Asked
	: never;

/** What one event changes of the data; what it leaves out stays. */
export type Change<Context, Event> = (context: Context, event: Event) => Partial<Context>;

/** What may happen to a thing. */
export type Law<Context, Event extends Kind> = {
	readonly machine: AnyStateMachine;
	/** All that the machine's guards ask, of the data and of the event. */
	readonly asked: (context: Context, event: Event) => object;
	/** What the machine's actions do, by their names. */
	readonly changes: Readonly<Record<string, Change<Context, Event>>>;
};

/** Actions for a machine that only names what is done. */
export function named<Name extends string>(
	changes: Readonly<Record<Name, unknown>>,
): Record<Name, () => void> {
	return Object.fromEntries(Object.keys(changes).map((name) => [name, () => {}])) as never;
}

/**
 * The condition after an event, or null when the machine does not take the event now.
 * Refusing is the machine's whole say: callers turn it into words.
 */
export function advance<Value extends string, Context, Event extends Kind>(
	{ machine, asked, changes }: Law<Context, Event>,
	{ value, context }: Condition<Value, Context>,
	event: Event,
): Condition<Value, Context> | null {
	const answer = answered(machine, value, { type: event.type, ...asked(context, event) });
	if (answer === null) return null;
	const change = (now: Context, name: string): Context => ({
		...now,
		...changes[name]?.(now, event),
	});
	return { value: answer.value as Value, context: answer.actions.reduce(change, context) };
}

type Answer = { readonly value: string; readonly actions: readonly string[] };

/** What each machine has answered: working it out takes far longer than finding it. */
const answersOf = new WeakMap<AnyStateMachine, Map<string, Answer | null>>();

function answered(machine: AnyStateMachine, value: string, event: Kind): Answer | null {
	const answers = answersOf.get(machine) ?? new Map<string, Answer | null>();
	answersOf.set(machine, answers);
	const question = `${value} ${JSON.stringify(event)}`;
	const known = answers.get(question);
	if (known !== undefined) return known;
	const answer = workedOut(machine, value, event);
	answers.set(question, answer);
	return answer;
}

/** Machines have no states within states and do nothing at entering or leaving one: what they take is all that happens. */
function workedOut(machine: AnyStateMachine, value: string, event: Kind): Answer | null {
	const [after, actions] = transition(machine, machine.resolveState({ value, context: {} }), event);
	if (after.value === value && actions.length === 0) return null;
	return { value: after.value, actions: actions.map(({ type }) => type) };
}
