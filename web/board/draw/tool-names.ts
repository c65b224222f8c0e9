import { ACTIONS, type DrawOptions, type DrawToolName } from '../kinds/kinds.ts';
import type { DrawTool } from './draft.ts';

const NAMES = Object.keys(ACTIONS) as readonly DrawToolName[];

/** The actions that draw, in the order in which a lot is laid out; then those that are needed now and then. */
export const LAYOUT_TOOLS = ['stalls', 'canopy', 'equipment', 'raceway', 'drops'] as const;
export const OTHER_TOOLS = NAMES.filter((name) => !(LAYOUT_TOOLS as readonly string[]).includes(name));

export const isDrawTool = (tool: string): tool is DrawToolName => Object.hasOwn(ACTIONS, tool);

/** The actions whose tools follow from what they make. */
export type PlainName = {
  [T in DrawToolName]: (typeof ACTIONS)[T] extends { readonly makes: unknown } ? T : never;
}[DrawToolName];

/** What each action does, with the options of the same name. */
export type Tools = { readonly [T in DrawToolName]: DrawTool<DrawOptions[T]> };

/** They come once the first screen stands (`tools/tools.ts`). */
let tools: Tools | null = null;
export function toolsCome(come: Tools): void {
  tools = come;
}

/** The tool of a name, to be given the options of the same name; null where the tools have not come. */
export const toolOf = (name: DrawToolName): DrawTool<unknown> | null =>
  tools && (tools[name] as unknown as DrawTool<unknown>);

/** Whether an area is drawn with it, by its corners. */
export const drawsOutlines = (tool: string): boolean => isDrawTool(tool) && toolOf(tool)?.shape === 'outline';

/** What every form begins with. */
export const FIRST_DRAW_OPTIONS = Object.fromEntries(
  NAMES.map((name) => [name, ACTIONS[name].first]),
) as unknown as DrawOptions;
