import { useId } from 'react';

interface CursorSliderProps {
  readonly label: string;
  readonly count: number;
  readonly cursor: number;
  /** Where the cursor stands, in words: "12.4 s". */
  readonly shown: string;
  onCursor(index: number): void;
}

/** Moves the cursor of one or several charts by the keyboard as well as by the pointer. */
export function CursorSlider({ label, count, cursor, shown, onCursor }: CursorSliderProps) {
  const id = useId();
  return (
    <div className="cursor-slider">
      <label htmlFor={id}>
        {label} <b>{shown}</b>
      </label>
      <input id={id} type="range" min={0} max={Math.max(0, count - 1)} value={cursor} aria-valuetext={shown} onChange={(event) => onCursor(Number(event.target.value))} />
    </div>
  );
}
