import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Point3 } from '../../routing/site/site.ts';
import type { AsBuiltFile, AsBuiltPair } from '../plan-file/plan-file.ts';
import type { ChargerAsBuilt, LotAsBuilt } from './as-built.ts';
import type { MarginKind, Margins } from './margins.ts';

type Length = (feet: number) => number;

/** What was built beside what is drawn, as it is published; `finding` writes a finding in the units of the file. */
export function writeAsBuilt(
  { drops, findings }: LotAsBuilt,
  length: Length,
  finding: (finding: Finding) => Finding,
): AsBuiltFile {
  const place = ([x, y, z]: Point3): Point3 => [length(x), length(y), length(z)];
  const margin = ({ drawn, built }: ChargerAsBuilt, kind: MarginKind): AsBuiltPair => ({
    drawn: leftOf(drawn, kind, length),
    built: leftOf(built, kind, length),
  });
  const maybe = (feet: number | null): number | null => (feet === null ? null : length(feet));
  return {
    drops: [...drops.values()].map(({ drop, away, chargers, findings: own }) => ({
      drop: drop.id,
      box: place(drop.box),
      ...(drop.retractor && { retractor: place(drop.retractor) }),
      away: length(away),
      chargers: chargers.map((charger) => ({
        charger: charger.charger,
        cord: margin(charger, 'cord'),
        branch: margin(charger, 'branch'),
        volts: margin(charger, 'volts'),
        run: { drawn: maybe(charger.run.drawn), built: maybe(charger.run.built) },
      })),
      findings: own.map(finding),
    })),
    findings: findings.map(finding),
  };
}

function leftOf(margins: Margins, kind: MarginKind, length: Length): number | null {
  const left = margins[kind]?.left;
  if (left === undefined || !Number.isFinite(left)) return null;
  return kind === 'volts' ? left : length(left);
}
