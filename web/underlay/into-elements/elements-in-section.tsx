import { useMemo } from 'react';
import { elementsOfGeojson } from '../../../routing/site/import/geojson-elements.ts';
import type { Georef } from '../../../routing/site/site.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import type { UnderlayPicture } from '../painting/picture.ts';
import { elementsIn } from './elements-in-edit.ts';

const alike = (a: Georef, b: Georef): boolean => a.lon === b.lon && a.lat === b.lat && a.bearing === b.bearing;

/** Brings in the elements of a GeoJSON that was written from a site, to the last figure. */
export function ElementsIn({ picture }: { readonly picture: UnderlayPicture }) {
  const document = useDocumentStore();
  const file = useDocument((state) => state.file);
  const georef = useDocument((state) => state.site.georef);
  const elements = useMemo(() => elementsOfGeojson(picture.features ?? []), [picture]);
  const { edit, adds, here } = useMemo(() => elementsIn(file, elements), [file, elements]);
  if (adds + here === 0) return null;
  if (!georef || !picture.georef || !alike(georef, picture.georef))
    return (
      <p className="quiet">
        It holds {adds + here} elements of a site that lies elsewhere on the ground. Turn its lines into elements here.
      </p>
    );
  if (adds === 0) return <p className="quiet">Its {here} elements are on the site already.</p>;
  return (
    <>
      <p className="quiet">
        It was written from a site and holds its elements exactly.
        {here > 0 && ` ${here} of them are here already.`}
      </p>
      <button type="button" onClick={() => document.getState().applyLarge(edit)}>
        Bring in {adds} elements
      </button>
    </>
  );
}
