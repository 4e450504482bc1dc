/** One call on a pen, with what was set when it was made. */
export interface PenCall {
  readonly name: string;
  readonly args: readonly unknown[];
  readonly stroke: string;
  readonly fill: string;
  readonly width: number;
  readonly dash: readonly number[];
}

/** A pen that writes down what is drawn with it, instead of drawing. Texts are six pixels a letter. */
export function recordingPen(): { readonly pen: CanvasRenderingContext2D; readonly calls: PenCall[] } {
  const calls: PenCall[] = [];
  const set: Record<string, unknown> = { strokeStyle: '', fillStyle: '', lineWidth: 1, globalAlpha: 1 };
  let dash: readonly number[] = [];
  const pen = new Proxy(set, {
    get(target, name) {
      const key = String(name);
      if (key in target) return target[key];
      if (key === 'measureText') return (text: string) => ({ width: text.length * 6 });
      return (...args: unknown[]) => {
        if (key === 'setLineDash') dash = args[0] as readonly number[];
        calls.push({ name: key, args, stroke: String(target.strokeStyle), fill: String(target.fillStyle), width: Number(target.lineWidth), dash });
      };
    },
    set(target, name, value) {
      target[String(name)] = value;
      return true;
    },
  });
  return { pen: pen as unknown as CanvasRenderingContext2D, calls };
}

/** Calls of one kind. */
export const named = (calls: readonly PenCall[], name: string): PenCall[] => calls.filter((call) => call.name === name);

/** Straight pieces drawn, as [x1, y1, x2, y2]. */
export function drawnPieces(calls: readonly PenCall[]): number[][] {
  const pieces: number[][] = [];
  let at: readonly number[] = [];
  for (const { name, args } of calls) {
    if (name !== 'moveTo' && name !== 'lineTo') continue;
    const [x, y] = args as number[];
    if (x === undefined || y === undefined) continue;
    if (name === 'lineTo' && at.length === 2) pieces.push([...at, x, y]);
    at = [x, y];
  }
  return pieces;
}

/** Texts written. */
export const texts = (calls: readonly PenCall[]): string[] => named(calls, 'fillText').map(({ args }) => String(args[0]));
