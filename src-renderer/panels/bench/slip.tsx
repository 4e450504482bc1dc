import type { ReactNode } from 'react';

/** One part of the bench under its heading. */
export function Slip({ title, aside, children, part }: { readonly title: string; readonly aside?: ReactNode; readonly children: ReactNode; /** Name for tests and for putting the keyboard there. */ readonly part?: string }) {
  return (
    <section className="slip" data-part={part}>
      <h3>
        <span>{title}</span>
        {aside}
      </h3>
      {children}
    </section>
  );
}

/** Figures that are read, not typed: what it is, and what it comes to. */
export function Readings({ rows }: { readonly rows: readonly { readonly label: string; readonly value: ReactNode; readonly note?: ReactNode }[] }) {
  return (
    <dl className="readings">
      {rows.map(({ label, value, note }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            {value}
            {note ? <span className="quiet"> {note}</span> : null}
          </dd>
        </div>
      ))}
    </dl>
  );
}
