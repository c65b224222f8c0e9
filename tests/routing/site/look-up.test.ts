import { describe, expect, it } from 'vitest';
import { byId } from '../../../routing/site/look-up.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { feetFile } from './numbers/metric.ts';

const site = toSite(feetFile);

describe('looking an element up', () => {
  it('finds each by its id, and nothing by what is not one', () => {
    for (const drop of site.drops) expect(byId(site.drops).get(drop.id)).toBe(drop);
    expect(byId(site.drops).get('constructor')).toBeUndefined();
  });

  it('builds the map of a list once', () => {
    expect(byId(site.drops)).toBe(byId(site.drops));
    expect(byId([...site.drops])).not.toBe(byId(site.drops));
    expect(byId(site.drops).get('D02')).toBe(site.drops[1]);
  });
});
