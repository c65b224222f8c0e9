import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import type { BoardInk } from '../../../web/board/painting/ink.ts';
import { type BoardPen, boardFrame } from '../../../web/board/pictures/frame.ts';
import { drawEquipment } from '../../../web/board/pictures/steel/structure.ts';
import { sceneOf } from '../../../web/board/scene/scene.ts';

/** A pen that writes down where it puts words. */
function wordsPen(): { readonly pen: BoardPen; readonly words: Map<string, string> } {
  const words = new Map<string, string>();
  const own: Record<string, unknown> = {
    measureText: (text: string) => ({ width: text.length * 7 }),
    fillText: (text: string, x: number, y: number) => words.set(text, `${Math.round(x)} ${Math.round(y)}`),
  };
  const pen = new Proxy(own, { get: (at, name: string) => at[name] ?? (() => {}), set: () => true });
  return { pen: pen as unknown as BoardPen, words };
}

test.each([1.5, 2.5, 3.5, 5])(
  'at %s px a foot what is selected has its name where it has it among all others, not a second one beside it',
  (scale) => {
    const read = readSite(readFileSync(new URL('../../../samples/library-lot.site.json', import.meta.url), 'utf8'));
    if (!read.ok) throw new Error('the sample is read');
    const site = toSite(read.file);
    const scene = sceneOf(site, plan(site));
    const wish = { scene, station: 'layout', margins: false } as const;
    const view = { width: 1400, height: 700 };
    const camera = { x: 30, y: 0, scale };
    const all = wordsPen();
    drawEquipment(all.pen, boardFrame(camera, view, {} as BoardInk, wish), scene.equipment.items);
    expect(all.words.size).toBeGreaterThan(2);
    for (const mark of scene.equipment.items) {
      const one = wordsPen();
      drawEquipment(one.pen, boardFrame(camera, view, {} as BoardInk, wish, true), [mark]);
      expect(one.words.get(mark.equipment.id)).toBe(all.words.get(mark.equipment.id));
      expect([...one.words.keys()]).not.toContain(scene.equipment.items.find((other) => other !== mark)?.equipment.id);
    }
  },
);
