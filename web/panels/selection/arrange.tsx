import { type ReactNode, useMemo, useState } from 'react';
import { stallUnderArray } from '../../../routing/propose/rows/stalls-under-array.ts';
import { isPlaced } from '../../../routing/site/kinds/kinds.ts';
import { toFeet } from '../../../routing/site/numbers/units.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { Edit } from '../../document/change/edit.ts';
import { insertedBy } from '../../document/change/selection.ts';
import { held } from '../../document/edits/gather.ts';
import { centreOf } from '../../document/edits/moving/centre.ts';
import { type ArrayShape, arrayTurned, duplicate, mirrorCopy, rotateCopy } from '../../document/edits/moving/copy.ts';
import { mirror, moveElements, rotate } from '../../document/edits/moving/move.ts';
import { outerCornerOf } from '../../document/edits/moving/outer-corner.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { ChoiceField, DegreesField, LengthField, NumberField } from '../../parts/fields.tsx';
import { type ArrayWayOffer, arrayWays } from './array-ways.ts';

/** Moves, copies, turns, mirrors and arrays what is selected, by typed values. */
export function Arrange() {
  const placed = useDocument(({ selection }) => selection.some(({ list }) => isPlaced(list)));
  // The ways of a row are sought among all stalls, which at each step of a drag takes long: not before anyone looks.
  const [opened, setOpened] = useState(false);
  if (!placed) return null;
  return (
    <details className="arrange" onToggle={({ currentTarget }) => setOpened((was) => was || currentTarget.open)}>
      <summary>Move, copy, turn, mirror, array</summary>
      {opened && <ArrangeForms />}
    </details>
  );
}

function ArrangeForms() {
  const document = useDocumentStore();
  const selection = useDocument((state) => state.selection);
  const file = useDocument((state) => state.file);
  const site = useDocument((state) => state.site);
  const ways = useMemo(() => arrayWays(site, selection), [site, selection]);
  const whole = selection.map(({ list, id }) => ({ list, id }));
  const ids = useMemo(() => new Set(selection.flatMap(({ list, id }) => (list === 'stalls' ? id : []))), [selection]);
  const middle = centreOf(held(file, whole)) ?? [0, 0];
  const feet = ([x, y]: Point2): Point2 => [toFeet(x, file.units), toFeet(y, file.units)];
  const about = feet(middle);
  const edge = feet(outerCornerOf(held(file, whole)) ?? [0, 0]);
  /** Does an edit; what it has put in is selected. */
  const act = (edit: Edit): void => {
    const { apply, select } = document.getState();
    if (!apply(edit)) return;
    const lists = new Set(whole.map(({ list }) => list));
    const fresh = insertedBy(edit).filter(({ list }) => lists.has(list));
    if (fresh.length > 0) select(fresh);
  };
  const now = (): typeof file => document.getState().file;
  return (
    <>
      <Shift
        onMove={(dx, dy, dz) => act(moveElements(now(), whole, dx, dy, dz))}
        onCopy={(dx, dy) => act(duplicate(now(), whole, dx, dy))}
      />
      <Turn
        key={`turn ${about.join(' ')}`}
        about={about}
        onTurn={(at, degrees) => act(rotate(now(), whole, at, degrees))}
        onCopy={(at, degrees) => act(rotateCopy(now(), whole, at, degrees))}
      />
      <Mirror
        key={`mirror ${edge.join(' ')}`}
        about={edge}
        onMirror={(at, degrees) => act(mirror(now(), whole, at, degrees))}
        onCopy={(at, degrees) => act(mirrorCopy(now(), whole, at, degrees))}
      />
      <Grid
        ways={ways}
        stalls={site.stalls}
        ids={ids}
        held={new Set(whole.map(({ list, id }) => `${list} ${id}`)).size}
        onArray={(shape) => act(arrayTurned(now(), whole, shape))}
      />
    </>
  );
}

const Acts = ({ children }: { readonly children: ReactNode }) => <p className="arrange-acts">{children}</p>;

function Act({
  name,
  act,
  idle = false,
}: {
  readonly name: string;
  readonly act: () => void;
  readonly idle?: boolean;
}) {
  return (
    <button type="button" className="small-act" disabled={idle} onClick={act}>
      {name}
    </button>
  );
}

interface ShiftProps {
  readonly onMove: (dx: number, dy: number, dz: number) => void;
  readonly onCopy: (dx: number, dy: number) => void;
}

function Shift({ onMove, onCopy }: ShiftProps) {
  const [dx, setX] = useState(0);
  const [dy, setY] = useState(0);
  const [dz, setZ] = useState(0);
  return (
    <section className="fields" aria-label="Move or copy">
      <LengthField label="to the right" value={dx} onChange={setX} />
      <LengthField label="up the sheet" value={dy} onChange={setY} />
      <LengthField label="higher" value={dz} onChange={setZ} />
      <Acts>
        <Act name="Move" idle={dx === 0 && dy === 0 && dz === 0} act={() => onMove(dx, dy, dz)} />
        <Act name="Copy" idle={dx === 0 && dy === 0} act={() => onCopy(dx, dy)} />
      </Acts>
    </section>
  );
}

interface TurnProps {
  readonly about: Point2;
  readonly onTurn: (about: Point2, degrees: number) => void;
  readonly onCopy: (about: Point2, degrees: number) => void;
}

function Turn({ about, onTurn, onCopy }: TurnProps) {
  const [degrees, setDegrees] = useState(90);
  const [x, setX] = useState(about[0]);
  const [y, setY] = useState(about[1]);
  return (
    <section className="fields" aria-label="Turn">
      <NumberField label="turn by" unit="degrees" least={-360} value={degrees} onChange={setDegrees} />
      <LengthField label="about x" value={x} onChange={setX} />
      <LengthField label="about y" value={y} onChange={setY} />
      <Acts>
        <Act name="Turn" act={() => onTurn([x, y], degrees)} />
        <Act name="Turn a copy" act={() => onCopy([x, y], degrees)} />
      </Acts>
    </section>
  );
}

interface MirrorProps {
  readonly about: Point2;
  readonly onMirror: (through: Point2, degrees: number) => void;
  readonly onCopy: (through: Point2, degrees: number) => void;
}

function Mirror({ about, onMirror, onCopy }: MirrorProps) {
  const [degrees, setDegrees] = useState(90);
  const [x, setX] = useState(about[0]);
  const [y, setY] = useState(about[1]);
  return (
    <section className="fields" aria-label="Mirror">
      <NumberField label="mirror line at" unit="degrees" least={-360} value={degrees} onChange={setDegrees} />
      <LengthField label="through x" value={x} onChange={setX} />
      <LengthField label="through y" value={y} onChange={setY} />
      <Acts>
        <Act name="Mirror" act={() => onMirror([x, y], degrees)} />
        <Act name="Mirror a copy" act={() => onCopy([x, y], degrees)} />
      </Acts>
    </section>
  );
}

/** More elements than this are not what anyone means. Common practice, no source. */
const MOST = 10_000;
const wholeNumber = (count: number): string => count.toLocaleString('en-US');
/** What the choice says of a direction that was typed. */
const TYPED = 'as typed';

interface GridProps {
  readonly ways: readonly ArrayWayOffer[];
  readonly stalls: Site['stalls'];
  /** The stalls that are selected. */
  readonly ids: ReadonlySet<string>;
  /** How many elements are selected. */
  readonly held: number;
  readonly onArray: (shape: ArrayShape) => void;
}

function Grid({ ways, stalls, ids, held, onArray }: GridProps) {
  const [columns, setColumns] = useState(2);
  const [rows, setRows] = useState(1);
  const [rowsEvery, setRowsEvery] = useState(18);
  // What was typed holds for what was selected; something else comes with a row, and a pitch, of its own.
  const [best] = ways;
  const offered = { degrees: best?.degrees ?? 0, columnsEvery: best?.next ?? 9 };
  const of = JSON.stringify(offered);
  const [typed, setTyped] = useState({ of, ...offered });
  const { degrees, columnsEvery } = typed.of === of ? typed : offered;
  const change = (patch: Partial<typeof offered>): void => setTyped({ of, degrees, columnsEvery, ...patch });
  const along = ways.find((way) => Math.abs(way.degrees - degrees) < 1e-6)?.name;
  const copies = columns * rows - 1;
  const says =
    copies < 1
      ? 'An array has two places or more.'
      : (copies + 1) * held > MOST
        ? `${wholeNumber((copies + 1) * held)} elements are more than an array makes at once: ${wholeNumber(MOST)} at most.`
        : null;
  const possible = says === null;
  const under = useMemo(
    () => (possible ? stallUnderArray(stalls, ids, { columns, columnsEvery, rows, rowsEvery, degrees }) : null),
    [possible, stalls, ids, columns, columnsEvery, rows, rowsEvery, degrees],
  );
  return (
    <section className="fields" aria-label="Array">
      <ChoiceField
        label="along"
        value={along ?? TYPED}
        choices={[...ways.map(({ name }) => name), ...(along ? [] : [TYPED])]}
        onChange={(name) => {
          const way = ways.find((each) => each.name === name);
          if (way) change({ degrees: way.degrees, ...(way.next !== null && { columnsEvery: way.next }) });
        }}
      />
      <DegreesField label="direction" value={degrees} decimals={4} onChange={(next) => change({ degrees: next })} />
      <NumberField label="copies across" unit="" whole least={1} most={1000} value={columns} onChange={setColumns} />
      <LengthField label="across every" value={columnsEvery} onChange={(next) => change({ columnsEvery: next })} />
      <NumberField label="copies up" unit="" whole least={1} most={1000} value={rows} onChange={setRows} />
      <LengthField label="up every" value={rowsEvery} onChange={setRowsEvery} />
      {under && (
        <p className="renumbered twice" role="status">
          A copy would lie on stall {under.label ?? under.id}.
        </p>
      )}
      <p className={says ? 'renumbered wrong' : 'renumbered'} data-testid="array-says">
        {says ??
          `${wholeNumber(copies)} ${copies === 1 ? 'copy' : 'copies'}${held > 1 ? ` of ${held} elements` : ''} beside what is selected.`}
      </p>
      <Acts>
        <Act name="Array" idle={!possible} act={() => onArray({ columns, columnsEvery, rows, rowsEvery, degrees })} />
      </Acts>
    </section>
  );
}
