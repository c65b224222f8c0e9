import type { Page } from 'playwright-core';
import { expect } from 'vitest';

interface Picked {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}
export const file = (name: string, mimeType: string, buffer: Buffer): Picked => ({ name, mimeType, buffer });

export async function pick(page: Page, picked: Picked): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: /^(Put a site plan underneath|Pick the file)/ }).click(),
  ]);
  await chooser.setFiles({ ...picked });
}

export async function put(page: Page, picked: Picked): Promise<void> {
  await pick(page, picked);
  await shown(page);
}

export const shown = (page: Page): Promise<unknown> => page.waitForSelector('[data-testid=underlay][data-state=shown]');

export const ledger = (page: Page) => page.getByTestId('underlay');
export const fieldOf = (page: Page, label: string): Promise<string> =>
  ledger(page).getByRole('textbox', { name: label, exact: true }).inputValue();

/** Colors of the board's lowest layer, one in so many pixels each way, as counts. */
export const colors = (page: Page): Promise<Record<string, number>> =>
  page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('.board-paper canvas')!;
    const { data, width, height } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    const counts: Record<string, number> = {};
    for (let y = 0; y < height; y += 2)
      for (let x = 0; x < width; x += 2) {
        const at = 4 * (y * width + x);
        const name = `${data[at]} ${data[at + 1]} ${data[at + 2]}`;
        counts[name] = (counts[name] ?? 0) + 1;
      }
    return counts;
  });

/** Pixels of the frames in the files, which are a violet that the page has nowhere. */
export const violet = async (page: Page): Promise<number> =>
  Object.entries(await colors(page)).reduce((sum, [name, count]) => {
    const [r = 0, g = 0, b = 0] = name.split(' ').map(Number);
    return r - g > 40 && b - g > 40 ? sum + count : sum;
  }, 0);

export const seesViolet = async (page: Page): Promise<void> => {
  await expect.poll(() => violet(page)).toBeGreaterThan(50);
};

export async function emptySite(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.getByRole('menuitem', { name: 'An empty site' }).click();
  await page.getByRole('heading', { level: 1, name: 'New site' }).waitFor();
}

/** Drops a file on the board as a person does. */
export const drop = (page: Page, { name, buffer }: Picked): Promise<void> =>
  page.evaluate(
    ([as, bytes]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([new Uint8Array(bytes)], as));
      document
        .querySelector('.board-paper')!
        .dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    [name, [...buffer]] as const,
  );
