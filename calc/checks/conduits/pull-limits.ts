import { kept } from '../../../routing/kept/kept.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { gridlineWords } from '../../../routing/site/place/gridline-words.ts';
import type { Finding } from '../../../routing/site/rules/finding.ts';
import { siteRule } from '../../../routing/site/rules/rule-notes.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3, Rules, Site } from '../../../routing/site/site.ts';
import type { Design } from '../../branches/design.ts';
import { pullPlaces } from '../../branches/pulls/pull-places.ts';

/** Something wrong with one conduit. Those that one cure would help share it. */
export interface Trouble {
  readonly finding: Finding;
  /** Where pull points would cure it; empty where they would not. */
  readonly cure: string;
  /** The cure as a sentence, with how far along each lies. */
  readonly words: string;
}

/** What places are told by: the gridlines, and the units of the file. Kept as one object while it is the same. */
export interface LimitGround {
  readonly gridlines: Site['gridlines'];
  readonly units: Units;
}

export const limitGround = ({ gridlines, units }: LimitGround): LimitGround => groundBy(gridlines, units);

const groundBy = kept((gridlines: Site['gridlines'], units: Units): LimitGround => ({ gridlines, units }));

/** A conduit between two places where it can be opened. */
export interface Limited {
  /** How it is spoken of, such as "Conduit P1-3.2, P1-3.J1 to D03,". */
  readonly what: string;
  readonly about: readonly string[];
  /** Where it begins. */
  readonly from: string;
  readonly path: readonly Point3[];
  readonly length: number;
  readonly bends: number;
  readonly bendDegrees: number;
}

const isBent = ({ bendDegrees }: Pick<Limited, 'bendDegrees'>, rules: Rules): boolean =>
  bendDegrees > rules.bendLimit + 1e-6;
const isLong = ({ length }: Pick<Limited, 'length'>, rules: Rules): boolean => length > rules.pullLimit + 1e-9;

/** Whether there is anything to say of a conduit's bends and length. */
export const isPastLimits = (of: Pick<Limited, 'bendDegrees' | 'length'>, rules: Rules): boolean =>
  isBent(of, rules) || isLong(of, rules);

/** Too many degrees of bend, and too long a pull, each with where pull points would cure it: as few as will do. */
export function limitTroubles(of: Limited, { tables, rules }: Design, ground: LimitGround): readonly Trouble[] {
  if (!isPastLimits(of, rules)) return [];
  const [bent, long] = [isBent(of, rules), isLong(of, rules)];
  const cure = cureOf(of, rules, ground);
  return [
    ...(bent ? [{ finding: tooBent(of, rules, tables.bendLimit.source), ...cure }] : []),
    ...(long ? [{ finding: tooLong(of, rules, ground.units), ...cure }] : []),
  ];
}

function cureOf({ path, from }: Limited, rules: Rules, { gridlines, units }: LimitGround): Omit<Trouble, 'finding'> {
  const places = pullPlaces(path, rules);
  if (places.length === 0) return { cure: '', words: '' };
  const where = places.map(({ at }) => gridlineWords(at, gridlines, units));
  const told = places.map(({ along }, i) => `${where[i]} (${printLength(along, units)} from ${from})`);
  return {
    cure: where.join('; '),
    words: ` ${places.length === 1 ? 'A pull point would do' : `${places.length} pull points would do`}: ${told.join('; ')}.`,
  };
}

const tooBent = ({ what, about, bends, bendDegrees }: Limited, rules: Rules, source: string): Finding => ({
  severity: 'fail',
  rule: 'bends',
  about,
  says: `${what} bends ${bends} times, ${Math.round(bendDegrees)} degrees in all, between two places where it can be opened; the limit is ${rules.bendLimit}.`,
  value: bendDegrees,
  limit: rules.bendLimit,
  unit: 'degrees',
  source: `${source}; ${siteRule('bendLimit')}`,
});

const tooLong = ({ what, about, length }: Limited, rules: Rules, units: Units): Finding => ({
  severity: 'warn',
  rule: 'pull-length',
  about,
  says: `${what} is ${printLength(length, units)} long between two places where it can be opened; the limit is ${printLength(rules.pullLimit, units)}.`,
  value: length,
  limit: rules.pullLimit,
  unit: 'ft',
  source: `${siteRule('pullLimit')}; common practice, no source`,
});
