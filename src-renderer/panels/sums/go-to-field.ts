import type { ActionContext } from '../../actions/action.ts';
import type { MissingField } from './missing-fields.ts';

/** Frames to wait for a form to stand before its field is looked for. */
const MOST_FRAMES = 20;

/** Puts the keyboard into what is found as soon as it stands. */
function focusWhenThere(find: () => HTMLElement | null | undefined, frames = MOST_FRAMES): void {
  requestAnimationFrame(() => {
    const found = find();
    if (found) {
      found.scrollIntoView({ block: 'center' });
      found.focus();
    } else if (frames > 0) focusWhenThere(find, frames - 1);
  });
}

/** The input that a label of the bench names, a tick that says the same being passed over; else the button that says so. */
function fieldNamed(text: string): HTMLElement | null {
  const label = [...document.querySelectorAll<HTMLLabelElement>('.bench-body .field > label')].find((each) => each.textContent === text);
  const button = [...document.querySelectorAll<HTMLButtonElement>('.bench-body .slip .button')].find((each) => each.textContent === text);
  return label?.control ?? button ?? null;
}

/** Leads to the place where something missing is entered. */
export function goToField({ store, desk }: Pick<ActionContext, 'store' | 'desk'>, field: Exclude<MissingField, { kind: 'tool' }>): void {
  if (field.kind === 'limit') {
    store.session({ dialog: 'profile' });
    focusWhenThere(() => document.querySelector<HTMLElement>(`[data-limit="${field.limit}"] input`));
    return;
  }
  if (field.kind === 'basis') {
    desk.set({ bench: { kind: 'basis' } });
    focusWhenThere(() => fieldNamed(field.label));
    return;
  }
  const { on, label } = field;
  store.session(({ level }) => ({ selection: [on], level: 'level' in on ? on.level : level }));
  desk.set({ bench: { kind: 'selection' } });
  focusWhenThere(() => fieldNamed(label));
}
