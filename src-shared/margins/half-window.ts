import type { Region } from '../derived/polygon-sums.ts';
import { type HalfPlane, clipToHalfPlane } from '../geometry/half-plane.ts';
import { type Site, windowOf } from './site.ts';

/** The part of what is looked at that lies in a half-plane, as a region. */
export const halfWindow = (site: Pick<Site, 'space'>, half: HalfPlane): Region => windowOf(site).map((ring) => clipToHalfPlane(ring, half)).filter((ring) => ring.length > 0);
