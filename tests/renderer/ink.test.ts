import { type Color, differenceCiede2000, filterDeficiencyDeuter, filterDeficiencyProt, filterDeficiencyTrit, parse, wcagContrast } from 'culori';
import { describe, expect, test } from 'vitest';
import { DARK_INK, LIGHT_INK } from '../../src-renderer/ink.ts';

// Contrast as WCAG 2.2 defines it (1.4.3 text, 1.4.11 graphics); colour blindness as Machado, Oliveira and
// Fernandes (2009) model it, at full severity; difference as CIEDE2000. All three from the library culori.
const apart = differenceCiede2000();
type Sight = (colour: Color) => Color | undefined;
const sights: [string, Sight][] = [
  ['full colour sight', (colour) => colour],
  ['no red cones', filterDeficiencyProt(1)],
  ['no green cones', filterDeficiencyDeuter(1)],
  ['no blue cones', filterDeficiencyTrit(1)],
];
const seen = (see: Sight, hex: string): Color => {
  const colour = parse(hex);
  const left = colour && see(colour);
  if (!left) throw new Error(`${hex} is no colour.`);
  return left;
};
const pairsOf = (colours: string[]): [string, string][] => colours.flatMap((a, i) => colours.slice(i + 1).map((b): [string, string] => [a, b]));

describe.each([
  ['light', LIGHT_INK],
  ['dark', DARK_INK],
])('%s ink', (_, ink) => {
  const grounds = [ink.paper, ink.panel, ink.ground];

  test('verdict and zone colours stand out 3:1 from every ground', () => {
    for (const colour of [...Object.values(ink.verdict), ink.warm, ink.cool, ink.selection, ink.snap, ink.wall, ink.solid]) {
      for (const ground of grounds) expect(wcagContrast(colour, ground), `${colour} on ${ground}`).toBeGreaterThanOrEqual(3);
    }
  });

  test('colours that write text stand out 4.5:1', () => {
    for (const colour of [ink.ink, ink.quiet, ...Object.values(ink.verdict)]) {
      for (const ground of grounds) expect(wcagContrast(colour, ground), `${colour} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  test.each(sights)('verdicts stay apart with %s', (_name, see) => {
    for (const [a, b] of pairsOf(Object.values(ink.verdict))) {
      expect(apart(seen(see, a), seen(see, b)), `${a} against ${b}`).toBeGreaterThanOrEqual(12);
    }
  });

  test.each(sights)('the two pressure zones stay apart with %s', (_name, see) => {
    expect(apart(seen(see, ink.warm), seen(see, ink.cool))).toBeGreaterThanOrEqual(20);
  });
});
