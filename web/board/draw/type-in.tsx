import { useEffect, useRef } from 'react';
import { useDocument, useDocumentStore } from '../../document/use-document.ts';
import { toScreen } from '../camera.ts';
import { useView, useViewStore } from '../view-store.ts';
import { takeTyped, type } from './drawing.ts';
import { readTyped, TYPED, type TypedField } from './typing.ts';

const WORDS: Readonly<Record<TypedField, string>> = { length: 'length', angle: 'angle', elevation: 'elevation' };

/** A small field beside the hand for a typed distance, angle or elevation. Tab goes from distance to angle. */
export function TypeIn() {
  const document = useDocumentStore();
  const view = useViewStore();
  const units = useDocument((state) => state.site.units);
  const typing = useView((state) => state.typing);
  const draft = useView((state) => state.draft);
  const camera = useView((state) => state.camera);
  const viewport = useView((state) => state.viewport);
  const input = useRef<HTMLInputElement>(null);
  const field = typing?.field;
  useEffect(() => {
    if (!field) return;
    input.current?.focus({ preventScroll: true });
    return () => globalThis.document.querySelector<HTMLElement>('.board-paper')?.focus({ preventScroll: true });
  }, [field]);
  if (!typing) return null;
  const desk = { document, view };
  const at = draft?.next?.at ?? draft?.spots.at(-1)?.at ?? [camera.x, camera.y];
  const { px, py } = toScreen(camera, viewport, at);
  const fields = TYPED.filter((each) => (typing.field === 'elevation' ? each === 'elevation' : each !== 'elevation'));
  const read = readTyped(typing, typing.field, units);
  return (
    <div
      className="type-in"
      style={{
        left: Math.max(8, Math.min(px + 18, viewport.width - 250)),
        top: Math.max(8, Math.min(py + 16, viewport.height - 90)),
      }}
    >
      {fields.map((each) => (
        <label key={each}>
          {WORDS[each]}
          <input
            ref={each === typing.field ? input : null}
            value={typing[each]}
            autoComplete="off"
            spellCheck={false}
            aria-invalid={each === typing.field && read !== null && !read.ok}
            onFocus={() => each !== typing.field && type(desk, { ...typing, field: each })}
            onChange={(event) => type(desk, { ...typing, [each]: event.target.value })}
            onKeyDown={(event) => {
              event.stopPropagation();
              if (event.key === 'Escape') type(desk, null);
              else if (event.key === 'Enter' && (read === null || read.ok)) takeTyped(desk);
              else if (event.key === 'Tab' && fields.length > 1)
                type(desk, { ...typing, field: each === 'length' ? 'angle' : 'length' });
              else return;
              event.preventDefault();
            }}
          />
        </label>
      ))}
      {read && !read.ok && <p className="wrong">{read.says}</p>}
    </div>
  );
}
