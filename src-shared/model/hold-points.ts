import type { LogEntry } from './plan.ts';

/** A step of the work that must be seen before the next one may hide or endanger it. */
export interface HoldPoint {
  readonly id: string;
  readonly words: string;
  readonly isWitnessed: boolean;
  /** Why nothing that comes later may be ticked before it: a sentence. */
  readonly why: string;
}

const point = (id: string, words: string, why: string, isWitnessed = false): HoldPoint => ({ id, words, isWitnessed, why });

/** In the order of the work. Source: common practice. */
export const HOLD_POINTS: readonly HoldPoint[] = [
  point('H1', 'Room matches the sheet: plan, three ceiling heights, obstructions', 'Pipe that is cut for another room does not fit, and agent that is sized for another volume does not protect it.'),
  point('H2', 'Wall and anchors of the cylinder rail', 'Nobody may stand under a cylinder that hangs on an anchor that does not hold.', true),
  point('H3', 'Pipe clean inside before it is closed', 'What lies in the pipe is shot through the nozzles or closes them.'),
  point('H4', 'Supports', 'A test or a discharge throws pipe that is not held.'),
  point('H5', 'Pneumatic test of the pipe, and a puff through each nozzle', 'A leak or a closed nozzle is found now, or not before the fire.', true),
  point('H6', 'Final place, drop, tilt and hole directions of each nozzle', 'A nozzle that was turned while it was tightened no longer fills the room.', true),
  point('H7', 'Photographs of work that will be concealed', 'What is closed in cannot be looked at again.'),
  point('H8', 'Cylinders restrained; caps off last', 'A cylinder that falls with an open valve flies.'),
  point('H9', 'Release circuits proved on a dummy load', 'A fault of the wiring would release the agent on whoever connects the actuator.', true),
  point('H10', 'Enclosure integrity test', 'Agent that leaks away does not hold the fire down.', true),
  point('H11', 'Every input against the release matrix', 'A fan that goes on or a door that stays open blows the agent out; a wrong input releases it on people.', true),
  point('H12', 'Panel clear, no voltage, pressure logged, actuator last', 'From here on the unit can go off.', true),
];

/** Where a hold point stands in the order of the work, from 0; -1 for what is none. */
export const holdPointIndex = (id: string): number => HOLD_POINTS.findIndex((each) => each.id === id);

/** The hold point that a kind of reading is taken for; null for what only is to be known. */
export const POINT_OF_READING: Readonly<Record<LogEntry['kind'], string | null>> = {
  'pipe-test': 'H5',
  puff: 'H5',
  oxygen: 'H5',
  insulation: 'H9',
  continuity: 'H9',
  supervision: 'H9',
  alarm: 'H9',
  live: 'H9',
  'panel-clear': 'H12',
  dead: 'H12',
  pressure: 'H12',
  note: null,
};
