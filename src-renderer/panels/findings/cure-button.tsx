import { useEffect, useRef } from 'react';
import { applyCure } from '#shared/commands/apply-cure';
import type { Cure } from '#shared/rules/finding';
import { useActionContext } from '../window-context.ts';

/** Carries a cure out as one step. While it is pointed at, or has the keyboard, the board shows what it would do. */
export function CureButton({ cure }: { readonly cure: Exclude<Cure, { kind: 'advice' }> }) {
  const { store, desk } = useActionContext();
  const isTrying = useRef(false);
  const tryIt = (): void => {
    if (isTrying.current) return;
    isTrying.current = true;
    desk.set({ isTrying: true });
    store.preview(applyCure(cure));
  };
  const leave = (): void => {
    if (!isTrying.current) return;
    isTrying.current = false;
    desk.set({ isTrying: false });
    store.preview(null);
  };
  const end = useRef(leave);
  end.current = leave;
  // A button that goes away while it is pointed at tells nobody.
  useEffect(() => () => end.current(), []);
  return (
    <div className="cure">
      <button
        type="button"
        className="button is-main"
        onPointerEnter={tryIt}
        onPointerLeave={leave}
        onFocus={tryIt}
        onBlur={leave}
        onClick={() => {
          leave();
          store.commit(applyCure(cure));
        }}
      >
        {cure.text}
      </button>
      <p className="field-help">The plan shows what this does while you point at it. Undo takes it back.</p>
    </div>
  );
}
