import { writeFileSync } from 'node:fs';
import { writeSite } from '../../../routing/site/file/write.ts';
import { fleetYard } from './fleet-yard.ts';
import { hospitalLot } from './hospital-lot.ts';
import { libraryLot } from './library-lot.ts';
import { libraryPedestals } from './library-pedestals.ts';

/** Writes the samples anew. Run from the project's root. */
for (const [name, lot] of [
  ['library-lot', libraryLot()],
  ['library-pedestals', libraryPedestals()],
  ['fleet-yard', fleetYard()],
  ['hospital-lot', hospitalLot()],
] as const)
  writeFileSync(`samples/${name}.site.json`, writeSite(lot));
