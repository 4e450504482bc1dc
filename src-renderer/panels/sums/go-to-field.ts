import type { ActionContext } from '../../actions/action.ts';
import { focusWhenThere, goToBasis, goToForm } from '../../actions/go-to-form.ts';
import type { MissingField } from './missing-fields.ts';

/** Leads to the place where something missing is entered. */
export function goToField(context: Pick<ActionContext, 'store' | 'desk'>, field: Exclude<MissingField, { kind: 'tool' }>): void {
  if (field.kind === 'field') goToForm(context, field.on, field.label);
  else if (field.kind === 'basis') goToBasis(context, field.label);
  else {
    context.store.session({ dialog: 'profile' });
    focusWhenThere(() => document.querySelector<HTMLElement>(`[data-limit="${field.limit}"] input`));
  }
}
