import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { sources } from './sources.ts';

const ROOT = resolve(import.meta.dirname, '../..');

/** What grows for as long as the page is open, and why it does not without end. */
const BOUNDED: Readonly<Record<string, string>> = {
  'calc/cli/writing/crew.ts texts': 'the files that one command names',
  'calc/prices/kind.ts kinds': 'kinds that somebody holds: the others are swept out',
  'calc/sheets/pdf/kit/ink.ts COLOURS': 'the inks of the code and the colors of a status, a handful',
  'calc/sheets/pdf/kit/scripts/signs.ts opened': 'the pages of the table of signs',
  'web/document/planning.ts listeners': 'who listens takes itself out',
  'web/field/ask-field.ts hearers': 'an entry goes when it is answered, stopped or has failed',
  'web/field/field-worker.ts open': 'an entry goes when it is answered or stopped',
  'web/long-work/work-store.ts works': 'so many as may wait: an entry goes when it is done or stopped',
};

test('what a module keeps for itself is bounded, or held with what it is of', () => {
  const growing = ['routing', 'calc', 'web'].flatMap((room) =>
    sources(room).flatMap((file) =>
      [...readFileSync(resolve(ROOT, file), 'utf8').matchAll(GROWS)]
        .filter(
          ([, , type = '']) =>
            !type.includes('Readonly') &&
            !/^: (Counts|Photos|Passing|Tally|IssuedConduits|Site\['asBuilt'\])$/.test(type),
        )
        .map(([, name]) => `${file} ${name}`),
    ),
  );
  expect(growing.sort()).toEqual(Object.keys(BOUNDED).sort());
});

/** A map or a set without anything in it that stands in a module by itself; a WeakMap goes with what it is of. */
const GROWS = /^(?:export )?(?:const|let) (\w+)(: [^=]+?)? = new (?:Map|Set)(?:<.*>)?\(\);/gm;
