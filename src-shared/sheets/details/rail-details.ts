import type { Derived, DerivedNetwork } from '../../derived/derived.ts';
import type { Cylinder, Settings } from '../../model/plan.ts';
import { formatLength } from '../../units/length-text.ts';
import { formatQuantity } from '../../units/quantity-text.ts';
import { WEIGHT } from '../print-ink.ts';
import { type Detail, MOST_VARIANTS, alike, namesText, sourcesText } from './detail.ts';
import { type DetailPen, detailPen } from './detail-pen.ts';

interface Standing {
  readonly cylinder: Cylinder;
  readonly network: DerivedNetwork;
}

/** The floor, the face of the wall and the top of the cylinder on paper [mm], and the greatest height that is drawn. */
const FLOOR = 5;
const WALL = 28;
const TOP = 52;

/** Heights above the floor on paper: so many millimetres for the highest thing. */
const scaleOf = (heights_m: readonly number[]): ((z_m: number) => number) => {
  const tallest_m = Math.max(...heights_m, 0.1);
  return (z_m) => FLOOR + (z_m / tallest_m) * (TOP - FLOOR - 6);
};

function drawRail(pen: DetailPen, { cylinder, network }: Standing, lengths: Settings['lengths']): void {
  const outlet_m = network.profile?.limits.outletHeight_m?.value;
  const diameter_m = network.profile?.limits.cylinderDiameter_m?.value;
  const { railHeight_m, restraints_m, anchors } = cylinder;
  const rails = [...(railHeight_m === null ? [] : [{ z_m: railHeight_m, words: 'clamp rail' }]), ...restraints_m.map((z_m) => ({ z_m, words: 'further restraint' }))].sort((a, b) => a.z_m - b.z_m);
  const up = scaleOf([...rails.map(({ z_m }) => z_m), outlet_m ?? 1.6]);
  const top = up(outlet_m ?? 1.6);
  const width = 11;
  const left = WALL + 3;
  pen.box(4, FLOOR - 4, 80, 4, true);
  pen.box(WALL - 7, FLOOR, 7, TOP - FLOOR + 2, true);
  pen.line(WEIGHT.wide, [left, FLOOR, left, top - 5, left + 3, top - 2, left + 4, top, left + width - 4, top, left + width - 3, top - 2, left + width, top - 5, left + width, FLOOR]);
  pen.line(WEIGHT.wide, [left + width - 4, top - 1, left + width + 2, top - 1]);
  for (const { z_m } of rails) {
    pen.line(WEIGHT.heavy, [WALL, up(z_m), left + width + 1, up(z_m), left + width + 1, up(z_m) - 1.6]);
    pen.line(WEIGHT.wide, [WALL - 5, up(z_m), WALL, up(z_m)]);
  }
  let aside = left + width + 22;
  for (const { z_m, words } of rails) {
    pen.line(WEIGHT.hair, [left + width + 2, up(z_m), aside + 2, up(z_m)]);
    pen.dimension(aside, FLOOR, aside, up(z_m), formatLength(z_m, lengths));
    pen.note(left + width + 1, up(z_m) - 0.8, words, -0.5);
    aside += 9;
  }
  if (outlet_m !== undefined) {
    pen.line(WEIGHT.hair, [left + width + 3, top - 1, aside + 2, top - 1]);
    pen.dimension(aside, FLOOR, aside, top - 1, formatLength(outlet_m, lengths));
    pen.note(left + width + 2, top - 1, 'valve outlet', 0.4);
  }
  if (railHeight_m !== null && anchors) pen.note(WALL - 7, up(railHeight_m), `${anchors.count} anchors`, Math.PI);
  if (diameter_m !== undefined) pen.note(left + width / 2, FLOOR + 6, `ø ${formatLength(diameter_m, lengths)}`, 0);
}

/** Rail and anchors: heights of rail, further restraints and outlet, and what holds the rail. */
export function railDetails({ networks, plan }: Derived): Detail[] {
  const { lengths } = plan.settings;
  const standing = networks.flatMap((network) => Object.values(network.network.cylinders).map((cylinder): Standing => ({ cylinder, network })));
  const keyOf = ({ cylinder: { railHeight_m, restraints_m, anchors, mounting }, network: { profile } }: Standing): string => JSON.stringify([railHeight_m, restraints_m, anchors, mounting, profile?.id]);
  return alike(standing, keyOf)
    .slice(0, MOST_VARIANTS)
    .flatMap((group): Detail[] => {
      const [first] = group;
      if (!first) return [];
      const { cylinder, network } = first;
      const { anchors, railHeight_m, mounting, restraints_m } = cylinder;
      const limits = network.profile?.limits;
      return [
        {
          title: 'Cylinder, rail and anchors',
          where: namesText(group.map((each) => each.cylinder.name)),
          draw: (view) => drawRail(detailPen(view), first, lengths),
          notes: [
            railHeight_m === null ? 'The height of the rail is not known: take it from the manual.' : '',
            mounting === 'floor' ? 'The cylinder stands on the floor; the rail holds it upright.' : '',
            restraints_m.length === 0 ? 'Only one level of restraint is drawn.' : '',
            anchors
              ? `${anchors.kind || 'Anchors'}: ${anchors.count} at the rail, each ${formatQuantity(anchors.tension_N, 'force', lengths)} pull and ${formatQuantity(anchors.shear_N, 'force', lengths)} shear, ${formatLength(anchors.edge_m, lengths)} from the nearest edge (at least ${formatLength(anchors.leastEdge_m, lengths)}).`
              : 'The anchors are not chosen yet.',
            limits?.filledMass_kg ? `A filled cylinder weighs ${formatQuantity(limits.filledMass_kg.value, 'mass', lengths)}.` : '',
          ].filter(Boolean),
          source: sourcesText([limits?.railHeight_m?.source, limits?.outletHeight_m?.source, 'anchor figures as entered from their maker']),
          caution: 'Wall and anchors are for a structural engineer. Look for services in the wall before drilling. Keep the cap on until the cylinder is strapped at both levels.',
        },
      ];
    });
}
