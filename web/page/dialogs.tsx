import { useDocument } from '../document/use-document.tsx';
import { usePage, usePageStore } from '../page-state/page-store.ts';
import { whenAsked } from '../page-state/when-asked.tsx';

const FindDialog = whenAsked(async () => (await import('./find-dialog.tsx')).FindDialog);
const KeptWorkDialog = whenAsked(async () => (await import('../kept-work/kept-work-dialog.tsx')).KeptWorkDialog);
const DrawingsDialog = whenAsked(async () => (await import('./drawings-dialog.tsx')).DrawingsDialog);
const KeysDialog = whenAsked(async () => (await import('./keys-dialog.tsx')).KeysDialog);
const ProblemsDialog = whenAsked(async () => (await import('./problems-dialog.tsx')).ProblemsDialog);

const CardDialog = whenAsked(async () => (await import('../field/cards/card-dialog.tsx')).CardDialog);
const WhoDialog = whenAsked(async () => (await import('../field/records/who-dialog.tsx')).WhoDialog);
const RecordsDialog = whenAsked(async () => (await import('../field/records/records-dialog.tsx')).RecordsDialog);
const HandoverDialog = whenAsked(async () => (await import('../field/records/handover-dialog.tsx')).HandoverDialog);

/** What lies over the page while it is asked for. Find takes letters from the first one, so it stands there from when its script has come. */
export function Dialogs() {
  const page = usePageStore();
  const problems = useDocument((state) => state.problems);
  const help = usePage((state) => state.help);
  const drawings = usePage((state) => state.drawings);
  const keptWork = usePage((state) => state.keptWork);
  const records = usePage((state) => state.records);
  const card = usePage((state) => state.card);
  const unsigned = usePage((state) => state.unsigned);
  const handover = usePage((state) => state.handover);
  return (
    <>
      {problems && <ProblemsDialog {...problems} />}
      {help && <KeysDialog close={() => page.setState({ help: false })} />}
      {drawings && <DrawingsDialog close={() => page.setState({ drawings: false })} />}
      {keptWork && <KeptWorkDialog close={() => page.setState({ keptWork: false })} />}
      {records && <RecordsDialog close={() => page.setState({ records: false })} />}
      {card && <CardDialog opened={card} close={() => page.setState({ card: null })} />}
      {unsigned && <WhoDialog write={unsigned} close={() => page.setState({ unsigned: null })} />}
      {handover && <HandoverDialog close={() => page.setState({ handover: false })} />}
      <FindDialog />
    </>
  );
}
