import { useEffect, useRef } from 'react';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Underlay } from '../../../routing/site/site.ts';
import { useViewStore } from '../../board/view-store.ts';
import { useDocument } from '../../document/use-document.tsx';
import { usePageStore } from '../../page-state/page-store.ts';
import { LengthField } from '../../parts/fields.tsx';
import type { UnderlayPicture } from '../painting/picture.ts';
import { useUnderlay, useUnderlayStore } from '../underlay-store.ts';
import { useChangeUnderlay } from '../use-change-underlay.ts';
import { lieAsStated, liesAsStated } from './lie-as-stated.ts';
import { scaledAbout } from './placement.ts';
import { nextStep, startPlacing } from './placing-hand.ts';

const WORDS = { scale: 'Scale by two points', move: 'Move', level: 'Square up' } as const;

/** What the hand can do to place an underlay, and to lay it where its sheet says. */
export function PlacingActs({ underlay, picture }: { readonly underlay: Underlay; readonly picture: UnderlayPicture }) {
  const georef = useDocument((state) => state.site.georef);
  const change = useChangeUnderlay(underlay);
  const view = useViewStore();
  const page = usePageStore();
  const underlays = useUnderlayStore();
  const placing = useUnderlay((state) => state.placing);
  const start = (kind: keyof typeof WORDS): void =>
    startPlacing(
      { underlays, view, page },
      placing?.kind === kind ? null : kind === 'move' ? { kind } : { kind, points: [] },
    );
  const points = placing && placing.kind !== 'move' ? placing.points : [];
  return (
    <>
      <div className="underlay-acts" role="toolbar" aria-label="Place the underlay">
        {(['scale', 'move', 'level'] as const).map((kind) => (
          <button key={kind} type="button" aria-pressed={placing?.kind === kind} onClick={() => start(kind)}>
            {WORDS[kind]}
          </button>
        ))}
        {!liesAsStated(underlay, picture, georef) && (
          <button
            type="button"
            onClick={() => change('Lay underlay where it says', lieAsStated(underlay, picture, georef, picture))}
          >
            Lay where it says
          </button>
        )}
      </div>
      {placing && (
        <p role="status" className="underlay-next">
          {nextStep(placing)}
        </p>
      )}
      {placing?.kind === 'scale' && points.length === 2 && <DistanceField underlay={underlay} />}
    </>
  );
}

/** The true distance of two picked points, which sets the scale. */
function DistanceField({ underlay }: { readonly underlay: Underlay }) {
  const view = useViewStore();
  const page = usePageStore();
  const underlays = useUnderlayStore();
  const units = useDocument((state) => state.site.units);
  const change = useChangeUnderlay(underlay);
  const placing = useUnderlay((state) => state.placing);
  const [a, b] = placing && placing.kind !== 'move' ? placing.points : [];
  const fields = useRef<HTMLDivElement>(null);
  // It asks, so it takes what is typed.
  useEffect(() => fields.current?.querySelector('input')?.focus(), []);
  if (!a || !b) return null;
  const reads = Math.hypot(a[0] - b[0], a[1] - b[1]);
  return (
    <div className="fields" ref={fields}>
      <LengthField
        label={`apart (reads ${printLength(reads, units)})`}
        value={Number.NaN}
        least={0.01}
        onChange={(feet) => {
          change('Scale underlay', scaledAbout(underlay, a, feet / reads));
          startPlacing({ underlays, view, page }, null);
        }}
      />
    </div>
  );
}
