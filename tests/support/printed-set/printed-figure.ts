/** Finest printed step of a length in feet and inches [m]. */
export const SIXTEENTH_m = 0.0254 / 16;

/** Reads a printed length back [m]: feet and inches, or mm or m. Nothing where the words are no length. */
export function lengthIn(words: string): number | undefined {
  const text = words.trim().replace(/[−–]/g, '-');
  const metric = /^([+-]?)(\d+(?:\.\d+)?) ?(mm|m)$/.exec(text);
  if (metric) return (metric[1] === '-' ? -1 : 1) * Number(metric[2]) * (metric[3] === 'mm' ? 0.001 : 1);
  const feet = /^([+-]?)(?:(\d+)'-)?(?:(\d+)(?: (\d+)\/(\d+))?|(\d+)\/(\d+))"$/.exec(text);
  if (!feet) return undefined;
  const [, sign, foot = 0, inch = 0, over = 0, under = 1, bareOver = 0, bareUnder = 1] = feet;
  return (sign === '-' ? -1 : 1) * (Number(foot) * 12 + Number(inch) + Number(over) / Number(under) + Number(bareOver) / Number(bareUnder)) * 0.0254;
}

/** The first figure of words, thousands never parted. */
export const figureIn = (words: string | undefined): number => Number(/[−-]?\d+(?:\.\d+)?/.exec(words ?? '')?.[0].replace('−', '-') ?? Number.NaN);

/** What was compared, and what did not agree, in words. */
export class Comparison {
  readonly told: string[] = [];
  compared = 0;

  /** Two figures that must be the same to within `within`. */
  figures(what: string, a: number | undefined, b: number | undefined, within: number): void {
    this.compared += 1;
    if (a === undefined || b === undefined || !(Math.abs(a - b) <= within)) this.told.push(`${what}: ${a ?? 'missing'} and ${b ?? 'missing'}`);
  }

  /** Two printed lengths, each rounded by itself. */
  lengths(what: string, a: string | undefined, b: string | undefined, within_m = 1e-6): void {
    const [first, second] = [a === undefined ? undefined : lengthIn(a), b === undefined ? undefined : lengthIn(b)];
    this.compared += 1;
    if (first === undefined || second === undefined || Math.abs(first - second) > within_m) this.told.push(`${what}: ${a ?? 'missing'} and ${b ?? 'missing'}`);
  }

  words(what: string, a: string | undefined, b: string | undefined): void {
    this.compared += 1;
    if (a === undefined || a !== b) this.told.push(`${what}: ${a ?? 'missing'} and ${b ?? 'missing'}`);
  }

  /** The same things, each as often, in whatever order. */
  sets(what: string, a: readonly string[], b: readonly string[]): void {
    this.compared += Math.max(a.length, b.length, 1);
    const left = [...b];
    const more: string[] = [];
    for (const one of a) {
      const at = left.indexOf(one);
      if (at < 0) more.push(one);
      else left.splice(at, 1);
    }
    if (more.length > 0) this.told.push(`${what}: only in the first ${more.join(', ')}`);
    if (left.length > 0) this.told.push(`${what}: only in the second ${left.join(', ')}`);
  }
}
