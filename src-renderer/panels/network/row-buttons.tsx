interface RowButtonsProps {
  /** What the row is, inside a sentence: "part 2". */
  readonly what: string;
  readonly isFirst?: boolean;
  readonly isLast?: boolean;
  /** Moves the row; a list whose order means nothing leaves it out. */
  onShift?(by: 1 | -1): void;
  onTakeOut(): void;
}

/** Moving a row of a list up or down, and taking it out. */
export function RowButtons({ what, isFirst, isLast, onShift, onTakeOut }: RowButtonsProps) {
  return (
    <span className="row-buttons">
      {onShift ? (
        <>
          <button type="button" className="button is-slim" disabled={isFirst} aria-label={`Move ${what} up`} onClick={() => onShift(-1)}>
            ↑
          </button>
          <button type="button" className="button is-slim" disabled={isLast} aria-label={`Move ${what} down`} onClick={() => onShift(1)}>
            ↓
          </button>
        </>
      ) : null}
      <button type="button" className="button is-slim" aria-label={`Take out ${what}`} onClick={onTakeOut}>
        Take out
      </button>
    </span>
  );
}
