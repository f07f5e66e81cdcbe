// The one place where a machine is moved: by XState's pure functions, on plain snapshots that a journal
// can carry. No actor ever runs.

import {
	type AnyActorScope,
	type AnyStateMachine,
	type ContextFrom,
	createActor,
	type EventFromLogic,
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
	// An actor that is not started has worked out where it begins; XState's free function would do so twice.
	const snapshot = createActor<AnyStateMachine>(machine, { input }).getSnapshot();
	return { value: snapshot.value as Value, context: snapshot.context as ContextFrom<Machine> };
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
	const after = machine.transition(before as never, event as never, nowhere(machine));
	if (after.value === before.value && after.context === before.context) return null;
	return { value: after.value as Value, context: after.context as ContextFrom<Machine> };
}

const nowhereOf = new WeakMap<AnyStateMachine, AnyActorScope>();

/**
 * The surroundings that XState's transition asks for, in which nothing runs and nothing is heard.
 * Its free function `transition` makes new ones at every call, which is most of what a replay takes.
 */
function nowhere(machine: AnyStateMachine): AnyActorScope {
	const made = nowhereOf.get(machine);
	if (made) return made;
	const self = createActor(machine);
	const scope: AnyActorScope = {
		self,
		system: self.system,
		id: self.id,
		sessionId: self.sessionId,
		logger: () => {},
		defer: () => {},
		emit: () => {},
		actionExecutor: () => {},
		stopChild: () => {},
	};
	nowhereOf.set(machine, scope);
	return scope;
}
