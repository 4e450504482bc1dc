import { guessTextWidth, transformedText } from '../line-work.ts';
import { type Drawer, type Reading, planeOf, workOf } from './reading.ts';
import { plainLine, plainParagraph } from './text-codes.ts';

const RADIANS = Math.PI / 180;
/** Space from baseline to baseline, in text heights, at single spacing. */
const LINE_PITCH = 5 / 3;

const LEFT = 0;
const CENTRE = 1;
const RIGHT = 2;
const ALIGNED = 3;
const MIDDLE = 4;
const FITTED = 5;

/** A single line of text; `upAcross` is the code of its vertical placing. */
function drawLineOfText(reading: Reading, upAcross: number): void {
  const { records, decode } = reading;
  const text = plainLine(records.text(1), decode);
  const height = Math.abs(records.number(40, 0));
  const across = records.whole(72, LEFT);
  const up = records.whole(upAcross, 0);
  const rotation = records.number(50, 0) * RADIANS;
  let x = records.number(10, 0);
  let y = records.number(20, 0);
  const placedX = records.number(11, x);
  const placedY = records.number(21, y);
  const isFirstPlaceKnown = (x !== 0 || y !== 0) && (x !== placedX || y !== placedY);
  // The first place is the start of the baseline, when the writer worked it out.
  if ((across !== LEFT || up !== 0) && across !== ALIGNED && across !== FITTED && !isFirstPlaceKnown) {
    const width = guessTextWidth(text, height) * records.number(41, 1);
    const back = across === CENTRE || across === MIDDLE ? width / 2 : across === RIGHT ? width : 0;
    const down = up === 3 ? height : up === 2 || across === MIDDLE ? height / 2 : 0;
    x = placedX - back * Math.cos(rotation) + down * Math.sin(rotation);
    y = placedY - back * Math.sin(rotation) - down * Math.cos(rotation);
  }
  const moved = transformedText(planeOf(records, records.number(30, 0)), { x, y, height, rotation_rad: rotation, text });
  workOf(reading).text(moved.x, moved.y, moved.height, moved.rotation_rad, moved.text);
}

/** TEXT */
export const drawText: Drawer = (reading) => drawLineOfText(reading, 73);

const INVISIBLE = 1;

/** ATTRIB: the value of a symbol's field, placed by its own coordinates. */
export const drawAttribute: Drawer = (reading) => {
  if ((reading.records.whole(70, 0) & INVISIBLE) === 0) drawLineOfText(reading, 74);
};

/** Breaks a line at spaces where it is wider than the column, by guessed widths. */
export function wrapped(line: string, height: number, column: number): string[] {
  if (!(column > 0) || guessTextWidth(line, height) <= column * 1.1) return [line];
  const rows: string[] = [];
  let row = '';
  for (const word of line.split(' ')) {
    const longer = row === '' ? word : `${row} ${word}`;
    if (row !== '' && guessTextWidth(longer, height) > column * 1.1) {
      rows.push(row);
      row = word;
    } else row = longer;
  }
  rows.push(row);
  return rows;
}

/** MTEXT: a paragraph, row by row; its attachment numbers 1 … 9 run from top left to bottom right. */
export const drawParagraph: Drawer = (reading) => {
  const { records, decode } = reading;
  let source = '';
  for (let i = 0; i < records.count; i += 1) {
    const code = records.codeAt(i);
    if (code === 1 || code === 3) source += records.textAt(i);
  }
  const height = Math.abs(records.number(40, 0));
  const column = records.number(41, 0);
  const rows = plainParagraph(source, decode).flatMap((line) => wrapped(line.trimEnd(), height, column));
  const attachment = Math.min(9, Math.max(1, records.whole(71, 1))) - 1;
  const pitch = LINE_PITCH * height * records.number(44, 1);
  const total = height + pitch * (rows.length - 1);
  const rotation =
    records.indexOf(11) > records.indexOf(50)
      ? Math.atan2(records.number(21, 0), records.number(11, 1))
      : records.number(50, 0) * RADIANS;
  const work = workOf(reading);
  const above = (Math.floor(attachment / 3) * total) / 2;
  rows.forEach((row, i) => {
    const back = ((attachment % 3) * guessTextWidth(row, height)) / 2;
    const up = above - height - pitch * i;
    work.text(
      records.number(10, 0) - back * Math.cos(rotation) - up * Math.sin(rotation),
      records.number(20, 0) - back * Math.sin(rotation) + up * Math.cos(rotation),
      height,
      rotation,
      row,
    );
  });
};
