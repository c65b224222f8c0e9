import * as v from 'valibot';
import {
  filledText,
  id,
  maybe,
  nonNegative,
  number,
  point2,
  point3,
  positive,
  text,
  told,
  wholePositive,
} from './schema-parts.ts';

/**
 * What a mark may be of: work that is done, what was measured, checked, answered, seen or named, and what became of names
 * and places.
 */
export const MARK_KINDS = [
  'set',
  'pulled',
  'terminated',
  'tested',
  'measured',
  'place',
  'checked',
  'answered',
  'note',
  'photo',
  'line',
  'renamed',
  'moved',
] as const;

/** Most marks that one file holds. */
export const MAX_MARKS = 200_000;
/** Longest initials. */
export const MAX_INITIALS = 12;
/** Longest text that a mark says, in letters. */
export const MAX_SAID = 2000;

const markId = v.pipe(v.string(), v.regex(/^[0-9A-Za-z_-]{1,40}$/));
const shortText = v.pipe(filledText, v.maxLength(64));

export const photoSchema = v.strictObject({
  hash: told(v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)), 'SHA-256 of the picture, which stays with who took it.'),
  bytes: wholePositive,
  width: wholePositive,
  height: wholePositive,
});

/** What a meter or a tool of a test reads in: megohms, volts, percent, pound-force inches, newton metres. */
export const READING_UNITS = ['Mohm', 'V', '%', 'lbf-in', 'Nm'] as const;

/** What a test answers without a figure: the order of the lines, or whether the protection opened. */
export const READING_WORDS = ['ABC', 'ACB', 'tripped', 'did not trip'] as const;

const readingSchema = v.strictObject({
  value: maybe(told(number, 'What the meter read, in its unit.')),
  unit: maybe(v.picklist(READING_UNITS)),
  word: maybe(told(v.picklist(READING_WORDS), 'What a test without a figure answered.')),
  asked: maybe(told(positive, 'What it is judged by where whoever measured states that, in the same unit.')),
  amps: maybe(told(nonNegative, 'The load it was read at, A.')),
});

/** One thing that one person wrote down in the field. It is never changed: a later one takes its place. */
export const markSchema = v.strictObject({
  id: told(markId, 'Unlike any other mark, whoever made it.'),
  of: told(id, 'What it is of: an element, drawn or not, by its name then; of a line the name of the line.'),
  part: maybe(told(shortText, 'Which part of that: box, retractor, at; of a photo its hash; of a test its name.')),
  what: v.picklist(MARK_KINDS),
  by: told(v.pipe(text, v.maxLength(MAX_INITIALS)), 'Initials of who made it; empty where none were given.'),
  time: told(wholePositive, 'Logical time: one more than the highest that its author knew of.'),
  on: maybe(told(v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}$/)), 'The day, by the clock of who made it.')),
  after: maybe(told(v.pipe(v.array(markId), v.maxLength(1000)), 'The marks that it takes the place of.')),
  drawing: maybe(
    told(wholePositive, 'How many renamings and moves of the whole lot its author knew of; 0 where absent.'),
  ),
  gone: maybe(told(v.literal(true), 'It takes back what stood there.')),
  place: maybe(told(point3, 'Where it was found.')),
  from: maybe(told(v.pipe(v.array(shortText), v.maxLength(4)), 'The lines that the tape was held to.')),
  text: maybe(v.pipe(text, v.maxLength(MAX_SAID))),
  photo: maybe(photoSchema),
  reading: maybe(told(readingSchema, 'What a test before handover read.')),
  line: maybe(
    told(
      v.strictObject({ axis: v.picklist(['x', 'y']), at: point3 }),
      'A line to measure from, as gridlines of that axis are: through a place.',
    ),
  ),
  to: maybe(told(id, 'The new name of what was renamed.')),
  motion: maybe(
    told(
      v.strictObject({ to: point2, rotation: number, mirrored: maybe(v.literal(true)) }),
      'How the whole lot was moved: where [0, 0] came to lie and +x to point, after y was turned over where it was mirrored.',
    ),
  ),
});
