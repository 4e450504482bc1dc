import { useActionContext, useRun } from '../window-context.ts';
import { goToField } from './go-to-field.ts';
import type { MissingField } from './missing-fields.ts';

/** Buttons that lead to the fields where what is missing is entered. */
export function WhereToEnter({ fields }: { readonly fields: readonly MissingField[] }) {
  const context = useActionContext();
  const run = useRun();
  if (fields.length === 0) return null;
  return (
    <div className="row">
      {fields.map((field) => (
        <button key={field.text} type="button" className="button is-slim" onClick={() => (field.kind === 'tool' ? run(field.action) : goToField(context, field))}>
          {field.text}
        </button>
      ))}
    </div>
  );
}
