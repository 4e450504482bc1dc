import type { Action } from './action.ts';
import { comparableSets, compareIssues } from './compare-issues.ts';

/** Actions on the sheets. */
export const SHEETS_ACTIONS: readonly Action[] = [
  { id: 'print', name: 'Print sheets…', group: 'Sheets', keys: ['Mod+P'], also: 'pdf submittal field issue paper', run: ({ store }) => store.session({ dialog: 'print' }) },
  { id: 'way-out', name: 'Save as drawing or table…', group: 'Sheets', keys: ['Mod+Shift+E'], also: 'export dxf svg png csv xlsx spreadsheet picture', run: ({ store }) => store.session({ dialog: 'way-out' }) },
  { id: 'issue-set', name: 'Issue a set…', group: 'Sheets', also: 'revision mark release freeze give out cloud', run: ({ store }) => store.session({ dialog: 'issue' }) },
  {
    id: 'compare-issues',
    name: 'See what has changed since the last issue',
    group: 'Sheets',
    also: 'compare difference revision superseded moved added removed',
    unavailable: (state) => (comparableSets(state).length === 0 ? 'No issued set is kept with this plan: issue one first.' : null),
    run: async (context) => {
      const last = comparableSets(context.store.get()).at(-1);
      if (last) await compareIssues(context, last, null);
    },
  },
];
