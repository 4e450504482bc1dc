import type { Problem } from '#shared/host/contract';
import type { MarginRule } from '#shared/margins/place-margin';
import type { Settings } from '#shared/model/plan';
import type { Verdict } from '#shared/rules/finding';
import type { Stage, State, ToolId } from './store/state.ts';

/** How the plan shows lengths. */
export const lengthSystem = (state: State): Settings['lengths'] => state.history.present.settings.lengths;

export const STAGE_WORDS: Readonly<Record<Stage, { readonly name: string; readonly does: string }>> = {
  survey: { name: 'Survey', does: 'What is there: floor plan, walls, heights' },
  layout: { name: 'Layout', does: 'Cylinder, pipe and nozzles' },
  proof: { name: 'Proof', does: 'What the checks say' },
  sheets: { name: 'Sheets', does: 'Dimensions, notes and print' },
  site: { name: 'Site', does: 'Measured on site' },
};

export const VERDICT_WORDS: Readonly<Record<Verdict, { readonly one: string; readonly many: string }>> = {
  stop: { one: 'stop', many: 'stops' },
  warn: { one: 'warning', many: 'warnings' },
  'not-checked': { one: 'not checked', many: 'not checked' },
  note: { one: 'note', many: 'notes' },
  ok: { one: 'kept', many: 'kept' },
};

/** "1 stop", "2 stops". */
export const countOf = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

export const TOOL_WORDS: Readonly<Record<ToolId, { readonly name: string; readonly does: string }>> = {
  select: { name: 'Select', does: 'Pick, move and reshape what is drawn' },
  enclosure: { name: 'Enclosure', does: 'Draw the room along its finished wall faces' },
  hole: { name: 'Cut-out', does: 'Cut a shaft or column out of an enclosure' },
  'pick-outline': { name: 'Trace', does: 'Take an outline from the floor plan' },
  'ceiling-zone': { name: 'Ceiling', does: 'Mark a part of the ceiling with its own height' },
  opening: { name: 'Opening', does: 'Set a door, vent or other opening into a wall' },
  obstruction: { name: 'Obstacle', does: 'Draw a beam, rack, duct or other thing in the way' },
  device: { name: 'Device', does: 'Place a detector, alarm, sign, switch or air outlet' },
  adjoining: { name: 'Beside', does: 'Draw a space beside, under or over the enclosures' },
  cylinder: { name: 'Cylinder', does: 'Stand a cylinder against a wall' },
  pipe: { name: 'Pipe', does: 'Run pipe from the cylinder to the nozzles' },
  nozzle: { name: 'Nozzle', does: 'Hang a nozzle' },
  support: { name: 'Support', does: 'Put a support on a pipe' },
  dimension: { name: 'Dimension', does: 'Print the distance between two places' },
  note: { name: 'Note', does: 'Write on the plan' },
  measure: { name: 'Measure', does: 'Read a distance without drawing anything' },
  calibrate: { name: 'Set scale', does: 'Pick two places of the floor plan and type the true distance' },
  section: { name: 'Section', does: 'Choose where the strip below cuts' },
};

/** Tools at hand in each stage, in the order of the work. */
export const STAGE_TOOLS: Readonly<Record<Stage, readonly ToolId[]>> = {
  survey: ['select', 'calibrate', 'pick-outline', 'enclosure', 'hole', 'ceiling-zone', 'opening', 'obstruction', 'adjoining', 'device', 'measure', 'note'],
  layout: ['select', 'cylinder', 'pipe', 'nozzle', 'support', 'device', 'obstruction', 'section', 'measure', 'note'],
  proof: ['select', 'section', 'measure', 'nozzle', 'pipe', 'support', 'device', 'note'],
  sheets: ['select', 'dimension', 'note', 'section', 'measure'],
  site: ['select', 'measure', 'note'],
};

/** A problem as sentences: what is wrong and where, anything else that follows from it, and what to do. */
export function problemText({ what, where, remedy }: Problem, besides = ''): string {
  const told = where === '' ? what : `${what.replace(/\.$/, '')} (${where}).`;
  return [told, besides, remedy].filter(Boolean).join(' ');
}

/** Rules of a margin map as the user knows them. */
export const MARGIN_WORDS: Readonly<Record<MarginRule, string>> = {
  all: 'all rules: way to the first that breaks',
  N1: 'distance to walls',
  N2: 'drop below the ceiling',
  N5: 'holes off the corners',
  N6: 'holes along near walls',
  N7: 'free jets',
};
