import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { opener } from './open.ts';
import { drawn } from './screen-acts.ts';

const open = opener();

interface Stop {
  readonly name: string;
  /** What is wrong with it; empty where it has a name, is seen to have the keys, and lies free in the window. */
  readonly faults: string;
}

/** Presses Tab until the page was gone through once. */
async function tabThrough(page: Page): Promise<readonly Stop[]> {
  await page.evaluate(() => {
    // From the beginning of the page, wherever the keys were.
    document.body.tabIndex = -1;
    document.body.focus();
    document.body.removeAttribute('tabindex');
    window.scrollTo(0, 0);
  });
  const stops: Stop[] = [];
  for (;;) {
    await page.keyboard.press('Tab');
    await drawn(page);
    const stop = await page.evaluate(look);
    if (!stop || stops.length > 400) return stops;
    stops.push(stop);
  }
}

/** Runs in the page: the element that has the keys; null where it was seen before or none has. */
function look(): Stop | null {
  const at = document.activeElement;
  if (!at || at === document.body || at.hasAttribute('data-tabbed')) return null;
  at.setAttribute('data-tabbed', '');
  const labels = (at as HTMLInputElement).labels;
  const name = (at.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? at.textContent ?? '').trim().slice(0, 50);
  const faults: string[] = [];
  if (name === '') faults.push('has no name');
  const own = getComputedStyle(at);
  const after = getComputedStyle(at, '::after');
  const seen = (style: CSSStyleDeclaration): boolean =>
    (style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2) ||
    (style.content !== 'none' && style.content !== 'normal' && Number.parseFloat(style.borderTopWidth) >= 2);
  if (!seen(own) && !seen(after)) faults.push('is not seen to have the keys');
  const { left, right, top, bottom } = at.getBoundingClientRect();
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  const small = bottom - top < window.innerHeight;
  if (small && (x < 0 || y < 0 || x > window.innerWidth || y > window.innerHeight)) faults.push('is out of the window');
  else if (small) {
    const hit = document.elementFromPoint(x, y);
    if (hit && !at.contains(hit) && !hit.contains(at)) faults.push(`is covered by ${hit.tagName} ${hit.className}`);
  }
  return { name: `${at.tagName.toLowerCase()} "${name}"`, faults: faults.join(', ') };
}

/** Controls that Tab never came to, where another way than Tab does not lead to them. */
const missed = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('button, input, select, textarea, summary, a[href]')]
      .filter(
        (element) =>
          element.checkVisibility({ visibilityProperty: true }) &&
          !element.matches(':disabled, [tabindex="-1"], [type=radio], [data-tabbed]'),
      )
      .map((element) => `${element.tagName.toLowerCase()} "${element.textContent?.trim() || element.id}"`),
  );

test.each([
  ['desk', 1440, 900, 'light'],
  ['desk', 1280, 800, 'dark'],
  ['phone', 390, 844, 'light'],
] as const)(
  'at %s size, %i by %i, Tab goes once through all there is, always seen',
  async (_, width, height, theme) => {
    const { page, close } = await open({ width, height, theme });
    await page.getByRole('button', { name: 'Lay out' }).click();
    const table = page.getByRole('button', { name: 'Margins 16' });
    if ((await table.getAttribute('aria-expanded')) !== 'true') await table.click();
    await page.locator('tr[data-row=EV05] th button').click();
    await page.getByTestId('selection-panel').waitFor();
    const stops = await tabThrough(page);
    expect(stops.filter(({ faults }) => faults !== '')).toEqual([]);
    expect(stops.map(({ name }) => name)).toContain('button "EV05"');
    expect(stops.length).toBeGreaterThan(50);
    expect(await missed(page)).toEqual([]);
    await close();
  },
);

test('a dialog and a menu take the keys, keep them, and give them back where they came from', async () => {
  const { page, close } = await open({ width: 1280, height: 800 });
  const holds = (selector: string): Promise<boolean> =>
    page.evaluate((each) => document.activeElement?.closest(each) !== null, selector);
  const focused = (): Promise<string | null> =>
    page.evaluate(
      () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
    );

  await page.getByRole('button', { name: 'Keys' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  for (let i = 0; i < 6; i++) {
    await expect.poll(() => holds('dialog, body')).toBe(true);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('.desk') === null)).toBe(true);
  }
  await page.keyboard.press('Escape');
  await expect.poll(() => focused()).toContain('Keys');

  await page.getByRole('button', { name: 'Sheets' }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => holds('[role=menu]')).toBe(true);
  await page.keyboard.press('End');
  await expect.poll(() => focused()).toBe('The plan, as JSON');
  await page.keyboard.press('Escape');
  await expect.poll(() => focused()).toContain('Sheets');
  await close();
});
