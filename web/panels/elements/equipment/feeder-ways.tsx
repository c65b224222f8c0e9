import { useMemo, useRef, useState } from 'react';
import { dayFigureWords } from '../../../../calc/day/figures/day-figures.ts';
import { decidingDay, decidingFigures, decidingWords } from '../../../../calc/day/figures/deciding-day.ts';
import { alternativeOf } from '../../../../calc/plan/compared/alternative.ts';
import { feederWaySite } from '../../../../calc/propose/feeder-way.ts';
import { type FeederProspect, feederProspects, notableWays } from '../../../../calc/supply/feeders/feeder-prospects.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { usePrices } from '../../../document/files/price-store.ts';
import { useDocument, useDocumentStore } from '../../../document/use-document.tsx';
import { usePageActions } from '../../../page-state/page-actions.ts';
import { usePageStore } from '../../../page-state/page-store.ts';
import { priceWords } from '../../../words/dollars.ts';

/** What an existing feeder can carry, one way of using it to a row; the most telling first, the others folded. */
export function FeederWayRows({ id }: { readonly id: string }) {
  const site = useDocument((state) => state.site);
  const { priceOf, priceAll, isPricing } = useWayPrices(id);
  const open = useOpenWay(id);
  const prospects = useMemo(() => feederProspects(site).find(({ feeder }) => feeder.id === id), [site, id]);
  if (prospects === undefined) return null;
  if (!prospects.ok)
    return (
      <section aria-label="What it can carry">
        <h3>What it can carry</h3>
        <p className="quiet">{prospects.says}</p>
      </section>
    );
  const { wish, ways, length } = prospects;
  const world: WayWorld = { chargers: wish.chargers, priceOf, open: (way) => open(way, length) };
  const first = notableWays(ways);
  const rest = ways.filter((way) => !first.includes(way));
  return (
    <section aria-label="What it can carry">
      <h3>What it can carry</h3>
      <p className="quiet">
        Beyond it hang {wish.chargers === 0 ? 'no chargers' : `${wish.chargers} of up to ${wish.amps} A`}
        {wish.otherVa > 0 && `, and ${(wish.otherVa / 1000).toFixed(1)} kVA beside`}
        {wish.chargers > 0 && first[0] && `, ${first[0].fullRateAmps.mean.toFixed(0)} A a line at ${first[0].volts} V`}.
        It carries {first[0]?.steadyAmps.toFixed(0)} A continuous, by its device, its terminals and its conductors at{' '}
        {wish.ambientC.toFixed(0)} °C.
      </p>
      <WayTable ways={first} world={world} />
      <p>
        <button type="button" className="plain" disabled={isPricing} onClick={() => void priceAll(first, length)}>
          {isPricing ? 'Pricing…' : 'Price each of these'}
        </button>
      </p>
      {rest.length > 0 && (
        <details className="why">
          <summary>Every transformer size</summary>
          <WayTable ways={rest} world={world} />
        </details>
      )}
      <p className="quiet small">
        Each way opens as a site of its own, drawn, planned and priced. Transformers are taken with the impedance that
        their size usually has. Left: continuous kVA on the feeder at its own voltage, for lighting, inverters or larger
        chargers fed there.
      </p>
    </section>
  );
}

/** What a row of the table has to know of the page. */
interface WayWorld {
  readonly chargers: number;
  readonly priceOf: (way: FeederProspect) => string | undefined;
  readonly open: (way: FeederProspect) => Promise<void>;
}

const keyOf = ({ volts, kva }: FeederProspect): string => `${volts} ${kva}`;
const nameOf = (id: string, { volts, kva }: FeederProspect): string =>
  `${id} at ${volts} V${kva === null ? '' : `, ${kva} kVA`}`;

/** Opens the site in which a feeder is used in some way, beside the open one, and says what changes with it. */
function useOpenWay(id: string): (way: FeederProspect, length: number) => Promise<void> {
  const document = useDocumentStore();
  const { openBeside } = usePageActions();
  return async (way, length) => {
    const { file } = document.getState();
    const site = feederWaySite(file, id, way, length);
    if (!site.ok) return document.getState().notify(site.says);
    if (await openBeside({ ...site.file, name: `${file.name}, ${nameOf(id, way)}` }))
      document.getState().notify(site.says.join(' ') || null);
  };
}

/** Prices of the site in each way beside the open one, worked out when they are asked for, one after another. */
function useWayPrices(id: string) {
  const document = useDocumentStore();
  const list = usePrices((state) => state.list);
  const site = useDocument((state) => state.site);
  const [priced, setPriced] = useState<{ readonly of: unknown; readonly words: ReadonlyMap<string, string> } | null>(
    null,
  );
  const [isPricing, setPricing] = useState(false);
  const page = usePageStore();
  const latest = useRef(site);
  latest.current = site;
  const priceAll = async (ways: readonly FeederProspect[], length: number): Promise<void> => {
    const { file, site: now } = document.getState();
    const words = new Map<string, string>();
    setPricing(true);
    const base = alternativeOf('', now, list).cost.price;
    for (const way of ways) {
      // The page is drawn between one and the next.
      await new Promise((resolve) => setTimeout(resolve));
      if (latest.current !== now) break;
      const drawn = feederWaySite(file, id, way, length);
      if (!drawn.ok) words.set(keyOf(way), 'not priced: to be drawn by hand');
      else {
        const { site: drawnSite, cost } = alternativeOf('', toSite(drawn.file), list);
        const { price } = cost;
        const day = dayWords(drawnSite, page.getState().decidingDay);
        const more = price - base;
        const than =
          Math.abs(more) < 0.005 ? 'as now' : `${more < 0 ? 'less' : 'more'} by ${priceWords(Math.abs(more), list)}`;
        words.set(keyOf(way), `${priceWords(price, list)}, ${than}${day}`);
      }
      setPriced({ of: now, words: new Map(words) });
    }
    setPricing(false);
  };
  return {
    priceOf: (way: FeederProspect) => (priced?.of === site ? priced.words.get(keyOf(way)) : undefined),
    priceAll,
    isPricing,
  };
}

/** What the charging day that decides comes to on a way. */
function dayWords(site: Site, wanted: string | null): string {
  const deciding = decidingDay([site], wanted);
  const figures = deciding === null ? undefined : decidingFigures(site, deciding);
  if (deciding === null || figures === undefined) return '';
  const which = decidingWords(deciding);
  return `; ${dayFigureWords(figures)}${which === null ? '' : ` (${which})`}`;
}

function WayTable({ ways, world }: { readonly ways: readonly FeederProspect[]; readonly world: WayWorld }) {
  const { chargers, priceOf, open } = world;
  return (
    <table className="ways">
      <thead>
        <tr>
          <th scope="col">used at</th>
          <th scope="col">full rate</th>
          {chargers > 0 && <th scope="col">all {chargers} at</th>}
          {chargers > 0 && <th scope="col">drop</th>}
          <th scope="col">left</th>
        </tr>
      </thead>
      <tbody>
        {ways.map((way) => (
          <tr key={keyOf(way)} data-state={chargers > 0 && way.allAtFullRate ? 'pass' : undefined}>
            <th scope="row">
              {way.volts} V{way.asItIs && <b> now</b>}
              {way.kva !== null && (
                <span className="quiet">
                  {way.kva} kVA to {way.chargerVolts} V
                  {chargers > 0 && `, ${way.transformerKvaPercent?.toFixed(0)}% loaded`}
                  {way.protection === 'primary and secondary' &&
                    `, ${way.transformerBreakerAmps} A ahead, secondary main`}
                </span>
              )}
              <span className="quiet">
                {Math.round(way.lossKwhAYear.load + way.lossKwhAYear.core).toLocaleString('en-US')} kWh lost a year
                {way.kva !== null && `, ${Math.round(way.lossKwhAYear.core).toLocaleString('en-US')} in the core`}
              </span>
              {priceOf(way) !== undefined && <span className="quiet">{priceOf(way)}</span>}
              {(!way.asItIs || way.managedAmps !== null) && (
                <button type="button" className="link" onClick={() => void open(way)}>
                  Open it
                  <span className="heard">
                    {' '}
                    at {way.volts} V{way.kva === null ? '' : ` behind ${way.kva} kVA`}
                  </span>
                </button>
              )}
            </th>
            <td>
              {way.atFullRate}
              <span className="quiet">{way.chargerKw.toFixed(1)} kW</span>
              <span className="quiet">{way.atPilotFloor} managed</span>
            </td>
            {chargers > 0 && <td>{way.shared === null ? 'under 6 A' : <Shared shared={way.shared} />}</td>}
            {chargers > 0 && (
              <td>{Number.isFinite(way.worstDropPercent) ? `${way.worstDropPercent.toFixed(1)}%` : 'collapses'}</td>
            )}
            <td>{way.leftKva.onFeeder.toFixed(0)} kVA</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const Shared = ({ shared }: { readonly shared: { readonly amps: number; readonly kw: number } }) => (
  <>
    {shared.amps.toFixed(1)} A<span className="quiet">{shared.kw.toFixed(1)} kW</span>
  </>
);
