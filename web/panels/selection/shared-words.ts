import { AISLE_WORDS, ARC_WORDS, BOUNDARY_WORDS, ELECTRODE_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import type { Equipment, Site } from '../../../routing/site/site.ts';
import type { ListName } from '../../document/change/element-lists.ts';
import { EACH, type FieldPath, type SharedField, valuesAt } from '../../document/change/shared-field.ts';

import { DEVICE_WORDS, GIVEN_WORDS, TAP_WORDS } from '../../words/device-words.ts';
import { PILOT_WORDS } from '../../words/pilot-words.ts';

type Given = string | number | boolean;

/** How a field of several elements is shown. What it may hold is read from the schema. */
export interface SharedWords<L extends ListName = ListName> extends SharedField {
  readonly unit?: string;
  /** What an optional field means where it is not given: choosing it takes the field away. */
  readonly absent?: Given;
  /** What is said where an optional field that means nothing by itself is not given. */
  readonly none?: string;
  /** Where the words to choose among come from, if not from the schema. */
  readonly among?: 'equipment' | 'vehicles' | 'conductor sizes';
  readonly words?: Readonly<Record<string, string>>;
  /** Whether it makes sense for these elements; always where absent. */
  readonly suits?: (elements: readonly Site[L][number][]) => boolean;
}

type More<L extends ListName> = Omit<SharedWords<L>, 'label' | 'paths'>;

function field<L extends ListName>(label: string, path: FieldPath, more: More<L> = {}): SharedWords<L> {
  return { label, paths: [path], ...more };
}

const PHASES = { 1: 'single', 3: 'three' };
const DEGREES = { unit: 'degrees' };
const NOT_GIVEN = { none: 'not given' };

/** Whether each of some elements lies level, all of its places at one elevation. */
const level =
  (shape: SharedField) =>
  (elements: readonly object[]): boolean =>
    elements.every((element) => {
      const heights = valuesAt(element, shape) as readonly number[];
      return Math.max(...heights) - Math.min(...heights) < 0.005;
    });

const ENDS: SharedField = {
  label: 'elevation',
  paths: [
    ['from', 2],
    ['to', 2],
  ],
};
const ALONG: SharedField = { label: 'elevation', paths: [['path', EACH, 2]] };

const transformers = (elements: readonly Equipment[]): boolean => elements.every(({ kind }) => kind === 'transformer');
const sources = (elements: readonly Equipment[]): boolean => elements.every(({ kind }) => kind === 'source');
const boards = (elements: readonly Equipment[]): boolean =>
  elements.every(({ kind }) => kind !== 'transformer' && kind !== 'source');
const noTransformer = (elements: readonly Equipment[]): boolean => elements.every(({ kind }) => kind !== 'transformer');

const keepsOut = (member: string, words: string): SharedWords<'keepouts'> => ({
  label: `keeps out ${words}`,
  called: `ban on ${words}`,
  paths: [['blocks']],
  member,
});

/** The fields that make sense for several elements at once, in the order and the words of their own forms. */
export const SHARED_WORDS = {
  stalls: [
    field('width', ['width']),
    field('depth', ['depth']),
    field('heading', ['heading'], DEGREES),
    field('use', ['use'], { absent: 'standard' }),
    field('parking', ['parking'], { absent: 'either' }),
    field('build-out phase', ['phase'], { absent: 1 }),
    field('vehicle', ['vehicle'], { among: 'vehicles', none: 'as the rules' }),
  ],
  columns: [
    field('width', ['size', 0]),
    field('depth', ['size', 1]),
    field('rotation', ['rotation'], { ...DEGREES, absent: 0 }),
    field('height', ['height'], NOT_GIVEN),
  ],
  members: [
    { ...ENDS, suits: level(ENDS) },
    field('elevation of the from end', ['from', 2], { suits: (elements) => !level(ENDS)(elements) }),
    field('elevation of the to end', ['to', 2], { suits: (elements) => !level(ENDS)(elements) }),
    field('stringer to be put in', ['stringer'], { absent: false, called: 'stringer' }),
  ],
  keepouts: [
    keepsOut('raceway', 'raceways'),
    keepsOut('drop', 'drops'),
    keepsOut('equipment', 'equipment'),
    keepsOut('cord', 'cords'),
    field('from', ['from'], { none: 'grade and below', called: 'lowest elevation' }),
    field('to', ['to'], { none: 'any height', called: 'highest elevation' }),
  ],
  aisles: [field('kind', ['kind'], { absent: 'drive', words: AISLE_WORDS })],
  boundaries: [
    field('kind', ['kind'], { absent: 'property', words: BOUNDARY_WORDS }),
    field('setback', ['setback'], { none: 'none stated' }),
  ],
  equipment: [
    field('kind', ['kind']),
    field('entry elevation', ['entry', 2]),
    field('width', ['size', 0]),
    field('depth', ['size', 1]),
    field('height', ['size', 2]),
    field('rotation', ['rotation'], { ...DEGREES, absent: 0 }),
    field('working space', ['workingSpace'], NOT_GIVEN),
    field('opposite it', ['condition'], { none: 'as drawn', called: 'condition of the working space' }),
    field('grounded to', ['electrode'], { ...NOT_GIVEN, called: 'electrode', words: ELECTRODE_WORDS }),
    field('phases', ['phases'], { ...NOT_GIVEN, words: PHASES }),
    field('voltage', ['volts'], { ...NOT_GIVEN, unit: 'V', suits: noTransformer }),
    field('bus', ['busAmps'], { ...NOT_GIVEN, unit: 'A', suits: noTransformer }),
    field('main', ['mainAmps'], { ...NOT_GIVEN, unit: 'A', suits: noTransformer }),
    field('load managed to', ['managedAmps'], {
      ...NOT_GIVEN,
      unit: 'A',
      called: 'managed current',
      suits: noTransformer,
    }),
    field('pole spaces', ['spaces'], { ...NOT_GIVEN, suits: noTransformer }),
    field('size', ['kva'], { ...NOT_GIVEN, unit: 'kVA', suits: transformers }),
    field('primary', ['primaryVolts'], { ...NOT_GIVEN, unit: 'V', suits: transformers }),
    field('secondary', ['secondaryVolts'], { ...NOT_GIVEN, unit: 'V', suits: transformers }),
    field('impedance', ['impedancePercent'], { ...NOT_GIVEN, unit: '%', suits: transformers }),
    field('X over R', ['xr'], NOT_GIVEN),
    field('available fault', ['faultAmps'], {
      ...NOT_GIVEN,
      unit: 'A',
      called: 'available fault current',
      suits: sources,
    }),
    field('X over R of the fault', ['faultXr'], { ...NOT_GIVEN, suits: sources }),
    field('measured demand', ['existingAmps'], {
      ...NOT_GIVEN,
      unit: 'A',
      called: 'measured demand of what stands already',
      suits: sources,
    }),
    field('interrupts', ['interruptingAmps'], { ...NOT_GIVEN, unit: 'A', called: 'interrupting rating' }),
    field('series rated to', ['seriesAmps'], { ...NOT_GIVEN, unit: 'A', called: 'series rating', suits: boards }),
    field('ground-fault protection', ['groundFault'], { ...NOT_GIVEN, words: GIVEN_WORDS, suits: boards }),
    field('less arc energy by', ['arcEnergy'], {
      ...NOT_GIVEN,
      words: ARC_WORDS,
      called: 'way to less arc energy',
      suits: boards,
    }),
    field('breakers lock open', ['lockable'], { ...NOT_GIVEN, words: GIVEN_WORDS, called: 'locking', suits: boards }),
    field('stands already', ['existing'], { absent: false, called: 'standing' }),
  ],
  feeders: [
    field('from', ['from'], { among: 'equipment', called: 'source' }),
    field('breaker', ['breakerAmps'], { unit: 'A' }),
    field('parallel sets', ['conductor', 'sets']),
    field('size', ['conductor', 'size'], { among: 'conductor sizes', called: 'conductor size' }),
    field('metal', ['conductor', 'metal'], { words: { Cu: 'copper', Al: 'aluminum' } }),
    field('insulation', ['conductor', 'insulation']),
    field('raceway', ['raceway'], { none: 'as it is routed' }),
    field('length', ['length'], { none: 'as it is routed' }),
    field('stands already', ['existing'], { absent: false, called: 'standing' }),
    field('device stands', ['device'], { none: DEVICE_WORDS[''], words: DEVICE_WORDS, called: 'place of the device' }),
    field('lies outdoors', ['outdoors'], { none: 'where it is in the ground', called: 'lying outdoors' }),
    field('ground-fault protection', ['groundFault'], { ...NOT_GIVEN, words: GIVEN_WORDS }),
    field('less arc energy by', ['arcEnergy'], { ...NOT_GIVEN, words: ARC_WORDS, called: 'way to less arc energy' }),
    field('tapped in', ['tapCondition'], { none: TAP_WORDS[''], words: TAP_WORDS, called: 'condition of the tap' }),
  ],
  loads: [
    field('on', ['from'], { among: 'equipment', called: 'equipment' }),
    field('draws', ['va'], { unit: 'VA', called: 'draw' }),
    field('voltage', ['volts'], { unit: 'V' }),
    field('phases', ['phases'], { words: PHASES }),
    field('continuous', ['continuous'], { called: 'duty' }),
    field('generates', ['generation'], { absent: false, called: 'generation' }),
    field('demand factor', ['demand'], { none: '1' }),
    field('is a motor', ['motor'], { absent: false, called: 'motor' }),
  ],
  raceways: [
    field('method', ['method']),
    field('place', ['place']),
    field('under', ['surface'], {
      absent: 'asphalt',
      called: 'surface',
      suits: (elements) => elements.every(({ place }) => place === 'underground'),
    }),
    field('ambient', ['ambientC'], { unit: '°C', none: 'by its place' }),
    field('in sun, above roof', ['aboveRoof'], { none: 'no', called: 'height above the roof' }),
    { ...ALONG, suits: level(ALONG) },
  ],
  pullpoints: [field('elevation', ['at', 2])],
  drops: [
    field('box elevation', ['box', 2]),
    field('retractor elevation', ['retractor', 2], {
      suits: (elements) => elements.some(({ retractor }) => retractor !== undefined),
    }),
    field('cord of each', ['cord'], { called: 'cord' }),
    field('connectors rest at', ['restHeight'], { ...NOT_GIVEN, called: 'rest height' }),
    field('made for cords', ['holds'], { absent: 1, called: 'number of cords' }),
    field('mount', ['mount'], { absent: 'overhead' }),
  ],
  chargers: [
    field('fed from', ['from'], { among: 'equipment', called: 'source' }),
    field('rated', ['amps'], { unit: 'A', called: 'rated current' }),
    field('voltage', ['volts'], { unit: 'V' }),
    field('phases', ['phases'], { words: PHASES }),
    field('pilot', ['pilot'], { absent: false, words: { true: PILOT_WORDS.yes, false: PILOT_WORDS.no } }),
    field('least it gives', ['minAmps'], { unit: 'A', none: '6 A' }),
    field('own disconnect', ['disconnect'], { ...NOT_GIVEN, called: 'distance of its disconnect' }),
    field('branch limit', ['branchLimit'], { none: 'as the rules' }),
    field('branch drop limit', ['branchDrop'], { unit: '%', none: 'as the rules' }),
  ],
} satisfies { readonly [L in ListName]?: readonly SharedWords<L>[] };
