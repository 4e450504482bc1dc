import type { DecodeText } from '../decode-text.ts';
import type { LineWork } from '../line-work.ts';
import { IDENTITY, type Matrix } from '../matrix.ts';
import { indexedColour } from './colours.ts';
import { BY_BLOCK, BY_LAYER, type Colour, type Content } from './content.ts';
import type { LayerTable } from './layers.ts';
import type { Records } from './records.ts';
import type { Tally } from './tally.ts';

/** What the drawing of one entity needs: the record it is in, and where its lines go. */
export interface Reading {
  readonly records: Records;
  readonly layers: LayerTable;
  readonly decode: DecodeText;
  readonly tally: Tally;
  /** Greatest distance of a chord from its curve that does not matter, file units; 0 while unknown. */
  readonly tolerance: number;
  /** Model space, or the block being read. */
  readonly content: Content;
}

/** Draws the entity in the current record, and takes the records that belong to it. */
export type Drawer = (reading: Reading) => void;

/** Layer number of the current record. */
export const layerOf = ({ records, layers }: Reading): number => layers.indexOf(records.text(8, '0').trim() || '0');

/** Colour of the current record. */
export function colourOf({ records }: Reading): Colour {
  if (records.has(420)) return records.whole(420, 0) & 0xffffff;
  const index = records.whole(62, 256);
  if (index === 0) return BY_BLOCK;
  return index > 0 && index < 256 ? indexedColour(index) : BY_LAYER;
}

/** Where lines of the current record go. */
export const workOf = (reading: Reading): LineWork => reading.content.workOn(layerOf(reading), colourOf(reading));

/**
 * Carries places of an entity's own plane to the plan. The plane is given by its normal alone; its x axis
 * follows by the arbitrary axis rule of the format: square to the world's y axis where the normal is within
 * 1/64 of the z axis, to the z axis otherwise.
 * @param elevation height of the places above the plane's origin
 */
export function planeOf(records: Records, elevation: number): Matrix {
  if (!records.has(210) && !records.has(220) && !records.has(230)) return IDENTITY;
  const x = records.number(210, 0);
  const y = records.number(220, 0);
  const z = records.number(230, 1);
  const size = Math.hypot(x, y, z);
  if (!(size > 0)) return IDENTITY;
  const [nx, ny, nz] = [x / size, y / size, z / size];
  if (nx === 0 && ny === 0 && nz > 0) return IDENTITY;
  const isSteep = Math.abs(nx) < 1 / 64 && Math.abs(ny) < 1 / 64;
  // World y × normal, or world z × normal.
  const [ax, ay, az] = isSteep ? [nz, 0, -nx] : [-ny, nx, 0];
  const length = Math.hypot(ax, ay, az);
  const [ux, uy, uz] = [ax / length, ay / length, az / length];
  return [ux, uy, ny * uz - nz * uy, nz * ux - nx * uz, elevation * nx, elevation * ny];
}
