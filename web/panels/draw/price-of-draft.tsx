import { priceChange } from '../../../calc/takeoff/bid/price-change.ts';
import { groundToDrawOn } from '../../board/draw/desk.ts';
import { isLarge } from '../../board/draw/draft-marks.ts';
import { useDesk } from '../../board/draw/use-desk.ts';
import { useView } from '../../board/view-store.ts';
import { insertedBy } from '../../document/change/selection.ts';
import { withCounts } from '../../document/counted-plan.ts';
import { usePrices } from '../../document/files/price-store.ts';
import { useDocument } from '../../document/use-document.tsx';
import { type DrawnRaceway, draftPriceWords } from '../../words/draft-price.ts';

/** What the drawn thing adds to the price of the lot, by the price list in use. */
export function PriceOfDraft() {
  const desk = useDesk();
  const before = useView((state) => state.draftOver);
  const marks = useView((state) => state.draftMarks);
  const plan = useDocument((state) => state.plan);
  const site = useDocument((state) => state.site);
  const edit = useDocument((state) => state.previewed);
  const list = usePrices((state) => state.list);
  if (marks && isLarge(groundToDrawOn(desk).site)) return <Words says={['Its price is worked out when it is set.']} />;
  if (!before || !edit) return null;
  const change = priceChange(before, withCounts(plan).takeoff, list);
  const id = insertedBy(edit).find((ref) => ref.list === 'raceways')?.id;
  const raceway = site.raceways.find((each) => each.id === id);
  const drawn: DrawnRaceway | null = raceway
    ? {
        raceway,
        site,
        carries: !change.groundOnly || plan.runs.some(({ raceways }) => raceways.includes(raceway.id)),
      }
    : null;
  const says = draftPriceWords(change, drawn, list);
  return says.length > 0 ? <Words says={says} /> : null;
}

const Words = ({ says }: { readonly says: readonly string[] }) => (
  <p className="quiet" data-testid="price-of-draft">
    {says.join(' ')}
  </p>
);
