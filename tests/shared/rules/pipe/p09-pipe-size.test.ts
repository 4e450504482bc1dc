import { describe, expect, test } from 'vitest';
import type { PipeSize } from '#shared/profile/pipe-table';
import { p09PipeSize as rule } from '#shared/rules/pipe/p09-pipe-size';
import { at3, checkOne, layout } from '../../../support/layout.ts';

/** Pipes of these sizes, one after the other from the source, in the order they are drawn or against it. */
function chain(sizes: readonly PipeSize[], allowed?: PipeSize[], isDrawnBackward = false) {
  const plan = layout({ runs: sizes.map((size, i) => ({ places: [at3(i, 1, 2), at3(i + 1, 1, 2)], size })), nozzles: [{ at: at3(sizes.length, 1, 2) }] });
  for (const profile of Object.values(plan.profiles)) if (allowed) profile.pipeSizes = allowed;
  for (const pipe of Object.values(plan.networks.net?.pipes ?? {})) if (isDrawnBackward) [pipe.from, pipe.to] = [pipe.to, pipe.from];
  return plan;
}

describe('P9', () => {
  test.each<[string, PipeSize[], string, number]>([
    ['the same all along', ['1', '1', '1'], 'ok', 0],
    ['smaller and smaller', ['1-1/4', '1', '3/4'], 'ok', 0],
    ['one larger', ['1', '3/4', '1'], 'stop', 1],
    ['larger twice', ['1/2', '3/4', '1'], 'stop', 2],
  ])('%s', (_, sizes, verdict, measured) => {
    expect(checkOne(rule, chain(sizes))).toMatchObject({ verdict, measured });
    expect(checkOne(rule, chain(sizes, undefined, true))).toMatchObject({ verdict, measured });
  });

  test('names what grows and shows where', () => {
    const finding = checkOne(rule, chain(['3/4', '1']));
    expect(finding.text).toBe('A pipe is larger than the one that feeds it: 3/4 in leads to 1 in. Choose another size.');
    expect(finding.place?.at).toEqual([expect.objectContaining({ x: 1, y: 1 })]);
  });

  test('a size that the unit does not use', () => {
    expect(checkOne(rule, chain(['1', '3/4'], ['1', '3/4'])).verdict).toBe('ok');
    expect(checkOne(rule, chain(['1', '3/4'], ['1', '1/2']))).toMatchObject({ verdict: 'stop', measured: 1, text: '1 of 2 pipes is of a size that the unit does not use: 3/4 in. Choose another size.' });
  });

  test('a profile that names no sizes, no profile and no pipe are not checked; growing is reported even then', () => {
    expect(checkOne(rule, chain(['1', '3/4'], [])).text).toContain('names no pipe sizes');
    expect(checkOne(rule, chain(['3/4', '1'], [])).verdict).toBe('stop');
    const lost = chain(['1']);
    lost.profiles = {};
    expect(checkOne(rule, lost).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({})).verdict).toBe('not-checked');
  });
});
