// What a user prefers on the live screen, as far as keys can change it.

import type { LookName } from '../base/colors.ts';

/** Keys by action id, in place of the defaults. */
export type KeyChoices = Readonly<Record<string, string>>;

export type Preferences = { readonly looks: LookName; readonly keys: KeyChoices };
