import { type KeyboardEvent, type ReactNode, useEffect, useId, useState } from 'react';

/** What reading a typed text gave. */
export type Reading<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string };

export interface TypedFieldProps<T> {
  readonly label: string;
  /** Text of the present value. */
  readonly shown: string;
  /** Reads what was typed; a reason says what is wrong, with an example. */
  read(text: string): Reading<T>;
  onCommit(value: T): void;
  /** Unit or other short mark behind the field. */
  readonly unit?: string | undefined;
  readonly help?: ReactNode;
  readonly placeholder?: string | undefined;
  readonly disabled?: boolean | undefined;
  readonly wide?: boolean;
  /** Field has the keyboard when its dialog opens. */
  readonly autoFocus?: boolean;
}

/**
 * A field that takes its value on Enter or when it is left, and gives the old one back on Escape.
 * What cannot be read stays in the field with the reason under it; nothing is changed then.
 */
export function TypedField<T>({ label, shown, read, onCommit, unit, help, placeholder, disabled, wide, autoFocus }: TypedFieldProps<T>) {
  const id = useId();
  const [text, setText] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another value from outside ends what was being typed
  useEffect(() => {
    setText(null);
    setFault(null);
  }, [shown]);

  const commit = (): void => {
    if (text === null || text === shown) {
      setText(null);
      setFault(null);
      return;
    }
    const reading = read(text);
    if (!reading.ok) {
      setFault(reading.reason);
      return;
    }
    setText(null);
    setFault(null);
    onCommit(reading.value);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') {
      event.preventDefault();
      event.stopPropagation();
      commit();
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
      <span className="field-line">
        <input
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          value={text ?? shown}
          placeholder={placeholder}
          disabled={disabled}
          data-first={autoFocus ? true : undefined}
          aria-invalid={fault !== null}
          aria-describedby={fault || help ? `${id}-help` : undefined}
          onChange={(event) => setText(event.target.value)}
          onFocus={(event) => event.target.select()}
          onBlur={commit}
          onKeyDown={onKeyDown}
        />
        {unit ? <span className="field-unit">{unit}</span> : null}
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
