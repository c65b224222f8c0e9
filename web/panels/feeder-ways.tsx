import { useMemo } from 'react';
import { type FeederProspect, feederProspects, notableWays } from '../../calc/supply/feeders/feeder-prospects.ts';
import { useDocument } from '../document/use-document.tsx';

/** What an existing feeder can carry, one way of using it to a row; the most telling first, the others folded. */
export function FeederWays({ id }: { readonly id: string }) {
  const site = useDocument((state) => state.site);
  const prospects = useMemo(() => feederProspects(site).find(({ feeder }) => feeder.id === id), [site, id]);
  if (prospects === undefined) return null;
  if (!prospects.ok)
    return (
      <section aria-label="What it can carry">
        <h3>What it can carry</h3>
        <p className="quiet">{prospects.says}</p>
      </section>
    );
  const { wish, ways } = prospects;
  const first = notableWays(ways);
  const rest = ways.filter((way) => !first.includes(way));
  return (
    <section aria-label="What it can carry">
      <h3>What it can carry</h3>
      <p className="quiet">
        Beyond it hang {wish.chargers === 0 ? 'no chargers' : `${wish.chargers} of up to ${wish.amps} A`}
        {wish.otherVa > 0 && `, and ${(wish.otherVa / 1000).toFixed(1)} kVA beside`}.
      </p>
      <WayTable ways={first} chargers={wish.chargers} />
      {rest.length > 0 && (
        <details className="why">
          <summary>Every transformer size</summary>
          <WayTable ways={rest} chargers={wish.chargers} />
        </details>
      )}
      <p className="quiet small">
        Transformers are taken with the impedance that their size usually has. Left: continuous kVA on the feeder at its
        own voltage, for lighting, inverters or larger chargers fed there.
      </p>
    </section>
  );
}

function WayTable({ ways, chargers }: { readonly ways: readonly FeederProspect[]; readonly chargers: number }) {
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
          <tr key={`${way.volts} ${way.kva}`} data-state={chargers > 0 && way.allAtFullRate ? 'pass' : undefined}>
            <th scope="row">
              {way.volts} V{way.asItIs && <b> now</b>}
              {way.kva !== null && (
                <span className="quiet">
                  {way.kva} kVA to {way.chargerVolts} V{chargers > 0 && `, ${way.transformerPercent?.toFixed(0)}%`}
                  {way.protection === 'primary and secondary' &&
                    `, ${way.transformerBreakerAmps} A ahead, secondary main`}
                </span>
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
