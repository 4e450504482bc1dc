import type { FloorDrawing } from './floor-drawing.ts';

const METRES_PER_INCH = 0.0254;
const LAYER_COLOURS: Readonly<Record<string, number>> = { WALLS: 7, DOORS: 3, BEAMS: 8, FURNITURE: 9, TEXT: 2 };

/** Writes a floor drawing as ASCII DXF (R2000 tags, LWPOLYLINE and TEXT) in inches, one DXF layer a layer. */
export function drawDxf(drawing: FloorDrawing): Uint8Array {
  const tags: (string | number)[] = [];
  const tag = (...pairs: (string | number)[]): void => {
    tags.push(...pairs);
  };
  const inches = (length_m: number): string => (length_m / METRES_PER_INCH).toFixed(6);
  const layers = [...new Set([...Object.keys(drawing.layers), 'TEXT'])];

  tag(0, 'SECTION', 2, 'HEADER', 9, '$ACADVER', 1, 'AC1015', 9, '$DWGCODEPAGE', 3, 'ANSI_1252', 9, '$INSUNITS', 70, 1);
  tag(9, '$EXTMIN', 10, '0.0', 20, '0.0', 30, '0.0');
  tag(9, '$EXTMAX', 10, inches(drawing.width_m), 20, inches(drawing.depth_m), 30, '0.0', 0, 'ENDSEC');
  tag(0, 'SECTION', 2, 'TABLES', 0, 'TABLE', 2, 'LAYER', 70, layers.length);
  for (const layer of layers) tag(0, 'LAYER', 2, layer, 70, 0, 62, LAYER_COLOURS[layer] ?? 7, 6, 'CONTINUOUS');
  tag(0, 'ENDTAB', 0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES');
  for (const [layer, lines] of Object.entries(drawing.layers)) {
    for (const { places, closed } of lines) {
      tag(0, 'LWPOLYLINE', 8, layer, 90, places.length, 70, closed ? 1 : 0);
      for (const [x, y] of places) tag(10, inches(x), 20, inches(y));
    }
  }
  for (const { x, y, height_m, text } of drawing.words) {
    tag(0, 'TEXT', 8, 'TEXT', 10, inches(x), 20, inches(y), 30, '0.0', 40, inches(height_m), 1, text);
  }
  tag(0, 'ENDSEC', 0, 'EOF');

  let out = '';
  for (let i = 0; i < tags.length; i += 2) out += `${String(tags[i]).padStart(3)}\r\n${tags[i + 1]}\r\n`;
  return Buffer.from(out, 'latin1');
}
