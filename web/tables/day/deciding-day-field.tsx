import { usePage, usePageStore } from '../../page-state/page-store.ts';
import { ChoiceField } from '../../parts/fields.tsx';

/** Which of several charging days decides where ways are weighed; without a choice it is the hardest. */
export function DecidingDayField({ days }: { readonly days: readonly string[] }) {
  const page = usePageStore();
  const wanted = usePage((state) => state.decidingDay);
  if (days.length < 2) return null;
  return (
    <ChoiceField
      label="day that decides"
      value={wanted !== null && days.includes(wanted) ? wanted : ''}
      choices={['', ...days]}
      words={(id) => (id === '' ? 'the hardest' : id)}
      onChange={(id) => page.setState({ decidingDay: id === '' ? null : id })}
    />
  );
}
