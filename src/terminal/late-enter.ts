// Enter that is typed after a key which was enough by itself: whoever is used to it types it all the same, and on
// the screen that the key has opened it would record something. So the next that takes the keyboard passes over
// it.

let isExpected = false;

/** To be called once a single key has chosen what opens next. */
export function expectLateEnter(): void {
	isExpected = true;
}

/** Whether one is to be passed over; asked once. */
export function takeLateEnter(): boolean {
	const was = isExpected;
	isExpected = false;
	return was;
}
