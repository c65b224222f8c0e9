import { newId } from '../../../../routing/site/new-id.ts';
import { insertedBy } from '../../../document/change/selection.ts';
import { addElements } from '../../../document/edits/add.ts';
import { addFeeder } from '../../../document/edits/charging/feed.ts';
import { useDocument, useDocumentStore } from '../../../document/use-document.tsx';
import { Fact, Facts, Links } from '../../facts/facts.tsx';

/** What comes into equipment and what goes out of it besides chargers, and the ways to add to it. */
export function EquipmentFeeds({ id }: { readonly id: string }) {
  const document = useDocumentStore();
  const feeders = useDocument((state) => state.site.feeders);
  const loads = useDocument((state) => state.site.loads);
  const equipment = useDocument((state) => state.site.equipment);
  const own = equipment.find((each) => each.id === id);
  const others = equipment.filter((each) => each.id !== id);
  const incoming = feeders.filter(({ to }) => to === id);
  if (!own) return null;
  const addLoad = (): void => {
    const { file, apply, select } = document.getState();
    const load = {
      id: newId(file, 'L'),
      from: id,
      name: 'Load',
      volts: own.volts ?? own.secondaryVolts ?? 208,
      phases: own.phases ?? 1,
      va: 1000,
      continuous: false,
    } as const;
    const edit = addElements(file, 'loads', [load]);
    if (apply(edit)) select(insertedBy(edit));
  };
  const feedFrom = (from: string): void => {
    const { file, apply, select } = document.getState();
    const edit = addFeeder(file, from, id, own.mainAmps ?? own.busAmps ?? 100);
    if (apply(edit)) select(insertedBy(edit));
  };
  return (
    <>
      <Facts>
        <Fact name="feeder in">
          <Links ids={incoming.map((each) => each.id)} />
        </Fact>
        <Fact name="feeders out">
          <Links ids={feeders.filter(({ from }) => from === id).map((each) => each.id)} />
        </Fact>
        <Fact name="other loads">
          <Links ids={loads.filter(({ from }) => from === id).map((each) => each.id)} />
        </Fact>
      </Facts>
      <p className="row-acts">
        <button type="button" className="plain" onClick={addLoad}>
          Add a load
        </button>
        {incoming.length === 0 &&
          own.kind !== 'source' &&
          others.map((other) => (
            <button key={other.id} type="button" className="plain" onClick={() => feedFrom(other.id)}>
              Feed it from {other.id}
            </button>
          ))}
      </p>
    </>
  );
}
