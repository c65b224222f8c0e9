import type { DrawTool } from './draft.ts';
import type { DrawOptions } from './options.ts';
import type { DrawToolName } from './tool-names.ts';
import { aisleTool, keepoutTool } from './tools/areas.ts';
import { canopyTool } from './tools/canopy.ts';
import { dropsTool } from './tools/drops.ts';
import { equipmentTool } from './tools/equipment.ts';
import { racewayTool } from './tools/raceway.ts';
import { columnTool, memberTool, pullpointTool } from './tools/single.ts';
import { stallsTool } from './tools/stalls.ts';

const TOOLS: { readonly [T in DrawToolName]: DrawTool<DrawOptions[T]> } = {
  stalls: stallsTool,
  canopy: canopyTool,
  equipment: equipmentTool,
  raceway: racewayTool,
  drops: dropsTool,
  keepout: keepoutTool,
  aisle: aisleTool,
  pullpoint: pullpointTool,
  member: memberTool,
  column: columnTool,
};

/** The tool of a name, to be given the options of the same name. */
export const toolOf = <T extends DrawToolName>(name: T): DrawTool<DrawOptions[T]> => TOOLS[name];
