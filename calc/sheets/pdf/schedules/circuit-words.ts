import { kept } from '../../../../routing/kept/kept.ts';
import type { Site } from '../../../../routing/site/site.ts';
import type { Circuit, Conduit, ConduitConductor, PhasePair } from '../../../plan-file/branches.ts';
import { panelSchedules } from '../../../supply/panels/panel-schedule.ts';
import type { CodeTables } from '../../../tables/code-tables.ts';
import { lineColors } from '../../../takeoff/quantities/line-colors.ts';

/** Sheet colours of the insulation colours. */
const INKS: Readonly<Record<string, string>> = {
  black: '#20242c',
  red: '#c4201d',
  blue: '#1f56b5',
  brown: '#7a4a21',
  orange: '#e07b00',
  yellow: '#e8c400',
  green: '#2a7d3f',
};

/** Sheet colours of the lines of a circuit, in the trade's colours for its voltage. */
export const phaseInks = (phases: PhasePair, volts: number): readonly string[] =>
  lineColors(phases, volts).map((colour) => INKS[colour] ?? '#20242c');

const SINGLE: readonly (readonly ['A' | 'B' | 'C', number])[] = [
  ['A', 0],
  ['B', 1],
  ['C', 2],
];

/** Sheet colours of lines A, B and C at a voltage between lines. */
export const lineInks = (volts: number): ReadonlyMap<string, string> => {
  const inks = phaseInks('ABC', volts);
  return new Map(SINGLE.map(([line, i]) => [line, inks[i]!]));
};

/** Panel and spaces of each charger's breaker: `P1-1,3`; the panel alone where it has no space for it. */
export const circuitTags = kept((site: Site): ReadonlyMap<string, string> => {
  const spaces = new Map<string, readonly number[]>();
  for (const { circuits } of panelSchedules(site).values())
    for (const circuit of circuits) if (circuit.serves === 'charger') spaces.set(circuit.id, circuit.spaces);
  return new Map(
    site.chargers.map(({ id, from }) => {
      const mine = spaces.get(id) ?? [];
      return [id, mine.length === 0 ? from : `${from}-${mine.join(',')}`];
    }),
  );
});

/** `#8`, `#1/0`, `250 kcmil`. */
export const sizeWords = (size: string): string => (Number(size) >= 250 ? `${size} kcmil` : `#${size}`);

/** What a circuit is pulled in: `2 #8 + #10 G + #14 pilot`; the size of the pilot is found in its conduits. */
export function circuitConductors(circuit: Circuit, conduits: ReadonlyMap<string, Conduit>): string {
  const pilot = circuit.conduits
    .flatMap((id) => conduits.get(id)?.conductors ?? [])
    .find((conductor) => conductor.use === 'pilot');
  return [
    `${circuit.phases.length} ${sizeWords(circuit.conductor.size)}`,
    `${sizeWords(circuit.grounding.size)} G`,
    ...(circuit.pilot ? [`${pilot === undefined ? '' : `${sizeWords(pilot.size)} `}pilot`] : []),
  ].join(' + ');
}

const USES: Readonly<Record<ConduitConductor['use'], string>> = {
  line: '',
  grounding: ' G',
  bonding: ' SSBJ',
  pilot: ' pilot',
};

/** What lies in a conduit: `6 #8, 1 #10 G, 3 #14 pilot`. */
export const conduitConductors = ({ conductors }: Pick<Conduit, 'conductors'>): string =>
  conductors.map(({ count, size, use }) => `${count} ${sizeWords(size)}${USES[use]}`).join(', ');

/** `1-1/4" EMT`; a tray is just a tray. */
export const conduitSize = ({ method, tradeSize }: Pick<Conduit, 'method' | 'tradeSize'>): string =>
  tradeSize === null ? method : `${tradeSize}" ${method}`;

const byCharger = kept(
  (circuits: readonly Circuit[]): ReadonlyMap<string, Circuit> =>
    new Map(circuits.map((circuit) => [circuit.charger, circuit])),
);

/** The circuit of a charger; undefined where it has no run. */
export const circuitFor = (circuits: readonly Circuit[], charger: string): Circuit | undefined =>
  byCharger(circuits).get(charger);

/** In the place of the conductors of a feeder over the voltage of the tables. */
export const overLimitWords = ({ lowVoltage: { upToVolts } }: CodeTables): string =>
  `conductors not designed here, over ${upToVolts} V`;
