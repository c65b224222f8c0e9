import { newId } from '../../../../routing/site/new-id.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { addElements } from '../../../document/edits/add.ts';
import { ACTIONS, type DrawOptions, type DrawToolName } from '../../kinds/kinds.ts';
import { type BoardDraft, type DrawTool, lineOf, type Makes, type PlainAction, spotsOf } from '../draft.ts';
import type { PlainName } from '../tool-names.ts';
import { draftOutline, outlineTool } from './areas.ts';

/** What an action does that makes one element of the places that are pressed. */
export function plainTool<Options>({ name, makes }: PlainAction<Options>): DrawTool<Options> {
  const { list, letters, shape, presses, made, turns } = makes as Makes<Options> & {
    // Which list it is and what is made are of one kind.
    readonly made: (id: string, places: readonly Point2[], options: Options) => never;
  };
  const placesOf = PLACES[shape];
  const common = shape === 'outline' ? outlineTool(name, list) : { shape, atOnce: true, list, words: () => [] };
  return {
    ...common,
    edit: ({ file }, draft, options) => {
      const places = placesOf(draft);
      return places && addElements(file, list, [made(newId(file, letters), places, options)]);
    },
    advice:
      'advice' in common
        ? common.advice
        : ({ spots }) => ({
            action: name,
            next: presses[spots.length] ?? '',
            keys: [
              shape === 'point' ? ['Alt', 'no snapping'] : ['0-9', 'length'],
              ...(turns ? [['X', turns.does] as const] : []),
              ['Esc', spots.length === 0 ? 'select' : 'throw away'],
            ],
          }),
    ...(turns && {
      turned: (options: Options) => ({ ...options, [turns.option]: -(options[turns.option] as number) }),
    }),
  };
}

/** The places that an element is made of; null while there are too few. */
const PLACES: Readonly<Record<Makes<never>['shape'], (draft: BoardDraft) => readonly Point2[] | null>> = {
  point: (draft) => {
    const [spot] = spotsOf(draft);
    return spot ? [spot.at] : null;
  },
  line: lineOf,
  outline: draftOutline,
};

/** The tools of all such actions. */
export const PLAIN_TOOLS = Object.fromEntries(
  (Object.keys(ACTIONS) as DrawToolName[]).flatMap((name) => {
    const action = ACTIONS[name];
    return 'makes' in action ? [[name, plainTool(action as PlainAction<unknown>)]] : [];
  }),
) as unknown as { readonly [T in PlainName]: DrawTool<DrawOptions[T]> };
