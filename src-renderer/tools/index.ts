import type { ToolId } from '../store/state.ts';
import { adjoiningTool } from './adjoining.ts';
import { calibrateTool } from './calibrate.ts';
import { ceilingZoneTool } from './ceiling-zone.ts';
import { cylinderTool } from './cylinder.ts';
import { deviceTool } from './device.ts';
import { dimensionTool } from './dimension.ts';
import { enclosureTool } from './enclosure.ts';
import { holeTool } from './hole.ts';
import { measureTool } from './measure.ts';
import { noteTool } from './note.ts';
import { nozzleTool } from './nozzle.ts';
import { obstructionTool } from './obstruction.ts';
import { openingTool } from './opening.ts';
import { pickOutlineTool } from './pick-outline.ts';
import { pipeTool } from './pipe.ts';
import { sectionTool } from './section.ts';
import { selectTool } from './select.ts';
import { supportTool } from './support.ts';
import type { Tool } from './tool.ts';

/** Every tool by its name. A tool's state is its own affair: the runner only hands it back. */
export const TOOLS: Readonly<Record<ToolId, Tool<unknown>>> = {
  select: selectTool,
  enclosure: enclosureTool,
  hole: holeTool,
  'pick-outline': pickOutlineTool,
  'ceiling-zone': ceilingZoneTool,
  opening: openingTool,
  obstruction: obstructionTool,
  device: deviceTool,
  adjoining: adjoiningTool,
  cylinder: cylinderTool,
  pipe: pipeTool,
  nozzle: nozzleTool,
  support: supportTool,
  dimension: dimensionTool,
  note: noteTool,
  measure: measureTool,
  calibrate: calibrateTool,
  section: sectionTool,
};
