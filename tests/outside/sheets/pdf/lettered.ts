import { planDxf } from '../../../../calc/sheets/dxf/plan-dxf.ts';
import type { LetteredParts } from '../../../../calc/sheets/lettered/lettered-plan.ts';
import { planSvg } from '../../../../calc/sheets/svg/plan-svg.ts';
import type { Planned } from '../planned-samples.ts';
import { FONTS } from './drawing-set.ts';

type Lettered = Pick<Planned, 'site' | 'planned'>;

const parts = (more: Partial<LetteredParts>): LetteredParts => ({
  fonts: FONTS,
  date: '2026-11-25',
  file: 'lot.site.json',
  ...more,
});

/** The text of the DXF of a planned site. */
export const dxfOf = async ({ site, planned }: Lettered, more: Partial<LetteredParts> = {}): Promise<string> =>
  new TextDecoder().decode(await planDxf(site, planned, parts(more)));

/** The SVG of a planned site. */
export const svgOf = ({ site, planned }: Lettered, more: Partial<LetteredParts> = {}): Promise<string> =>
  planSvg(site, planned, parts(more));
