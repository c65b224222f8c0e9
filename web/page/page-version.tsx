import { pageVersion, useKeptPage } from '../kept-page/kept-page.ts';

const KEPT = {
  yes: 'Kept in this browser: it opens without a network too.',
  'not yet': 'Being kept in this browser, to open without a network.',
  no: 'Not kept in this browser: it needs its host each time it is opened.',
} as const;

/** Which version of the page this is, and whether it opens without a network. */
export function PageVersion() {
  const kept = useKeptPage((state) => state.kept);
  return (
    <p className="quiet" data-testid="page-version">
      Version {pageVersion()}. {KEPT[kept]}
    </p>
  );
}
