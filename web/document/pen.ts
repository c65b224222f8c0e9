import type { RecordPen } from './edits/records/records.ts';

const INITIALS_KEY = 'overrow.initials';

const ASKED_KEY = 'overrow.initials-asked';

let initials: string | null = null;
let asked = false;

/** Initials of whoever holds this device; empty where none were given. */
export function initialsHere(): string {
  initials ??= stored(INITIALS_KEY);
  return initials;
}

/** From now on the marks of this device are by that person. */
export function setInitialsHere(by: string): void {
  initials = by;
  try {
    localStorage.setItem(INITIALS_KEY, by);
  } catch {
    // Known for as long as the page stands.
  }
}

function stored(key: string): string {
  try {
    return localStorage.getItem(key) ?? '';
  } catch {
    return '';
  }
}

/** Whether whoever holds this device must still be asked who writes. */
export const mustAskInitials = (): boolean => initialsHere() === '' && !(asked || stored(ASKED_KEY) !== '');

/** They were asked, whatever they answered: they are not asked again. */
export function noteInitialsAsked(): void {
  asked = true;
  try {
    localStorage.setItem(ASKED_KEY, 'yes');
  } catch {
    // Asked for as long as the page stands.
  }
}

const twoFigures = (part: number): string => String(part).padStart(2, '0');

/** The day on which it is, as it is written in a record. */
export function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${twoFigures(now.getMonth() + 1)}-${twoFigures(now.getDate())}`;
}

/** What marks are made with here. */
export const penHere = (): RecordPen => ({ by: initialsHere(), on: today(), newId });

const LETTERS = '0123456789abcdefghijklmnopqrstuvwxyz';

/** Of 3 * 10^18, so that no two people's are alike. */
function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => LETTERS[byte % LETTERS.length]).join('');
}
