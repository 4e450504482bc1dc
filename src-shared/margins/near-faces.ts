import { governingFaces, isFullHeight } from '../derived/clearance-faces.ts';
import { fillOf } from '../derived/polygon-sums.ts';
import { ringAroundSegment } from '../geometry/round-rings.ts';
import { type Forbidden, HAIR_m, type Site } from './site.ts';

/** N1: everything nearer to a wall or to a thing as high as the space than the limit, and the inside of such things. */
export const nearFaces = ({ space, at, limits }: Site): Forbidden => ({
  rule: 'N1',
  region: fillOf([
    ...governingFaces(space, at.z).map(({ segment }) => ringAroundSegment(segment, limits.nozzleToWall_m + HAIR_m)),
    ...space.solids.filter((solid) => isFullHeight(space, solid, at.z)).map(({ footprint }) => footprint),
  ]),
});
