import { describe, expect, test } from 'vitest';
import type { SpanSums } from '#shared/calculations/design/design';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { DerivedNetwork } from '#shared/derived/derived';
import { p18SupportSpan as rule } from '#shared/rules/pipe/p18-support-span';
import { at3, layout } from '../../../support/layout.ts';
import { checkSums, checkSumsOnce } from '../../../support/network-sums.ts';
import { heldOn, supportSums, supportedRun } from '../../../support/supported-run.ts';

const plan = supportedRun([{ at: at3(1, 0, 2) }]);
// ISO 14520-1, memory: 3/4 in pipe hangs free over 1.8 m.
const SPAN_m = 1.8;
const span = (network: DerivedNetwork, length_m: number, allowed_m: number | undefined = SPAN_m, pipe = 0): SpanSums[] =>
  network.pipes.slice(pipe, pipe + 1).map((each) => ({ pipe: each, length_m, allowed_m, at: [each.from, each.to] }));
const spans = (of: (network: DerivedNetwork) => SpanSums[]) =>
  checkSumsOnce(rule, plan, (network) => ({ supports: worked(supportSums({ held: heldOn(network, { s1: 'p1' }), spans: of(network) })) }));

describe('P18', () => {
  test.each([
    ['at the limit', 1.8, 'ok'],
    ['inside', 1.79, 'ok'],
    ['outside', 1.801, 'warn'],
    ['not a number', Number.NaN, 'warn'],
  ])('a stretch %s', (_, length_m, verdict) => {
    expect(spans((network) => span(network, length_m)).verdict).toBe(verdict);
  });

  test('one finding names what is worst for its size and shows all that are too long', () => {
    const finding = spans((network) => [...span(network, 2), ...span(network, 3, 2.7), ...span(network, 1)]);
    expect(finding).toMatchObject({ verdict: 'warn', measured: 2, limit: 1.8, limitSource: 'spans of ISO 14520-1' });
    expect(finding.text).toBe('2 stretches hang free too far: 2.000 m of 3/4 in pipe, where 1.800 m is allowed. Add a support.');
    expect(finding.place?.at).toHaveLength(4);
    expect(finding.place?.dimension).toBeDefined();
  });

  test('a size that the table leaves out is not checked, and hides no fault beside it', () => {
    const left = spans((network) => [...span(network, 1), ...span(network, 0.1, undefined, 1).map((each) => ({ ...each, allowed_m: undefined }))]);
    expect(left).toMatchObject({ verdict: 'not-checked', text: 'Not checked: the chosen table (spans of ISO 14520-1) has none for 3/4 in pipe.' });
    const both = spans((network) => [...span(network, 2), ...span(network, 0.1).map((each) => ({ ...each, allowed_m: undefined }))]);
    expect(both.verdict).toBe('warn');
    expect(both.text).toContain('Besides, the chosen table (spans of ISO 14520-1) has none for 3/4 in pipe.');
  });

  test('names the table that the basis of design chose', () => {
    const other = structuredClone(plan);
    other.basis.supportTable = 'b31.1';
    const finding = checkSumsOnce(rule, other, (network) => ({ supports: worked(supportSums({ held: heldOn(network, { s1: 'p1' }), spans: span(network, 1) })) }));
    expect(finding.limitSource).toBe('spans of ASME B31.1');
  });

  test('no support, none on the pipe, or sums not known: not checked, once', () => {
    const sums = worked(supportSums({}));
    expect(checkSumsOnce(rule, supportedRun([]), { supports: sums }).text).toBe('Not checked: no support is drawn; place them by the table.');
    expect(checkSumsOnce(rule, plan, (network) => ({ supports: worked(supportSums({ held: heldOn(network, {}), spans: span(network, 1) })) })).text).toContain('none of the supports that are drawn holds a pipe');
    expect(checkSumsOnce(rule, plan, { supports: notWorked('no pipe leads to a nozzle yet.') }).verdict).toBe('not-checked');
    expect(spans(() => []).verdict).toBe('not-checked');
  });

  test('without pipe nobody asks for supports', () => {
    expect(checkSums(rule, layout({}), {})).toEqual([]);
  });
});
