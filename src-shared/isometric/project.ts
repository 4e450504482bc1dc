/** A place of an isometric: x to the right, y up, in lengths of the drawing. */
export interface IsoPlace {
  readonly x: number;
  readonly y: number;
}

/** Where the viewer stands, looking down on the pipe. */
export const ISO_VIEWS = ['south-east', 'south-west', 'north-west', 'north-east'] as const;
export type IsoView = (typeof ISO_VIEWS)[number];

interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

const COS_30 = Math.cos(Math.PI / 6);
const SIN_30 = 0.5;

/** The plan turned until its viewer stands in the south-east. */
function turned({ x, y, z }: Vector, view: IsoView): Vector {
  switch (view) {
    case 'south-east':
      return { x, y, z };
    case 'south-west':
      return { x: -y, y: x, z };
    case 'north-west':
      return { x: -x, y: -y, z };
    case 'north-east':
      return { x: y, y: -x, z };
  }
}

/**
 * Draws a way in space by the axes of an isometric: heights upright, both level axes at 30° to the right and left,
 * all three at their full length. From the south-east, east runs right and down, north right and up.
 */
export function project(way: Vector, view: IsoView): IsoPlace {
  const { x, y, z } = turned(way, view);
  return { x: COS_30 * (x + y), y: SIN_30 * (y - x) + z };
}

/** How near to the viewer a place is: what is nearer is drawn over what lies behind it. */
export function nearness(at: Vector, view: IsoView): number {
  const { x, y, z } = turned(at, view);
  return x - y + z;
}
