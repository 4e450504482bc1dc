import { pipeZoneOf } from '../../derived/pipe-zone.ts';
import type { Derived } from '../../derived/derived.ts';
import { type Crossing, crossingsOf } from '../../derived/wall-crossings.ts';
import type { Enclosure, Opening } from '../../model/plan.ts';
import { formatLength } from '../../units/length-text.ts';
import { formatQuantity } from '../../units/quantity-text.ts';
import { PRINT, WEIGHT } from '../print-ink.ts';
import { sizeText } from '../sheet-text.ts';
import { arrowHead } from '../symbols.ts';
import type { ViewDraft } from '../view-draft.ts';
import { type Detail, MOST_VARIANTS, alike, namesText } from './detail.ts';
import { detailPen } from './detail-pen.ts';

const enclosuresOf = ({ plan }: Derived): Enclosure[] => Object.values(plan.levels).flatMap(({ enclosures }) => Object.values(enclosures));

const LEADS: Readonly<Record<Opening['leadsTo'], string>> = {
  unknown: 'where it leads is not known',
  outdoors: 'leads outdoors',
  corridor: 'leads into a corridor',
  room: 'leads into another room',
  exit: 'leads into an exit way',
};

function drawCrossing(view: ViewDraft, zone: 'high' | 'low', words: { readonly sleeve: string; readonly pipe: string; readonly seal: string; readonly rating: string }): void {
  const pen = detailPen(view);
  pen.box(36, 36, 14, 18, true);
  pen.box(36, 4, 14, 18, true);
  pen.line(WEIGHT.wide, [34, 36, 52, 36]);
  pen.line(WEIGHT.wide, [34, 22, 52, 22]);
  pen.pipe(zone, [6, 31.5, 80, 31.5]);
  pen.pipe(zone, [6, 26.5, 80, 26.5]);
  pen.line(WEIGHT.hair, [4, 29, 82, 29], [4, 1, 0.6, 1]);
  pen.note(35, 34, words.seal, Math.PI * 0.8);
  pen.note(51, 36, words.sleeve, 0.7);
  pen.note(72, 26.5, words.pipe, -0.9);
  pen.note(43, 12, words.rating, 0);
}

/** Crossings of walls and slabs: sleeve, seal and fire rating; none while no pipe goes through. */
function crossingDetails(derived: Derived): Detail[] {
  const { lengths } = derived.plan.settings;
  const drawn = derived.networks.flatMap((network) => crossingsOf(network).map((crossing) => ({ network, crossing, opening: openingAt(crossing) })));
  const keyOf = ({ crossing, opening }: (typeof drawn)[number]): string => JSON.stringify([crossing.pipe.pipe.size, crossing.pipe.pipe.insulation_m, opening?.crossing, crossing.through.kind]);
  return alike(drawn, keyOf)
    .slice(0, MOST_VARIANTS)
    .flatMap((group): Detail[] => {
      const [first] = group;
      if (!first) return [];
      const { crossing, opening, network } = first;
      const known = opening?.crossing;
      const names = group.map((each) => each.opening?.name ?? (each.crossing.through.kind === 'wall' ? `wall of ${each.crossing.through.faces[0]?.enclosure.name ?? ''}` : `${each.crossing.through.side} of ${each.crossing.through.enclosure.name}`));
      return [
        {
          title: crossing.through.kind === 'wall' ? 'Pipe through a wall' : 'Pipe through a slab',
          where: namesText([...new Set(names)]),
          draw: (view) =>
            drawCrossing(view, pipeZoneOf(network.network), {
              sleeve: known?.sleeve_m ? `sleeve, ${formatLength(known.sleeve_m, lengths)} inside` : 'sleeve: not known',
              pipe: `pipe ${sizeText(crossing.pipe.pipe.size, lengths)}`,
              seal: known?.seal ? `seal ${known.seal}` : 'seal: not chosen',
              rating: known?.rating ? `rated ${known.rating}` : 'rating: not known',
            }),
          notes: [known ? 'The seal is built as its listing shows it, for this pipe and this wall.' : 'How it is made good is not entered yet: nothing here is chosen.', 'Seal both sides gas-tight: the room must hold the agent.'],
          source: 'listing of the fire-stop system; figures as entered in the plan',
          caution: 'Ask before cutting a rated wall or any slab: steel, services and rating are for the engineer and the authority.',
        },
      ];
    });
}

/** The penetration drawn where a pipe goes through a wall. */
function openingAt({ at, through }: Crossing): Opening | undefined {
  if (through.kind !== 'wall') return undefined;
  for (const { wall, enclosure, along_m } of through.faces) {
    const found = Object.values(enclosure.openings).find((each) => each.kind === 'penetration' && each.wall === wall.id && Math.abs(each.along_m - along_m) <= each.width_m / 2 + 1e-3 && at.z >= each.bottom_m - 1e-3 && at.z <= each.bottom_m + each.height_m + 1e-3);
    if (found) return found;
  }
  return undefined;
}

function drawVent(view: ViewDraft, vent: Opening, lengths: 'feet' | 'metric'): void {
  const pen = detailPen(view);
  pen.box(36, 44, 9, 12, true);
  pen.box(36, 6, 9, 18, true);
  pen.box(4, 2, 80, 4, true);
  pen.line(WEIGHT.wide, [36, 44, 45, 44]);
  pen.line(WEIGHT.wide, [36, 24, 45, 24]);
  for (let i = 0; i < 4; i += 1) pen.line(WEIGHT.medium, [37, 26 + i * 4.6, 44, 28.6 + i * 4.6]);
  for (const y of [29, 34, 39]) {
    pen.line(WEIGHT.thin, [47, y, 62, y]);
    view.lines.push(arrowHead(...pen.at(63, y), 0, 2.4 * pen.factor, PRINT.ink));
  }
  pen.dimension(28, 24, 28, 44, formatLength(vent.height_m, lengths));
  pen.dimension(20, 6, 20, 24, formatLength(vent.bottom_m, lengths));
  pen.line(WEIGHT.hair, [18, 24, 36, 24]);
  pen.line(WEIGHT.hair, [26, 44, 36, 44]);
  pen.note(63, 34, LEADS[vent.leadsTo], -0.2);
  pen.note(10, 46, 'protected room', Math.PI / 2);
}

/** Relief vents: size, height, free area, and where they lead. */
function ventDetails(derived: Derived): Detail[] {
  const { lengths } = derived.plan.settings;
  const vents = enclosuresOf(derived).flatMap((enclosure) => Object.values(enclosure.openings).flatMap((vent) => (vent.kind === 'relief-vent' ? [{ enclosure, vent }] : [])));
  const keyOf = ({ vent }: (typeof vents)[number]): string => [formatLength(vent.width_m, lengths), formatLength(vent.height_m, lengths), formatLength(vent.bottom_m, lengths), vent.leadsTo, vent.freeArea_m2].join('|');
  return alike(vents, keyOf)
    .slice(0, MOST_VARIANTS)
    .flatMap((group): Detail[] => {
      const [first] = group;
      if (!first) return [];
      const { vent } = first;
      return [
        {
          title: 'Relief vent',
          where: namesText(group.map((each) => `${each.vent.name || 'vent'} of ${each.enclosure.name}`)),
          draw: (view) => drawVent(view, vent, lengths),
          notes: [
            `Opening ${formatLength(vent.width_m, lengths)} wide, ${formatLength(vent.height_m, lengths)} high, its lower edge ${formatLength(vent.bottom_m, lengths)} above the finished floor.`,
            vent.freeArea_m2 === null ? 'Its free area is not known.' : `Free area ${formatQuantity(vent.freeArea_m2, 'area', lengths)}, open.`,
            'It opens by the pressure of the discharge and closes by itself, so that the room holds the agent.',
          ],
          source: 'relief vent sum of this plan; figures as entered',
          caution: 'Never into an exit way or another protected room. Keep the way outdoors free, and people and their eyes clear of its blades.',
        },
      ];
    });
}

/** Details of what goes through the walls of a protected room: pipe and relief vents. */
export const openingDetails = (derived: Derived): Detail[] => [...crossingDetails(derived), ...ventDetails(derived)];
