import { type Isometric, middleRun_m } from '#shared/isometric/layout-isometric';

/** What is worth drawing at a scale: a mark that would be smaller than its meaning is left out. */
export interface IsometricDetail {
  readonly fittings: boolean;
  readonly arrows: boolean;
  /** Numbers of the nodes. */
  readonly numbers: boolean;
  /** Size and length beside the pipe. */
  readonly lengths: boolean;
  /** Fittings and heights in words. */
  readonly words: boolean;
  /** Hoses and adapters of the discharge assembly as signs. */
  readonly assembly: boolean;
}

/**
 * What to draw at a scale.
 * @param scale_px_m pixels for a metre of the drawing, > 0
 */
export function isometricDetail(scale_px_m: number, iso: Pick<Isometric, 'runs'>): IsometricDetail {
  const middle_px = middleRun_m(iso) * scale_px_m;
  return { fittings: middle_px >= 16, arrows: middle_px >= 22, numbers: middle_px >= 16, lengths: middle_px >= 18, words: middle_px >= 60, assembly: middle_px >= 30 };
}
