import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { Plan } from '../../../calc/plan/plan-shape.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';
import { libraryPedestals } from '../../bench/samples/library-pedestals.ts';
import { FAULTS } from './faults/index.ts';
import { changed, lotChanged, lotWith, SMALL_LOT } from './faults/small-lot.ts';

const planOf = (file: SiteFile): Plan => plan(toSite(file));
const soundOf = (file: SiteFile): string | undefined =>
  planOf(file).findings.find(({ rule }) => rule === 'sound')?.says;

/** Numbers of checks and of things that a plan has to show for itself. */
function countedIn({ checks }: Plan): readonly [checks: number, things: number] {
  const applied = checks.filter(({ lookedAt }) => lookedAt > 0);
  return [applied.length, applied.reduce((sum, { lookedAt }) => sum + lookedAt, 0)];
}

describe('"sound"', () => {
  test('is said of both alternatives of the lot that is there to be compared, with every stall served', () => {
    for (const file of [libraryLot(), libraryPedestals()])
      expect(soundOf(file)).toContain('16 of 16 stalls are served');
  });
  test('names how many checks were made on how many things, by which tables, and what nobody looked at', () => {
    for (const file of [SMALL_LOT, libraryLot()]) {
      const made = planOf(file);
      const [checks, things] = countedIn(made);
      const says = soundOf(file)!;
      expect(says).toContain(`${checks} checks on ${things.toLocaleString('en-US')} things`);
      expect(says).toContain('NEC 2023');
      for (const text of made.notChecked) expect(says).toContain(text);
      expect(made.notChecked).toContain('the capacity of the structure for what hangs from it');
    }
  });

  test('claims no check whose subject is absent', () => {
    const { checks } = planOf(SMALL_LOT);
    const none = checks.filter(({ lookedAt }) => lookedAt === 0).map(({ rule }) => rule);
    // Neither keep-outs nor aisles, loads that generate, transformers, trays or buried raceways are drawn.
    expect(none).toEqual(
      expect.arrayContaining([
        'keepout-crossed',
        'low-cord',
        'back-feed',
        'transformer-overload',
        'tray-fill',
        'cover',
      ]),
    );
    const [checked] = countedIn(planOf(SMALL_LOT));
    expect(checked).toBe(checks.length - none.length);
  });

  const { drops } = SMALL_LOT;
  test.each<[string, SiteFile]>([
    ['an empty lot', { format: 'overrow/site', version: 1, units: 'ft', name: 'empty' }],
    ['stalls alone', lotWith({ drops: [], chargers: [], raceways: [], equipment: [], feeders: [] })],
    ['a lot without drops and chargers', lotWith({ drops: [], chargers: [] })],
    ['drops without chargers', lotWith({ chargers: [] })],
    ['one drop without its charger', lotWith({ chargers: changed('chargers', 'EV2', {}).slice(0, 1) })],
    [
      'chargers that are meant for no stall',
      lotWith({ chargers: SMALL_LOT.chargers.map((one) => ({ ...one, stalls: [] })) }),
    ],
    ['a charger that is meant for no stall', lotChanged('chargers', 'EV2', { stalls: [] })],
    ['panel and chargers deleted, drops left', lotWith({ equipment: [], feeders: [], chargers: [], drops })],
    ['nothing that feeds the panel', FAULTS['supply-source']],
    ['an edition whose tables are not held', FAULTS['code-edition']],
    ['a tray whose fill nobody checks', FAULTS['tray-fill']],
    [
      'a feeder whose raceway cannot be filled by the tables',
      lotChanged('feeders', 'F1', { conductor: { ...SMALL_LOT.feeders[0].conductor, size: '1250' } }),
    ],
  ])('is not said over %s, in which nothing fails', (_, file) => {
    const { findings } = planOf(file);
    expect(findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
    expect(soundOf(file)).toBeUndefined();
  });

  test('is said over what is to be checked or noted, and how much of it there is', () => {
    expect(soundOf(FAULTS['pull-length'])).toContain('to be checked.');
    expect(soundOf(SMALL_LOT)).not.toContain('to be checked');
    expect(soundOf(FAULTS['rules-changed'])).toBeDefined();
    expect(soundOf(FAULTS.unserved)).toContain('1 of 2 stalls');
  });

  test('is withheld for reasons that are told', () => {
    expect(planOf(lotWith({ chargers: [] })).withheld).toEqual(['drops hang without a charger', 'no stall is served']);
    expect(planOf(lotChanged('chargers', 'EV2', { stalls: [] })).withheld).toEqual([
      'the reach of 1 charger meant for no stall is not looked at',
    ]);
    expect(planOf({ ...lotWith({}), stalls: [], drops: [], chargers: [] }).withheld).toEqual([
      'no charger and no stall is drawn',
    ]);
    expect(planOf(SMALL_LOT).withheld).toEqual([]);
  });
});

test('a plan by tables that were not asked for says which they are', () => {
  const made = planOf(FAULTS['code-edition']);
  for (const { source } of made.checks) expect(source).not.toContain('1776');
  expect(made.checks.find(({ rule }) => rule === 'cord-limit')!.source).toContain('NEC 2023');
});
