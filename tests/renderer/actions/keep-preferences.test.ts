import { describe, expect, test } from 'vitest';
import { preferencesOf, withPreferences } from '../../../src-renderer/actions/keep-preferences.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';

describe('remembered preferences', () => {
  test('what was written is what comes back', () => {
    const session = startSession('test');
    const changed = {
      ...session,
      theme: 'dark' as const,
      benchWidth_px: 420,
      sectionHeight_px: 0,
      toolOptions: { ...session.toolOptions, snapGrid: false },
      layers: { ...session.layers, coverage: { visible: false, locked: false } },
    };
    const back = { ...session, ...withPreferences(session, preferencesOf(changed)) };
    expect(back).toEqual(changed);
  });

  test('nonsense is passed over', () => {
    const session = startSession('test');
    const back = withPreferences(session, { theme: 'plaid', benchWidth_px: -5, sectionHeight_px: 'high', snapGrid: 3, 'show-coverage': 'yes' });
    expect({ ...session, ...back }).toEqual(session);
  });
});
