import type { Action } from './action.ts';

/** Actions on the sheets. */
export const SHEETS_ACTIONS: readonly Action[] = [
  { id: 'print', name: 'Print sheets…', group: 'Sheets', keys: ['Mod+P'], also: 'pdf submittal field issue paper', run: ({ store }) => store.session({ dialog: 'print' }) },
];
