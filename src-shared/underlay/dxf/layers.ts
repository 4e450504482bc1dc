import { indexedColour } from './colours.ts';
import type { Records } from './records.ts';

/** A layer of the file's layer table. */
export interface DxfLayer {
  readonly name: string;
  readonly colour: number;
  /** Neither its own lines nor blocks placed on it show. */
  readonly isFrozen: boolean;
  /** Its own lines do not show. */
  readonly isOff: boolean;
}

/** Layers by number; names are the same whatever their case. */
export class LayerTable {
  private readonly byName = new Map<string, number>();
  private readonly layers: DxfLayer[] = [];

  constructor() {
    this.add({ name: '0', colour: indexedColour(7), isFrozen: false, isOff: false });
  }

  /** Number of layer "0". */
  static readonly ZERO = 0;

  /** Adds a layer or replaces the one of that name. */
  add(layer: DxfLayer): void {
    const key = layer.name.toUpperCase();
    const known = this.byName.get(key);
    if (known !== undefined) this.layers[known] = layer;
    else {
      this.byName.set(key, this.layers.length);
      this.layers.push(layer);
    }
  }

  /** Number of the layer of that name; one that the table lacks is shown, in the common colour. */
  indexOf(name: string): number {
    const known = this.byName.get(name.toUpperCase());
    if (known !== undefined) return known;
    this.add({ name, colour: indexedColour(7), isFrozen: false, isOff: false });
    return this.layers.length - 1;
  }

  at(index: number): DxfLayer {
    return this.layers[index] ?? { name: '0', colour: 0, isFrozen: false, isOff: false };
  }

  get all(): readonly DxfLayer[] {
    return this.layers;
  }
}

const FROZEN = 1;

/** Reads one LAYER record of the layer table. */
export function readLayer(records: Records): DxfLayer {
  const index = records.whole(62, 7);
  return {
    name: records.text(2).trim(),
    colour: records.has(420) ? records.whole(420, 0) & 0xffffff : indexedColour(Math.abs(index)),
    isFrozen: (records.whole(70, 0) & FROZEN) !== 0,
    // A negative colour number means: switched off.
    isOff: index < 0,
  };
}
