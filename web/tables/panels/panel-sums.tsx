import { neutralAmps } from '../../../calc/supply/panels/neutral.ts';
import { type PanelCard, unbalancePercent } from '../../../calc/supply/panels/panel-card.ts';
import { useDocument } from '../../document/use-document.tsx';
import { Fact, Facts } from '../../panels/facts/facts.tsx';
import { Scroller } from '../../parts/scroller.tsx';

const kva = (va: number): string => `${(va / 1000).toFixed(1)} kVA`;

/** What a panel carries: by line, by kind of load with what each counts for, and how far that is of its rating. */
export function PanelSums({ card }: { readonly card: PanelCard }) {
  const { schedule, main, lineVa, connectedVa, demand, demandVa, demandAmps, spares, blank, homeless, toNeutral } =
    card;
  const solved = useDocument((state) => state.plan.supply.equipment.find(({ id }) => id === schedule.equipment));
  const neutral =
    solved?.amps.N === undefined ? null : neutralAmps(solved.amps.N, toNeutral.amps, toNeutral.thirdHarmonic);
  return (
    <Scroller className="panel-sums" aria-label={`Load of ${schedule.equipment}`}>
      <Facts>
        <Fact name="Protection">{main.words}</Fact>
        {lineVa.map(({ line, va }) => (
          <Fact key={line} name={`On line ${line}`}>
            {kva(va)}
          </Fact>
        ))}
        <Fact name="Connected">{kva(connectedVa)}</Fact>
        {solved && <Fact name="Unbalance">{unbalancePercent(solved, schedule.rows).toFixed(1)}%</Fact>}
        {neutral && (
          <Fact name="Neutral">
            {neutral.fundamental.toFixed(1)} A
            {neutral.third > 0 &&
              `, ${neutral.rms.toFixed(1)} A with ${(100 * toNeutral.thirdHarmonic).toFixed(0)}% third harmonic of loads to neutral`}
          </Fact>
        )}
        <Fact name="Spare, space">
          {spares}, {blank}
        </Fact>
      </Facts>
      <table className="demand">
        <caption>Demand</caption>
        <tbody>
          {demand.map(({ what, connectedVa: va, percent, demandVa: counted, basis }) => (
            <tr key={what}>
              <th scope="row">
                {what}
                <span className="quiet">{basis}</span>
              </th>
              <td className="numeric">
                {kva(va)} at {percent}%
              </td>
              <td className="numeric">{kva(counted)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">In all, balanced</th>
            <td className="numeric">{demandAmps.toFixed(0)} A</td>
            <td className="numeric">{kva(demandVa)}</td>
          </tr>
          {solved && (
            <tr>
              <th scope="row">Worst line, by the plan</th>
              <td className="numeric">{solved.demandAmps.toFixed(0)} A</td>
              <td className="numeric">
                {solved.breakerAmps === undefined
                  ? ''
                  : `${solved.percentLoaded?.toFixed(0) ?? '–'}% of ${solved.breakerAmps} A`}
              </td>
            </tr>
          )}
        </tbody>
      </table>
      {homeless.length > 0 && <p>No space is left on their lines for {homeless.map(({ id }) => id).join(', ')}.</p>}
    </Scroller>
  );
}
