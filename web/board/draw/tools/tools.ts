import { toolsCome } from '../tool-names.ts';
import { keepoutTool } from './areas.ts';
import { canopyTool } from './canopy.ts';
import { dropsTool } from './drops.ts';
import { equipmentTool } from './equipment.ts';
import { noteTool } from './notes.ts';
import { PLAIN_TOOLS } from './plain.ts';
import { racewayTool } from './raceway.ts';
import { memberTool, pullpointTool } from './single.ts';
import { stallsTool } from './stalls.ts';

// Where this is imported, the actions draw.
toolsCome({
  ...PLAIN_TOOLS,
  stalls: stallsTool,
  canopy: canopyTool,
  equipment: equipmentTool,
  raceway: racewayTool,
  drops: dropsTool,
  keepout: keepoutTool,
  pullpoint: pullpointTool,
  member: memberTool,
  note: noteTool,
});
