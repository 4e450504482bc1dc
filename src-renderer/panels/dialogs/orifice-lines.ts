import type { UnitProfile } from '#shared/profile/unit-profile';
import type { LengthSystem } from '#shared/units/length-text';
import { formatQuantity, parseQuantity } from '#shared/units/quantity-text';

export type Orifice = UnitProfile['orifices'][number];

/** No profile lists more. */
export const MOST_ORIFICES = 500;
const LONGEST_CODE = 40;

/** What pasted lines hold, and what of them could not be taken. */
export interface ReadOrifices {
  readonly orifices: readonly Orifice[];
  readonly faults: readonly string[];
}

/** Orifices with the smallest first, as a manual lists them. */
export const byArea = (orifices: readonly Orifice[]): Orifice[] => [...orifices].sort((a, b) => a.area_m2 - b.area_m2 || a.code.localeCompare(b.code, 'en', { numeric: true }));

/**
 * Reads orifices from lines of a code and an area, with a tab, a semicolon or blanks between them.
 * An area without a unit is in the plan's. A code that is listed already gets the new area.
 */
export function readOrifices(text: string, listed: readonly Orifice[], system: LengthSystem): ReadOrifices {
  const taken = new Map(listed.map((orifice) => [orifice.code, orifice]));
  const faults: string[] = [];
  const lines = text.split(/\r?\n/).map((line, i) => ({ line: line.trim(), number: i + 1 }));
  for (const { line, number } of lines.filter(({ line: words }) => words !== '')) {
    const [, code, area] = /^([^\s;]+)[\s;]+(.+)$/.exec(line) ?? [];
    const parsed = area === undefined ? undefined : parseQuantity(area, 'orificeArea', system);
    if (code === undefined || !parsed) faults.push(`Line ${number}: write the code, a blank, and the area: S58 ${formatQuantity(2.61e-5, 'orificeArea', system)}.`);
    else if (!parsed.ok) faults.push(`Line ${number}: ${parsed.reason}`);
    else if (code.length > LONGEST_CODE) faults.push(`Line ${number}: this code is too long.`);
    else if (!(parsed.value > 0) || parsed.value > 1) faults.push(`Line ${number}: ${formatQuantity(parsed.value, 'orificeArea', system)} is no area of an orifice.`);
    else if (taken.size >= MOST_ORIFICES && !taken.has(code)) faults.push(`Line ${number}: the list is full at ${MOST_ORIFICES}.`);
    else taken.set(code, { code, area_m2: parsed.value });
  }
  return { orifices: byArea([...taken.values()]), faults };
}
