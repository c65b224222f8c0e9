import type { Page } from 'playwright-core';

/** Faults of a screen that can be measured, one line each; none where it is as it should be. */
export async function screenFaults(page: Page, touch: boolean): Promise<readonly string[]> {
  return page.evaluate(look, { touch, leastLettering: 11, leastTouch: 44 });
}

interface Limits {
  readonly touch: boolean;
  readonly leastLettering: number;
  readonly leastTouch: number;
}

/** Runs in the page. */
function look({ touch, leastLettering, leastTouch }: Limits): string[] {
  const faults: string[] = [];
  const dialog = document.querySelector('dialog[open]');
  const menu = document.querySelector('[role=menu]');
  const root: Element = dialog ?? menu ?? document.body;

  const over = document.documentElement.scrollWidth - window.innerWidth;
  if (over > 0) faults.push(`the page is ${over} px wider than the window`);

  const named = (element: Element): string => {
    const words = (element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40);
    return `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} "${words}"`;
  };
  const shown = (element: Element): boolean =>
    element.checkVisibility({ visibilityProperty: true }) && !element.closest('.heard');

  interface Patch {
    readonly element: Element;
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  }
  /** What is left of a box after everything round it that hides what runs over. */
  const visible = (element: Element, { left, right, top, bottom }: DOMRect): Patch | null => {
    let [l, r, t, b] = [left, right, top, bottom];
    for (let up: Element | null = element; up && up !== document.body; up = up.parentElement) {
      const { overflowX, overflowY, position } = getComputedStyle(up);
      if (overflowX !== 'visible' || overflowY !== 'visible') {
        const box = up.getBoundingClientRect();
        l = Math.max(l, box.left);
        r = Math.min(r, box.right);
        t = Math.max(t, box.top);
        b = Math.min(b, box.bottom);
      }
      if (position === 'fixed') break;
    }
    return r - l > 1 && b - t > 1 ? { element, left: l, right: r, top: t, bottom: b } : null;
  };
  const meet = (a: Patch, b: Patch): boolean =>
    Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2 &&
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 3;
  /** What stays in place while the rest scrolls under it may lie over the rest. */
  const layer = (element: Element): Element | null => {
    for (let up: Element | null = element; up; up = up.parentElement) {
      const { position, zIndex } = getComputedStyle(up);
      if (position === 'fixed' || position === 'sticky' || (position === 'absolute' && zIndex !== 'auto')) return up;
    }
    return null;
  };

  // Lettering: its size, whether it is cut, and whether it lies over other lettering.
  const words: (Patch & { readonly layer: Element | null })[] = [];
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!element || !node.textContent?.trim() || !shown(element)) continue;
    if (element.closest('option, style, script, title')) continue;
    const style = getComputedStyle(element);
    const size = Number.parseFloat(style.fontSize);
    if (size < leastLettering) faults.push(`${named(element)} is lettered in ${size} px`);
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const rect of range.getClientRects()) {
      const patch = visible(element, rect);
      if (isCut(element, rect)) faults.push(`${named(element)} is cut`);
      // The line box of this face stands higher than its letters.
      if (patch)
        words.push({ ...patch, top: patch.top + size * 0.2, bottom: patch.bottom - size * 0.1, layer: layer(element) });
    }
  }
  for (let i = 0; i < words.length; i++)
    for (let j = i + 1; j < words.length; j++) {
      const [a, b] = [words[i]!, words[j]!];
      if (a.layer === b.layer && a.element !== b.element && meet(a, b))
        faults.push(`${named(a.element)} lies over ${named(b.element)}`);
    }

  /**
   * Whether a part of a line is hidden that no scrolling and no title brings to light. A line that is hidden whole is
   * not cut: what has no room may stay away.
   */
  function isCut(element: Element, { left, right, top, bottom }: DOMRect): boolean {
    for (let up: Element | null = element; up && up !== document.body; up = up.parentElement) {
      const { overflowX, overflowY } = getComputedStyle(up);
      if ([overflowX, overflowY].some((flow) => flow === 'auto' || flow === 'scroll')) return false;
      const box = up.getBoundingClientRect();
      const hides = overflowX === 'hidden' || overflowX === 'clip';
      if (!hides || top >= box.bottom - 3 || bottom <= box.top + 3 || left >= box.right || right <= box.left) continue;
      const across = right > box.right + 1.5 || left < box.left - 1.5;
      const down = bottom > box.bottom + 5 || top < box.top - 5;
      if ((across && !up.closest('[title]')) || down) return true;
    }
    return false;
  }

  // Controls: their size under a finger, whether anything lies over them, and their values.
  const controls = [...root.querySelectorAll('button, input, select, summary, textarea, a[href]')].filter(
    (element) => shown(element) && !element.matches(':disabled'),
  );
  const patches: (Patch & { readonly layer: Element | null })[] = [];
  for (const element of controls) {
    // The whole label, and the whole row of a table, take the finger.
    const label = element.matches('[type=checkbox], [type=radio]') ? element.closest('label') : null;
    const target = label ?? element.closest('tr[data-row]') ?? element;
    const rect = target.getBoundingClientRect();
    if (touch && (rect.height < leastTouch - 0.5 || rect.width < 24))
      faults.push(`${named(target)} is ${Math.round(rect.width)} by ${Math.round(rect.height)} px under a finger`);
    const patch = visible(element, element.getBoundingClientRect());
    if (patch) patches.push({ ...patch, layer: layer(element) });
    if (element.matches('input:not([type=checkbox], [type=range], [type=file]), textarea'))
      if (element.scrollWidth > element.clientWidth + 1)
        faults.push(`the value of ${named(element)} "${(element as HTMLInputElement).value}" is cut`);
  }
  for (let i = 0; i < patches.length; i++)
    for (let j = i + 1; j < patches.length; j++) {
      const [a, b] = [patches[i]!, patches[j]!];
      if (a.layer !== b.layer || a.element.contains(b.element) || b.element.contains(a.element)) continue;
      if (meet(a, b)) faults.push(`control ${named(a.element)} lies over ${named(b.element)}`);
    }
  for (const { element, left, right, top, bottom } of patches) {
    const [x, y] = [(left + right) / 2, (top + bottom) / 2];
    if (x < 0 || x > window.innerWidth || y < 0 || y > window.innerHeight) continue;
    const hit = document.elementFromPoint(x, y);
    const free = !hit || element.contains(hit) || hit.contains(element) || hit.closest('label')?.contains(element);
    if (!free && layer(hit) === layer(element)) faults.push(`${named(element)} is covered by ${named(hit)}`);
  }

  // The board: large enough to be read, and what lies on it keeps to its edge.
  const paper = document.querySelector('.board-paper');
  if (paper && !dialog && !menu) {
    const box = paper.getBoundingClientRect();
    if (box.height < 200) faults.push(`the board is only ${Math.round(box.height)} px high`);
    let covered = 0;
    for (const each of document.querySelectorAll('.board > :not(.board-paper, .board-foot)')) {
      const { width, height } = each.getBoundingClientRect();
      covered += width * height;
    }
    const share = covered / (box.width * box.height);
    if (share > 0.16) faults.push(`${Math.round(share * 100)} % of the board is covered`);
  }
  return [...new Set(faults)];
}
