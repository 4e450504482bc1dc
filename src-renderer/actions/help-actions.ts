import type { Action } from './action.ts';

/** Actions that help to find the way. */
export const HELP_ACTIONS: readonly Action[] = [
  { id: 'actions', name: 'Find an action…', group: 'Help', keys: ['F2', 'Mod+K'], also: 'list search', run: ({ store }) => store.session({ dialog: 'actions' }) },
  { id: 'help', name: 'Help: keys and first drawing', group: 'Help', keys: ['F1'], also: 'keyboard shortcuts steps cautions about', run: ({ store }) => store.session({ dialog: 'help' }) },
];
