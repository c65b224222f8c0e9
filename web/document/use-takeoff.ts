import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Plan } from '../../calc/plan/plan-shape.ts';
import { afterFrame } from '../parts/after-frame.ts';
import { ifCounted, isCounted, onCounted } from './planning.ts';
import { useDocument } from './use-document.tsx';

/** With more chargers than so many the drawing does not wait for the quantities. */
const MANY = 1000;

/**
 * The takeoff of the open document; undefined until what counts it has come. That of a large site is worked when the
 * drawing stands on the screen: until then it is undefined in a site that was just opened, and in one that changed what
 * it was.
 */
export function useTakeoff(): Plan['takeoff'] | undefined {
  const plan = useDocument((state) => state.plan);
  const opened = useDocument((state) => state.opened);
  const isLarge = useDocument((state) => state.site.chargers.length > MANY);
  const isHere = useSyncExternalStore(onCounted, isCounted, isCounted);
  const [worked, setWorked] = useState<{
    readonly opened: number;
    readonly takeoff: Plan['takeoff'] | undefined;
  } | null>(null);
  useEffect(
    () => (isLarge && isHere ? afterFrame(() => setWorked({ opened, takeoff: ifCounted(plan)?.takeoff })) : undefined),
    [plan, opened, isLarge, isHere],
  );
  if (!isLarge) return isHere ? ifCounted(plan)?.takeoff : undefined;
  return worked?.opened === opened ? worked.takeoff : undefined;
}
