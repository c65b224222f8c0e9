import { basename, join } from 'node:path';
import { writeSite } from '../../../routing/site/file/write.ts';
import { recordsOf } from '../../../routing/site/records/records-file.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { openItems } from '../../field/open/open-items.ts';
import { photoHashes, writeRecordsBundle } from '../../field/records-bundle.ts';
import { alternativeOf } from '../../plan/compared/alternative.ts';
import { handoverFiles } from '../../sheets/handover.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import { sheetsNameOf } from '../file-name.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { pricesIn } from '../prices.ts';
import { recordsIn } from '../records-in.ts';
import { readSites } from '../sites.ts';

export interface HandoverOptions {
  /** Folder that everything is written to. */
  readonly out?: string;
  readonly prices?: string;
  /** Day of the bid. */
  readonly bidDay?: string | undefined;
}

/**
 * `handover SITE FILE... --out DIR`: what is handed over of the work, with what others wrote down in it: the site with all
 * records, the records with their photos, the drawing set as built, the inspection checklist, what is still open, and the
 * setting-out with what was measured.
 */
export async function handoverVerb(
  paths: readonly string[],
  options: HandoverOptions,
  machine: Machine,
): Promise<VerbOutcome> {
  const [first, ...others] = paths;
  if (first === undefined) return wrong('handover: name a site file, then the files whose records it takes in');
  if (options.out === undefined) return wrong('handover: --out says which folder it goes to');
  const prices = pricesIn(options.prices, machine, options);
  if (!prices.ok) return wrong(prices.reason);
  const read = readSites([first], machine);
  if (!read.ok) return wrong(read.reason);
  const [{ file }] = read.sites as [(typeof read.sites)[number]];
  const came = recordsIn(file, others, machine);
  if (!came.ok) return wrong(came.reason);
  const merged: SiteFile = came.all.length > 0 ? { ...file, records: came.all } : file;
  const planned = { ...alternativeOf(first, toSite(merged), prices.list), name: basename(first) };
  const name = sheetsNameOf(first);
  const told: string[] = [];
  const files = await handoverFiles(
    planned,
    {
      fonts: machine.fonts,
      ...(machine.packer && { packer: machine.packer }),
      date: machine.today(),
      photos: async (hash) => came.photos.get(hash) ?? null,
      tell: (says) => told.push(`${name}: ${says}\n`),
    },
    (says, at, of) => machine.progress(`${name}: ${says} (${Math.floor(at) + 1} of ${of})`),
  );
  machine.progress('');
  const standing = new Set(photoHashes(came.all));
  const photos = new Map([...came.photos].filter(([hash]) => standing.has(hash)));
  let bundle: Uint8Array;
  try {
    bundle = writeRecordsBundle({ records: recordsOf(merged), photos });
  } catch (error) {
    return wrong(`handover: ${error instanceof Error ? error.message : String(error)}`);
  }
  const written: [string, string | Uint8Array][] = [
    ['.site.json', writeSite(merged)],
    ['.records.zip', bundle],
    ...files,
  ];
  for (const [ending, content] of written) {
    const path = join(options.out, `${name}${ending}`);
    try {
      machine.write(path, content);
    } catch (error) {
      return wrong(`${path}: cannot be written: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  const open = openItems(planned.site, planned.plan, planned.cost).length;
  return {
    ...done(
      `${written.map(([ending]) => join(options.out!, `${name}${ending}`)).join('\n')}\n${counted(open, 'item')} still open\n\n${CAUTIONS}\n`,
    ),
    err: told.join(''),
  };
}
