import type { Settings } from '../model/plan.ts';

/** Scales of a feet-and-inches sheet, finest first; 1/8 in to the foot is the coarsest that reviewers take (common practice). */
const FEET_SCALES: readonly { readonly ratio: number; readonly name: string }[] = [
  { ratio: 24, name: '1/2" = 1\'-0"' },
  { ratio: 32, name: '3/8" = 1\'-0"' },
  { ratio: 48, name: '1/4" = 1\'-0"' },
  { ratio: 64, name: '3/16" = 1\'-0"' },
  { ratio: 96, name: '1/8" = 1\'-0"' },
];

/** Scales of a metric sheet, finest first: those of ISO 5455 and of the trade's scale rule. */
const METRIC_SCALES: readonly number[] = [20, 25, 50, 75, 100, 200];

/** Scales that are tried in turn, finest first: site length over paper length. */
export const ordinaryScales = (lengths: Settings['lengths']): readonly number[] =>
  lengths === 'feet' ? FEET_SCALES.map(({ ratio }) => ratio) : METRIC_SCALES;

/** The same without those that the authority does not take; the finest stays whatever it asks for. @param smallest site length over paper length */
export function takenScales(lengths: Settings['lengths'], smallest: number): readonly number[] {
  const all = ordinaryScales(lengths);
  const taken = all.filter((scale) => scale <= smallest);
  return taken.length > 0 ? taken : all.slice(0, 1);
}

/**
 * A scale as the sheet names it.
 * @param scale site length over paper length
 * @example scaleName(50, 'metric') // '1:50'
 * @example scaleName(48, 'feet') // '1/4" = 1\'-0"'
 */
export const scaleName = (scale: number, lengths: Settings['lengths']): string =>
  (lengths === 'feet' ? FEET_SCALES.find(({ ratio }) => ratio === scale)?.name : undefined) ?? `1:${Number(scale.toFixed(3))}`;

/**
 * Reads a scale that a user typed: "50", "1:50", or one of the feet-and-inches names.
 * @returns site length over paper length, or undefined when it is none or out of reason (1:1 … 1:1000)
 */
export function parseScale(text: string): number | undefined {
  const plain = text.trim().replace(/[′’]/g, "'").replace(/[″”]/g, '"').replace(/\s+/g, '');
  const named = FEET_SCALES.find(({ name }) => {
    const known = name.replace(/\s+/g, '');
    return plain === known || plain === known.replace(`1'-0"`, "1'") || plain === known.split('=')[0];
  });
  if (named) return named.ratio;
  const found = /^(?:1:)?(\d+(?:\.\d+)?)$/.exec(plain)?.[1];
  const scale = found === undefined ? Number.NaN : Number(found);
  return scale >= 1 && scale <= 1000 ? scale : undefined;
}

/** The first scale from `from` on, in steps of half again, that is coarse enough for what has to fit. */
export function coarserUntil(fits: (scale: number) => boolean, from: number): number {
  let scale = from;
  for (let step = 0; step < 20 && !fits(scale); step += 1) scale = Math.ceil(scale * 1.5);
  return scale;
}
