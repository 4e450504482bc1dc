import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { type Ref, isSameRef } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';
import type { Action } from '../actions/action.ts';
import { findAction } from '../actions/actions.ts';
import { STAGE_TOOLS } from '../plan-words.ts';
import { useStoreItself } from '../store/use-store.ts';
import { MenuItem, moveInMenu } from './main-menu.tsx';
import { useActionContext, useDesk } from './window-context.ts';

/** What can be done with a thing, by its id, in the order of use. */
function actionsOn(ref: Ref | null, stage: keyof typeof STAGE_TOOLS): readonly string[] {
  const edit = ['cut', 'copy', 'duplicate', 'delete'];
  if (ref === null) return ['paste', 'select-all', 'fit', 'layers', 'info', ...STAGE_TOOLS[stage].filter((tool) => tool !== 'select').map((tool) => `tool-${tool}`)];
  switch (ref.kind) {
    case 'wall':
      return ['tool-opening', 'add-vent', 'tool-device', 'enter-walls', 'fit-selection', 'delete'];
    case 'corner':
    case 'opening':
    case 'ceiling-zone':
      return ['fit-selection', 'delete'];
    case 'underlay':
      return ['tool-calibrate', 'tool-pick-outline', 'fit', 'layer-underlays', 'delete'];
    case 'enclosure':
      return ['tool-opening', 'add-vent', 'tool-device', 'tool-adjoining', 'tool-ceiling-zone', 'tool-hole', 'tool-nozzle', 'tool-cylinder', 'sums', ...edit, 'fit-selection'];
    case 'cylinder':
    case 'nozzle':
    case 'obstruction':
      return [...(ref.kind === 'obstruction' ? [] : ['tool-pipe']), 'turn-left', 'turn-right', 'mirror-across', 'align', ...(ref.kind === 'cylinder' ? ['enter-anchors', 'enter-circuit'] : []), ...(ref.kind === 'obstruction' ? [] : ['sums']), ...edit, 'select-same', 'fit-selection'];
    case 'pipe':
      return ['support-here', 'enter-supports', 'tool-pipe', 'tool-nozzle', 'section', ...edit, 'select-same', 'fit-selection'];
    case 'node':
    case 'network':
      return ['tool-pipe', 'tool-nozzle', 'enter-supports', 'enter-circuit', 'section', 'sums', ...edit, 'select-same', 'fit-selection'];
    case 'support':
      return ['delete', 'fit-selection'];
    case 'device':
      return ['turn-left', 'turn-right', 'mirror-across', 'align', ...edit, 'select-same', 'fit-selection'];
    case 'adjoining':
      return ['turn-left', 'turn-right', 'mirror-across', ...edit, 'select-same', 'fit-selection'];
    case 'dimension':
    case 'note':
      return [...edit, 'fit-selection'];
  }
}

/** What can be done here: opened by the right button on the board. */
export function ContextMenu() {
  const { desk } = useActionContext();
  const store = useStoreItself();
  const menu = useDesk((state) => state.menu);
  const panel = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState({ left: 0, top: 0 });

  useLayoutEffect(() => {
    const element = panel.current;
    if (!menu || !element) return;
    const box = element.getBoundingClientRect();
    setPlace({ left: Math.max(4, Math.min(menu.x, window.innerWidth - box.width - 4)), top: Math.max(4, Math.min(menu.y, window.innerHeight - box.height - 4)) });
    element.querySelector<HTMLElement>('[role="menuitem"]')?.focus();
  }, [menu]);
  useEffect(() => {
    if (!menu) return;
    const close = (event: Event): void => {
      if (event instanceof PointerEvent && event.target instanceof Node && panel.current?.contains(event.target)) return;
      desk.set({ menu: null });
    };
    window.addEventListener('pointerdown', close, true);
    window.addEventListener('wheel', close, true);
    window.addEventListener('blur', close);
    return () => {
      window.removeEventListener('pointerdown', close, true);
      window.removeEventListener('wheel', close, true);
      window.removeEventListener('blur', close);
    };
  }, [menu, desk]);

  if (!menu) return null;
  const { history, session } = store.get();
  const others = menu.on && session.selection.some((ref) => menu.on && isSameRef(ref, menu.on)) ? session.selection.length : 1;
  const actions = actionsOn(menu.on, session.stage).flatMap((id): Action[] => {
    const action = findAction(id);
    return action ? [action] : [];
  });
  const close = (): void => {
    desk.set({ menu: null });
    document.querySelector<HTMLElement>('.board')?.focus({ preventScroll: true });
  };
  return (
    <div
      ref={panel}
      className="context-menu"
      style={place}
      role="menu"
      tabIndex={-1}
      aria-label="What can be done here"
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={(event) => {
        if (event.key === 'Escape' || event.key === 'Tab') {
          event.preventDefault();
          event.stopPropagation();
          close();
        } else moveInMenu(event);
      }}
    >
      <p className="menu-title">{menu.on === null ? 'Here' : others > 1 ? `${others} things` : thingName(history.present, menu.on)}</p>
      {actions.map((action) => (
        <MenuItem key={action.id} action={action} onDone={close} />
      ))}
    </div>
  );
}
