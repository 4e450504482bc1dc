import { RULES } from '../rules/index.ts';
import type { Rule } from '../rules/rule.ts';

/** Checks that have a border of their own in a patch. */
export const BORDERED: readonly string[] = ['N1', 'N2', 'N3', 'N5', 'N6', 'N7', 'N9', 'N12', 'N14', 'N15', 'N19', 'E11', 'P1', 'P2', 'P3', 'P16', 'P27'];

/** Checks of supports that a support more, or a firmer one, puts right on site. They bound no patch: whoever shifts a nozzle sees to the supports. Bracing against earthquakes (P23) an engineer decides. */
export const OF_SUPPORTS: ReadonlySet<string> = new Set(['P12', 'P18', 'P19', 'P20', 'P21']);

/** Checks without one, or that warn before theirs is reached (P27), that look at where a nozzle is put on the plan, or at the pipe that follows it, and need no discharge. */
const FOR_PLACE = ['N8', 'N10', 'N11', 'N13', 'N16', 'N17', 'N18', 'N24', 'P4', 'P5', 'P6', 'P7', 'P8', 'P10', 'P11', 'P15', 'P22', 'P23', 'P24', 'P25', 'P27', 'P28', 'P29', 'P30'];

const named = (ids: readonly string[]): readonly Rule[] => RULES.filter(({ id }) => ids.includes(id));

/** Tried where a nozzle is put within its borders. */
export const BORDERLESS = named(FOR_PLACE);

/** Tried where a nozzle is put at another height: all that can break about it or its pipe. */
export const STOPPING = named([...BORDERED, ...FOR_PLACE, 'N4']);
