import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { p16ThreadRoom as rule } from '#shared/rules/pipe/p16-thread-room';
import { anyPlacing, at3, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const IN = 0.0254;
/**
 * An NPS 3/4 Class 300 elbow is 1.44 in from centre to end (ASME B16.3): two of them touch when their centres are twice
 * that apart. What the shop screws in, 2 × 9/16 in, is more than two effective threads, 2 × (0.80 · 1.050 + 6.8)/14 in.
 */
const LEAST_m = 2 * 1.44 * IN;

/** Two elbows as far apart as the test says, on a way that is long enough else. */
const offset = (apart_m: number) => ({ runs: [{ places: [at3(1, 1, 2.5), at3(3, 1, 2.5), at3(3, 1 + apart_m, 2.5), at3(5, 1 + apart_m, 2.5)] }], nozzles: [{ at: at3(5, 1 + apart_m, 2.5) }] });

describe('P16', () => {
  test.each([
    ['just long enough', LEAST_m + 1e-6, 'ok'],
    ['just too short', LEAST_m - 1e-6, 'stop'],
    ['with fittings that run into each other', 0.03, 'stop'],
  ])('%s', (_, apart_m, verdict) => {
    expect(checkOne(rule, layout(offset(apart_m))).verdict).toBe(verdict);
  });

  test('names the piece and shows it', () => {
    const finding = checkOne(rule, layout(offset(0.05)));
    expect(finding.text).toBe('The 3/4 in piece between 2 and 3 (90° elbow to 90° elbow, 50 mm centre to centre) is too short to be threaded at both ends. Move a fitting, or join it another way.');
    expect(finding.place?.at).toHaveLength(2);
  });

  test('says which fitting it knows no length of', () => {
    const crooked = layout({ runs: [{ places: [at3(1, 1, 2.5), at3(3, 1, 2.5), at3(5, 2, 2.5)] }], nozzles: [{ at: at3(5, 2, 2.5) }] });
    expect(checkOne(rule, crooked)).toMatchObject({ verdict: 'not-checked', text: expect.stringMatching(/^Not checked: how much the bend of another angle at 2 takes up is not known/) });
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(checkOne(rule, placedLayout(offset(LEAST_m + 1e-5), placing)).verdict).toBe('ok');
        expect(checkOne(rule, placedLayout(offset(LEAST_m - 1e-5), placing)).verdict).toBe('stop');
      }),
      { numRuns: 20 },
    );
  });
});
