import { type KeyboardEvent, useId, useState } from 'react';
import { clearMeasurement } from '#shared/commands/clear-measurement';
import { type MeasuredEntry, recordMeasurements } from '#shared/commands/record-measurements';
import type { Verdict } from '#shared/rules/finding';
import type { JudgedDimension, SiteAnswer } from '#shared/site/judge-measurements';
import { formatLength } from '#shared/units/length-text';
import { useCommit, useFigures } from '../bench/use-plan.ts';
import { LengthField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { VerdictMark } from '../verdict-mark.tsx';
import { PinnedPhotos } from './pinned-photos.tsx';

/** The mark of an answer: its shape tells it as well as its colour. */
export const ANSWER_MARKS: Readonly<Record<SiteAnswer, Verdict>> = { 'does-not-close': 'stop', breaks: 'stop', supports: 'warn', inside: 'note', fits: 'ok', 'not-measured': 'not-checked' };

/** Brings the keyboard to the next measured field of the list. */
function focusNextField(from: Element): void {
  const fields = [...(from.closest('[data-part="measured"]')?.querySelectorAll<Element>('.measured-value input') ?? [])];
  const next = fields[fields.indexOf(from) + 1];
  if (next instanceof HTMLElement) next.focus();
}

interface MeasuredRowProps {
  readonly row: JudgedDimension;
  /** Who measures, with what and when, noted with every value that is typed. */
  signed(): Pick<MeasuredEntry, 'by' | 'at' | 'instrument'>;
  knockOnOf(id: string): readonly string[];
}

/** A deviation with its sign: "+1'-9"". */
export function useSignedLength(): (length_m: number) => string {
  const { system } = useFigures();
  return (length_m) => (Math.abs(length_m) < 0.0005 ? '0' : `${length_m > 0 ? '+' : '−'}${formatLength(Math.abs(length_m), system)}`);
}

function Opened({ row, knockOnOf }: Pick<MeasuredRowProps, 'row' | 'knockOnOf'>) {
  const commit = useCommit();
  const { dimension, measurement, answer, breaks, mend, remarks } = row;
  if (!measurement) return null;
  const { id } = dimension;
  const { value_m } = measurement;
  const sentences = knockOnOf(id);
  return (
    <div className="measured-more">
      {breaks.map(({ rule, name, title, text }) => (
        <p key={`${rule} ${name}`}>
          <VerdictMark verdict="stop" silent /> <strong>{rule}</strong> {title}, {name}: {text}
        </p>
      ))}
      {mend.map(({ rule, text }) => (
        <p key={rule}>
          <VerdictMark verdict="warn" silent /> <strong>{rule}</strong> {text}
        </p>
      ))}
      {remarks.map((text) => (
        <p key={text}>
          <VerdictMark verdict="warn" silent /> {text}
        </p>
      ))}
      {answer === 'does-not-close' ? null : sentences.length > 0 ? (
        <>
          <h4>By itself it changes</h4>
          <ul>
            {sentences.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      ) : (
        <p className="quiet">It changes no run, piece, volume or oxygen.</p>
      )}
      <div className="fields">
        <TextField label="Reason" value={measurement.reason} most={2000} placeholder="why it was built otherwise" wide onCommit={(reason) => commit(recordMeasurements([{ id, value_m, reason }]))} />
        <TextField label="Approved by" value={measurement.approvedBy} placeholder="who agreed" onCommit={(approvedBy) => commit(recordMeasurements([{ id, value_m, approvedBy }]))} />
      </div>
      <PinnedPhotos dimension={dimension} photos={measurement.photos} />
      <p className="quiet">{[measurement.by, measurement.at, measurement.instrument].filter(Boolean).join(', ') || 'Nobody is named for it.'}</p>
      <button type="button" className="link" onClick={() => commit(clearMeasurement([id]))}>
        Clear this measurement
      </button>
    </div>
  );
}

/** One dimension: planned, measured, how far off, and the answer; opened it says what it changes. */
export function MeasuredRow({ row, signed, knockOnOf }: MeasuredRowProps) {
  const { dimension, measurement, deviation_m, answer, words } = row;
  const commit = useCommit();
  const { length } = useFigures();
  const signedLength = useSignedLength();
  const [isOpen, setOpen] = useState(false);
  const more = useId();
  const value_m = measurement?.value_m ?? null;
  const needsReason = (answer === 'inside' || answer === 'breaks') && measurement?.reason === '';
  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    // An empty field has nothing to take: Enter only goes on.
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement) || event.target.value.trim() !== '' || measurement) return;
    event.preventDefault();
    event.stopPropagation();
    focusNextField(event.target);
  };
  return (
    <li className="measured-row" data-dimension={dimension.id} data-answer={answer}>
      <p className="measured-what">
        <span>
          <strong>{dimension.name}</strong> {dimension.from} to {dimension.to}
        </span>
        <span className="measured-planned">planned {length(dimension.planned_m)}</span>
      </p>
      <div className="measured-value" onKeyDownCapture={onKeyDown}>
        <LengthField
          label={`Measured, ${dimension.name}`}
          value={value_m}
          blank={{ text: '', commit: () => measurement && commit(clearMeasurement([dimension.id])) }}
          onCommit={(taken_m) => commit(recordMeasurements([{ id: dimension.id, value_m: taken_m, ...signed() }]))}
          onEnter={() => document.activeElement && focusNextField(document.activeElement)}
        />
        <p className="measured-answer">
          {deviation_m === null ? null : <span className="measured-off">{signedLength(deviation_m)}</span>}
          <VerdictMark verdict={ANSWER_MARKS[answer]} silent /> {words}
          {needsReason ? <span className="quiet"> Reason missing.</span> : null}
        </p>
      </div>
      {measurement ? (
        <button type="button" className="link" aria-expanded={isOpen} aria-controls={more} onClick={() => setOpen(!isOpen)}>
          {isOpen ? 'Less' : `What follows, reason, photographs${measurement.photos.length > 0 ? ` (${measurement.photos.length})` : ''}, who`}
          <span className="out-of-sight"> of {dimension.name}</span>
        </button>
      ) : null}
      <div id={more}>{isOpen ? <Opened row={row} knockOnOf={knockOnOf} /> : null}</div>
    </li>
  );
}
