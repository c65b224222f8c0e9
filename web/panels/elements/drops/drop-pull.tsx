import { useMemo } from 'react';
import { cordFoot, hardestPull } from '../../../../calc/steel/hung-drops.ts';
import { CONNECTOR } from '../../../../calc/tables/weights/component-weights.ts';
import { whyPull } from '../../../../calc/why/why-pull.ts';
import { cordStart } from '../../../../routing/reach/cords/cord-start.ts';
import { restOf } from '../../../../routing/reach/cords/pull.ts';
import type { Charger, Drop } from '../../../../routing/site/site.ts';
import { useDocument } from '../../../document/use-document.tsx';
import { FieldGroup } from '../../../parts/field-group.tsx';
import { nearestInch } from '../../../words/lengths.ts';
import { pounds } from '../../../words/quantities.ts';
import { Fact, Facts } from '../../facts/facts.tsx';
import { Why } from '../../facts/why.tsx';

/** What the cord of a charger pulls at a drop, and how its connector rests. */
export function DropPull({ drop, charger }: { readonly drop: Drop; readonly charger: Charger }) {
  const reach = useDocument((state) => state.plan.reach);
  const rules = useDocument((state) => state.site.rules);
  const units = useDocument((state) => state.site.units);
  const own = useMemo(() => reach.filter((one) => one.charger === charger.id), [reach, charger]);
  const pull = useMemo(() => hardestPull(drop, charger, own, rules), [drop, charger, own, rules]);
  const { from, available } = cordStart(drop, rules);
  const rest = restOf(from, available, drop.restHeight, cordFoot(charger.amps), CONNECTOR.high);
  return (
    <FieldGroup name="Pull of the cord">
      <Facts>
        <Fact name="plugged in">
          {pull === null
            ? 'comes to no inlet'
            : `${pounds(pull.pounds)}, ${pull.fromPlumb < 0.5 ? 'straight down' : `${Math.round(pull.fromPlumb)}° from plumb`}`}
        </Fact>
        {pull !== null && pull.sideways >= 0.05 && (
          <Fact name="on the steel">
            {pounds(pull.down)} down, {pounds(pull.sideways)} sideways
            {pull.heading !== null && ` at ${Math.round(pull.heading)}° from +x`}
          </Fact>
        )}
        {pull?.taut === true && <Fact name="all but taut">counted as a person pulls at most</Fact>}
        <Fact name="let go">
          {rest.free === 0 ? 'would lie on the ground' : `would hang at ${nearestInch(rest.free, units)}`}
        </Fact>
        {rest.held !== null && (
          <Fact name="retractor holds">
            {pounds(rest.held.pounds)} at rest, {nearestInch(rest.held.takesUp, units)} taken up
          </Fact>
        )}
      </Facts>
      <Why ask="Why this pull?" steps={() => whyPull(drop, charger, own, rules)} />
      <p className="quiet">Weights by common practice: take those of the chosen cord and retractor.</p>
    </FieldGroup>
  );
}
