import type { DerivedNetwork } from '../derived/derived.ts';
import { feet_m } from '../units/convert.ts';
import { parseLength } from '../units/length-text.ts';
import { asBuiltOf } from './as-built.ts';
import { pieceRunsOf } from './piece-runs.ts';

/** Labels along straight pipe stand at most so far apart, common practice after ASME A13.1 [m]. */
export const USUAL_LABEL_SPACING_m = feet_m(25);
/** A shorter run has no room for a label: it stands on the next one. */
const LEAST_LABELLED_m = feet_m(1);
/** No marking is asked for nearer or farther than this [m]. */
const SPACINGS_m = [feet_m(1), feet_m(100)] as const;

/** Labels for the pipe of a network. */
export interface PipeLabels {
  readonly count: number;
  readonly spacing_m: number;
  /** false: the words for the network's marking name no spacing, the usual one is taken. */
  readonly isStated: boolean;
}

/**
 * Spacing that the words for the marking ask for, such as "with an arrow, every 10 ft"; undefined where they name none
 * with its unit.
 */
export function findLabelSpacing_m(marking: string): number | undefined {
  const words = /\bevery\s+([^,;]+)/i.exec(marking)?.[1]?.trim().split(/\s+/) ?? [];
  for (let count = Math.min(words.length, 4); count > 0; count -= 1) {
    const text = words.slice(0, count).join(' ');
    const read = parseLength(text, 'feet');
    if (/[^\d\s./-]/.test(text) && read.ok && read.length_m >= SPACINGS_m[0] && read.length_m <= SPACINGS_m[1]) return read.length_m;
  }
  return undefined;
}

/** Labels that a network needs: one on every straight run at least, and no two farther apart than the spacing (common practice). */
export function pipeLabelsOf(derived: DerivedNetwork): PipeLabels {
  const stated_m = findLabelSpacing_m(derived.network.installation.marking);
  const spacing_m = stated_m ?? USUAL_LABEL_SPACING_m;
  const runs = pieceRunsOf(derived, asBuiltOf(derived)).filter(({ length_m }) => length_m >= LEAST_LABELLED_m - 1e-9);
  const count = runs.reduce((sum, { length_m }) => sum + Math.max(1, Math.ceil(length_m / spacing_m - 1e-9)), 0);
  return { count, spacing_m, isStated: stated_m !== undefined };
}
