import { type TypedText, typedText } from '../../parts/typed-text.ts';

/** From the last place, or on the site; one of the two pairs holds at a time. */
export const FROM_LAST = ['length', 'angle'] as const;
export const ON_SITE = ['x', 'y'] as const;
export type TypedPart = (typeof FROM_LAST)[number] | (typeof ON_SITE)[number] | 'elevation';

/** What is being typed while the hand draws. The field that has not been typed follows the hand. */
export interface Typing {
  readonly field: TypedPart;
  readonly length: TypedText;
  readonly angle: TypedText;
  readonly x: TypedText;
  readonly y: TypedText;
  readonly elevation: TypedText;
}

const NOTHING = typedText('');

export const startTyping = (field: TypedPart, first = ''): Typing => ({
  field,
  length: NOTHING,
  angle: NOTHING,
  x: NOTHING,
  y: NOTHING,
  elevation: NOTHING,
  [field]: typedText(first),
});

/** What is typed after a field was changed: the two pairs say where in two ways, and the later one holds. */
export function retyped(typing: Typing, field: TypedPart, text: string): Typing {
  const onSite = field === 'x' || field === 'y';
  const fromLast = field === 'length' || field === 'angle';
  return {
    ...typing,
    ...(onSite && text !== '' && { length: NOTHING, angle: NOTHING }),
    ...(fromLast && text !== '' && { x: NOTHING, y: NOTHING }),
    field,
    [field]: typedText(text),
  };
}

/** The key that begins a typed length. */
export const FIGURE = /^[0-9.(]$/;
