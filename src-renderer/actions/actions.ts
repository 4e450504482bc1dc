import type { Action, ActionContext, ActionGroup } from './action.ts';
import { ARRANGE_ACTIONS } from './arrange-actions.ts';
import { CHECK_ACTIONS } from './check-actions.ts';
import { DRAW_ACTIONS } from './draw-actions.ts';
import { EDIT_ACTIONS } from './edit-actions.ts';
import { ENTER_ACTIONS } from './enter-actions.ts';
import { HELP_ACTIONS } from './help-actions.ts';
import { LEVEL_ACTIONS } from './level-actions.ts';
import { MARGIN_ACTIONS } from './margin-actions.ts';
import { PLAN_ACTIONS } from './plan-actions.ts';
import { SHEETS_ACTIONS } from './sheets-actions.ts';
import { VIEW_ACTIONS } from './view-actions.ts';

/** Everything that the user can do in the window. */
export const ACTIONS: readonly Action[] = [
  ...PLAN_ACTIONS,
  ...LEVEL_ACTIONS,
  ...EDIT_ACTIONS,
  ...DRAW_ACTIONS,
  ...ENTER_ACTIONS,
  ...ARRANGE_ACTIONS,
  ...CHECK_ACTIONS,
  ...SHEETS_ACTIONS,
  ...VIEW_ACTIONS,
  ...MARGIN_ACTIONS,
  ...HELP_ACTIONS,
];

export const ACTION_GROUPS: readonly ActionGroup[] = ['Plan', 'Edit', 'Draw', 'Arrange', 'Check', 'Sheets', 'View', 'Help'];

const BY_ID = new Map(ACTIONS.map((action) => [action.id, action]));

/** An action by its id. */
export const findAction = (id: string): Action | undefined => BY_ID.get(id);

/** Does an action, or says on the status line why it cannot be done now. */
export async function runAction(context: ActionContext, action: Action): Promise<void> {
  const reason = action.unavailable?.(context.store.get(), context.desk.get()) ?? null;
  if (reason !== null) {
    context.store.session({ refusal: reason });
    return;
  }
  await action.run(context);
}
