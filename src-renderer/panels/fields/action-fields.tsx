import { useRef, useState } from 'react';
import { LengthField, QuantityField } from './quantity-field.tsx';

interface DoWithLengthProps {
  readonly label: string;
  readonly action: string;
  readonly start_m?: number;
  run(length_m: number): void;
}

/** A length and the button that does something with it; Enter in the field does it too. */
export function DoWithLength({ label, action, start_m, run }: DoWithLengthProps) {
  const [length_m, setLength] = useState<number | null>(start_m ?? null);
  const box = useRef<HTMLDivElement>(null);
  return (
    <div className="do-with" ref={box}>
      <LengthField label={label} value={length_m} onCommit={setLength} onEnter={run} />
      {/* Never disabled: a length that was typed but not yet taken is taken by this very click. */}
      <button type="button" className="button" onClick={() => (length_m === null ? box.current?.querySelector('input')?.focus() : run(length_m))}>
        {action}
      </button>
    </div>
  );
}

/** An angle and the button that does something with it; Enter in the field does it too. */
export function DoWithAngle({ label, action, run }: { readonly label: string; readonly action: string; run(angle_rad: number): void }) {
  const [angle_rad, setAngle] = useState<number>(Math.PI / 2);
  return (
    <div className="do-with">
      <QuantityField kind="angle" label={label} value={angle_rad} onCommit={setAngle} onEnter={run} />
      <button type="button" className="button" onClick={() => run(angle_rad)}>
        {action}
      </button>
    </div>
  );
}
