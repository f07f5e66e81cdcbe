// What happens to a fault while drawing: it is handed out, and nothing is drawn any more. Without this
// the renderer would draw the trace on a screen that is about to go, and a fault in that would be lost.

import { Component, type ReactNode } from 'react';

type FaultGuardProps = {
	readonly onFault: (error: unknown) => void;
	readonly children: ReactNode;
};

/** Draws its children until one of them throws. */
export class FaultGuard extends Component<FaultGuardProps, { readonly hasFault: boolean }> {
	static getDerivedStateFromError() {
		return { hasFault: true };
	}

	override state = { hasFault: false };

	override componentDidCatch(error: unknown) {
		this.props.onFault(error);
	}

	override render() {
		return this.state.hasFault ? null : this.props.children;
	}
}
