import { equipmentId, isFreeId } from '../../../../calc/propose/new-equipment.ts';
import { USUAL_PANELBOARD } from '../../../../calc/propose/usual.ts';
import { EQUIPMENT_WORDS, type EquipmentKind } from '../../../../routing/site/schema/vocabulary.ts';
import type { Equipment, SiteFile } from '../../../../routing/site/site.ts';
import { joinEdits } from '../../../document/change/edit.ts';
import { addElements } from '../../../document/edits/add.ts';
import { addFeeder } from '../../../document/edits/charging/feed.ts';
import { type DrawTool, spotsOf } from '../draft.ts';
import { type EquipmentOptions, FIRST_OPTIONS } from '../options.ts';

/** By custom of the trade, no source. */
const PREFIX: Readonly<Record<EquipmentKind, string>> = {
  source: 'SVC',
  service: 'SE',
  panelboard: 'P',
  switchboard: 'SWB',
  transformer: 'T',
  disconnect: 'DS',
  inverter: 'INV',
};

/** Equipment at a place, with its rating and, where asked for, the feeder into it. */
export const equipmentTool: DrawTool<EquipmentOptions> = {
  shape: 'point',
  atOnce: false,
  list: 'equipment',
  edit: ({ file }, draft, options) => {
    const [spot] = spotsOf(draft);
    if (!spot) return null;
    const equipment = equipmentAt(file, spot.at, options);
    const added = addElements(file, 'equipment', [equipment]);
    const { fedFrom } = options;
    if (!file.equipment?.some(({ id }) => id === fedFrom)) return added;
    return joinEdits(
      added.name,
      added,
      addFeeder(file, fedFrom, equipment.id, options.mainAmps ?? options.busAmps ?? 100),
    );
  },
  words: () => [],
  advice: (draft, { kind }) =>
    draft.whole
      ? {
          action: 'Equipment',
          next: 'Change it beside the board, then set it.',
          keys: [
            ['Enter', 'set'],
            ['X', 'quarter turn'],
            ['Esc', 'throw away'],
          ],
        }
      : {
          action: 'Equipment',
          next: `Press where the ${EQUIPMENT_WORDS[kind]} stands.`,
          keys: [
            ['X', 'quarter turn'],
            ['Alt', 'no snapping'],
            ['Esc', 'select'],
          ],
        },
  after: (options, { file }) => (options.kind === 'source' ? panelboardFrom(options, file) : options),
  turned: (options) => ({ ...options, rotation: (options.rotation + 90) % 360 }),
};

/** After a source comes what it feeds most often: a panelboard at its voltage, its feeder drawn with it. */
const panelboardFrom = ({ rotation, volts, phases }: EquipmentOptions, file: SiteFile): EquipmentOptions => ({
  ...FIRST_OPTIONS.equipment,
  ...KIND_DEFAULTS.panelboard,
  rotation,
  volts,
  phases,
  fedFrom: file.equipment?.at(-1)?.id ?? '',
});

const maybe = <K extends string, V>(name: K, value: V | null): { readonly [P in K]?: V } =>
  (value === null ? {} : { [name]: value }) as { readonly [P in K]?: V };

function equipmentAt(file: SiteFile, at: Equipment['at'], options: EquipmentOptions): Equipment {
  const { kind, size, rotation, entryHeight } = options;
  const transformer = kind === 'transformer';
  return {
    id: idFor(file, kind),
    kind,
    at,
    size,
    ...(rotation !== 0 && { rotation }),
    entry: [at[0], at[1], entryHeight],
    ...(!transformer && maybe('volts', options.volts)),
    ...maybe('phases', options.phases),
    ...maybe('busAmps', options.busAmps),
    ...maybe('mainAmps', options.mainAmps),
    ...maybe('spaces', options.spaces),
    ...maybe('workingSpace', options.workingSpace),
    ...(transformer && maybe('kva', options.kva)),
    ...(transformer && maybe('primaryVolts', options.primaryVolts)),
    ...(transformer && maybe('secondaryVolts', options.secondaryVolts)),
  };
}

/** `SVC`, `P1`, `P2`: the first service has no number. */
const idFor = (file: SiteFile, kind: EquipmentKind): string =>
  kind === 'source' && isFreeId(file, PREFIX.source) ? PREFIX.source : equipmentId(file, PREFIX[kind]);

/** What the form starts from for each kind. Common practice, no source. */
export const KIND_DEFAULTS: Readonly<Record<EquipmentKind, Partial<EquipmentOptions>>> = {
  source: {
    size: [6, 4, 6],
    entryHeight: 0,
    volts: 208,
    phases: 3,
    busAmps: null,
    mainAmps: null,
    spaces: null,
    workingSpace: null,
    fedFrom: '',
  },
  service: {
    size: [4, 2, 7.5],
    entryHeight: 0,
    volts: 208,
    phases: 3,
    busAmps: 800,
    mainAmps: 800,
    spaces: null,
    workingSpace: 3.5,
  },
  panelboard: USUAL_PANELBOARD,
  switchboard: {
    size: [6, 2.5, 7.5],
    entryHeight: 7.5,
    volts: 480,
    phases: 3,
    busAmps: 1200,
    mainAmps: 1200,
    spaces: null,
    workingSpace: 3.5,
  },
  transformer: {
    size: [4, 3, 5],
    entryHeight: 4,
    phases: 3,
    busAmps: null,
    mainAmps: null,
    spaces: null,
    workingSpace: null,
    kva: 225,
    primaryVolts: 480,
    secondaryVolts: 208,
  },
  disconnect: {
    size: [2, 1, 4],
    entryHeight: 4,
    volts: 208,
    phases: 3,
    busAmps: 400,
    mainAmps: null,
    spaces: null,
    workingSpace: 3,
  },
  inverter: {
    size: [3, 1, 4],
    entryHeight: 4,
    volts: 208,
    phases: 3,
    busAmps: null,
    mainAmps: null,
    spaces: null,
    workingSpace: 3,
  },
};
