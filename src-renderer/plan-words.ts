import type { Plan, Ref, Settings } from '#shared/model/plan';
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
  cylinder: { name: 'Cylinder', does: 'Stand a cylinder against a wall' },
  pipe: { name: 'Pipe', does: 'Run pipe from the cylinder to the nozzles' },
  nozzle: { name: 'Nozzle', does: 'Hang a nozzle' },
  dimension: { name: 'Dimension', does: 'Print the distance between two places' },
  note: { name: 'Note', does: 'Write on the plan' },
  measure: { name: 'Measure', does: 'Read a distance without drawing anything' },
  calibrate: { name: 'Set scale', does: 'Pick two places of the floor plan and type the true distance' },
  section: { name: 'Section', does: 'Choose where the strip below cuts' },
};

/** Tools at hand in each stage, in the order of the work. */
export const STAGE_TOOLS: Readonly<Record<Stage, readonly ToolId[]>> = {
  survey: ['select', 'calibrate', 'pick-outline', 'enclosure', 'hole', 'ceiling-zone', 'opening', 'obstruction', 'measure', 'note'],
  layout: ['select', 'cylinder', 'pipe', 'nozzle', 'obstruction', 'section', 'measure', 'note'],
  proof: ['select', 'section', 'measure', 'nozzle', 'pipe', 'note'],
  sheets: ['select', 'dimension', 'note', 'section', 'measure'],
  site: ['select', 'measure', 'note'],
};

export const OPENING_WORDS = {
  door: 'Door',
  'relief-vent': 'Relief vent',
  damper: 'Damper',
  grille: 'Grille',
  penetration: 'Penetration',
  window: 'Window',
} as const;

export const OBSTRUCTION_WORDS = {
  beam: 'Beam',
  duct: 'Duct',
  rack: 'Rack',
  cabinet: 'Cabinet',
  column: 'Column',
  light: 'Light',
  tray: 'Cable tray',
  other: 'Other',
} as const;

const WORDS: Readonly<Record<Ref['kind'], string>> = {
  underlay: 'Floor plan',
  enclosure: 'Enclosure',
  obstruction: 'Obstacle',
  dimension: 'Dimension',
  note: 'Note',
  corner: 'Corner',
  wall: 'Wall',
  opening: 'Opening',
  'ceiling-zone': 'Ceiling zone',
  network: 'Pipe network',
  cylinder: 'Cylinder',
  node: 'Pipe end',
  pipe: 'Pipe',
  nozzle: 'Nozzle',
};

/** What kind of thing a reference names, in the user's words. */
export const kindWord = (ref: Ref): string => WORDS[ref.kind];

/** The kind before a name, unless the name says it already: "Nozzle N2", but "West door". */
const named = (word: string, name: string | undefined): string => {
  if (!name) return word;
  return name.toLowerCase().includes(word.toLowerCase()) ? name : `${word} ${name}`;
};

/** Name of a thing as the user knows it: "Nozzle N2", "Wall 3 of Signal hut". A thing that has gone answers its kind. */
export function thingName(plan: Plan, ref: Ref): string {
  const word = kindWord(ref);
  if (ref.kind === 'network') return plan.networks[ref.id]?.name || word;
  if ('network' in ref) {
    const network = plan.networks[ref.network];
    if (ref.kind === 'pipe') return named(word, network?.pipes[ref.id]?.size.concat(' in'));
    if (ref.kind === 'cylinder') return named(word, network?.cylinders[ref.id]?.name);
    if (ref.kind === 'nozzle') return named(word, network?.nozzles[ref.id]?.name);
    return word;
  }
  const level = plan.levels[ref.level];
  if ('enclosure' in ref) {
    const enclosure = level?.enclosures[ref.enclosure];
    if (!enclosure) return word;
    if (ref.kind === 'opening') {
      const opening = enclosure.openings[ref.id];
      return opening ? named(OPENING_WORDS[opening.kind], opening.name) : word;
    }
    if (ref.kind === 'ceiling-zone') return named(word, enclosure.ceilingZones[ref.id]?.name);
    const rings = [enclosure.outline, ...enclosure.holes];
    const at = rings.map((ring) => ring.findIndex((corner) => corner.id === ref.id)).find((index) => index >= 0);
    return at === undefined ? word : `${word} ${at + 1} of ${enclosure.name || 'the enclosure'}`;
  }
  if (ref.kind === 'enclosure') return level?.enclosures[ref.id]?.name || word;
  if (ref.kind === 'obstruction') {
    const solid = level?.obstructions[ref.id];
    return solid ? named(OBSTRUCTION_WORDS[solid.kind], solid.name) : word;
  }
  if (ref.kind === 'underlay') return named(word, level?.underlays[ref.id]?.name);
  return word;
}
