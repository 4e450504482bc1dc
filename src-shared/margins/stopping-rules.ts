import { RULES } from '../rules/index.ts';
import type { Rule } from '../rules/rule.ts';

const named = (ids: readonly string[]): readonly Rule[] => RULES.filter(({ id }) => ids.includes(id));

/** Checks that have a border of their own in a patch. */
export const BORDERED: readonly string[] = ['N1', 'N2', 'N3', 'N5', 'N6', 'N7', 'N9', 'N12', 'N14', 'N15', 'N19', 'E11', 'P1', 'P2', 'P3', 'P16', 'P27'];

/** Checks without one that can stop a nozzle, or the pipe that follows it, for where it is put on the plan. */
const FOR_PLACE = ['N10', 'N16', 'N17', 'P6', 'P7', 'P19', 'P21', 'P22', 'P25', 'P29', 'P30'];

/** Tried where a nozzle is put within its borders. */
export const BORDERLESS = named(FOR_PLACE);

/** Tried where a nozzle is put at another height: all that can stop it or its pipe. */
export const STOPPING = named([...BORDERED.filter((id) => !['N12', 'N14', 'N15', 'E11'].includes(id)), ...FOR_PLACE, 'N4', 'N11']);
