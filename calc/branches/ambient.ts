import { printTemperature, printTemperatureRange } from '../../routing/site/numbers/temperature.ts';
import type { Raceway, Rules } from '../../routing/site/site.ts';
import { rooftopAdderC } from '../tables/ampacity-of.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { SILENT, type Tell } from '../words/explain.ts';

const INCHES_PER_FOOT = 12;

/**
 * Ambient of the hottest raceway of those that a circuit lies in, °C, for the least ampacity along a circuit is that of the
 * whole (310.14(A)(2)): each its own or that of its place, and warmer in the sun close above a roof (310.15(B)(2)). That of
 * the site where there is none.
 */
export function hottestOn(
  tables: CodeTables,
  rules: Pick<Rules, 'ambientC' | 'placeAmbientC' | 'insulation'>,
  raceways: readonly (Raceway | undefined)[],
  tell: Tell = SILENT,
): number {
  let hottest = rules.ambientC;
  let where: Raceway | undefined;
  raceways.forEach((raceway, i) => {
    const ambient = raceway === undefined ? rules.placeAmbientC.overhead : own(raceway) + roof(raceway);
    if (i > 0 && ambient <= hottest) return;
    hottest = ambient;
    where = raceway;
  });
  tell(() => ({
    find: 'ambient',
    formula: 'the hottest raceway on the way: its own ambient or that of its place, and what a roof in the sun adds',
    values:
      where === undefined
        ? { site: printTemperature(hottest) }
        : {
            hottest: where.id,
            [where.ambientC === undefined ? where.place : 'its own']: printTemperature(own(where)),
            'for a roof': printTemperatureRange(roof(where)),
          },
    result: hottest,
    unit: '°C',
    source: `ambient temperatures of the site rules; ${tables.sections.severalAmbients} (from memory), ${tables.rooftop.source}`,
  }));
  return hottest;

  function own({ ambientC, place }: Raceway): number {
    return ambientC ?? rules.placeAmbientC[place];
  }

  function roof({ aboveRoof }: Raceway): number {
    return aboveRoof === undefined ? 0 : rooftopAdderC(tables, rules.insulation, aboveRoof * INCHES_PER_FOOT);
  }
}
