import type { SiteFile } from '../../../../routing/site/site.ts';
import { type Edit, joinEdits } from '../../change/edit.ts';
import { changeElements } from '../change.ts';

/** Gives several pieces of equipment the amperes that load management holds their chargers to, each its own: one edit. */
export const holdPanels = (file: SiteFile, ceilings: readonly { readonly id: string; readonly amps: number }[]): Edit =>
  joinEdits(
    `Hold ${ceilings.map(({ id, amps }) => `${id} to ${amps} A`).join(', ')}`,
    ...ceilings.map(({ id, amps }) => changeElements(file, [{ list: 'equipment', id }], { managedAmps: amps })),
  );
