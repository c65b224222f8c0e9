import { SHEET_NAMES } from '../../calc/sheets/sheet-names.ts';
import { chooseTool } from '../board/draw/choose-tool.ts';
import { useDesk } from '../board/draw/use-desk.ts';
import { readInk } from '../board/painting/ink.ts';
import type { Painting } from '../board/painting/painting.ts';
import { STATIONS, type Station } from '../document/document-state.ts';
import { keepsDrawing } from '../document/field-work.ts';
import { SAMPLES } from '../document/files/samples.ts';
import { useDocument, useDocumentStore } from '../document/use-document.tsx';
import { KeepingWords } from '../kept-work/keeping-words.tsx';
import { usePageActions } from '../page-state/page-actions.ts';
import { usePage, usePageStore } from '../page-state/page-store.ts';
import { later } from '../page-state/when-asked.tsx';
import { Menu } from '../parts/menu.tsx';
import { setTheme, THEMES, type Theme } from '../parts/theme.ts';
import { GROUPS } from '../sheets/sheet-groups.ts';
import { failureWords } from '../words/failure-words.ts';
import { FileMenu } from './file-menu.tsx';
import { sampleWords } from './sample-words.ts';
import { STATION_WORDS } from './stations.ts';

/** The head of the page: which site, the three stations, and what is done with the whole of it. */
export function Head({ painting }: { readonly painting: Painting }) {
  const name = useDocument((state) => state.name);
  return (
    <header className="head">
      <div className="head-site">
        <h1>{name}</h1>
        <KeepingWords />
      </div>
      <StationBar />
      <div className="head-acts" role="toolbar" aria-label="The whole site">
        <FileActs />
        <FindButton />
        <ThemeButton painting={painting} />
        <HelpButton />
      </div>
    </header>
  );
}

function StationBar() {
  const desk = useDesk();
  const { document, page } = desk;
  const station = useDocument((state) => state.station);
  const go = (to: Station): void => {
    // What is in the hand is set down or dropped while it still may be.
    if (keepsDrawing({ station: to })) chooseTool(desk, 'select');
    document.getState().setStation(to);
    page.setState({ drawer: STATION_WORDS[to].drawer });
  };
  return (
    <nav className="stations" aria-label="Stations">
      {STATIONS.map((each) => (
        <button key={each} type="button" aria-current={each === station ? 'page' : undefined} onClick={() => go(each)}>
          {STATION_WORDS[each].name}
        </button>
      ))}
    </nav>
  );
}

const asking = later(() => import('../sheets/ask-sheets.ts'));

function FileActs() {
  const document = useDocumentStore();
  const page = usePageStore();
  const { openSample } = usePageActions();
  const ask = (say: (sheets: Awaited<ReturnType<typeof asking>>) => void): void =>
    void asking().then(say, (error: unknown) =>
      document.getState().notify(`The sheets were not written: ${failureWords(error)}`),
    );
  return (
    <>
      <FileMenu />
      <button type="button" title="Ctrl+S" onClick={() => document.getState().save()}>
        Save
      </button>
      <Menu
        name="Samples"
        className="menu-samples"
        entries={SAMPLES.map((each) => ({ name: sampleWords(each), act: () => void openSample(each) }))}
      />
      <Menu
        name="Sheets"
        entries={[
          {
            name: 'Every sheet, in one ZIP',
            act: () => ask(({ saveEverySheet }) => saveEverySheet(document.getState())),
          },
          { name: 'What is in the drawing set ...', act: () => page.setState({ drawings: true }) },
          ...SHEET_NAMES.map((sheet) => ({
            name: sheet.says,
            act: () => ask(({ saveSheet }) => saveSheet(document.getState(), sheet)),
            under: GROUPS[sheet.group],
          })),
        ]}
      />
    </>
  );
}

const THEME_WORDS: Readonly<Record<Theme, string>> = {
  light: 'Light theme',
  dark: 'Dark theme',
  sunlight: 'Sunlight theme: the strongest contrast, the largest targets',
};

function ThemeButton({ painting }: { readonly painting: Painting }) {
  const page = usePageStore();
  const theme = usePage((state) => state.theme);
  const next = THEMES[(THEMES.indexOf(theme) + 1) % THEMES.length]!;
  return (
    <button
      type="button"
      className="icon"
      aria-label={`Change to the ${next} theme`}
      title={THEME_WORDS[next]}
      onClick={() => {
        setTheme(next);
        page.setState({ theme: next });
        painting.setInk(readInk(window.document.documentElement));
      }}
    >
      <svg viewBox="-9 -9 18 18" width="18" height="18" aria-hidden="true">
        <circle r="6.5" className="theme-ring" />
        <path d="M0 -6.5 A6.5 6.5 0 0 1 0 6.5 Z" className="theme-half" />
      </svg>
    </button>
  );
}

function FindButton() {
  const page = usePageStore();
  return (
    <button type="button" title="Go to a thing by its name (G)" onClick={() => page.setState({ find: true })}>
      Find
    </button>
  );
}

function HelpButton() {
  const page = usePageStore();
  return (
    <button
      type="button"
      className="icon"
      aria-label="Keys"
      title="Keys (?)"
      onClick={() => page.setState({ help: true })}
    >
      ?
    </button>
  );
}
