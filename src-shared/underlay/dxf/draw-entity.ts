import { drawArc, drawCircle, drawEllipse, drawSpline } from './draw-curves.ts';
import { drawHatch } from './draw-hatch.ts';
import { drawDimension, drawInsert, drawTable } from './draw-inserts.ts';
import { drawFace, drawLeader, drawLine, drawParallels, drawSolid } from './draw-lines.ts';
import { drawLightPolyline, drawPolyline } from './draw-polylines.ts';
import { drawParagraph, drawText } from './draw-texts.ts';
import type { Drawer, Reading } from './reading.ts';

const nothing: Drawer = () => undefined;
const picture: Drawer = ({ tally }) => tally.note('picture');
const construction: Drawer = ({ tally }) => tally.note('construction');

/** How each kind of entity is drawn. */
const DRAWERS: Readonly<Record<string, Drawer>> = {
  LINE: drawLine,
  LWPOLYLINE: drawLightPolyline,
  POLYLINE: drawPolyline,
  ARC: drawArc,
  CIRCLE: drawCircle,
  ELLIPSE: drawEllipse,
  SPLINE: drawSpline,
  SOLID: drawSolid,
  TRACE: drawSolid,
  '3DFACE': drawFace,
  HATCH: drawHatch,
  TEXT: drawText,
  MTEXT: drawParagraph,
  INSERT: drawInsert,
  DIMENSION: drawDimension,
  ARC_DIMENSION: drawDimension,
  LARGE_RADIAL_DIMENSION: drawDimension,
  ACAD_TABLE: drawTable,
  LEADER: drawLeader,
  MLINE: drawParallels,
  IMAGE: picture,
  PDFUNDERLAY: picture,
  DGNUNDERLAY: picture,
  DWFUNDERLAY: picture,
  OLE2FRAME: picture,
  OLEFRAME: picture,
  XLINE: construction,
  RAY: construction,
  // Marks and settings without lines, and parts of things whose head was left out.
  POINT: nothing,
  ATTDEF: nothing,
  ATTRIB: nothing,
  VERTEX: nothing,
  SEQEND: nothing,
  VIEWPORT: nothing,
  LIGHT: nothing,
  SUN: nothing,
  GEOPOSITIONMARKER: nothing,
};

/** Draws the entity in the current record, unless it is hidden or lies on paper. */
export function drawEntity(reading: Reading): void {
  const { records, tally } = reading;
  const isOnPaper = records.whole(67, 0) === 1;
  const isHidden = (records.whole(60, 0) & 1) === 1;
  const drawer = Object.hasOwn(DRAWERS, records.type) ? DRAWERS[records.type] : undefined;
  if (isOnPaper || isHidden) {
    if (isOnPaper && drawer !== nothing) tally.note('paper');
    return;
  }
  if (drawer) drawer(reading);
  else tally.noteUnread(records.type);
}
