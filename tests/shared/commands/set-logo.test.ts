import { describe, expect, test } from 'vitest';
import { setLogo } from '#shared/commands/set-logo';
import { assetsInUse } from '#shared/model/assets-in-use';
import { planBuilder } from '../../support/plan-builder.ts';
import { done, refusal } from '../../support/try-command.ts';

const PICTURE = { name: 'Our mark.png', file: 'our-mark.png', sha256: 'a'.repeat(64) };

describe('the logo of the title block', () => {
  const { plan } = planBuilder('metric');

  test('is held with the plan, once, and taken out again', () => {
    const { next } = done(plan, setLogo(PICTURE));
    const { logo } = next.settings.sheets.titleBlock;
    expect(next.assets[logo ?? '']).toMatchObject(PICTURE);
    expect(assetsInUse(next)).toEqual(new Set([logo]));
    const twice = done(next, setLogo(PICTURE)).next;
    expect(Object.keys(twice.assets)).toHaveLength(1);
    expect(done(twice, setLogo(null)).next.settings.sheets.titleBlock.logo).toBeNull();
  });

  test('is refused when its file cannot lie in a plan file', () => {
    expect(refusal(plan, setLogo({ ...PICTURE, file: '../x.png' }))).toContain('Choose it again');
    expect(refusal(plan, setLogo({ ...PICTURE, sha256: 'short' }))).toContain('Choose it again');
  });
});
