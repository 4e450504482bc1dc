/** A step of the work that must be seen before the next one may hide or endanger it. */
export interface HoldPoint {
  readonly id: string;
  readonly words: string;
  readonly isWitnessed: boolean;
}

const point = (id: string, words: string, isWitnessed = false): HoldPoint => ({ id, words, isWitnessed });

/** In the order of the work. Source: common practice. */
export const HOLD_POINTS: readonly HoldPoint[] = [
  point('H1', 'Room matches the sheet: plan, three ceiling heights, obstructions'),
  point('H2', 'Wall and anchors of the cylinder rail', true),
  point('H3', 'Pipe clean inside before it is closed'),
  point('H4', 'Supports'),
  point('H5', 'Pneumatic test of the pipe, and a puff through each nozzle', true),
  point('H6', 'Final place, drop, tilt and hole directions of each nozzle', true),
  point('H7', 'Photographs of work that will be concealed'),
  point('H8', 'Cylinders restrained; caps off last'),
  point('H9', 'Release circuits proved on a dummy load', true),
  point('H10', 'Enclosure integrity test', true),
  point('H11', 'Every input against the release matrix', true),
  point('H12', 'Panel clear, no voltage, pressure logged, actuator last', true),
];
