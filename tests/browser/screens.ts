import { FIRST_SCREENS } from './first-screens.ts';
import { LATER_SCREENS } from './later-screens.ts';
import type { Screen } from './screen-acts.ts';

/** The screens in an order in which each is soon reached from the last. */
export const SCREENS: readonly Screen[] = [...FIRST_SCREENS, ...LATER_SCREENS];
