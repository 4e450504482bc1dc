import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { focusBoard } from '../../input/focus-board.ts';

/** What reading a typed text gave. */
export type Reading<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string };

export interface TypedFieldProps<T> {
  readonly label: string;
  /** Text of the present value. */
  readonly shown: string;
  /** Reads what was typed; a reason says what is wrong, with an example. */
  read(text: string): Reading<T>;
  onCommit(value: T): void;
  /** What Enter does besides taking the value; the keyboard then stays in the field. */
  readonly onEnter?: ((value: T) => void) | undefined;
  /** Unit of a bare number, shown in the field while what stands there names none. */
  readonly unit?: string | undefined;
  readonly help?: ReactNode;
  readonly placeholder?: string | undefined;
  readonly disabled?: boolean | undefined;
  readonly wide?: boolean;
  /** Field has the keyboard when its dialog opens. */
  readonly autoFocus?: boolean;
}

/** Whether a text names no unit: nothing, or a bare number. */
export const isBare = (text: string): boolean => /^[\s\d.,+−-]*$/.test(text);

/**
 * A field that takes its value on Enter or when it is left, and gives the old one back on Escape.
 * What cannot be read stays in the field with the reason under it; nothing is changed then.
 */
export function TypedField<T>({ label, shown, read, onCommit, onEnter, unit, help, placeholder, disabled, wide, autoFocus }: TypedFieldProps<T>) {
  const id = useId();
  const [text, setText] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  /** What was typed is taken already: giving the keyboard back to the board leaves the field at once, and must not take it twice. */
  const isTaken = useRef(false);
  const marksUnit = unit !== undefined && unit !== '' && isBare(text ?? shown);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another value from outside ends what was being typed
  useEffect(() => {
    setText(null);
    setFault(null);
  }, [shown]);

  const isTouched = text !== null && text !== shown;
  /** Takes what was typed, if it can be read; answers whether nothing wrong is left in the field. */
  const commit = (): boolean => {
    const reading = isTouched ? read(text) : undefined;
    if (reading && !reading.ok) {
      setFault(reading.reason);
      return false;
    }
    setText(null);
    setFault(null);
    if (reading && !isTaken.current) {
      isTaken.current = true;
      onCommit(reading.value);
    }
    return true;
  };
  const enter = (): void => {
    if (!onEnter) {
      if (commit()) focusBoard(input.current);
      return;
    }
    const reading = read(text ?? shown);
    if (!reading.ok) {
      setFault(reading.reason);
      return;
    }
    commit();
    onEnter(reading.value);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') {
      event.preventDefault();
      event.stopPropagation();
      enter();
    } else if (event.key === 'Escape' && text !== null) {
      event.preventDefault();
      event.stopPropagation();
      setText(null);
      setFault(null);
    }
  };

  return (
    <div className={wide ? 'field is-wide' : 'field'}>
      <label htmlFor={id}>{label}</label>
      <span className={marksUnit ? 'field-line has-unit' : 'field-line'}>
        <input
          ref={input}
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          value={text ?? shown}
          placeholder={placeholder}
          disabled={disabled}
          data-first={autoFocus ? true : undefined}
          aria-invalid={fault !== null}
          aria-describedby={[fault || help ? `${id}-help` : '', marksUnit ? `${id}-unit` : ''].filter(Boolean).join(' ') || undefined}
          onChange={(event) => {
            isTaken.current = false;
            setText(event.target.value);
          }}
          onFocus={(event) => event.target.select()}
          onBlur={() => commit()}
          onKeyDown={onKeyDown}
        />
        {marksUnit ? (
          <span className="field-unit" id={`${id}-unit`}>
            {unit}
          </span>
        ) : null}
      </span>
      {fault ? (
        <p className="field-fault" id={`${id}-help`} role="alert">
          {fault}
        </p>
      ) : help ? (
        <p className="field-help" id={`${id}-help`}>
          {help}
        </p>
      ) : null}
    </div>
  );
}
