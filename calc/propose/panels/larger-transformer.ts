import type { Site, SiteFile } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { usualImpedance } from '../../supply/feeders/feeder-trial.ts';
import { inTheGround, transformerFor } from './panel-source.ts';
import { transformerPiece } from './panel-weights.ts';
import { fedPrice } from './trial-price.ts';

/** The next size of a transformer, what it costs more, and the file with it. */
export interface LargerTransformer {
  readonly was: number;
  readonly kva: number;
  /** Dollars more, of itself and of a foot of the feeder into it. */
  readonly itself: number;
  readonly foot: number;
  readonly apply: (file: SiteFile, feeder: string) => SiteFile;
}

/** A proposed transformer one standard size larger, with the breaker and the feeder that it wants; null where there is none. */
export function largerTransformer(site: Site, id: string, prices: PriceList): LargerTransformer | null {
  const { rules } = site;
  const { tables } = designOf(rules);
  const own = site.equipment.find((one) => one.id === id && one.kind === 'transformer');
  const feeder = site.feeders.find(({ to }) => to === id);
  const kva = own?.kva;
  const size = kva === undefined ? undefined : tables.threePhaseTransformers.rows.find((row) => row.kva > kva)?.kva;
  if (own?.primaryVolts === undefined || feeder === undefined || kva === undefined || size === undefined) return null;
  const priced = (each: number) => {
    const { breakerAmps } = transformerFor(tables, each, own.primaryVolts!);
    const source = { volts: own.primaryVolts!, phases: 3 } as const;
    const conductor = inTheGround(rules, breakerAmps);
    return fedPrice(rules, prices, source, transformerPiece(rules, each, source), { conductor, breakerAmps });
  };
  const [now, then] = [priced(kva), priced(size)];
  const { breakerAmps } = transformerFor(tables, size, own.primaryVolts);
  const conductor = inTheGround(rules, breakerAmps);
  return {
    was: kva,
    kva: size,
    itself: then.itself - now.itself,
    foot: then.feeder - now.feeder + then.trench - now.trench,
    apply: (file, name) => ({
      ...file,
      equipment: (file.equipment ?? []).map((one) =>
        one.id === id ? { ...one, kva: size, impedancePercent: usualImpedance(tables, size) } : one,
      ),
      feeders: (file.feeders ?? []).map((one) => (one.id === name ? { ...one, conductor, breakerAmps } : one)),
    }),
  };
}
