import { describe, expect, test } from 'vitest';
import { type Answer, notChecked } from '#shared/rules/rule';
import { together } from '#shared/rules/together';

const kept: Answer = { kind: 'judged', isKept: true, text: 'Kept.', measured: 1, inputs: [{ label: 'a', value: '1' }] };
const fault: Answer = { kind: 'judged', isKept: false, text: 'Fault.', measured: 2 };
const open = notChecked('it is open.');

describe('several answers about one subject', () => {
  test.each<[string, readonly [Answer, ...Answer[]], object]>([
    ['a fault is hidden by nothing', [kept, open, fault], { kind: 'judged', isKept: false, text: 'Fault.', measured: 2, inputs: [{ label: 'a', value: '1' }] }],
    ['every fault is said, the first leads', [fault, { ...fault, text: 'Another.', measured: 3 }], { isKept: false, text: 'Fault. Another.', measured: 2 }],
    ['what is open is not kept', [kept, open], { kind: 'not-checked', because: 'it is open.' }],
    ['all that is kept is said', [kept, { ...kept, text: 'Too.' }], { isKept: true, text: 'Kept. Too.', measured: 1 }],
    ['one alone', [open], { kind: 'not-checked' }],
  ])('%s', (_, answers, expected) => {
    expect(together(answers)).toMatchObject(expected);
  });

  test('without inputs it has none', () => {
    expect(together([fault])).toMatchObject({ inputs: undefined });
  });
});
