/** The actions that draw, in the order in which a lot is laid out; then those that are needed now and then. */
export const LAYOUT_TOOLS = ['stalls', 'canopy', 'equipment', 'raceway', 'drops'] as const;
export const OTHER_TOOLS = ['keepout', 'aisle', 'pullpoint', 'member', 'column'] as const;

export type DrawToolName = (typeof LAYOUT_TOOLS)[number] | (typeof OTHER_TOOLS)[number];

/** Drawn by their corners. */
export const OUTLINE_TOOLS: ReadonlySet<string> = new Set<DrawToolName>(['keepout', 'aisle']);

const NAMES: ReadonlySet<string> = new Set([...LAYOUT_TOOLS, ...OTHER_TOOLS]);

export const isDrawTool = (tool: string): tool is DrawToolName => NAMES.has(tool);

/** What each action is called and the letter that begins it. */
export const DRAW_WORDS: Readonly<Record<DrawToolName, { readonly name: string; readonly key: string }>> = {
  stalls: { name: 'Stalls', key: 'S' },
  canopy: { name: 'Canopy', key: 'C' },
  equipment: { name: 'Equipment', key: 'E' },
  raceway: { name: 'Raceway', key: 'R' },
  drops: { name: 'Drops', key: 'D' },
  keepout: { name: 'Keep-out', key: 'K' },
  aisle: { name: 'Aisle', key: 'A' },
  pullpoint: { name: 'Pull point', key: 'P' },
  member: { name: 'Member', key: 'B' },
  column: { name: 'Column', key: 'O' },
};
