import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { letteringFaults, watchLettering } from './lettering.ts';
import { opener } from './open.ts';
import { seriousFaults } from './open-page.ts';
import { drawn } from './screen-acts.ts';
import { screenFaults } from './screen-faults.ts';
import { SCREENS } from './screens.ts';

const open = opener();

const SIZES = [
  [390, 844],
  [1280, 800],
  [1440, 900],
  [2560, 1440],
] as const;
const THEMES = ['light', 'dark'] as const;

/** Where OVERROW_FILM names a folder for pictures, every screen is looked at in both themes, else in one of them. */
const film = process.env.OVERROW_FILM;

async function changeTheme(page: Page, to: (typeof THEMES)[number]): Promise<void> {
  await page.evaluate(
    (theme) => document.querySelector<HTMLElement>(`[aria-label="Change to the ${theme} theme"]`)?.click(),
    to,
  );
  await drawn(page);
}

test.each(SIZES)('at %i by %i every screen can be read, reached and touched', async (width, height) => {
  const touch = width < 500;
  const { page, offences, close } = await open({ width, height, touch, watch: watchLettering });
  page.setDefaultTimeout(8000);
  const faults: string[] = [];
  for (const [i, { name, go }] of SCREENS.entries()) {
    await go(page);
    const themes = film ? THEMES : [THEMES[(i + SIZES.findIndex(([each]) => each === width)) % 2]!];
    for (const theme of themes) {
      await changeTheme(page, theme);
      if (film) await page.screenshot({ path: `${film}/${name}-${width}-${theme}.png` });
      const found = [
        ...(await screenFaults(page, touch)),
        ...(await letteringFaults(page)),
        ...(await seriousFaults(page)),
      ];
      faults.push(...found.map((fault) => `${name}, ${theme}: ${fault}`));
    }
  }
  expect(faults).toEqual([]);
  expect(offences).toEqual([]);
  await close();
});
