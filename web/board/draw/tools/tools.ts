import { toolsCome } from '../tool-names.ts';
import { aisleTool, keepoutTool } from './areas.ts';
import { canopyTool } from './canopy.ts';
import { cloudTool } from './clouds.ts';
import { dimensionTool } from './dimensions.ts';
import { dropsTool } from './drops.ts';
import { equipmentTool } from './equipment.ts';
import { noteTool } from './notes.ts';
import { racewayTool } from './raceway.ts';
import { sectionTool } from './sections.ts';
import { columnTool, memberTool, pullpointTool } from './single.ts';
import { stallsTool } from './stalls.ts';

// Where this is imported, the actions draw.
toolsCome({
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
  note: noteTool,
  dimension: dimensionTool,
  cloud: cloudTool,
  section: sectionTool,
});
