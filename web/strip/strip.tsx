import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { circuitOf } from '../../calc/plan/circuits.ts';
import type { Run } from '../../routing/network/run.ts';
import type { Site } from '../../routing/site/site.ts';
import { counted } from '../../routing/words/counted.ts';
import { boxInView, toScreen } from '../board/camera.ts';
import { chargersByDrop } from '../board/scene/chargers-by-drop.ts';
import { lanesOf } from '../board/scene/lanes.ts';
import { useView, useViewStore, type ViewState } from '../board/view-store.ts';
import { conduitOf, findCharger, findDrop, runOf } from '../document/find/finders.ts';
import { useDocument } from '../document/use-document.tsx';
import { usePage } from '../page-state/page-store.ts';
import { Links } from '../panels/facts/facts.tsx';
import { nearestInch } from '../words/lengths.ts';
import { StripDrawing } from './strip-drawing.tsx';
import { planPointAt, unrolled } from './unrolled.ts';

/** The selected run unrolled under the board: distance to the right, elevation up. Nothing where no run is selected. */
export function Strip() {
  const view = useViewStore();
  const drawer = usePage((state) => state.drawer);
  const site = useDocument((state) => state.site);
  const plan = useDocument((state) => state.plan);
  const charger = useDocument((state) => chargerOf(state.site.chargers, state.plan.runs, state.selection));
  const raceway = useDocument((state) => racewayOf(state.selection));
  const previewed = useDocument((state) => state.previewed !== undefined);
  const pressed = useView(({ doing }) => doing === 'pressing' || doing === 'dragging');
  const section = useRef<HTMLElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  // While the hand is down or something moves, it neither opens, shuts nor grows: the board would jump under the hand.
  const steady = pressed || previewed;
  const [settled, setSettled] = useState(0);
  const [above, setAbove] = useState(false);
  const run = runOf(plan.runs, charger);
  const circuit = charger === undefined ? undefined : circuitOf(plan, charger);
  const wanted = drawer === null && run !== undefined && run.path.length > 1;
  const shown = wanted && (!steady || settled > 0);

  useEffect(() => {
    const element = frame.current;
    if (!element || !shown) return;
    const sized = new ResizeObserver(([entry]) => setWidth(Math.round(entry?.contentRect.width ?? 0)));
    sized.observe(element);
    return () => sized.disconnect();
  }, [shown]);

  // Where it opens it hides nothing that the hand has taken: below, or above where that lies low on the board.
  // Opening is the occasion: what is chosen while it is open lies in view as it is.
  const low = useRef(false);
  useLayoutEffect(() => {
    const at = raceway ? view.getState().pointer : findDrop(site.drops, run?.drop ?? '')?.box;
    low.current = at !== undefined && at !== null && liesLow(view.getState(), at);
  });
  useLayoutEffect(() => {
    if (shown) setWidth(Math.round(frame.current?.getBoundingClientRect().width ?? 0));
    setAbove(shown && low.current);
  }, [shown]);
  useLayoutEffect(() => {
    if (!steady) setSettled(section.current?.getBoundingClientRect().height ?? 0);
  });

  const flat = useMemo(() => {
    if (!run) return null;
    const own = circuit?.conduits.flatMap((id) => conduitOf(plan.conduits, id) ?? []) ?? [];
    return unrolled(run, own, site.pullpoints);
  }, [run, circuit, plan.conduits, site.pullpoints]);

  const height = steady && settled > 0 ? { height: settled } : undefined;
  if (height && !shown && drawer === null)
    return (
      <section className="strip" aria-label="No run" style={height} data-side={above ? 'above' : 'below'}>
        {previewed && <p className="strip-head quiet">No run here: nothing joins the box to a panel.</p>}
      </section>
    );
  if (!shown || !run || !flat) return null;
  const drop = findDrop(site.drops, run.drop);
  const volts = findCharger(site.chargers, run.charger)?.volts ?? 0;
  const mates = [...new Set(flat.conduits.flatMap(({ conduit }) => conduit.circuits))].filter((id) => id !== charger);
  const { units } = site;
  return (
    <section
      ref={section}
      className="strip"
      aria-label={`Run to ${run.drop}`}
      style={height}
      data-side={above ? 'above' : 'below'}
    >
      <p className="strip-head">
        <b>
          Run to {run.drop} from {run.from}
        </b>
        {raceway && <span className="quiet">the longest through {raceway}</span>}
        <span className="quiet">
          {nearestInch(run.length ?? 0, units)} along, {nearestInch(run.conductorLength ?? 0, units)} of conductor,{' '}
          {counted(run.bends, 'bend')} of {Math.round(run.bendDegrees)} degrees in all
        </span>
        {mates.length > 0 && (
          <span className="quiet">
            shares conduit with <Links ids={mates} most={6} />
          </span>
        )}
      </p>
      <div ref={frame} className="strip-frame">
        {width > 0 && (
          <StripDrawing
            flat={flat}
            width={width}
            units={units}
            from={run.from}
            equipmentHeight={site.equipment.find(({ id }) => id === run.from)?.size[2] ?? 0}
            drop={run.drop}
            retractorUp={drop?.retractor?.[2]}
            restsAt={drop?.restHeight}
            colors={circuit ? lanesOf(circuit.phases, volts).map(({ color }) => color) : []}
            onPlace={(along) => {
              const [x, y] = planPointAt(run.path, along);
              const { camera, viewport } = view.getState();
              const seen = boxInView(camera, viewport, -30);
              const inView = x > seen.minX && x < seen.maxX && y > seen.minY && y < seen.maxY;
              view.setState({ pin: [x, y], ...(inView ? {} : { camera: { ...camera, x, y } }) });
            }}
          />
        )}
      </div>
    </section>
  );
}

/** Pixels that it takes, about. */
const HIGH = 200;

/** Whether a place, feet, lies where the strip would open below. */
function liesLow({ camera, viewport }: ViewState, at: readonly [number, number, ...number[]]): boolean {
  const { py } = toScreen(camera, viewport, [at[0], at[1]]);
  return py > viewport.height - HIGH && py < viewport.height;
}

type Chargers = Site['chargers'];
type Selection = readonly { readonly list: string; readonly id: string }[];

/** The raceway that is selected, if nothing else is. */
function racewayOf(selection: Selection): string | null {
  const [first] = selection;
  return first?.list === 'raceways' && selection.every(({ id }) => id === first.id) ? first.id : null;
}

/** The charger whose run is selected: itself, the first at the selected drop, or the farthest through a raceway. */
function chargerOf(chargers: Chargers, runs: readonly Run[], selection: Selection): string | undefined {
  const [first] = selection;
  if (!first || selection.some(({ list, id }) => list !== first.list || id !== first.id)) return undefined;
  if (first.list === 'chargers') return first.id;
  if (first.list === 'drops') return chargersByDrop(chargers).get(first.id)?.[0];
  if (first.list !== 'raceways') return undefined;
  let longest: Run | undefined;
  for (const run of runs)
    if (run.legs.includes(first.id) && (longest === undefined || (run.length ?? 0) > (longest.length ?? 0)))
      longest = run;
  return longest?.charger;
}
