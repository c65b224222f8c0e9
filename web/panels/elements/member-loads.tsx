import { useMemo } from 'react';
import type { Hung, Made, MadeOf } from '../../../calc/plan-file/hung.ts';
import { memberStatics } from '../../../calc/steel/member-statics.ts';
import { type Rest, restsOf } from '../../../calc/steel/rests.ts';
import { listed } from '../../../calc/steel/steel-loads.ts';
import { explained } from '../../../calc/words/explain.ts';
import type { Member, Site } from '../../../routing/site/site.ts';
import { withCounts } from '../../document/counted-plan.ts';
import { useDocument } from '../../document/use-document.tsx';
import { nearestInch } from '../../words/lengths.ts';
import { pounds } from '../../words/quantities.ts';
import { Fact, Facts, Links } from '../facts/facts.tsx';
import { Why } from '../facts/why.tsx';

/** So many loads of one member are listed; the loads sheet has all. */
const MOST = 40;

/** What a member carries of all that hangs, with its reactions where it rests. */
export function MemberLoads({ id }: { readonly id: string }) {
  const member = useDocument((state) => state.site.members.find((one) => one.id === id));
  const hung = useDocument((state) => withCounts(state.plan).hung).find((one) => one.member === id);
  const units = useDocument((state) => state.site.units);
  const rests = useDocument(({ site }) => restsOf(site.members, site.columns).get(id)) ?? NO_RESTS;
  if (!member) return null;
  if (!hung) return <p className="quiet">Nothing that is drawn hangs from it.</p>;
  return <Carried member={member} hung={hung} rests={rests} units={units} />;
}

const NO_RESTS: readonly Rest[] = [];

interface CarriedProps {
  readonly member: Member;
  readonly hung: Hung;
  readonly rests: readonly Rest[];
  readonly units: Site['units'];
}

function Carried({ member, hung, rests, units }: CarriedProps) {
  const statics = useMemo(() => memberStatics(member, hung, rests), [member, hung, rests]);
  const { moment, at } = statics;
  const place = (feet: number): string => nearestInch(feet, units);
  const lines = listed(member, hung);
  return (
    <section className="member-loads" aria-label="What it carries" data-testid="member-loads">
      <h3>What it carries</h3>
      <Facts>
        <Fact name="in all">{pounds(hung.pounds)}</Fact>
        {statics.rests.map((rest) => (
          <Fact key={rest.at} name={rest.on === null ? 'at its end' : 'on'}>
            {rest.on !== null && <Links ids={[rest.on]} most={1} />} {pounds(rest.pounds)} at {place(rest.at)}
          </Fact>
        ))}
        <Fact name="largest moment">
          {`${Math.round(moment).toLocaleString('en-US')} lb ft`} at {place(at)}
        </Fact>
      </Facts>
      <p className="quiet">
        As simple spans from rest to rest, statics only: its capacity is checked by others. Places are from its first
        end.
      </p>
      <Why ask="Why these figures?" steps={() => explained((tell) => memberStatics(member, hung, rests, tell)).steps} />
      <ul>
        {lines.slice(0, MOST).map(({ from, to, pounds: own, poundsPerFoot, of, made }) => (
          <li key={`${from} ${to}`}>
            <b>{poundsPerFoot === null ? pounds(own) : `${poundsPerFoot.toFixed(2)} lb/ft`}</b>{' '}
            {to === null ? `at ${place(from)}` : `${place(from)} to ${place(to)}`}: <Links ids={of} most={6} />{' '}
            <span className="quiet">{madeInWords(made)}</span>
          </li>
        ))}
      </ul>
      {lines.length > MOST && <p className="quiet">and {lines.length - MOST} more; the loads sheet has all.</p>}
    </section>
  );
}

const madeInWords = (made: Made): string =>
  (Object.entries(made) as [MadeOf, number][])
    .map(([what, own]) => `${what} ${own.toFixed(own < 10 ? 2 : 1)}`)
    .join(', ');
