import { IDENTITY, multiply, scaleBy, shiftBy, turnBy } from '../matrix.ts';
import type { Placed } from './content.ts';
import { drawAttribute } from './draw-texts.ts';
import { type Drawer, colourOf, layerOf, planeOf } from './reading.ts';

const RADIANS = Math.PI / 180;
const ONCE: Placed['grid'] = { columns: 1, rows: 1, stepColumn: [0, 0], stepRow: [0, 0] };

/** INSERT: a block, stretched, turned and perhaps repeated in a grid; its field values follow as ATTRIB records. */
export const drawInsert: Drawer = (reading) => {
  const { records, content, tally } = reading;
  const rotation = records.number(50, 0) * RADIANS;
  const plane = planeOf(records, records.number(30, 0));
  if (Math.abs(records.number(210, 0)) > 1e-9 || Math.abs(records.number(220, 0)) > 1e-9) tally.note('tilted');
  const placed = multiply(plane, multiply(shiftBy(records.number(10, 0), records.number(20, 0)), turnBy(rotation)));
  const matrix = multiply(placed, scaleBy(records.number(41, 1), records.number(42, 1)));
  const columns = Math.max(1, records.whole(70, 1));
  const rows = Math.max(1, records.whole(71, 1));
  const acrossStep = records.number(44, 0);
  const upStep = records.number(45, 0);
  content.placed.push({
    block: records.text(2).trim(),
    layer: layerOf(reading),
    colour: colourOf(reading),
    matrix,
    grid:
      columns * rows === 1
        ? ONCE
        : {
            columns,
            rows,
            stepColumn: [placed[0] * acrossStep, placed[1] * acrossStep],
            stepRow: [placed[2] * upStep, placed[3] * upStep],
          },
  });
  while (records.upcoming === 'ATTRIB') {
    records.next();
    drawAttribute(reading);
  }
  if (records.upcoming === 'SEQEND') records.next();
};

/** DIMENSION: drawn by the block of lines that the file keeps for it. */
export const drawDimension: Drawer = (reading) => {
  const { records, content, tally } = reading;
  const block = records.text(2).trim();
  if (block === '') tally.note('dimension-without-lines');
  else content.placed.push({ block, layer: layerOf(reading), colour: colourOf(reading), matrix: IDENTITY, grid: ONCE });
};

/** A table: drawn by the block that the file keeps for it, at its corner. */
export const drawTable: Drawer = (reading) => {
  const { records, content } = reading;
  const turn = turnBy(Math.atan2(records.number(21, 0), records.number(11, 1)));
  const matrix = multiply(shiftBy(records.number(10, 0), records.number(20, 0)), turn);
  content.placed.push({ block: records.text(2).trim(), layer: layerOf(reading), colour: colourOf(reading), matrix, grid: ONCE });
};
