import { type ReactNode, useId } from 'react';

export interface ChoiceOption<V extends string> {
  readonly value: V;
  readonly label: string;
}

interface ChoiceProps<V extends string> {
  readonly label: string;
  readonly value: V;
  readonly options: readonly ChoiceOption<V>[];
  onCommit(value: V): void;
  readonly help?: ReactNode;
  readonly wide?: boolean;
}

/** One of a few values. */
export function Choice<V extends string>({ label, value, options, onCommit, help, wide }: ChoiceProps<V>) {
  const id = useId();
  return (
    <div className={wide ? 'field is-wide' : 'field'}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.target.value);
          if (chosen) onCommit(chosen.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      {help ? <p className="field-help">{help}</p> : null}
    </div>
  );
}

/** Options of a choice from a table of labels, in the table's order. */
export const optionsOf = <V extends string>(labels: Readonly<Record<V, string>>): ChoiceOption<V>[] =>
  (Object.keys(labels) as V[]).map((value) => ({ value, label: labels[value] }));

interface KnownChoiceProps {
  readonly label: string;
  /** null: not yet known. */
  readonly value: boolean | null;
  onCommit(value: boolean | null): void;
  readonly yes?: string;
  readonly no?: string;
  /** What null is called. */
  readonly unknown?: string;
  readonly wide?: boolean;
  readonly help?: ReactNode;
}

/** Yes, no, or not yet known. */
export function KnownChoice({ label, value, onCommit, yes = 'Yes', no = 'No', unknown = 'Not yet known', wide, help }: KnownChoiceProps) {
  return (
    <Choice
      label={label}
      value={value === null ? 'unknown' : value ? 'yes' : 'no'}
      options={[
        { value: 'unknown', label: unknown },
        { value: 'yes', label: yes },
        { value: 'no', label: no },
      ]}
      wide={wide}
      help={help}
      onCommit={(chosen) => onCommit(chosen === 'unknown' ? null : chosen === 'yes')}
    />
  );
}

interface TickProps {
  readonly label: ReactNode;
  readonly value: boolean;
  onCommit(value: boolean): void;
  readonly disabled?: boolean;
}

/** A box to tick. */
export function Tick({ label, value, onCommit, disabled }: TickProps) {
  return (
    <label className="tick">
      <input type="checkbox" checked={value} disabled={disabled} onChange={(event) => onCommit(event.target.checked)} />
      <span>{label}</span>
    </label>
  );
}
