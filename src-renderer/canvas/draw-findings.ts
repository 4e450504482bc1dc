import type { PlanPoint } from '#shared/geometry/point';
import { type Finding, VERDICTS, type Verdict } from '#shared/rules/finding';
import { formatAgainstLimit, formatLength } from '#shared/units/length-text';
import type { Ink } from '../ink.ts';
import { write } from './lettering.ts';
import { type Pen, type Px, aside, line, polyline, setLine, trace } from './pen.ts';
import { VERDICT_HALF_px, drawMeasuringLine, drawVerdict } from './symbols/verdict-mark.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** Findings shown by one mark: they are about the same place. */
export interface FindingMark {
  readonly at: PlanPoint;
  /** Gravest verdict among them. */
  readonly verdict: Verdict;
  /** Gravest first. */
  readonly findings: readonly Finding[];
}

/** A mark stands up and left of its place, so that it does not hide what it is about [px]. */
export const MARK_SHIFT: Px = { x: -17, y: -15 };

/** Marks of a level: one per place, kept and accepted findings left out. Verdicts that are not `wanted` are left out too. */
export function findingMarks(findings: readonly Finding[], level: string, wanted: ReadonlySet<Verdict>): FindingMark[] {
  const byPlace = new Map<string, Finding[]>();
  for (const finding of findings) {
    const at = finding.place?.at[0];
    if (finding.verdict === 'ok' || finding.waiver || !wanted.has(finding.verdict) || !at || finding.place?.level !== level) continue;
    const key = `${Math.round(at.x * 50)}/${Math.round(at.y * 50)}`;
    const same = byPlace.get(key);
    if (same) same.push(finding);
    else byPlace.set(key, [finding]);
  }
  return [...byPlace.values()].flatMap((same) => {
    const sorted = [...same].sort((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict));
    const first = sorted[0];
    const at = first?.place?.at[0];
    return first && at ? [{ at, verdict: first.verdict, findings: sorted }] : [];
  });
}

/** Marks nearer to each other than this are shown as one [px]. */
const CLUSTER_px = 20;

/** Where a mark stands on the screen. */
export const markPlace = (view: Viewport, mark: Pick<FindingMark, 'at'>): Px => {
  const at = toScreen(view, mark.at);
  return { x: at.x + MARK_SHIFT.x, y: at.y + MARK_SHIFT.y };
};

const clustered = new WeakMap<readonly FindingMark[], { readonly scale_px_m: number; readonly marks: readonly FindingMark[] }>();

/** The marks as they can be told apart at a scale: those that would cover each other are one, with the gravest verdict. */
export function marksAt(marks: readonly FindingMark[], scale_px_m: number): readonly FindingMark[] {
  const known = clustered.get(marks);
  if (known?.scale_px_m === scale_px_m) return known.marks;
  const cells = new Map<string, FindingMark>();
  const cell_m = CLUSTER_px / scale_px_m;
  for (const mark of marks) {
    const i = Math.round(mark.at.x / cell_m);
    const j = Math.round(mark.at.y / cell_m);
    const near = [-1, 0, 1].flatMap((di) => [-1, 0, 1].map((dj) => `${i + di}/${j + dj}`)).find((key) => {
      const other = cells.get(key);
      return other && Math.hypot(other.at.x - mark.at.x, other.at.y - mark.at.y) < cell_m;
    });
    const other = near === undefined ? undefined : cells.get(near);
    if (near === undefined || !other) cells.set(`${i}/${j}`, mark);
    else {
      const [graver, milder] = VERDICTS.indexOf(mark.verdict) < VERDICTS.indexOf(other.verdict) ? [mark, other] : [other, mark];
      cells.set(near, { at: other.at, verdict: graver.verdict, findings: [...graver.findings, ...milder.findings] });
    }
  }
  const found = [...cells.values()];
  clustered.set(marks, { scale_px_m, marks: found });
  return found;
}

/** The mark under a screen place, or undefined. */
export const markAt = (view: Viewport, marks: readonly FindingMark[], p: Px): FindingMark | undefined =>
  marksAt(marks, view.camera.scale_px_m).find((mark) => {
    const at = markPlace(view, mark);
    return Math.hypot(at.x - p.x, at.y - p.y) <= VERDICT_HALF_px + 3;
  });

/** Marks of the findings, with the number where one stands for several. */
export function drawFindingMarks(pen: Pen, view: Viewport, marks: readonly FindingMark[], ink: Ink): void {
  const box = visibleBox(view, 30);
  for (const mark of [...marksAt(marks, view.camera.scale_px_m)].reverse()) {
    if (mark.at.x < box.minX || mark.at.x > box.maxX || mark.at.y < box.minY || mark.at.y > box.maxY) continue;
    const at = markPlace(view, mark);
    drawVerdict(pen, at, mark.verdict, ink);
    if (mark.findings.length > 1) {
      write(pen, `${mark.findings.length}`, { x: at.x - VERDICT_HALF_px - 3, y: at.y }, { colour: ink.verdict[mark.verdict], halo: ink.paper, align: 'right', bold: true });
    }
  }
}

/** Shows on the plan what a finding measured: its line, its rays and its areas. */
export function drawFindingPlace(pen: Pen, view: Viewport, finding: Finding, lengths: 'feet' | 'metric', ink: Ink): void {
  const { place, verdict } = finding;
  if (!place) return;
  const colour = ink.verdict[verdict];
  for (const rings of place.areas ?? []) {
    const onScreen = rings.map((each) => each.map((p) => toScreen(view, p)));
    aside(pen, () => {
      pen.beginPath();
      for (const each of onScreen) trace(pen, each, true);
      pen.globalAlpha = 0.16;
      pen.fillStyle = colour;
      pen.fill('evenodd');
    });
    setLine(pen, { colour, width: 1.75 });
    for (const each of onScreen) polyline(pen, each, true);
  }
  setLine(pen, { colour, width: 2, dash: [8, 3] });
  for (const { from, to } of place.rays ?? []) line(pen, toScreen(view, from), toScreen(view, to));
  if (place.dimension) {
    const a = toScreen(view, place.dimension.a);
    const b = toScreen(view, place.dimension.b);
    drawMeasuringLine(pen, a, b, verdict, ink);
    const text = measuredText(finding, lengths);
    if (text) {
      const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
      write(pen, text, { x: middle.x + 12, y: middle.y + 16 }, { colour, halo: ink.paper, bold: true });
    }
  } else {
    for (const p of place.at.slice(0, 40)) drawVerdict(pen, toScreen(view, p), verdict, ink, 9);
  }
}

/** "9 31/32" of 10"": the measured length and its limit, told apart in print whenever they differ. */
export function measuredText(finding: Finding, lengths: 'feet' | 'metric'): string {
  if (finding.measure !== 'length' || finding.measured === undefined) return '';
  if (finding.limit === undefined) return formatLength(finding.measured, lengths);
  const { value, limit } = formatAgainstLimit(finding.measured, finding.limit, lengths);
  return `${value} (limit ${limit})`;
}
