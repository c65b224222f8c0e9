import { useEffect, useRef } from 'react';
import { useDocument } from '../../document/use-document.tsx';
import { keysToBoard } from '../../parts/keys-to-board.ts';
import { typedLetters } from '../../parts/typed-text.ts';
import { toScreen } from '../camera.ts';
import { readTyped } from '../typed/typed-place.ts';
import { FROM_LAST, ON_SITE, retyped, type TypedPart } from '../typed/typing.ts';
import { useView } from '../view-store.ts';
import { takeTyped, type } from './typed-in.ts';
import { useDesk } from './use-desk.ts';

/** Small fields beside the hand for a typed distance and angle, coordinates, or elevation. Tab goes to the next. */
export function TypeIn() {
  const desk = useDesk();
  const units = useDocument((state) => state.site.units);
  const typing = useView((state) => state.typing);
  const draft = useView((state) => (state.typing ? state.draft : null));
  const moving = useView((state) => state.doing === 'dragging');
  // Where the pointer is matters only where there is something to type: else each move would ask for a new look.
  const pointer = useView((state) => (state.typing ? state.pointer : null));
  const camera = useView((state) => state.camera);
  const viewport = useView((state) => state.viewport);
  const input = useRef<HTMLInputElement>(null);
  const field = typing?.field;
  useEffect(() => {
    if (!field) return;
    input.current?.focus({ preventScroll: true });
    return () => void keysToBoard();
  }, [field]);
  if (!typing) return null;
  const last = draft?.whole ? undefined : draft?.spots.at(-1);
  const at = draft?.next?.at ?? last?.at ?? pointer ?? [camera.x, camera.y];
  const { px, py } = toScreen(camera, viewport, at);
  const fields: readonly TypedPart[] =
    typing.field === 'elevation' ? ['elevation'] : last || moving ? [...FROM_LAST, ...ON_SITE] : ON_SITE;
  const reads = fields.map((each) => readTyped(typing, each, units));
  const wrong = reads.find((read) => read && !read.ok);
  return (
    <div
      className="type-in"
      style={{
        left: Math.max(8, Math.min(px + 18, viewport.width - 250)),
        top: Math.max(8, Math.min(py + 16, viewport.height - 140)),
      }}
    >
      {fields.map((each, i) => (
        <label key={each}>
          {each}
          <input
            ref={each === typing.field ? input : null}
            value={typedLetters(typing[each])}
            autoComplete="off"
            spellCheck={false}
            aria-invalid={reads[i]?.ok === false}
            onFocus={() => each !== typing.field && type(desk, { ...typing, field: each })}
            onChange={(event) => type(desk, retyped(typing, each, event.target.value))}
            onKeyDown={(event) => {
              event.stopPropagation();
              const next = fields[(i + (event.shiftKey ? fields.length - 1 : 1)) % fields.length]!;
              if (event.key === 'Escape') type(desk, null);
              else if (event.key === 'Enter' && !wrong) takeTyped(desk);
              else if (event.key === 'Tab' && fields.length > 1) type(desk, { ...typing, field: next });
              else return;
              event.preventDefault();
            }}
          />
        </label>
      ))}
      {wrong && !wrong.ok && <p className="wrong">{wrong.says}</p>}
    </div>
  );
}
