/** Parts of the work that an estimator sums apart. */
export const SYSTEMS = ['feeder', 'equipment', 'branches', 'drops', 'ground'] as const;
export type TakeoffSystem = (typeof SYSTEMS)[number];

/** What is dug, drilled, poured, painted and set. */
export const GROUND_WORK: readonly string[] = [
  'saw cut',
  'trench',
  'bedding',
  'warning tape',
  'backfill',
  'spoil',
  'patch',
  'core drill',
  'handhole',
  'equipment pad',
  'pedestal base',
  'bollard',
  'bollard footing',
  'wheel stop',
  'striping',
  'sign',
];

/** Equipment and its devices, as they are bought and set together. */
export const GEAR: readonly string[] = [
  'service equipment',
  'switchboard',
  'panelboard',
  'transformer',
  'disconnect',
  'inverter',
  'breaker',
  'device over 1,000 V',
  'main bonding jumper',
  'system bonding jumper',
];

const SYSTEM_OF: ReadonlyMap<string, TakeoffSystem> = new Map<string, TakeoffSystem>([
  ...['service equipment', 'switchboard', 'panelboard', 'transformer', 'disconnect', 'inverter'].map(
    (item) => [item, 'equipment'] as const,
  ),
  ...[
    'termination',
    'lug',
    'feeder over 1,000 V',
    'device over 1,000 V',
    'main bonding jumper',
    'system bonding jumper',
    'electrode conductor',
    'electrode connection',
    'ground rod',
    'ground ring',
  ].map((item) => [item, 'feeder'] as const),
  ...['charging module', 'retractor', 'cord', 'strain relief', 'pedestal'].map((item) => [item, 'drops'] as const),
  ...[...GROUND_WORK].map((item) => [item, 'ground'] as const),
]);

/** The system that an item of the takeoff belongs to. */
export function takeoffSystem(item: string, spec: string): TakeoffSystem {
  const isOf = (what: string): boolean => spec.startsWith(what);
  if (item === 'test') return isOf('feeder') ? 'feeder' : isOf('charger') ? 'drops' : 'branches';
  if (item.startsWith('feeder ')) return 'feeder';
  return SYSTEM_OF.get(item) ?? (item === 'junction box' && isOf('at the drop') ? 'drops' : 'branches');
}
