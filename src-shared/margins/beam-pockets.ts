import { makesPocket } from '../derived/pocket-jets.ts';
import { type Region, differenceOf, fillOf } from '../derived/polygon-sums.ts';
import { isThere } from '../derived/solids.ts';
import { sidesOf } from '../geometry/outline.ts';
import { type Forbidden, type Site, acrossOf_m } from './site.ts';
import { isAsDrawn } from './is-as-drawn.ts';
import { upstreamBehind, upstreamOf } from './upstream.ts';

/**
 * N14: the places from which a hole, as it points now, first meets a beam or another thing that hangs below the orifice. In a
 * void, where no free jet is asked, only from its free jet on. Not asked where the rule warns as it is drawn.
 */
export function beamPockets(site: Site): Forbidden {
  const { space, nozzle, at, limits } = site;
  if (space.kind === 'under-floor') return { rule: 'N14', region: [] };
  const cut = space.solids.filter((solid) => isThere(solid) && solid.bottom_m < at.z && at.z < solid.top_m);
  const pockets = cut.filter((solid) => makesPocket(nozzle, solid));
  const others = cut.filter((solid) => !pockets.includes(solid));
  const screens = [...space.walls.map(({ segment }) => segment), ...others.flatMap(({ footprint }) => sidesOf(footprint))];
  const reach_m = acrossOf_m(space);
  const from_m = space.kind === 'room' ? 0 : limits.freeJet_m;
  const region = nozzle.holes_rad.flatMap((hole_rad) =>
    pockets.flatMap(({ footprint }) =>
      sidesOf(footprint).flatMap((face): Region => {
        const ring = upstreamOf(face, hole_rad, from_m, reach_m);
        if (ring.length < 3) return [];
        const behind = screens.map((screen) => upstreamBehind(screen, face, hole_rad, reach_m)).filter((each) => each !== undefined);
        return differenceOf(fillOf([ring]), behind.map((each) => fillOf([each])));
      }),
    ),
  );
  return { rule: 'N14', region: isAsDrawn(site, region) ? [] : region };
}
