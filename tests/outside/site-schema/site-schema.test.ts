import { describe, expect, it, test } from 'vitest';
import { readSiteValue } from '../../../routing/site/file/read.ts';
import { siteJsonSchema } from '../../../routing/site/schema/json-schema.ts';
import { everyField, withPart } from '../../routing/site/file/every-field.ts';
import cases from './cases.json' with { type: 'json' };
import verdicts from './verdicts.json' with { type: 'json' };

type Path = readonly (string | number)[];

interface Case {
  readonly name: string;
  readonly base?: unknown;
  readonly path?: Path;
  readonly part?: unknown;
  readonly also?: readonly (readonly [path: Path, part?: unknown])[];
}

/** The same edits of the same base that `check.py` judges. */
function siteOf({ base, path = [], part, also = [] }: Case): unknown {
  if (base !== undefined) return base;
  const site = withPart(everyField(), path, part);
  for (const [otherPath, otherPart] of also) withPart(site, otherPath, otherPart);
  return site;
}

describe('the published JSON Schema and reading', () => {
  // Judged by python-jsonschema; see check.py for how, verdicts.json for the versions.
  test.each(cases as unknown as readonly Case[])('agree on: $name', (one) => {
    const valid = (verdicts.valid as Readonly<Record<string, boolean>>)[one.name];
    expect(readSiteValue(siteOf(one)).ok).toBe(valid);
  });

  it('is the schema that was judged: run check.py again when it changes', () => {
    expect(siteJsonSchema()).toEqual(verdicts.schema);
  });
});
