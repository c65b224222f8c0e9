import { expect, test } from 'vitest';
import { indexColor } from '../../../routing/site/import/dxf/color.ts';
import told from './colors.json' with { type: 'json' };

// colors.json holds the colors of the index as ezdxf 0.18.1 has them (ezdxf.colors.DXF_DEFAULT_COLORS).
test('each color of the index is that which ezdxf has, within two of 255 in each part; 7 is ink', () => {
  for (const [index, color] of told.entries()) {
    // The darkest half shades of its table do not follow from their neighbors.
    const isDarkest = index >= 10 && index < 250 && (index % 10 === 7 || index % 10 === 9);
    if (index === 0 || index === 7 || index === 256 || isDarkest) continue;
    const own = indexColor(index);
    for (const shift of [16, 8, 0])
      expect(Math.abs(((own! >> shift) & 255) - ((color >> shift) & 255)), `color ${index}`).toBeLessThanOrEqual(2);
  }
  expect([0, 7, 256, -3, 1e9, Number.NaN].map(indexColor)).toEqual([null, null, null, null, null, null]);
});
