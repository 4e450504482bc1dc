import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { refKey } from '#shared/model/plan';
import type { Action } from '../../actions/action.ts';
import { ACTIONS } from '../../actions/actions.ts';
import { type NamedThing, findThings } from '../../actions/find-things.ts';
import { fitPlaces, placesOfThing } from '../../actions/fit-view.ts';
import { goToForm } from '../../actions/go-to-form.ts';
import { matchScore, searchActions } from '../../actions/search-actions.ts';
import { shortcutText } from '../../actions/shortcuts.ts';
import { isMac, useActionContext, useRun } from '../window-context.ts';
import { Dialog } from './dialog.tsx';
import { useCloseDialog } from './use-close-dialog.ts';

/** An action whose name answers so well says what was typed. */
const SAYS_IT = 50;

/** Selects a thing and brings it into sight. */
const showThing = ({ ref, name, where }: NamedThing): Action => ({
  id: `find-${refKey(ref)}`,
  name: where ? `Show ${name}, ${where}` : `Show ${name}`,
  group: 'View',
  run: (context) => {
    goToForm(context, ref);
    fitPlaces(context.store, placesOfThing(context.store.get().history.present, ref));
  },
});

/** The list of everything that can be done, and of what goes by a name: type what you want, Enter does it. */
export function ActionsDialog() {
  const { store, desk } = useActionContext();
  const close = useCloseDialog();
  const run = useRun();
  const id = useId();
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const list = useRef<HTMLDivElement>(null);
  const state = store.get();
  const named = ACTIONS.filter((action) => action.id !== 'actions').map((action) => ({ ...action, name: action.nameNow?.(state) ?? action.name, plain: action }));
  const answers = searchActions(typed, named);
  const things = findThings(state.history.present, typed).map((thing) => {
    const action = showThing(thing);
    return { ...action, plain: action };
  });
  // Who types a name wants the thing; an action that says it comes first all the same.
  const found = matchScore(typed, answers[0]?.name ?? '') >= SAYS_IT ? [...answers, ...things] : [...things, ...answers];
  const chosen = Math.min(at, found.length - 1);
  useEffect(() => {
    list.current?.querySelector(`[data-at="${chosen}"]`)?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);

  const perform = (action: Action | undefined): void => {
    if (!action || action.unavailable?.(state, desk.get())) return;
    close();
    run(action);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : event.key === 'PageDown' ? 8 : event.key === 'PageUp' ? -8 : 0;
    if (event.key === 'Enter') perform(found[chosen]?.plain);
    else if (step !== 0) setAt(Math.max(0, Math.min(found.length - 1, chosen + step)));
    else return;
    event.preventDefault();
  };
  return (
    <Dialog name="actions" title="Find an action" onClose={close}>
      <input
        type="text"
        className="action-search"
        data-first
        autoComplete="off"
        spellCheck={false}
        placeholder="Type what you want to do, or the name of a thing"
        aria-label="What you want to do"
        role="combobox"
        aria-expanded="true"
        aria-controls={id}
        aria-activedescendant={found.length > 0 ? `${id}-${chosen}` : undefined}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setAt(0);
        }}
        onKeyDown={onKeyDown}
      />
      <div className="action-list" id={id} role="listbox" tabIndex={-1} aria-label="Actions" ref={list}>
        {found.map((action, i) => {
          const reason = action.unavailable?.(state, desk.get()) ?? null;
          const [keys] = action.keys ?? [];
          return (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the text field above has the keyboard
            <div
              key={action.id}
              id={`${id}-${i}`}
              data-at={i}
              data-action={action.id}
              role="option"
              tabIndex={-1}
              aria-selected={i === chosen}
              aria-disabled={reason !== null}
              className="action-line"
              onPointerMove={() => setAt(i)}
              onClick={() => perform(action.plain)}
            >
              <span className="action-group">{action.group}</span>
              <span className="action-name">
                {action.name}
                {reason ? <span className="quiet"> {reason}</span> : null}
              </span>
              {keys ? <span className="key">{shortcutText(keys, isMac())}</span> : null}
            </div>
          );
        })}
        {found.length === 0 ? <p className="quiet">Nothing answers to that. Try another word, or look in the menu.</p> : null}
      </div>
    </Dialog>
  );
}
