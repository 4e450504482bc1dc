import { refKey } from '#shared/model/plan';
import { formatAgainstLimit, formatLength } from '#shared/units/length-text';
import type { Verdict } from '#shared/rules/finding';
import { OBSTRUCTION_WORDS } from '#shared/model/thing-name';
import type { Ink } from '../ink.ts';
import { cylinderDiameter_m } from './draw-cylinders.ts';
import { type LabelBox, type LabelWish, placeLabels } from './label-placer.ts';
import type { Px } from './pen.ts';
import type { SectionCut } from './section-cut.ts';
import type { SectionCylinder, SectionNozzle } from './section-things.ts';
import { ceilingDrop_m } from './live-distances.ts';
import { HEIGHTS_WIDTH_px, type SectionView, sectionPx } from './section-view.ts';

/** A text of the section with the place found for it. */
export interface SectionText {
  readonly text: string;
  readonly colour: string;
  readonly bold: boolean;
  /** Mark before it. */
  readonly verdict: Verdict | null;
  readonly box: LabelBox;
}

interface TextContext {
  readonly view: SectionView;
  readonly ink: Ink;
  readonly lengths: 'feet' | 'metric';
  readonly selection: ReadonlySet<string>;
  readonly measure: (text: string, bold: boolean) => number;
}

type Wanted = Omit<SectionText, 'box'> & Pick<LabelWish, 'key' | 'spots' | 'must' | 'width' | 'height'>;

const HEIGHT_px = 16;
const MARK_px = 17;
/** With more nozzles than this only those that are selected or at fault are written out. */
const MOST_WRITTEN_OUT = 2;
/** With more devices than this only their names are written. */
const MOST_NAMED = 4;

/** How a nozzle hangs: kept, at fault, or undefined while the ceiling or the limit is not known. */
export function isDropKept({ nozzle }: SectionNozzle): boolean | undefined {
  const drop_m = ceilingDrop_m(nozzle);
  const limit_m = nozzle.profile?.limits.nozzleToCeiling_m?.value;
  return drop_m === undefined || limit_m === undefined ? undefined : drop_m >= -1e-9 && drop_m <= limit_m + 1e-9;
}

/** "N1 at 7'-4", 8" below ceiling": where an orifice hangs, in words. */
export function dropText({ nozzle, at }: SectionNozzle, lengths: 'feet' | 'metric'): string {
  const drop_m = ceilingDrop_m(nozzle);
  const limit_m = nozzle.profile?.limits.nozzleToCeiling_m?.value;
  const under = nozzle.space?.kind === 'under-floor' ? 'floor' : 'ceiling';
  const name = nozzle.nozzle.name ? `${nozzle.nozzle.name} ` : '';
  const place = `${name}at ${formatLength(at.z, lengths)}`;
  if (drop_m === undefined) return `${place}, ${under} not known`;
  if (drop_m < -1e-9) return `${place}, ${formatLength(-drop_m, lengths)} above the ${under}`;
  if (limit_m === undefined || drop_m <= limit_m + 1e-9) return `${place}, ${formatLength(drop_m, lengths)} below ${under}`;
  const { value, limit } = formatAgainstLimit(drop_m, limit_m, lengths);
  return `${place}, ${value} below ${under} (limit ${limit})`;
}

/** All texts inside the section, each where it covers least. */
export function sectionTexts(cut: SectionCut, context: TextContext): SectionText[] {
  const wanted = [...nozzleTexts(cut, context), ...cylinderTexts(cut, context), ...solidTexts(cut, context), ...deviceTexts(cut, context)];
  const boxes = placeLabels(wanted, { boxes: symbolBoxes(cut, context), lines: avoidedLines(cut, context) });
  return wanted.flatMap(({ key, text, colour, bold, verdict }) => {
    const box = boxes.get(key);
    return box ? [{ text, colour, bold, verdict, box }] : [];
  });
}

function nozzleTexts(cut: SectionCut, { view, ink, lengths, selection, measure }: TextContext): Wanted[] {
  const isCrowded = cut.nozzles.length > MOST_WRITTEN_OUT;
  const ranked = cut.nozzles.map((each) => {
    const kept = isDropKept(each);
    const isChosen = selection.has(refKey(each.nozzle.ref));
    return { each, kept, isChosen, isFull: !isCrowded || isChosen || kept === false };
  });
  return [...ranked]
    .sort((a, b) => Number(b.isFull) - Number(a.isFull))
    .map(({ each, kept, isChosen, isFull }): Wanted => {
      const verdict = kept === false ? 'stop' : kept ? 'ok' : 'not-checked';
      const text = isFull ? dropText(each, lengths) : each.nozzle.nozzle.name || 'nozzle';
      const width = measure(text, true) + MARK_px + 2;
      const at = sectionPx(view, each.at);
      const clamp = (x: number): number => Math.max(HEIGHTS_WIDTH_px + 4, Math.min(x, view.width - width - 4));
      return {
        key: refKey(each.nozzle.ref),
        text,
        colour: kept === false ? ink.verdict.stop : isChosen ? ink.selection : ink.ink,
        bold: true,
        verdict,
        width,
        height: HEIGHT_px,
        must: true,
        spots: [10, 27, 44, 61, -30, -47].flatMap((dy) => [-width / 2, 14, -width - 14].map((dx) => ({ x: clamp(at.x + dx), y: Math.max(32, Math.min(at.y + dy, view.height - HEIGHT_px - 2)) }))),
      };
    });
}

function cylinderTexts(cut: SectionCut, { view, ink, lengths, selection, measure }: TextContext): Wanted[] {
  const written = new Set<string>();
  return cylinderGroups(cut, view).flatMap((group): Wanted[] => {
    const [first] = group;
    if (!first) return [];
    const { ref, along_m, railHeight_m, outletHeight_m, network } = first;
    const name = groupName(group.map((each) => each.name));
    const half = Math.max(4, (cylinderDiameter_m(network) / 2) * view.scale_px_m);
    const beside = (z_m: number, text: string, colour: string, bold: boolean): Wanted[] => {
      if (written.has(text)) return [];
      written.add(text);
      const width = measure(text, bold) + 2;
      const at = sectionPx(view, { s: along_m, z: z_m });
      const spots = [0, -9, 9].flatMap((dy) => [half + 9, -half - 9 - width, half + 60].map((dx): Px => ({ x: at.x + dx, y: at.y - HEIGHT_px / 2 + dy })));
      return [{ key: `${refKey(ref)} ${text}`, text, colour, bold, verdict: null, width, height: HEIGHT_px, spots }];
    };
    const middle = sectionPx(view, { s: along_m, z: (outletHeight_m ?? 1.6) * 0.3 });
    const width = measure(name, true) + 2;
    return [
      {
        key: refKey(ref),
        text: name,
        colour: group.some((each) => selection.has(refKey(each.ref))) ? ink.selection : ink.ink,
        bold: true,
        verdict: null,
        width,
        height: HEIGHT_px,
        spots: [0, 18, -18].map((dy) => ({ x: middle.x - width / 2, y: middle.y - HEIGHT_px / 2 + dy })),
      },
      ...(outletHeight_m === undefined
        ? beside(1.6, 'outlet height not known', ink.verdict['not-checked'], false)
        : beside(outletHeight_m, `outlet ${formatLength(outletHeight_m, lengths)}`, ink.warm, false)),
      ...(railHeight_m === null ? [] : beside(railHeight_m, `rail ${formatLength(railHeight_m, lengths)}`, ink.quiet, false)),
    ];
  });
}

/** Cylinders that stand behind each other in the section, or so near that their names would cover each other. */
function cylinderGroups({ cylinders }: SectionCut, view: SectionView): SectionCylinder[][] {
  const groups: SectionCylinder[][] = [];
  for (const cylinder of [...cylinders].sort((a, b) => a.along_m - b.along_m)) {
    const last = groups.at(-1)?.at(-1);
    if (last && (cylinder.along_m - last.along_m) * view.scale_px_m < 22) groups.at(-1)?.push(cylinder);
    else groups.push([cylinder]);
  }
  return groups;
}

/** "C1 to C5": the names of things that stand together. */
export function groupName(names: readonly string[]): string {
  const sorted = [...names].sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  const [first = '', second] = sorted;
  if (second === undefined) return first;
  return sorted.length === 2 ? `${first}, ${second}` : `${first} to ${sorted.at(-1)}`;
}

/** Names of devices with their heights; where there are many only the names find room. */
function deviceTexts(cut: SectionCut, { view, ink, lengths, selection, measure }: TextContext): Wanted[] {
  return cut.devices.map(({ ref, device, at }): Wanted => {
    const isChosen = selection.has(refKey(ref));
    const text = isChosen || cut.devices.length <= MOST_NAMED ? `${device.name} at ${formatLength(at.z, lengths)}` : device.name;
    const p = sectionPx(view, at);
    const width = measure(text, false) + 2;
    const spots = [
      { x: p.x + 14, y: p.y - HEIGHT_px / 2 },
      { x: p.x - 14 - width, y: p.y - HEIGHT_px / 2 },
      { x: p.x - width / 2, y: p.y + 12 },
      { x: p.x - width / 2, y: p.y - 12 - HEIGHT_px },
    ];
    return { key: refKey(ref), text, colour: isChosen ? ink.selection : ink.ink, bold: false, verdict: null, width, height: HEIGHT_px, spots };
  });
}

function solidTexts(cut: SectionCut, { view, ink, lengths, measure }: TextContext): Wanted[] {
  return cut.solids.flatMap(({ solid, from_m, to_m, isCut }, i): Wanted[] => {
    if (!isCut) return [];
    const a = sectionPx(view, { s: from_m, z: solid.top_m });
    const b = sectionPx(view, { s: to_m, z: solid.bottom_m });
    const name = solid.obstruction.name || OBSTRUCTION_WORDS[solid.obstruction.kind];
    const long = `${name}, ${solid.bottom_m > 0.3 ? `underside ${formatLength(solid.bottom_m, lengths)}` : `top ${formatLength(solid.top_m, lengths)}`}`;
    const text = [long, name].find((each) => measure(each, false) + 6 < b.x - a.x && b.y - a.y > HEIGHT_px);
    if (text === undefined) return [];
    const width = measure(text, false) + 2;
    const x = (a.x + b.x) / 2 - width / 2;
    const ys = [0.5, 0.25, 0.75].map((share) => a.y + (b.y - a.y) * share - HEIGHT_px / 2);
    return [{ key: `${refKey(solid.ref)} ${i}`, text, colour: ink.solid, bold: false, verdict: null, width, height: HEIGHT_px, spots: ys.map((y) => ({ x, y })) }];
  });
}

function symbolBoxes(cut: SectionCut, { view }: TextContext): LabelBox[] {
  const nozzles = cut.nozzles.map(({ at }) => {
    const p = sectionPx(view, at);
    return { x: p.x - 12, y: p.y - 10, width: 36, height: 17 };
  });
  const devices = cut.devices.map(({ at }) => {
    const p = sectionPx(view, at);
    return { x: p.x - 10, y: p.y - 10, width: 20, height: 20 };
  });
  const valves = cut.cylinders.map(({ along_m, outletHeight_m }) => {
    const p = sectionPx(view, { s: along_m, z: outletHeight_m ?? 1.6 });
    return { x: p.x - 8, y: p.y - 8, width: 16, height: 26 };
  });
  // The title at the left and the buttons at the right of the strip's head.
  const head = { x: 0, y: 0, width: view.width, height: 30 };
  return [...nozzles, ...devices, ...valves, head, { x: view.width - 220, y: 0, width: 220, height: 38 }];
}

/** Lines that a text should keep off. */
function avoidedLines(cut: SectionCut, { view }: TextContext): (readonly [number, number, number, number])[] {
  const straight = (a: Px, b: Px): readonly [number, number, number, number] => [a.x, a.y, b.x, b.y];
  const pipes = cut.pipes.map(({ a, b }) => straight(sectionPx(view, a), sectionPx(view, b)));
  const shells = cut.bays.flatMap(({ floor, ceiling }) =>
    [floor, ceiling].flatMap((face) => face.slice(1).map((p, i) => straight(sectionPx(view, face[i] ?? p), sectionPx(view, p)))),
  );
  const walls = cut.bays.flatMap(({ from_m, to_m, floor, ceiling }) =>
    [from_m, to_m].map((s) => straight(sectionPx(view, { s, z: floor[0]?.z ?? 0 }), sectionPx(view, { s, z: ceiling[0]?.z ?? 2.4 }))),
  );
  return [...pipes, ...shells, ...walls];
}
