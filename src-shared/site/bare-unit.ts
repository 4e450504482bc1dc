import type { LengthSystem } from '../units/length-text.ts';
import { formatLength } from '../units/length-text.ts';

/** What a number alone means in the field of a dimension: the unit that its planned value is printed in. */
export interface BareUnit {
  readonly words: 'feet' | 'inches' | 'metres' | 'millimetres';
  /** Written behind the number, so that it is a length. */
  readonly sign: string;
}

/** The unit that a planned length begins with as it is printed: `11'-4 1/2"` feet, `9 1/2"` inches, `3.460 m` metres, `254 mm` millimetres. */
export function bareUnitOf(planned_m: number, lengths: LengthSystem): BareUnit {
  const printed = formatLength(planned_m, lengths);
  if (lengths === 'feet') return printed.includes("'") ? { words: 'feet', sign: "'" } : { words: 'inches', sign: '"' };
  return printed.endsWith('mm') ? { words: 'millimetres', sign: ' mm' } : { words: 'metres', sign: ' m' };
}
