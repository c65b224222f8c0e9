import { useRef } from 'react';
import type { UncountedPlan } from '../../calc/plan/plan-shape.ts';
import type { Site } from '../../routing/site/site.ts';
import { useView } from '../board/view-store.ts';
import { useDocument } from '../document/use-document.tsx';

/** Chargers: past so many a table waits until what is dragged is let go, or the drawing would wait for it. */
const LIVE_MOST = 2000;

/** The site and its plan as a table of all chargers shows them. */
export function useTableFacts(): { readonly site: Site; readonly plan: UncountedPlan } {
  const dragging = useView((state) => state.doing === 'dragging');
  const last = useRef<{ readonly site: Site; readonly plan: UncountedPlan }>(null);
  const held = (site: Site) => (dragging && site.chargers.length > LIVE_MOST ? last.current : null);
  const site = useDocument((state) => held(state.site)?.site ?? state.site);
  const plan = useDocument((state) => held(state.site)?.plan ?? state.plan);
  last.current = { site, plan };
  return last.current;
}
