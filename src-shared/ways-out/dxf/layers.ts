import type { Settings } from '../../model/plan.ts';
import { PIPE_TABLE, type PipeSize } from '../../profile/pipe-table.ts';
import type { DxfLayer } from './drawing.ts';

/** Layers by what is on them, each with its colour, line width and line type. */
const LAYERS = {
  underlay: ['Floor plan beneath', 9, 13, 'Continuous'],
  walls: ['Walls', 7, 50, 'Continuous'],
  doors: ['Doors', 7, 25, 'Continuous'],
  openings: ['Vents and openings', 7, 25, 'Continuous'],
  zones: ['Ceiling zones', 8, 18, 'Dash and dot'],
  adjoining: ['Adjoining spaces', 8, 18, 'Dash and dot'],
  standing: ['Things that stand', 8, 25, 'Continuous'],
  overhead: ['Things overhead', 8, 25, 'Dashed'],
  jets: ['Jets', 8, 13, 'Dash and dot'],
  fittings: ['Fittings', 5, 35, 'Continuous'],
  risers: ['Risers and drops', 5, 35, 'Continuous'],
  nozzles: ['Nozzles', 1, 35, 'Continuous'],
  supports: ['Pipe supports', 84, 35, 'Continuous'],
  cylinders: ['Cylinders', 6, 50, 'Continuous'],
  assembly: ['Discharge assembly', 6, 50, 'Continuous'],
  devices: ['Detectors, alarms and signs', 94, 35, 'Continuous'],
  datums: ['Datums', 1, 25, 'Continuous'],
  nozzleDimensions: ['Dimensions of nozzles', 30, 18, 'Continuous'],
  wallDimensions: ['Dimensions of walls', 30, 18, 'Continuous'],
  drawnDimensions: ['Dimensions drawn', 30, 18, 'Continuous'],
  roomNames: ['Names of rooms', 7, 25, 'Continuous'],
  pipeTexts: ['Texts of pipe', 5, 25, 'Continuous'],
  names: ['Names of things', 8, 25, 'Continuous'],
  notes: ['Notes', 7, 25, 'Continuous'],
  remarks: ['Remarks', 1, 35, 'Continuous'],
} as const satisfies Readonly<Record<string, readonly [string, number, DxfLayer['weight'], DxfLayer['lineType']]>>;

export type LayerKey = keyof typeof LAYERS;

/** The name of a layer, made of what no program forbids in one. */
export const layerName = (key: LayerKey): string => LAYERS[key][0].replaceAll(',', '');

/** Layer of pipe of a size: "Pipe NPS 1.25", or "Pipe DN 32" where lengths are metric. */
export function pipeLayerName(size: PipeSize, lengths: Settings['lengths']): string {
  if (lengths === 'metric') return `Pipe DN ${PIPE_TABLE[size].dn}`;
  const inches = size.split('-').reduce((sum, part) => {
    const [top = '0', bottom = '1'] = part.split('/');
    return sum + Number(top) / Number(bottom);
  }, 0);
  return `Pipe NPS ${inches}`;
}

/** Every layer that a drawing uses, in the order in which they are named here, pipe first by its size. */
export function layersInUse(used: ReadonlySet<string>): DxfLayer[] {
  const fixed = (Object.keys(LAYERS) as LayerKey[]).map((key): DxfLayer => {
    const [, colour, weight, lineType] = LAYERS[key];
    return { name: layerName(key), colour, weight, lineType };
  });
  const known = new Set(fixed.map(({ name }) => name));
  const pipe = [...used].filter((name) => !known.has(name) && name !== '0').sort((a, b) => Number(a.split(' ').at(-1)) - Number(b.split(' ').at(-1)));
  return [...fixed.filter(({ name }) => used.has(name)), ...pipe.map((name): DxfLayer => ({ name, colour: 5, weight: 70, lineType: 'Continuous' }))];
}
