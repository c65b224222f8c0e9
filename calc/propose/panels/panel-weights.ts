import { kept } from '../../../routing/kept/kept.ts';
import type { PieceWeight } from '../../../routing/propose/equipment/place-groups.ts';
import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { Equipment, Rules } from '../../../routing/site/site.ts';
import { designOf } from '../../branches/design.ts';
import type { PriceList } from '../../prices/price-list.ts';
import { usualImpedance } from '../../supply/feeders/feeder-trial.ts';
import { USUAL_PANELBOARD, USUAL_TRANSFORMER } from '../usual.ts';
import { fullLineAmps, type LoadWish } from './charger-amps.ts';
import { type PanelSize, panelSize } from './panel-size.ts';
import { inTheGround, type PanelSource, type TransformerSize, transformerSize } from './panel-source.ts';
import { branchFootPrice, type FedPrice, fedPrice } from './trial-price.ts';

/** What panels of a lot cost, each for so many chargers: in dollars, and in feet of branch. */
export interface PanelWeights {
  /** The panel for so many chargers; null where none takes so many. */
  readonly size: (chargers: number) => PanelSize | null;
  readonly weigh: (chargers: number) => PieceWeight | null;
  /** Dollars of a panel straight from what is of its volts. */
  readonly panel: (size: PanelSize) => FedPrice;
  /** Of a transformer with its feeder from the source. */
  readonly transformer: (size: TransformerSize) => FedPrice;
  /** Greatest line current of the chargers of some panels, held or at full rate, for a transformer. */
  readonly lineAmps: (chargersOfEach: readonly number[]) => number;
  /** Dollars of a foot more to a branch. */
  readonly branchFoot: number;
  /** Of the feeders. */
  readonly metal: Metal;
}

/** Prices of pieces that were worked before for lots of the same rules and source. */
const prepaidOf = kept(
  (_rules: Rules, _prices: PriceList, _source: Equipment | null): Map<string, FedPrice> => new Map(),
);

const branchFootOf = kept(branchFootPrice);

/**
 * @param all chargers of the lot, which share a ceiling
 * @param metal of the feeders
 */
export function panelWeights(
  rules: Rules,
  prices: PriceList,
  from: PanelSource | null,
  wish: LoadWish,
  all: number,
  metal: Metal = rules.metal,
): PanelWeights {
  const { tables } = designOf(rules);
  const branchFoot = branchFootOf(rules, prices);
  const prepaid = prepaidOf(rules, prices, from?.source ?? null);
  const once = (key: string, work: () => FedPrice): FedPrice => {
    const known = prepaid.get(key) ?? work();
    prepaid.set(key, known);
    return known;
  };
  const { entryHeight: _, size: box, volts, phases } = USUAL_PANELBOARD;
  const panel = ({ managedAmps: __, ...size }: PanelSize): FedPrice =>
    once(`panel ${size.mainAmps} ${size.spaces} ${metal}`, () =>
      fedPrice(
        rules,
        prices,
        { volts, phases },
        { kind: 'panelboard', size: [...box], volts, phases, ...size },
        { conductor: inTheGround(rules, size.mainAmps, metal), breakerAmps: size.mainAmps },
      ),
    );
  const transformer = ({ kva, breakerAmps }: TransformerSize): FedPrice =>
    once(`transformer ${kva} ${metal}`, () =>
      fedPrice(rules, prices, from!.source, transformerPiece(rules, kva, from!.source), {
        conductor: inTheGround(rules, breakerAmps, metal),
        breakerAmps,
      }),
    );
  const lineAmps = (panels: readonly number[]): number => {
    const held = panels.map((chargers) => size(chargers)?.managedAmps);
    const full = fullLineAmps(
      tables,
      panels.reduce((sum, one) => sum + one, 0),
    );
    return held.some((one) => one === undefined)
      ? full
      : Math.min(
          full,
          held.reduce<number>((sum, one) => sum + one!, 0),
        );
  };
  const size = (chargers: number): PanelSize | null => panelSize(tables, wish, chargers, all);
  const weigh = (chargers: number): PieceWeight | null => {
    const own = size(chargers);
    if (own === null) return null;
    const price = panel(own);
    if (!from?.through) return inFeet(price, branchFoot);
    const ahead = transformerSize(tables, lineAmps([chargers]), from.source.volts!);
    if (ahead === null) return null;
    const primary = transformer(ahead);
    // The transformer stands beside its panel: the feeder that is long is the one ahead.
    return inFeet({ ...primary, itself: primary.itself + price.itself + BESIDE * price.feeder }, branchFoot);
  };
  return { size, weigh: remember(weigh), panel, transformer, lineAmps, branchFoot, metal };
}

/** Feet from a transformer to the panel beside it, near enough. */
const BESIDE = 12;

/** A transformer as it is proposed, but for its place. */
export const transformerPiece = (
  rules: Rules,
  kva: number,
  { volts }: Pick<Equipment, 'volts'>,
): Omit<Equipment, 'id' | 'at' | 'entry'> => ({
  kind: 'transformer',
  phases: USUAL_TRANSFORMER.phases,
  size: [...USUAL_TRANSFORMER.size],
  kva,
  impedancePercent: usualImpedance(designOf(rules).tables, kva),
  ...(volts !== undefined && { primaryVolts: volts }),
  secondaryVolts: USUAL_PANELBOARD.volts,
});

const inFeet = ({ itself, feeder, trench }: FedPrice, foot: number): PieceWeight => ({
  itself: itself / foot,
  feeder: feeder / foot,
  trench: trench / foot,
});

function remember<T>(work: (n: number) => T): (n: number) => T {
  const known = new Map<number, T>();
  return (n) => {
    if (!known.has(n)) known.set(n, work(n));
    return known.get(n)!;
  };
}
