import { packedFonts } from '../../calc/cli/writing/fonts.ts';
import { alternativeOf } from '../../calc/plan/compared/alternative.ts';
import { INVENTED_LIST } from '../../calc/prices/invented-list.ts';
import { SHEET_FILES } from '../../calc/sheets/every-sheet.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { makeLot } from './make-lot.ts';

export interface SheetRow {
  readonly stalls: number;
  readonly sheet: string;
  /** Of the processor. */
  readonly seconds: number;
  /** Times as long as of the lot before: what grows faster than the lot shows. */
  readonly ratio: number;
  readonly megabytes: number;
}

/** Seconds of the processor that each sheet of made lots takes, one after the other in one thread. */
export async function sheetsBench(sizes: readonly number[]): Promise<SheetRow[]> {
  const rows: SheetRow[] = [];
  const before = new Map<string, number>();
  for (const stalls of sizes) {
    const planned = alternativeOf('lot', toSite(makeLot({ name: `made lot of ${stalls}`, stalls })), INVENTED_LIST);
    for (const { ending, write } of SHEET_FILES) {
      const begun = process.cpuUsage();
      const content = await write(planned, { fonts: packedFonts, date: '2026-01-01' });
      const seconds = process.cpuUsage(begun).user / 1e6;
      if (content === null) continue;
      const ratio = seconds / (before.get(ending) ?? Number.NaN);
      before.set(ending, seconds);
      rows.push({ stalls, sheet: ending.slice(1), seconds, ratio, megabytes: content.length / 1e6 });
    }
  }
  // Tables are done at once.
  return rows.filter(({ seconds }) => seconds > 0.2);
}
