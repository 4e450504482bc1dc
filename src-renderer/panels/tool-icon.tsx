import type { ReactNode } from 'react';
import type { ToolId } from '../store/state.ts';

const SHAPES: Readonly<Record<ToolId, ReactNode>> = {
  select: <path d="M6 3v14l3.6-3.4L12 19l2.2-1-2.4-5.2H17Z" />,
  enclosure: <path d="M4 5h10v5h6v9H4Z" className="is-heavy" />,
  hole: (
    <>
      <path d="M3 4h18v16H3Z" />
      <path d="M9 9h6v6H9Z" className="is-heavy" />
      <path d="m9 15 6-6M9 12l3-3M12 15l3-3" />
    </>
  ),
  'pick-outline': (
    <>
      <path d="M4 5h11v6h5v8H4Z" strokeDasharray="2.5 2" />
      <path d="M10 16 17 9l2 2-7 7-2.5.5Z" className="is-solid" />
    </>
  ),
  'ceiling-zone': (
    <>
      <path d="M3 6h6v5h6V6h6" className="is-heavy" />
      <path d="M12 20v-6m-2 2 2-2 2 2M6 20h12" />
    </>
  ),
  opening: (
    <>
      <path d="M3 18h4M17 18h4" className="is-heavy" />
      <path d="M7 18V8a10 10 0 0 1 10 10" />
    </>
  ),
  obstruction: (
    <>
      <path d="M4 7h16v10H4Z" className="is-heavy" />
      <path d="m4 12 5-5M4 17 14 7M9 17 19 7M14 17l6-6" />
    </>
  ),
  device: (
    <>
      <circle cx="8.5" cy="8.5" r="5" className="is-heavy" />
      <path d="M8.5 8.5h.01" strokeWidth="3" strokeLinecap="round" />
      <path d="M13 15h8v6h-8ZM17 16.5v3" />
    </>
  ),
  adjoining: (
    <>
      <path d="M3 4h9v16H3Z" className="is-heavy" />
      <path d="M12 7h9v10h-9" strokeDasharray="3 2" />
      <path d="m14 17 5-10M12.5 12 15 7M19 17l2-4" />
    </>
  ),
  cylinder: (
    <>
      <path d="M7 5h10" className="is-heavy" />
      <circle cx="12" cy="13" r="6.5" />
      <path d="M12 19.5V22" className="is-heavy" />
    </>
  ),
  pipe: (
    <>
      <path d="M4 19V9a3 3 0 0 1 3-3h13" className="is-heavy" />
      <path d="M2 19h4M20 4v4" />
    </>
  ),
  nozzle: (
    <>
      <circle cx="12" cy="12" r="4" className="is-heavy" />
      <path d="M2 12h5M17 12h5" />
    </>
  ),
  support: (
    <>
      <path d="M2 15h20" />
      <path d="M9 19V6M15 19V6" />
      <path d="M6 6h12" className="is-heavy" />
    </>
  ),
  dimension: (
    <>
      <path d="M4 5v14M20 5v14M4 12h16" />
      <path d="m2.5 13.5 3-3M18.5 13.5l3-3" className="is-heavy" />
    </>
  ),
  note: (
    <>
      <path d="M4 4h16v12h-9l-5 4v-4H4Z" />
      <path d="M8 8h8M8 12h5" />
    </>
  ),
  measure: (
    <>
      <path d="M3 9h18v7H3Z" />
      <path d="M6 9v3M9 9v4M12 9v3M15 9v4M18 9v3" />
    </>
  ),
  calibrate: (
    <>
      <path d="M6 6h.01M18 6h.01" className="is-heavy" strokeWidth="4" />
      <path d="M6 6h12M3 14h18v5H3ZM7 14v2M12 14v3M17 14v2" />
    </>
  ),
  section: (
    <>
      <path d="M3 12h18" strokeDasharray="5 2 1.5 2" className="is-heavy" />
      <path d="M5 12V6m-2 2 2-2 2 2M19 12V6m-2 2 2-2 2 2M6 20h12" />
    </>
  ),
};

/** The drawn sign of a tool. */
export const ToolIcon = ({ tool }: { readonly tool: ToolId }) => (
  <svg className="tool-icon" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
    {SHAPES[tool]}
  </svg>
);

/** The program's own sign: a nozzle seen from below, blowing along a wall. */
export const OwnMark = () => (
  <svg className="own-mark" viewBox="0 0 32 32" width="28" height="28" aria-hidden="true">
    <path d="M3 4.5h26" className="is-wall" />
    <circle cx="16" cy="17" r="5.5" />
    <path d="M2.5 17h8M21.5 17h8M16 22.5v6" />
  </svg>
);
