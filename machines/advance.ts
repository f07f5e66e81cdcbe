// The one place where a machine is moved: by XState's pure functions, on plain snapshots that a journal
// can carry. No actor ever runs.

import {
	type AnyStateMachine,
	type ContextFrom,
	type EventFromLogic,
	initialTransition,
	transition,
} from 'xstate';

/** A machine's condition as plain data. */
export type Condition<Value extends string, Context> = {
	readonly value: Value;
	readonly context: Context;
};

/** The condition that a machine begins in. */
export function begin<Machine extends AnyStateMachine, Value extends string>(
	machine: Machine,
	input?: unknown,
): Condition<Value, ContextFrom<Machine>> {
	const [{ value, context }] = initialTransition<AnyStateMachine>(machine, input);
	return { value: value as Value, context: context as ContextFrom<Machine> };
}

/**
 * The condition after an event, or null when the machine does not take the event now.
 * Refusing is the machine's whole say: callers turn it into words.
 */
export function advance<Machine extends AnyStateMachine, Value extends string>(
	machine: Machine,
	condition: Condition<Value, ContextFrom<Machine>>,
	event: EventFromLogic<Machine>,
): Condition<Value, ContextFrom<Machine>> | null {
	if (Object.keys(condition.context).length > 0) return moved(machine, condition, event);
	const asked = `${condition.value} ${JSON.stringify(event)}`;
	const answers = answersOf.get(machine) ?? new Map<string, Condition<string, unknown> | null>();
	answersOf.set(machine, answers);
	const known = answers.get(asked);
	if (known !== undefined) return known as Condition<Value, ContextFrom<Machine>> | null;
	const after = moved<Machine, Value>(machine, condition, event);
	answers.set(asked, after);
	return after;
}

/** What machines answered that carry no data, where the same question has always the same answer. */
const answersOf = new WeakMap<AnyStateMachine, Map<string, Condition<string, unknown> | null>>();

function moved<Machine extends AnyStateMachine, Value extends string>(
	machine: Machine,
	condition: Condition<Value, ContextFrom<Machine>>,
	event: EventFromLogic<Machine>,
): Condition<Value, ContextFrom<Machine>> | null {
	const before = machine.resolveState({
		value: condition.value,
		context: condition.context as never,
	});
	const [after] = transition<AnyStateMachine>(machine, before, event);
	if (after.value === before.value && after.context === before.context) return null;
	return { value: after.value as Value, context: after.context as ContextFrom<Machine> };
}
