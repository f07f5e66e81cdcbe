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
	const before = machine.resolveState({
		value: condition.value,
		context: condition.context as never,
	});
	const [after] = transition<AnyStateMachine>(machine, before, event);
	if (after.value === before.value && after.context === before.context) return null;
	return { value: after.value as Value, context: after.context as ContextFrom<Machine> };
}
