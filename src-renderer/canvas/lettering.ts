import type { Pen, Px } from './pen.ts';

/** The font that ships with the program; its digits all have one width. */
export const BOARD_FONT = 'Board Sans';
/** Least size of any text on the screen [px]. */
const LEAST_TEXT_px = 12;

export interface Lettering {
  readonly size?: number;
  readonly bold?: boolean;
}

/** CSS font of a text on the board. */
const fontOf = ({ size = LEAST_TEXT_px, bold = false }: Lettering = {}): string =>
  `${bold ? '700 ' : ''}${size}px "${BOARD_FONT}", sans-serif`;

/** Height of a line of text [px]. */
export const lineHeight_px = ({ size = LEAST_TEXT_px }: Lettering = {}): number => Math.ceil(size * 1.2);

/** Width of a text [px]. */
export function textWidth_px(pen: Pen, text: string, lettering: Lettering = {}): number {
  pen.font = fontOf(lettering);
  return pen.measureText(text).width;
}

export interface TextStyle extends Lettering {
  readonly colour: string;
  readonly align?: CanvasTextAlign;
  readonly baseline?: CanvasTextBaseline;
  /** Ground colour painted around the letters so that lines do not run through them. */
  readonly halo?: string;
}

/** Writes one line of text. */
export function write(pen: Pen, text: string, at: Px, { colour, align = 'left', baseline = 'middle', halo, ...lettering }: TextStyle): void {
  pen.font = fontOf(lettering);
  pen.textAlign = align;
  pen.textBaseline = baseline;
  if (halo) {
    pen.setLineDash([]);
    pen.lineJoin = 'round';
    pen.lineWidth = 4;
    pen.strokeStyle = halo;
    pen.strokeText(text, at.x, at.y);
  }
  pen.fillStyle = colour;
  pen.fillText(text, at.x, at.y);
}

/** Writes one line of text along a direction, turned so that it is never upside down. */
export function writeAlong(pen: Pen, text: string, at: Px, heading_rad: number, style: TextStyle): void {
  pen.save();
  pen.translate(at.x, at.y);
  pen.rotate(-readable_rad(heading_rad));
  write(pen, text, { x: 0, y: 0 }, { align: 'center', ...style });
  pen.restore();
}

/** The same line of writing, turned by half a turn where it would stand on its head [rad]; in (−π/2, π/2]. */
export function readable_rad(heading_rad: number): number {
  const turned = Math.atan2(Math.sin(heading_rad), Math.cos(heading_rad));
  if (turned > Math.PI / 2 + 1e-6) return turned - Math.PI;
  if (turned <= -Math.PI / 2 + 1e-6) return turned + Math.PI;
  return turned;
}

/** Breaks a text into lines that are at most so wide [px]; line ends in the text are kept. */
export function wrapped(pen: Pen, text: string, width_px: number, lettering: Lettering = {}): string[] {
  return text.split('\n').flatMap((paragraph) => {
    const lines: string[] = [];
    let current = '';
    for (const word of paragraph.split(' ')) {
      const longer = current ? `${current} ${word}` : word;
      if (current && textWidth_px(pen, longer, lettering) > width_px) {
        lines.push(current);
        current = word;
      } else current = longer;
    }
    return [...lines, current];
  });
}

/** Asks the browser for the shipped font and calls back when texts can be drawn with it. */
export function whenLettersReady(ready: () => void): () => void {
  let wanted = true;
  const fonts = [fontOf(), fontOf({ bold: true })].map((font) => document.fonts.load(font));
  void Promise.allSettled(fonts).then(() => wanted && ready());
  return () => {
    wanted = false;
  };
}
