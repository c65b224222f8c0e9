import { createElement, type ReactNode } from 'react';
import { describe, expect, test } from 'vitest';
import { ELEMENT_LISTS } from '../../../routing/site/kinds/kinds.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { SelectionPanel } from '../../../web/panels/selection/selection-panel.tsx';
import { SiteForm } from '../../../web/panels/site/site-form.tsx';
import { SMALL } from '../document/small-site.ts';
import { AS_BUILT, DRAWINGS, FIELDS, GRIDLINES, type Pairs, VEHICLE } from './field-pairs.ts';
import { controlsOf, rendered, type Shown } from './rendered.ts';

type Values = Readonly<Record<string, unknown>>;

/** Two panels and a second drop to name, so that what names another can name a second one. */
const SITE: SiteFile = {
  ...SMALL,
  equipment: [...SMALL.equipment!, { ...SMALL.equipment![1]!, id: 'P2', at: [55, 18], entry: [55, 18, 8] }],
};

/**
 * The fields whose value stands in no control of a form: with one value or another of them, all else being the same, the
 * controls are the same.
 */
async function unseen<T>(
  pairs: Pairs<T>,
  put: (values: Values) => SiteFile,
  form: ReactNode,
  shown: Shown,
): Promise<readonly string[]> {
  const fields = Object.entries(pairs) as unknown as [string, [unknown, unknown, Values?]][];
  const full = Object.fromEntries(fields.map(([field, [value]]) => [field, value]));
  const controls = async (values: Values): Promise<string> =>
    controlsOf(await rendered(form, put({ ...full, ...values }), shown)).join('\n');
  const without: string[] = [];
  for (const [field, [one, other, needs]] of fields) {
    const [a, b] = [await controls({ ...needs, [field]: one }), await controls({ ...needs, [field]: other })];
    if (a === b) without.push(field);
  }
  return without;
}

// The id is changed in the head of the panel, whatever the element.
describe('every field has a control in its own form', () => {
  test.each(ELEMENT_LISTS)('%s', async (list) => {
    const elements = SITE[list] as readonly { readonly id: string }[];
    const id = list === 'equipment' ? 'P1' : elements[0]!.id;
    const put = (values: Values): SiteFile => ({
      ...SITE,
      [list]: elements.map((each) => (each.id === id ? { id, ...values } : each)),
    });
    expect(
      await unseen<object>(FIELDS[list], put, createElement(SelectionPanel), { selection: [{ list, id }] }),
    ).toEqual([]);
  });

  test('as-built records', async () => {
    const put = (record: Values): SiteFile => ({ ...SITE, asBuilt: { D1: record } });
    const shown: Shown = { selection: [{ list: 'drops', id: 'D1' }], station: 'build' };
    expect(await unseen(AS_BUILT, put, createElement(SelectionPanel), shown)).toEqual([]);
  });

  test('vehicles', async () => {
    const put = (cart: Values) => ({ ...SITE, vehicles: { cart } }) as unknown as SiteFile;
    expect(await unseen(VEHICLE, put, createElement(SiteForm), {})).toEqual([]);
  });

  test('the drawing set', async () => {
    const put = (drawings: Values): SiteFile => ({ ...SITE, drawings });
    expect(await unseen(DRAWINGS, put, createElement(SiteForm), {})).toEqual([]);
  });

  test('gridlines', async () => {
    const put = (gridlines: Values): SiteFile => ({ ...SITE, gridlines });
    expect(await unseen(GRIDLINES, put, createElement(SiteForm), {})).toEqual([]);
  });
});
