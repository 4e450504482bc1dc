/** An axis of a chart: from where to where, and where its ticks stand with their words. */
export interface Axis {
  readonly least: number;
  readonly greatest: number;
  readonly ticks: readonly { readonly at: number; readonly words: string }[];
}

const STEPS = [1, 2, 2.5, 5, 10];

/**
 * An axis that holds two values, with round ticks.
 * @param wanted  about how many steps it has
 */
export function axisOver(least: number, greatest: number, wanted = 5): Axis {
  const size = Math.max(1e-9, Math.abs(least), Math.abs(greatest));
  // Values that differ by less than numbers can tell are alike.
  const span = greatest - least > 1e-9 * size ? greatest - least : size;
  const rough = span / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = (STEPS.find((each) => each * power >= rough * (1 - 1e-9)) ?? 10) * power;
  const from = Math.floor(least / step + 1e-9);
  const to = Math.max(from + 1, Math.ceil(greatest / step - 1e-9));
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) + (String(step / power) === '2.5' ? 1 : 0) - 1e-9));
  return {
    least: from * step,
    greatest: to * step,
    ticks: Array.from({ length: to - from + 1 }, (_, i) => {
      const at = (from + i) * step;
      const words = at.toFixed(decimals);
      return { at, words: Number(words) === 0 ? words.replace('-', '') : words.replace('-', '−') };
    }),
  };
}

/** Where a value lies between the ends of an axis, 0 to 1. */
export const shareOn = ({ least, greatest }: Axis, value: number): number => (value - least) / (greatest - least);
