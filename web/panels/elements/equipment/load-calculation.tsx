import type { LoadCalculation } from '../../../../calc/plan-file/loads.ts';
import { caseAmps, fitWords, methodWords, stepWords } from '../../../../calc/supply/service/load-rows.ts';
import { tablesOf } from '../../../../calc/tables/editions.ts';
import { whyLoad } from '../../../../calc/why/why-supply.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { Fact, Facts } from '../../facts/facts.tsx';
import { Why } from '../../facts/why.tsx';

/** The load calculation of the service that a piece of equipment belongs to, at its source and its service equipment. */
export function LoadCalculationFacts({ id }: { readonly id: string }) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const load = plan.loadCalculations.find(
    ({ source, service }) => source === id || service.some((each) => each.id === id),
  );
  if (load === undefined || load.chargers.length + load.loads.length === 0) return null;
  const tables = tablesOf(site.rules);
  const fits = fitWords(load);
  return (
    <section aria-label="Load calculation">
      <h3>Load calculation</h3>
      <table className="ways figures">
        <thead>
          <tr>
            <th scope="col">counted</th>
            <th scope="col">kVA</th>
            <th scope="col">A</th>
            <th scope="col">B</th>
            <th scope="col">C</th>
          </tr>
        </thead>
        <tbody>
          {load.cases.map((one) => (
            <tr key={one.method} data-decides={one.method === load.decides}>
              <th scope="row">{methodWords(one.method, tables)}</th>
              <td>{one.kva.toFixed(1)}</td>
              {caseAmps(one).map((amps, line) => (
                <td key={'ABC'[line]}>{amps.toFixed(0)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <Facts>
        <Fact name="the service">{fits ?? 'has no rating to hold it against'}</Fact>
        {load.managed.map(({ equipment, amps }) => (
          <Fact key={equipment} name={`held at ${equipment}`}>
            {amps} A, by energy management
          </Fact>
        ))}
        <Fact name="utility transformer">{transformerWords(load)}</Fact>
        <Fact name="largest single step">{(load.largestStepVa / 1000).toFixed(1)} kVA</Fact>
        {load.steps.map((step) => (
          <Fact key={step.of} name="volts fall">
            {stepWords(step)}
          </Fact>
        ))}
      </Facts>
      <Why ask="Why this load?" steps={() => whyLoad(site, load.source)} />
    </section>
  );
}

const transformerWords = ({ transformerKva }: LoadCalculation): string =>
  transformerKva === null ? 'past the usual sizes' : `${transformerKva} kVA to ask for`;
