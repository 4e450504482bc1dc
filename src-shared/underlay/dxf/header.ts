import type { Records } from './records.ts';

/** What the header of a DXF file tells that matters for a plan. */
export interface Header {
  /** "AC1018" and the like; empty when missing. */
  version: string;
  codePage: string;
  /** Code of the drawing unit; undefined when the file does not say. */
  unitCode: number | undefined;
  /** Feet-and-inches display: one unit is then an inch. */
  showsFeetInches: boolean;
  /** Diagonal of the extents the file claims; 0 when they make no sense. */
  diagonal: number;
}

/** A file without a header. */
export const noHeader = (): Header => ({ version: '', codePage: '', unitCode: undefined, showsFeetInches: false, diagonal: 0 });

/** Display formats that write a length as feet and inches. */
const FEET_INCHES_FORMATS = [3, 4];

/** Reads the header variables, which all stand in the section's own record. */
export function readHeader(records: Records): Header {
  const header = noHeader();
  const corners = { $EXTMIN: [0, 0], $EXTMAX: [0, 0] };
  for (let i = 0; i < records.count; i += 1) {
    if (records.codeAt(i) !== 9 || i + 1 >= records.count) continue;
    const name = records.textAt(i).trim();
    if (name === '$ACADVER') header.version = records.textAt(i + 1).trim();
    else if (name === '$DWGCODEPAGE') header.codePage = records.textAt(i + 1).trim();
    else if (name === '$INSUNITS') header.unitCode = Math.trunc(records.numberAt(i + 1));
    else if (name === '$LUNITS') header.showsFeetInches = FEET_INCHES_FORMATS.includes(records.numberAt(i + 1));
    else if ((name === '$EXTMIN' || name === '$EXTMAX') && records.codeAt(i + 2) === 20) {
      corners[name] = [records.numberAt(i + 1), records.numberAt(i + 2)];
    }
  }
  const width = (corners.$EXTMAX[0] ?? 0) - (corners.$EXTMIN[0] ?? 0);
  const depth = (corners.$EXTMAX[1] ?? 0) - (corners.$EXTMIN[1] ?? 0);
  // An empty drawing has its extents inside out, at 1e20.
  header.diagonal = width > 0 && depth > 0 && width < 1e12 && depth < 1e12 ? Math.hypot(width, depth) : 0;
  return header;
}
