import { designOf } from '../../../../calc/branches/design.ts';
import { feederConductor, unplacedAmbient } from '../../../../calc/supply/feeders/feeder-conductor.ts';
import { newId } from '../../../../routing/site/new-id.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import type { Edit } from '../../change/edit.ts';
import type { ElementOf } from '../../change/element-lists.ts';
import { addElements } from '../add.ts';

/** A feeder between two pieces of equipment, with conductors that its breaker can have; to be changed in its form. */
export function addFeeder(file: SiteFile, from: string, to: string, breakerAmps: number): Edit {
  const { rules } = toSite(file);
  const conductor = feederConductor(designOf(rules).tables, breakerAmps, rules, unplacedAmbient(rules));
  const feeder: ElementOf<'feeders'> = { id: newId(file, 'F'), from, to, conductor, breakerAmps };
  return addElements(file, 'feeders', [feeder]);
}
