import { describe, expect, test } from 'vitest';
import type { Info, Plan } from '#shared/model/plan';
import { d03TitleBlock as rule } from '#shared/rules/document/d03-title-block';
import { checkOne, layout } from '../../../support/layout.ts';

const FILLED = { project: 'Hut', site: 'Hill', client: 'Owner', code: 'ISO 14520-1', edition: '2023', drawnBy: 'A', checkedBy: 'B' };
const titled = (info: Partial<Info>, paper: Plan['settings']['sheets']['paper'] = null): Plan => {
  const plan = layout({});
  Object.assign(plan.info, FILLED, info);
  plan.settings.sheets.paper = paper;
  return plan;
};

describe('D3', () => {
  test('everything filled in', () => expect(checkOne(rule, titled({}))).toMatchObject({ verdict: 'ok', measured: 0 }));

  test.each(Object.keys(FILLED) as (keyof typeof FILLED)[])('%s blank, or of spaces only, is named', (key) => {
    expect(checkOne(rule, titled({ [key]: '' }))).toMatchObject({ verdict: 'stop', measured: 1, margin: -1 });
    expect(checkOne(rule, titled({ [key]: '  ' })).verdict).toBe('stop');
  });

  test('approval is asked once it is built', () => {
    expect(checkOne(rule, titled({ state: 'built' })).text).toContain('who approved it');
    expect(checkOne(rule, titled({ state: 'built', approvedBy: 'C' })).verdict).toBe('ok');
  });

  test('a paper without room for a stamp is warned of', () => {
    expect(checkOne(rule, titled({}, 'A4')).verdict).toBe('warn');
    expect(checkOne(rule, titled({}, 'A3')).verdict).toBe('ok');
  });
});
