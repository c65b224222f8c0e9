import type { MovablePoint } from '../../../calc/field/moved-point.ts';
import { asBuiltOf } from '../../../calc/plan/as-built.ts';
import { addressOf } from '../../../routing/site/records/registers.ts';
import type { Point3, Site } from '../../../routing/site/site.ts';
import type { ListName } from '../../document/change/element-lists.ts';
import { useDocument } from '../../document/use-document.tsx';
import { TapedPlace } from '../../panels/as-built/taped-place.tsx';
import { FindingWords } from '../../panels/facts/facts.tsx';
import { useMarks } from '../records/use-marks.ts';
import { ChecklistFacts } from './checklist-facts.tsx';
import { DeviationFacts } from './deviation-facts.tsx';
import { PhotoFacts } from './photo-facts.tsx';
import { PullCardButton } from './pull-card-button.tsx';
import { RoomFacts } from './room-facts.tsx';
import { SetOutFacts } from './set-out-facts.tsx';
import { StepsFacts } from './steps-facts.tsx';
import { TestFacts } from './test-facts.tsx';

interface FieldProps {
  readonly list: ListName;
  readonly id: string;
}

/** What the field does with a thing: sets it out, measures it, marks it done, photographs it. */
export function FieldFacts({ list, id }: FieldProps) {
  const site = useDocument((state) => state.site);
  const drop = list === 'drops' ? site.drops.find((each) => each.id === id) : undefined;
  if (!(STEPS_OF as Partial<Record<ListName, unknown>>)[list]) return null;
  return (
    <section className="field-facts" aria-label={`${id} in the field`}>
      <SetOutFacts id={id} />
      <RoomFacts points={pointsOf(site, list, id)} />
      {drop && <DeviationFacts drop={drop} />}
      <PlaceFound list={list} id={id} />
      <StepsFacts id={id} steps={STEPS_OF[list as keyof typeof STEPS_OF]} />
      {(list === 'chargers' || list === 'feeders') && <PullCardButton kind={CARD_OF[list]} id={id} />}
      {(list === 'chargers' || list === 'feeders' || list === 'equipment') && <FoldedTests of={id} />}
      {drop && <ChargersOf drop={id} />}
      <ChecklistFacts ids={[id]} />
      <PhotoFacts id={id} />
    </section>
  );
}

/** The cards and tests of what hangs at a drop. */
function ChargersOf({ drop }: { readonly drop: string }) {
  const chargers = useDocument((state) => state.site.chargers);
  const own = chargers.filter((charger) => charger.drop === drop);
  return own.map(({ id }) => (
    <div key={id}>
      <StepsFacts id={id} steps={STEPS_OF.chargers} />
      <PullCardButton kind="circuit" id={id} />
      <FoldedTests of={id} />
    </div>
  ));
}

function FoldedTests({ of }: { readonly of: string }) {
  return (
    <details className="tests-fold">
      <summary>Tests of {of}</summary>
      <TestFacts of={of} />
    </details>
  );
}

const CARD_OF = { chargers: 'circuit', feeders: 'feeder' } as const;

const STEPS_OF = {
  drops: ['set'],
  chargers: ['pulled', 'terminated', 'tested'],
  pullpoints: ['set'],
  columns: ['set'],
  equipment: ['set', 'terminated', 'tested'],
  raceways: ['set'],
  feeders: ['pulled', 'terminated', 'tested'],
} as const;

type RoomPoint = MovablePoint & { readonly name: string };

function pointsOf(site: Site, list: ListName, id: string): readonly RoomPoint[] {
  if (list === 'pullpoints' || list === 'columns' || list === 'equipment') return [{ list, id, name: id }];
  if (list !== 'drops') return [];
  const drop = site.drops.find((each) => each.id === id);
  return [
    { list, id, part: 'box', name: 'the box' },
    ...(drop?.retractor ? ([{ list, id, part: 'retractor', name: 'the retractor' }] as const) : []),
  ];
}

/** Where a pull point, a column or equipment was found, as the tape reads it; a drop has a form of its own. */
function PlaceFound({ list, id }: FieldProps) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const { registers, write } = useMarks();
  if (list !== 'pullpoints' && list !== 'columns' && list !== 'equipment') return null;
  const element = site[list].find((each) => each.id === id);
  if (!element) return null;
  const drawn: Point3 = [element.at[0], element.at[1], (element.at as readonly number[])[2] ?? 0];
  const found = registers.get(addressOf({ of: id, part: 'at', what: 'place' }))?.now?.place;
  const told = found ? asBuiltOf(plan, site).findings.filter(({ about }) => about.includes(id)) : [];
  return (
    <div className="fields as-built">
      <TapedPlace
        name="found"
        drawn={drawn}
        value={found ?? drawn}
        onChange={(place) => write(`Record ${id} as built`, { of: id, part: 'at', what: 'place', place })}
      />
      {told.map(({ severity, rule, says }) => (
        <p key={`${rule} ${says}`} className="place">
          <FindingWords severity={severity} lead="As built">
            {says}
          </FindingWords>
        </p>
      ))}
      {found && (
        <button
          type="button"
          className="plain"
          onClick={() => write(`Forget ${id} as built`, { of: id, part: 'at', what: 'place', gone: true })}
        >
          Forget where it was found
        </button>
      )}
    </div>
  );
}
