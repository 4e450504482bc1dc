import { useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import type { ScreenPoint } from '#shared/geometry/point';
import type { Settings } from '#shared/model/plan';
import type { ToolEvent } from '../tools/tool.ts';
import { TYPED_FIELD_WORDS, type TypedField, type TypedTexts, readTyped } from '../tools/typed-entry.ts';
import { WORDS_EXAMPLE, isInWords } from '../tools/typed-words.ts';
import './pointer-field.css';

/** Unit shown behind a part while nothing else is typed. */
const unitOf = (field: TypedField, system: Settings['lengths']): string => (field === 'words' ? '' : field === 'angle' ? '°' : system === 'feet' ? 'ft-in' : 'm');

/** What a refused part should look like. */
const exampleOf = (field: TypedField, text: string, system: Settings['lengths']): string =>
  field === 'words' || isInWords(text) ? WORDS_EXAMPLE : field === 'angle' ? 'For example 90: degrees, counter-clockwise from east.' : system === 'feet' ? `For example 11' 4 1/2", 11-4 1/2 or 3.46 m.` : 'For example 3.46, 3460 mm or 11-4 1/2 ft.';

export interface PointerFieldProps {
  /** Values that are taken now. */
  readonly asks: readonly TypedField[];
  /** What was typed to open it. */
  readonly begins: string;
  readonly at: ScreenPoint;
  /** Size of the board that it must stay within [px]. */
  readonly board: { readonly width: number; readonly height: number };
  readonly lengths: Settings['lengths'];
  /** Takes what was typed. */
  accept(event: Extract<ToolEvent, { kind: 'typed' }>): void;
  close(): void;
}

/** The small field at the pointer: lengths, directions and heights are typed into it while something is drawn. */
export function PointerField({ asks, begins, at, board, lengths, accept, close }: PointerFieldProps) {
  const first = asks[0];
  const [texts, become] = useState<TypedTexts>(first ? { [first]: begins } : {});
  const [refusal, refuse] = useState<{ field: TypedField; reason: string } | null>(null);
  const box = useRef<HTMLFormElement>(null);
  const firstInput = useRef<HTMLInputElement>(null);
  const id = useId();

  useEffect(() => {
    const input = firstInput.current;
    input?.focus();
    input?.setSelectionRange(input.value.length, input.value.length);
  }, []);

  useLayoutEffect(() => {
    const form = box.current;
    if (!form) return;
    const { offsetWidth, offsetHeight } = form;
    form.style.left = `${Math.max(4, Math.min(at.x + 18, board.width - offsetWidth - 4))}px`;
    form.style.top = `${Math.max(4, at.y + 24 + offsetHeight > board.height ? at.y - offsetHeight - 14 : at.y + 24)}px`;
  });

  const submit = (): void => {
    const entry = readTyped(texts, asks, lengths);
    if (entry.ok) {
      accept(entry.event);
      return;
    }
    refuse(entry);
    box.current?.querySelector<HTMLInputElement>(`[name="${entry.field}"]`)?.focus();
  };

  return (
    <form
      ref={box}
      className="pointer-field"
      aria-label="Typed value"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
      onKeyDown={(event) => {
        event.stopPropagation();
        if (event.key !== 'Escape') return;
        event.preventDefault();
        close();
      }}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) close();
      }}
    >
      <div className="pointer-field-row">
        {asks.map((field, i) => (
          <label key={field} className={field === 'words' ? 'is-words' : undefined}>
            <span>{TYPED_FIELD_WORDS[field]}</span>
            <input
              ref={i === 0 ? firstInput : null}
              name={field}
              autoComplete="off"
              spellCheck={false}
              size={field === 'angle' ? 6 : field === 'words' ? 24 : 11}
              placeholder={field === 'words' ? 'up 1-6, offset 12" left' : undefined}
              value={texts[field] ?? ''}
              aria-invalid={refusal?.field === field}
              aria-describedby={refusal?.field === field ? `${id}-refusal` : undefined}
              onChange={(event) => {
                refuse(null);
                become({ ...texts, [field]: event.target.value });
              }}
            />
            {unitOf(field, lengths) ? <span className="pointer-field-unit">{unitOf(field, lengths)}</span> : null}
          </label>
        ))}
      </div>
      {refusal ? (
        <p id={`${id}-refusal`} role="alert">
          {refusal.reason} {exampleOf(refusal.field, texts[refusal.field] ?? '', lengths)}
        </p>
      ) : (
        <p className="pointer-field-hint">Enter takes it{asks.length > 1 ? ', Tab goes on' : ''}, Escape closes.</p>
      )}
      <button type="submit" hidden>
        Take
      </button>
    </form>
  );
}
