import '../field.css';
import { lastAsked, type TestRow, testSheet } from '../../../calc/field/commissioning/commissioning.ts';
import {
  GROUP_WORDS,
  MEASURE_GROUPS,
  type MeterReading,
  readingWords,
  unitWords,
} from '../../../calc/field/commissioning/measures.ts';
import type { Mark } from '../../../routing/site/site.ts';
import { useDocument } from '../../document/use-document.tsx';
import { MaybeNumber } from '../../parts/maybe-fields.tsx';
import { useMarks } from '../records/use-marks.ts';
import { whoSays } from './steps-facts.tsx';

/** The tests of a charger, a feeder or a board: what each is held to, what the meter read, and whether that passes. */
export function TestFacts({ of }: { readonly of: string }) {
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const sheet = testSheet(site, plan, of);
  if (!sheet) return null;
  const asked = sheet.rows.filter(({ standing }) => standing !== 'not asked');
  const passed = asked.filter(({ standing }) => standing === 'passes').length;
  const failed = asked.filter(({ standing }) => standing === 'fails').length;
  return (
    <section className="tests" aria-label={`Tests of ${of}`}>
      <h3>
        {sheet.title}: {passed} of {asked.length} pass{failed > 0 ? `, ${failed} fail` : ''}
      </h3>
      {MEASURE_GROUPS.map((group) => {
        const rows = sheet.rows.filter(({ measure }) => measure.group === group);
        if (rows.length === 0) return null;
        return (
          <fieldset key={group}>
            <legend>{GROUP_WORDS[group]}</legend>
            {rows.map((row) => (
              <Test key={row.measure.id} row={row} last={lastAsked(site, row.measure.id)} />
            ))}
            <p className="quiet small">{[...new Set(rows.map(({ limit }) => limit.source))].join('. ')}.</p>
          </fieldset>
        );
      })}
    </section>
  );
}

const NONE = '–';
/** No meter of these reads farther. */
const MOST = 1e6;

function Test({ row, last }: { readonly row: TestRow; readonly last: number | null }) {
  const { write } = useMarks();
  const { of, measure, limit, reading, register } = row;
  const unit = reading?.unit ?? measure.unit;
  const inUnit = unit === null ? '' : unitWords(unit);
  const asked = reading?.asked ?? (reading?.value === undefined ? last : null);
  const say = (part: { readonly [K in keyof MeterReading]?: MeterReading[K] | undefined }): void => {
    const next: MeterReading = readingOf({
      ...reading,
      ...(unit !== null && { unit }),
      ...(measure.takesAsked && asked !== null && { asked }),
      ...part,
    });
    const isNothing = next.value === undefined && next.word === undefined && next.asked === undefined;
    const where = { of, part: measure.id, what: 'measured' } as const;
    if (isNothing && next.amps === undefined) write(`Take back ${of} ${measure.id}`, { ...where, gone: true });
    else write(`Test ${of} ${measure.id}`, { ...where, reading: next });
  };
  return (
    <div className="test" data-test={measure.id}>
      {measure.unit === null ? (
        <div className="test-words">
          <span>{measure.name}</span>
          {measure.words.map((word) => (
            <button
              key={word}
              type="button"
              aria-pressed={reading?.word === word}
              onClick={() => say({ word: reading?.word === word ? undefined : word })}
            >
              {word}
            </button>
          ))}
        </div>
      ) : (
        <div className="test-fields">
          {measure.takesAsked && (
            <MaybeNumber
              label={`asked, ${measure.name}`}
              value={asked}
              none={NONE}
              unit={inUnit}
              most={MOST}
              onChange={(value) => say({ asked: value ?? undefined })}
            />
          )}
          {measure.takesAmps && (
            <MaybeNumber
              label="load"
              value={reading?.amps ?? null}
              none={NONE}
              unit="A"
              most={MOST}
              onChange={(amps) => say({ amps: amps ?? undefined })}
            />
          )}
          <MaybeNumber
            label={measure.name}
            value={reading?.value ?? null}
            none={NONE}
            unit={inUnit}
            least={-MOST}
            most={MOST}
            onChange={(value) => say({ value: value ?? undefined })}
          />
        </div>
      )}
      <p className="test-says">
        <span className="quiet">{limit.says}</span>
        <Standing row={row} />
      </p>
      {register?.conflict && <p className="build-off">{register.heads.map(headWords).join('; ')}</p>}
    </div>
  );
}

const headWords = (mark: Mark): string =>
  `${mark.gone ? 'taken back' : readingWords(mark.reading ?? {})} (${whoSays(mark)})`;

const STANDINGS: Readonly<Record<TestRow['standing'], string>> = {
  passes: 'Passes',
  fails: 'Fails',
  'not judged': 'Not judged',
  'two say': 'Two say',
  'not measured': '',
  'not asked': '',
};

function Standing({ row: { standing, says, register } }: { readonly row: TestRow }) {
  const words = STANDINGS[standing];
  const by = words && register?.now ? ` · ${whoSays(register.now)}` : '';
  return (
    <b className={standing === 'passes' ? 'test-passes' : 'test-fails'} role="status">
      {words}
      {says && `: ${says}`}
      {by}
    </b>
  );
}

/** A reading without what it says nothing of, its fields in one order. */
function readingOf({
  value,
  unit,
  word,
  asked,
  amps,
}: { readonly [K in keyof MeterReading]?: MeterReading[K] | undefined }): MeterReading {
  return {
    ...(value !== undefined && { value }),
    ...(unit !== undefined && { unit }),
    ...(word !== undefined && { word }),
    ...(asked !== undefined && { asked }),
    ...(amps !== undefined && { amps }),
  };
}
