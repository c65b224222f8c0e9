import { describe, expect, it } from 'vitest';
import { byId, elementById } from '../../../routing/site/look-up.ts';
import { ELEMENT_LISTS } from '../../../routing/site/schema.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { feetFile } from './metric.ts';

const site = toSite(feetFile);

describe('looking an element up', () => {
  it('finds each by its id, whichever list it stands in', () => {
    for (const list of ELEMENT_LISTS) {
      for (const element of site[list]) expect(elementById(site, element.id)).toEqual({ list, element });
    }
    expect(elementById(site, 'nothing')).toBeUndefined();
    expect(elementById(site, 'constructor')).toBeUndefined();
  });

  it('builds the map of a list once', () => {
    expect(byId(site.drops)).toBe(byId(site.drops));
    expect(byId([...site.drops])).not.toBe(byId(site.drops));
    expect(byId(site.drops).get('D02')).toBe(site.drops[1]);
  });
});
