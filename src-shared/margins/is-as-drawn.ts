import type { Region } from '../derived/polygon-sums.ts';
import { isInside } from '../geometry/outline.ts';
import type { Site } from './site.ts';

/** Whether a region holds the drawn place, so that its rule warns there already and a move brings nothing new. */
export const isAsDrawn = ({ at }: Pick<Site, 'at'>, region: Region): boolean => region.some((ring) => isInside(at, ring));
