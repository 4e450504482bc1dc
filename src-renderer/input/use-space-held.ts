import { useEffect, useRef } from 'react';
import { isForControl } from './tool-keys.ts';

/** Whether the space bar is down while nothing is being typed: a drag then moves the board. */
export function useSpaceHeld(changed: (isHeld: boolean) => void): { readonly current: boolean } {
  const held = useRef(false);
  useEffect(() => {
    const become = (next: boolean): void => {
      if (held.current === next) return;
      held.current = next;
      changed(next);
    };
    const down = (event: KeyboardEvent): void => {
      if (event.code !== 'Space' || event.ctrlKey || event.metaKey || isForControl(event.target, event.key)) return;
      event.preventDefault();
      become(true);
    };
    const up = (event: KeyboardEvent): void => {
      if (event.code === 'Space') become(false);
    };
    const away = (): void => become(false);
    window.addEventListener('keydown', down);
    window.addEventListener('keyup', up);
    window.addEventListener('blur', away);
    return () => {
      window.removeEventListener('keydown', down);
      window.removeEventListener('keyup', up);
      window.removeEventListener('blur', away);
    };
  }, [changed]);
  return held;
}
