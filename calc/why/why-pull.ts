import { cordStart } from '../../routing/reach/cords/cord-start.ts';
import { HAND } from '../../routing/reach/cords/pull.ts';
import type { Reach } from '../../routing/reach/reach-result.ts';
import type { Charger, Drop, Rules } from '../../routing/site/site.ts';
import { cordFoot, hardestPull } from '../steel/hung-drops.ts';
import { CONNECTOR, CORD_FEET, CORD_WEIGHTS } from '../tables/weights/component-weights.ts';
import { heavier } from '../tables/weights/weight-of.ts';
import type { Step } from '../words/explain.ts';
import { measured } from '../words/measured.ts';

/** How the pull of a cord at its retractor was found, step by step; the weight of its cord alone where it comes to no inlet. */
export function whyPull(
  drop: Drop,
  charger: Pick<Charger, 'amps'>,
  reach: readonly Pick<Reach, 'worst'>[],
  rules: Pick<Rules, 'cordSlack'>,
): readonly Step[] {
  const { from, available } = cordStart(drop, rules);
  const steps: Step[] = [
    {
      find: 'weight of the cord',
      formula: `(cord of ${CORD_FEET} ft with its connector - connector) / ${CORD_FEET} ft`,
      values: {
        amperes: measured(charger.amps, 'A'),
        'cord with connector': measured(heavier(CORD_WEIGHTS.rows, charger.amps), 'lb'),
        connector: measured(CONNECTOR.high, 'lb'),
      },
      result: cordFoot(charger.amps),
      unit: 'lb/ft',
      source: CORD_WEIGHTS.source,
    },
  ];
  const pull = hardestPull(drop, charger, reach, rules);
  if (pull === null) return steps;
  const values = {
    'cord let out': measured(available, 'ft'),
    'retractor at': measured(from[2], 'ft'),
    weight: measured(cordFoot(charger.amps), 'lb/ft'),
  };
  const source = 'statics of a hanging cord (catenary), all of it let out';
  steps.push(
    {
      find: 'pull sideways',
      formula:
        pull.sideways === 0
          ? 'none: the cord hangs straight down, or down to the ground'
          : 'weight x parameter a of the catenary through retractor and inlet',
      values,
      result: pull.sideways,
      unit: 'lb',
      source,
    },
    {
      find: 'pull down',
      formula:
        pull.sideways === 0
          ? 'weight x cord that hangs from the retractor'
          : 'weight x cord from the retractor to the lowest place of the curve',
      values,
      result: pull.down,
      unit: 'lb',
      source,
    },
    {
      find: 'pull in the cord',
      formula: pull.taut
        ? `the cord is all but taut: as a person pulls at most, ${HAND} lb`
        : 'sqrt(down² + sideways²)',
      values: { down: measured(pull.down, 'lb'), sideways: measured(pull.sideways, 'lb') },
      result: pull.pounds,
      unit: 'lb',
      source: pull.taut ? 'common practice, no source' : source,
    },
  );
  return steps;
}
