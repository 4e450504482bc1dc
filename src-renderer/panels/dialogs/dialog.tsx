import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';

interface DialogProps {
  readonly title: string;
  /** Called on Escape and by the close button. Without it the dialog must be answered. */
  readonly onClose?: (() => void) | undefined;
  readonly children: ReactNode;
  /** Buttons of the last line, the main one last. */
  readonly footer?: ReactNode;
  readonly size?: 'small' | 'middle' | 'large' | 'whole';
  readonly name: string;
}

const messageOf = (state: State) => state.session.message;

/** Trouble that came up while the dialog stands in front of the line that tells it. */
function Trouble() {
  const message = useStore(messageOf);
  const [before] = useState(message);
  if (message?.kind !== 'problem' || message === before) return null;
  return (
    <p className="field-fault" role="alert">
      {message.text}
    </p>
  );
}

/** A question or form in front of the window. The keyboard stays inside, and goes back where it was. */
export function Dialog({ title, onClose, children, footer, size = 'middle', name }: DialogProps) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    if (element && !element.open) {
      element.showModal();
      // Without this the close button would have the keyboard.
      (element.querySelector<HTMLElement>('[data-first]') ?? element.querySelector<HTMLElement>('.dialog-body'))?.focus();
    }
    return () => element?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      className={`dialog is-${size}`}
      data-dialog={name}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose?.();
      }}
    >
      <header className="dialog-head">
        <h2 id={id}>{title}</h2>
        {onClose ? (
          <button type="button" className="button is-plain is-slim" onClick={onClose} aria-label="Close">
            <svg viewBox="0 0 20 20" width="16" height="16" aria-hidden="true" className="line-icon">
              <path d="m5 5 10 10M15 5 5 15" />
            </svg>
          </button>
        ) : null}
      </header>
      <div className="dialog-body" tabIndex={-1}>
        <Trouble />
        {children}
      </div>
      {footer ? <footer className="dialog-foot">{footer}</footer> : null}
    </dialog>
  );
}
