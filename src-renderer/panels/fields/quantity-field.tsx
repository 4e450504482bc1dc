import type { ReactNode } from 'react';
import { lengthOnMark } from '#shared/units/exact-length-text';
import { formatLength, parseLength } from '#shared/units/length-text';
import { formatQuantity, parseQuantity, unitName } from '#shared/units/quantity-text';
import { useStore } from '../../store/use-store.ts';
import { lengthSystem } from '../../plan-words.ts';
import { type Reading, TypedField } from './typed-field.tsx';

export interface QuantityFieldProps {
  readonly label: string;
  /** Value in base SI; null where it is not yet known. */
  readonly value: number | null;
  onCommit(value: number): void;
  /** What Enter does besides taking the value. */
  onEnter?(value: number): void;
  /** Lets the field be emptied, and says what an empty field means; without it a value is required. */
  readonly blank?: { readonly text: string; commit(): void };
  readonly help?: ReactNode;
  /** Smallest and greatest value that make sense, in base SI. */
  readonly least?: number;
  readonly most?: number;
  readonly disabled?: boolean;
  readonly wide?: boolean;
  readonly autoFocus?: boolean;
}

type QuantityKind = Parameters<typeof formatQuantity>[1];

interface SiFieldProps extends QuantityFieldProps {
  readonly unit: string;
  show(value: number): string;
  parse(text: string): Reading<number>;
}

function SiField({ value, onCommit, onEnter, blank, least, most, show, parse, ...rest }: SiFieldProps) {
  const read = (typed: string): Reading<number | null> => {
    if (typed.trim() === '') return blank ? { ok: true, value: null } : { ok: false, reason: 'A value is needed here.' };
    const reading = parse(typed);
    if (!reading.ok) return reading;
    if (least !== undefined && reading.value < least) return { ok: false, reason: `Not less than ${show(least)}.` };
    if (most !== undefined && reading.value > most) return { ok: false, reason: `Not more than ${show(most)}.` };
    return reading;
  };
  return (
    <TypedField
      {...rest}
      shown={value === null ? '' : show(value)}
      placeholder={blank?.text}
      read={read}
      onCommit={(taken: number | null) => (taken === null ? blank?.commit() : onCommit(taken))}
      onEnter={onEnter && ((taken: number | null) => taken !== null && onEnter(taken))}
    />
  );
}

/** A length: feet and inches or metric are taken, whichever way the plan shows them. */
export function LengthField(props: QuantityFieldProps) {
  const system = useStore(lengthSystem);
  return (
    <SiField
      {...props}
      unit={unitName('length', system)}
      show={(length_m) => lengthOnMark(length_m, system) ?? formatLength(length_m, system, { precision: 'fine' })}
      parse={(text) => {
        const parsed = parseLength(text, system);
        return parsed.ok ? { ok: true, value: parsed.length_m } : parsed;
      }}
    />
  );
}

/** Any other figure, with its unit. */
export function QuantityField({ kind, ...props }: QuantityFieldProps & { readonly kind: QuantityKind }) {
  const system = useStore(lengthSystem);
  return <SiField {...props} unit={unitName(kind, system)} show={(value) => formatQuantity(value, kind, system)} parse={(text) => parseQuantity(text, kind, system)} />;
}
