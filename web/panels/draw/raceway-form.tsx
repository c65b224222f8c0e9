import { tablesOf } from '../../../calc/tables/editions.ts';
import { parkingCover } from '../../../calc/tables/raceway-of.ts';
import { METHODS, type Method, PLACES, type Place, SURFACES } from '../../../routing/site/schema/vocabulary.ts';
import { useDocument } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { ChoiceField, LengthField } from '../../parts/fields.tsx';
import { MaybeLength } from '../../parts/maybe-fields.tsx';
import { useOptions } from './use-options.ts';

const OVERHEAD = 11;
/** What runs there as a rule. Common practice, no source. */
const usualMethod = (place: Place): Method => (place === 'underground' ? 'PVC40' : 'EMT');

export function RacewayForm() {
  const [options, change] = useOptions('raceway');
  const cover = useDocument((state) => parkingCover(tablesOf(state.site.rules)));
  return (
    <FieldGroup name="Raceway" label="Raceway to draw">
      <ChoiceField label="method" value={options.method} choices={METHODS} onChange={(method) => change({ method })} />
      <ChoiceField
        label="place"
        value={options.place}
        choices={PLACES}
        onChange={(place) => {
          const buried = place === 'underground';
          const moved = buried ? options.elevation >= 0 : options.elevation < 0;
          const usual = options.method === usualMethod(options.place);
          change({
            place,
            ...(moved && { elevation: buried ? -cover : OVERHEAD }),
            ...(usual && { method: usualMethod(place) }),
          });
        }}
      />
      {options.place === 'underground' && (
        <ChoiceField
          label="under"
          value={options.surface}
          choices={SURFACES}
          onChange={(surface) => change({ surface })}
        />
      )}
      <LengthField label="runs at" value={options.elevation} onChange={(elevation) => change({ elevation })} />
      {options.place === 'overhead' && (
        <MaybeLength
          label="below beams by"
          none="stays level"
          least={0}
          value={options.belowMembers}
          onChange={(belowMembers) => change({ belowMembers })}
        />
      )}
    </FieldGroup>
  );
}
