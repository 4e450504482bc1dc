import type { Ref } from '#shared/model/plan';
import type { ActionContext } from './action.ts';

type Where = Pick<ActionContext, 'store' | 'desk'>;

/** Frames to wait for a form to stand before its field is looked for. */
const MOST_FRAMES = 20;

/** Puts the keyboard into what is found as soon as it stands. */
export function focusWhenThere(find: () => HTMLElement | null | undefined, frames = MOST_FRAMES): void {
  requestAnimationFrame(() => {
    const found = find();
    if (found) {
      found.scrollIntoView({ block: 'center' });
      found.focus();
    } else if (frames > 0) focusWhenThere(find, frames - 1);
  });
}

/** The input that a label of the bench names, a tick that says the same being passed over; else the button that says so, or the slip under that heading. */
function fieldNamed(text: string): HTMLElement | null {
  const label = [...document.querySelectorAll<HTMLLabelElement>('.bench-body .field > label')].find((each) => each.textContent === text);
  const button = [...document.querySelectorAll<HTMLButtonElement>('.bench-body .slip .button')].find((each) => each.textContent === text);
  const heading = [...document.querySelectorAll<HTMLElement>('.bench-body .slip > h3 > span')].find((each) => each.textContent === text);
  return label?.control ?? button ?? heading?.closest<HTMLElement>('.slip') ?? null;
}

/** Leads to a field or button on the form of a thing: the first of these labels that stands there. */
export function goToForm({ store, desk }: Where, on: Ref, ...labels: readonly string[]): void {
  store.session(({ level }) => ({ selection: [on], level: 'level' in on ? on.level : level }));
  desk.set({ bench: { kind: 'selection' } });
  focusWhenThere(() => labels.map(fieldNamed).find((found) => found !== null));
}

/** Leads to a choice of the basis of design. */
export function goToBasis({ desk }: Where, label: string): void {
  desk.set({ bench: { kind: 'basis' } });
  focusWhenThere(() => fieldNamed(label));
}
