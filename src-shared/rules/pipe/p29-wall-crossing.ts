import type { DerivedNetwork, DerivedPipe } from '../../derived/derived.ts';
import { type CrossedFace, type Crossing, crossingsOf } from '../../derived/wall-crossings.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../../geometry/tolerance.ts';
import type { Level, Opening } from '../../model/plan.ts';
import { thingName } from '../../model/thing-name.ts';
import { SLEEVE_CLEARANCE_m, sleeveFor_m } from '../../profile/sleeve-size.ts';
import type { Cure, Finding } from '../finding.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { perNetwork } from '../subjects.ts';

interface Drawn {
  readonly face: CrossedFace;
  readonly opening: Opening;
}

/** One crossing with the penetration drawn there; a network without any crossing is asked once. */
interface Asked {
  readonly network: DerivedNetwork;
  readonly crossing: Crossing | undefined;
  readonly drawn: Drawn | undefined;
  /** The wall or slab in the middle of a sentence. */
  readonly what: string;
}

const throughOf = ({ outside_m, pipe }: DerivedPipe): number => outside_m + 2 * pipe.insulation_m;

/** The penetration in one of the faces of a wall that the axis of the pipe goes through. */
function drawnAt({ at, through }: Crossing): Drawn | undefined {
  if (through.kind !== 'wall') return undefined;
  for (const face of through.faces) {
    const opening = Object.values(face.enclosure.openings).find(
      ({ kind, wall, along_m, width_m, bottom_m, height_m }) =>
        kind === 'penetration' && wall === face.wall.id && Math.abs(along_m - face.along_m) <= width_m / 2 + SAME_PLACE_m && at.z >= bottom_m - SAME_PLACE_m && at.z <= bottom_m + height_m + SAME_PLACE_m,
    );
    if (opening) return { face, opening };
  }
  return undefined;
}

function nameOf(level: Level, { through }: Crossing): string {
  if (through.kind === 'slab') return `the ${through.side === 'floor' ? 'floor' : 'ceiling'} of ${through.enclosure.name}`;
  const [first, ...others] = through.faces.map(({ wall }) => thingName({ levels: { [level.id]: level }, networks: {} }, wall).replace(/^W/, 'w'));
  return [first, ...others].join(' and ');
}

/** Every crossing under a name of its own: by its opening where one is drawn, else by pipe and wall. */
function askedOf(network: DerivedNetwork): { subject: Asked; ref: Finding['subject']; name: string }[] {
  const crossings = crossingsOf(network);
  if (crossings.length === 0) return [{ subject: { network, crossing: undefined, drawn: undefined, what: '' }, ref: network.ref, name: network.network.name }];
  const taken = new Map<string, number>();
  return crossings.map((crossing) => {
    const drawn = drawnAt(crossing);
    const what = nameOf(network.level, crossing);
    const plain = drawn ? `${drawn.opening.name}, ${crossing.pipe.pipe.size} in pipe` : `${crossing.pipe.pipe.size} in pipe through ${what}`;
    const count = (taken.get(plain) ?? 0) + 1;
    taken.set(plain, count);
    const ref = drawn ? ({ kind: 'opening', level: network.level.id, enclosure: drawn.face.wall.enclosure, id: drawn.opening.id } as const) : crossing.pipe.ref;
    return { subject: { network, crossing, drawn, what }, ref, name: count === 1 ? plain : `${plain}, place ${count}` };
  });
}

/**
 * P29: wherever pipe goes through a wall, a penetration is drawn with its sleeve, the rating of the wall and what seals it.
 * Measure: inside of the sleeve [m]. Limit: outside of the pipe with its insulation and 1/4 in, common practice.
 * A raised floor and a ceiling that hangs are no rated construction and are not asked.
 * Not checked: pipe goes through a slab, where no penetration can be drawn.
 */
export const p29WallCrossing = defineRule<Asked>({
  id: 'P29',
  title: 'Wall and floor crossing',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'a penetration at every place where pipe goes through a wall: inside of sleeve ≥ outside of pipe with insulation + 1/4 in (6 mm), rating and fire-stop system said',
    source: 'common practice; which rating and system, the building code and the listing of the system decide',
    caution: 'A hole left open or sealed with anything but a listed system spoils the fire resistance of the wall and lets the agent out.',
  },
  subjects: perNetwork((network) => (network.pipes.length > 0 ? askedOf(network) : [])),
  check({ network, crossing, drawn, what }, { say }) {
    if (!crossing) return { kind: 'judged', isKept: true, text: 'Its pipe goes through no wall and no slab.' };
    const { pipe, at, through } = crossing;
    const place = { level: network.level.id, at: [at], heights: [at] };
    const needed_m = throughOf(pipe) + SLEEVE_CLEARANCE_m;
    const sleeve_m = sleeveFor_m(pipe.pipe.size, pipe.pipe.insulation_m);
    if (through.kind === 'slab') return notChecked(`it goes through ${what}, and a hole in a slab cannot be drawn here. Show its sleeve, rating and seal on a detail.`, place);
    const [face] = through.faces;
    if (!drawn) {
      const cure: Cure = face
        ? { kind: 'add-penetration', text: 'Draw the penetration with its sleeve', wall: face.wall, along_m: face.along_m, middle_m: at.z, sleeve_m }
        : { kind: 'advice', text: 'Draw the penetration.' };
      return { kind: 'judged', isKept: false, limit: needed_m, limitSource: 'common practice', text: `Goes through ${what}, where no penetration is drawn: nothing says its sleeve, the rating of the wall and what seals it. Draw it.`, place, cure };
    }
    const { crossing: made, name } = drawn.opening;
    const sleeve = made?.sleeve_m ?? null;
    const missing = [sleeve === null && 'its sleeve', !made?.rating.trim() && 'the rating of the wall', !made?.seal.trim() && 'what seals it'].filter((each) => each !== false);
    const set: Cure = { kind: 'set-sleeve', text: `Take a sleeve of ${say.length(sleeve_m)} inside`, opening: { kind: 'opening', level: network.level.id, enclosure: drawn.face.wall.enclosure, id: drawn.opening.id }, sleeve_m };
    const figures = sleeve === null ? undefined : atLeast(sleeve, { value: needed_m, source: 'common practice' }, LENGTH_SLACK_m);
    if (figures && !figures.isKept) {
      const { value: inside, limit: needed } = say.against(figures.measured, needed_m);
      const besides = missing.length > 0 ? ` It does not say ${missing.join(', nor ')} either.` : '';
      return { ...figures, text: `The sleeve in ${what} is ${inside} inside; ${pipe.pipe.size} in pipe needs ${needed}.${besides} Choose a larger one.`, place, cure: set };
    }
    if (missing.length > 0) {
      return { kind: 'judged', isKept: false, measured: sleeve ?? undefined, limit: needed_m, limitSource: 'common practice', text: `In ${what}, “${name}” does not say ${missing.join(', nor ')}. Enter it with the opening.`, place, cure: sleeve === null ? set : undefined };
    }
    return { ...figures, kind: 'judged', isKept: true, text: `Goes through ${what} in a sleeve of ${say.length(sleeve ?? 0)}; wall ${made?.rating ?? ''}, sealed with ${made?.seal ?? ''}.`, place };
  },
});
