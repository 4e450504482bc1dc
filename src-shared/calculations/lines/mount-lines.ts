import type { Cylinder, Network } from '../../model/plan.ts';
import { thingName } from '../../model/thing-name.ts';
import type { MountSums, NetworkDesign } from '../design/design.ts';
import { anchorPullBasis, anchorShearBasis, wallLoadBasis } from '../formulas/wall-load.ts';
import { CHOSEN, type Draft, type LineContext, PLAN } from './draft.ts';
import { amount, amountsApart, counted, figure } from './line-text.ts';
import { limitSource } from './profile-source.ts';

/** What filled cylinders put on their wall and anchors. */
export function mountLines(draft: Draft, context: LineContext, { ref, network, profile }: NetworkDesign, mounts: readonly MountSums[]): void {
  const { lengths, levels } = context;
  const [first] = mounts;
  const filled = profile?.limits.filledMass_kg;
  if (!first || !filled) return;
  draft.given('Filled cylinder, m', amount(filled.value, 'mass', lengths), limitSource(context, ref.id, 'filledMass_kg'));
  draft.given('Load factor, k', figure(first.factor), CHOSEN);
  draft.main('Load of each cylinder on its rail, W', wallLoadBasis, `${figure(filled.value)}·9.80665·${figure(first.factor)}`, amount(first.load_N, 'force', lengths));
  for (const { names, mount, drawn } of alike(mounts, network)) {
    const { wall, isLoadBearing, capacity_N, load_N, anchor } = mount;
    if (!wall) {
      draft.lacks(`wall of ${names}`, 'no wall stands near behind it');
      continue;
    }
    const apart = capacity_N === null ? undefined : amountsApart(load_N, capacity_N, 'force', lengths);
    const bearing = isLoadBearing === null ? 'whether it bears load is not known' : isLoadBearing ? 'declared to bear load' : 'NOT load-bearing';
    const bears = apart ? `bears ${apart.limit}${load_N > (capacity_N ?? 0) * (1 + 1e-9) ? ': too little' : ''}` : 'what it bears is not declared';
    draft.given(`${names}: ${thingName({ levels, networks: {} }, wall)}`, `${bearing}; ${bears}`, PLAN);
    if (!anchor || !drawn?.anchors || drawn.railHeight_m === null) {
      draft.lacks(`anchors of ${names}`, 'they or the height of the rail are not entered');
      continue;
    }
    const { count, shear_N, tension_N } = drawn.anchors;
    const standOff_m = (anchor.tension_N * drawn.railHeight_m * count) / load_N;
    const shear = amountsApart(anchor.shear_N, shear_N, 'force', lengths);
    const pull = amountsApart(anchor.tension_N, tension_N, 'force', lengths);
    draft.step(`${names}: shear of each of ${counted(count, 'anchor')}`, anchorShearBasis, `${figure(load_N)}/${count}`, `${shear.value}; allowed ${shear.limit}${anchor.shear_N > shear_N * (1 + 1e-9) ? ': too much' : ''}`);
    draft.step(`${names}: pull of each anchor`, anchorPullBasis, `${figure(load_N)}·${figure(standOff_m)}/(${figure(drawn.railHeight_m)}·${count})`, `${pull.value}; allowed ${pull.limit}${anchor.tension_N > tension_N * (1 + 1e-9) ? ': too much' : ''}`);
  }
}

/** Cylinders that hang alike on one wall, with their names together. */
function alike(mounts: readonly MountSums[], { cylinders }: Network): { readonly names: string; readonly mount: MountSums; readonly drawn: Cylinder | undefined }[] {
  const groups = new Map<string, { names: string[]; mount: MountSums; drawn: Cylinder | undefined }>();
  for (const mount of mounts) {
    const { ref, name, ...same } = mount;
    const drawn = cylinders[ref.id];
    const pull = same.anchor && { shear: figure(same.anchor.shear_N), tension: figure(same.anchor.tension_N) };
    const key = JSON.stringify([{ ...same, anchor: pull }, drawn?.anchors, drawn?.railHeight_m]);
    const group = groups.get(key);
    if (group) group.names.push(name);
    else groups.set(key, { names: [name], mount, drawn });
  }
  return [...groups.values()].map(({ names, ...group }) => ({ ...group, names: names.join(', ') }));
}
