import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { focusBoard } from '../../input/focus-board.ts';
import { TypedField } from './typed-field.tsx';

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  onCommit(value: string): void;
  readonly help?: ReactNode;
  readonly placeholder?: string;
  /** Longest text that is taken. */
  readonly most?: number;
  /** An empty text is refused with this reason. */
  readonly required?: string;
  readonly wide?: boolean;
  readonly autoFocus?: boolean;
}

/** One line of text. */
export function TextField({ value, most = 200, required, onCommit, ...rest }: TextFieldProps) {
  return (
    <TypedField
      {...rest}
      shown={value}
      read={(typed) => {
        const text = typed.trim();
        if (required && text === '') return { ok: false, reason: required };
        if (text.length > most) return { ok: false, reason: `That is ${text.length} characters; ${most} fit here.` };
        return { ok: true, value: text };
      }}
      onCommit={onCommit}
    />
  );
}

interface LongTextFieldProps {
  readonly label: string;
  readonly value: string;
  onCommit(value: string): void;
  readonly rows?: number;
  readonly placeholder?: string;
  /** Has the keyboard as soon as it appears, its text chosen so that typing replaces it. */
  readonly takesKeyboard?: boolean;
}

/** Several lines of text; taken when the field is left or with Ctrl+Enter. */
export function LongTextField({ label, value, onCommit, rows = 3, placeholder, takesKeyboard = false }: LongTextFieldProps) {
  const id = useId();
  const area = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    if (!takesKeyboard) return;
    // The press on the board that brought the field up takes the keyboard there first.
    const frame = requestAnimationFrame(() => {
      area.current?.focus();
      area.current?.select();
    });
    return () => cancelAnimationFrame(frame);
  }, [takesKeyboard]);
  const [text, setText] = useState<string | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another value from outside ends what was being typed
  useEffect(() => setText(null), [value]);
  const commit = (): void => {
    if (text !== null && text !== value) onCommit(text.slice(0, 20_000));
    setText(null);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && text !== null) {
      event.preventDefault();
      event.stopPropagation();
      setText(null);
    } else if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
      event.stopPropagation();
      commit();
      focusBoard(area.current);
    }
  };
  return (
    <div className="field is-wide">
      <label htmlFor={id}>{label}</label>
      <textarea
        ref={area}
        id={id}
        rows={rows}
        value={text ?? value}
        placeholder={placeholder}
        onChange={(event) => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={onKeyDown}
      />
    </div>
  );
}
