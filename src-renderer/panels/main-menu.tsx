import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { ACTIONS, ACTION_GROUPS } from '../actions/actions.ts';
import { shortcutText } from '../actions/shortcuts.ts';
import type { Action } from '../actions/action.ts';
import { OwnMark } from './tool-icon.tsx';
import { isMac, useActionContext, useRun } from './window-context.ts';

/** Left out of the menu: each is one press away on the board, and the action list has them too. */
const KEPT_OUT = /^(nudge-|stage-|layer-|lock-|snap-|tool-|enter-)/;

/** Moves the keyboard through the items of a menu. */
export function moveInMenu(event: KeyboardEvent<HTMLElement>): void {
  if (!['ArrowDown', 'ArrowUp', 'Home', 'End'].includes(event.key)) return;
  const items = [...event.currentTarget.querySelectorAll<HTMLElement>('[role="menuitem"]')];
  const at = items.findIndex((item) => item.matches(':focus'));
  const next = event.key === 'Home' ? 0 : event.key === 'End' ? items.length - 1 : event.key === 'ArrowDown' ? at + 1 : at - 1;
  items[(next + items.length) % items.length]?.focus();
  event.preventDefault();
  event.stopPropagation();
}

/** One action in a menu, greyed with its reason while it cannot be done. */
export function MenuItem({ action, onDone }: { readonly action: Action; onDone(): void }) {
  const { store, desk } = useActionContext();
  const run = useRun();
  const state = store.get();
  const reason = action.unavailable?.(state, desk.get()) ?? null;
  const [keys] = action.keys ?? [];
  return (
    <button
      type="button"
      role="menuitem"
      className="menu-item"
      aria-disabled={reason !== null}
      title={reason ?? undefined}
      onClick={() => {
        // The menu still stands while the action runs: it may ask where.
        run(action);
        onDone();
      }}
    >
      <span>{action.nameNow?.(state) ?? action.name}</span>
      {keys ? <span className="key">{shortcutText(keys, isMac())}</span> : null}
    </button>
  );
}

/** Everything that can be done, by words, behind the program's own mark. */
export function MainMenu() {
  const id = useId();
  const panel = useRef<HTMLDivElement>(null);
  const [isOpen, setOpen] = useState(false);
  const close = (): void => panel.current?.hidePopover();
  return (
    <>
      <button type="button" className="button is-plain main-menu-button" popoverTarget={id} aria-haspopup="menu" title="Menu">
        <OwnMark />
        <span>Menu</span>
      </button>
      <div
        ref={panel}
        id={id}
        popover="auto"
        className="main-menu"
        role="menu"
        tabIndex={-1}
        aria-label="Menu"
        onKeyDown={moveInMenu}
        onBeforeToggle={(event) => setOpen(event.newState === 'open')}
        onToggle={(event) => {
          if (event.newState === 'open') panel.current?.querySelector<HTMLElement>('[role="menuitem"]')?.focus();
        }}
      >
        {ACTION_GROUPS.filter((group) => isOpen && group !== 'Draw').map((group) => (
          <section key={group} className="menu-group" aria-label={group}>
            <h2>{group}</h2>
            {ACTIONS.filter((action) => action.group === group && !KEPT_OUT.test(action.id)).map((action) => (
              <MenuItem key={action.id} action={action} onDone={close} />
            ))}
          </section>
        ))}
      </div>
    </>
  );
}
