import { RULE_NOTES } from '../../routing/site/rules/rule-notes.ts';
import { ruleAt, ruleWords } from '../../routing/site/rules/rule-value.ts';
import type { Site } from '../../routing/site/site.ts';

/** Something that a plan takes for granted, which no code or standard sets and no data sheet gave. */
export interface Assumption {
  /** Unlike that of any other: what it is confirmed under. */
  readonly key: string;
  readonly name: string;
  readonly value: string;
  /** What it is to be confirmed by. */
  readonly confirm: string;
}

/** What the plan of a site assumes, with what is to be confirmed before it is built by. */
export const assumptionsOf = (site: Pick<Site, 'rules' | 'units' | 'equipment'>): readonly Assumption[] => [
  ...RULE_NOTES.flatMap((note) =>
    note.confirm === undefined
      ? []
      : [
          {
            key: `rule ${note.path}`,
            name: note.name,
            value: ruleWords(note, ruleAt(site.rules, note.path), site.units),
            confirm: note.confirm,
          },
        ],
  ),
  // Transformers whose figures are not entered are taken as is usual.
  ...site.equipment.flatMap(({ id, kind, xr, impedancePercent }) =>
    kind !== 'transformer' || (xr !== undefined && impedancePercent !== undefined)
      ? []
      : [
          {
            key: `impedance of ${id}`.slice(0, 64),
            name: `impedance of ${id}`,
            value: impedancePercent === undefined ? 'none' : 'usual X/R',
            confirm: 'nameplate of the transformer',
          },
        ],
  ),
];
