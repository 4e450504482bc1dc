import type { Space } from '../derived/derived.ts';
import { type Box, boundsOf } from '../geometry/outline.ts';
import { polar } from '../geometry/point.ts';
import type { Device, DeviceKind, Opening } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { drawAdjoining, labelAdjoining } from './draw-adjoining.ts';
import { drawCylinders, labelCylinders } from './draw-cylinders.ts';
import { drawDevices, labelDevices } from './draw-devices.ts';
import { labelRooms } from './draw-notes.ts';
import { drawNozzles, nameNozzles } from './draw-nozzles.ts';
import { drawSolids, isOverhead, labelSolids } from './draw-solids.ts';
import { drawUnderlay } from './draw-underlay.ts';
import { drawWalls, labelOpenings, openingPlaces } from './draw-walls.ts';
import { addLabel, addLabelWays, settleLabels } from './labels.ts';
import { pen } from './marks.ts';
import { type NetworkContent, type PlanContent, contentBounds } from './plan-content.ts';
import type { PlanViewOptions } from './plan-view.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { datumSymbol } from './symbols.ts';
import { type ViewDraft, addLine, inLayer, onPaper } from './view-draft.ts';

/** Plans of what surrounds the pipe: the ceiling from below, the electrical and safety devices, the hazard with its surroundings. */
export type SurroundingsKind = 'site' | 'ceiling' | 'electrical';

export const SURROUNDINGS_TITLES: Readonly<Record<SurroundingsKind, string>> = {
  site: 'Hazard and site plan',
  ceiling: 'Reflected ceiling plan',
  electrical: 'Electrical and safety plan',
};

const ON_CEILING: readonly DeviceKind[] = ['detector', 'diffuser'];
const ON_SITE: readonly DeviceKind[] = ['control-panel', 'air-intake', 'lock-out-valve'];
const AIR: readonly DeviceKind[] = ['diffuser', 'air-intake'];

/** The devices of a level that a plan shows. */
export function shownDevices(kind: SurroundingsKind, { level }: PlanContent): Device[] {
  const all = Object.values(level.devices);
  if (kind === 'site') return all.filter((device) => ON_SITE.includes(device.kind));
  if (kind === 'electrical') return all.filter((device) => !AIR.includes(device.kind));
  return all.filter((device) => ON_CEILING.includes(device.kind) && !(device.kind === 'detector' && device.space === 'under-floor'));
}

/** Whether a level has what the plan is for. */
export function hasSurroundings(kind: SurroundingsKind, content: PlanContent): boolean {
  if (content.layer !== 'room') return false;
  if (kind === 'site') return Object.keys(content.level.adjoining).length > 0 || shownDevices('site', content).some((device) => device.kind === 'air-intake');
  return shownDevices(kind, content).length > 0;
}

/** What the view must hold: the rooms, the devices shown, and the spaces beside them. */
export function surroundingsBounds(kind: SurroundingsKind, content: PlanContent): Box | undefined {
  const own = contentBounds(content);
  const places = [
    ...(own ? [{ x: own.minX, y: own.minY }, { x: own.maxX, y: own.maxY }] : []),
    ...shownDevices(kind, content).map(({ at }) => at),
    ...(kind === 'ceiling' ? [] : Object.values(content.level.adjoining).flatMap(({ outline }) => outline)),
  ];
  return places.length === 0 ? undefined : boundsOf(places);
}

function drawCeilingZones(view: ViewDraft, rooms: readonly Space[]): void {
  const { frame, sizes, lengths } = view;
  for (const { enclosure } of rooms) {
    for (const { name, outline, height_m } of Object.values(enclosure.ceilingZones)) {
      view.used.add('ceiling-zone');
      const places = onPaper(frame, outline);
      const dash = [2.4, 0.8, 0.6, 0.8].map((length) => length * sizes.factor);
      addLine(view, places, { kind: 'line', places, closed: true, stroke: pen(WEIGHT.thin * sizes.factor, PRINT.quiet, dash) }, 3, true);
      const { minX, minY, maxX, maxY } = boundsOf(outline);
      const spots = [frame.x((minX + maxX) / 2), frame.y((minY + maxY) / 2)];
      addLabel(view, [{ text: `${name}, ceiling ${formatLength(height_m, lengths)}`, colour: PRINT.quiet }], { x: spots[0] ?? 0, y: spots[1] ?? 0, clearance_mm: 0.4, spots, isLoose: true }, name);
    }
  }
}

/** The ceiling as a person sees it from below: beams, lights, ducts, diffusers, detectors, nozzles. */
function drawCeiling(view: ViewDraft, content: PlanContent, { drawings }: PlanViewOptions): void {
  const overhead = content.solids.filter(isOverhead);
  const devices = shownDevices('ceiling', content);
  inLayer(view, 'underlay', () => drawUnderlay(view, content.level, drawings));
  inLayer(view, 'building', () => drawSolids(view, overhead));
  inLayer(view, 'building', () => drawWalls(view, content.rooms));
  inLayer(view, 'building', () => drawCeilingZones(view, content.rooms));
  for (const { nozzles } of content.networks) inLayer(view, 'nozzles', () => drawNozzles(view, nozzles));
  inLayer(view, 'devices', () => drawDevices(view, devices));
  for (const network of content.networks) inLayer(view, 'nozzles', () => nameNozzles(view, network));
  inLayer(view, 'devices', () => labelDevices(view, devices));
  inLayer(view, 'building', () => labelSolids(view, overhead));
  labelRooms(view, content.rooms);
  inLayer(view, 'notes', () => settleLabels(view));
}

/** Panel, detectors, alarms, releases, switches, signs, doors. */
function drawElectrical(view: ViewDraft, content: PlanContent, { drawings, datums }: PlanViewOptions): void {
  const devices = shownDevices('electrical', content);
  const adjoining = Object.values(content.level.adjoining);
  inLayer(view, 'underlay', () => drawUnderlay(view, content.level, drawings));
  inLayer(view, 'building', () => drawAdjoining(view, adjoining));
  inLayer(view, 'building', () => drawSolids(view, content.solids.filter(({ obstruction }) => obstruction.kind === 'panel')));
  inLayer(view, 'building', () => drawWalls(view, content.rooms));
  for (const network of content.networks) inLayer(view, 'cylinders', () => drawCylinders(view, network));
  for (const room of content.rooms) {
    const datum = datums.get(room.key);
    if (!datum) continue;
    view.used.add('datum');
    inLayer(view, 'dimensions', () => view.lines.push(...datumSymbol(view.frame.x(datum.corner.x), view.frame.y(datum.corner.y), view.sizes.factor)));
  }
  inLayer(view, 'devices', () => drawDevices(view, devices));
  inLayer(view, 'devices', () => labelDevices(view, devices));
  for (const network of content.networks) inLayer(view, 'cylinders', () => labelCylinders(view, network));
  inLayer(view, 'building', () => labelOpenings(view, content.rooms));
  inLayer(view, 'building', () => labelAdjoining(view, adjoining, true));
  labelRooms(view, content.rooms);
  inLayer(view, 'notes', () => settleLabels(view));
}

const LEADS: Readonly<Record<Opening['leadsTo'], string>> = { unknown: 'to: not known', outdoors: 'to outdoors', corridor: 'to a corridor', room: 'to another room', exit: 'to an exit way' };

/** Boundary of the hazard, what lies beside it, ways out, cylinders, panel, vents. */
function drawSite(view: ViewDraft, content: PlanContent, { drawings }: PlanViewOptions): void {
  const devices = shownDevices('site', content);
  const adjoining = Object.values(content.level.adjoining);
  inLayer(view, 'underlay', () => drawUnderlay(view, content.level, drawings));
  inLayer(view, 'building', () => drawAdjoining(view, adjoining));
  inLayer(view, 'building', () => drawWalls(view, content.rooms));
  for (const network of content.networks) inLayer(view, 'cylinders', () => drawCylinders(view, network));
  inLayer(view, 'devices', () => drawDevices(view, devices));
  for (const { id, name, at, facing_rad } of devices) {
    const wish = { x: view.frame.x(at.x), y: view.frame.y(at.y), clearance_mm: 2.2 * view.sizes.factor, owner: id, toward_rad: facing_rad ?? Math.PI / 4 };
    inLayer(view, 'devices', () => addLabel(view, [{ text: name, font: 'bold' }], wish, name));
  }
  for (const network of content.networks) inLayer(view, 'cylinders', () => labelBank(view, network));
  for (const room of content.rooms) {
    for (const { opening, middle, inward_rad } of openingPlaces(room)) {
      const at = polar(middle, inward_rad + Math.PI, opening.kind === 'door' ? opening.width_m * 0.45 : 0.1);
      const isDoor = opening.kind === 'door';
      const [x, y] = [view.frame.x(at.x), view.frame.y(at.y)];
      const wish = { x, y, clearance_mm: isDoor ? 0.5 : 3 * view.sizes.factor, owner: opening.id, toward_rad: inward_rad + Math.PI, ...(isDoor ? { spots: [x, y] } : {}) };
      const name = { text: opening.name, font: 'bold' as const };
      const leads = { text: LEADS[opening.leadsTo] };
      inLayer(view, 'building', () => addLabelWays(view, [{ lines: [name, leads], wish: { ...wish, farthest_mm: 12 * view.sizes.factor } }, { lines: [leads], wish: { ...wish, farthest_mm: 12 * view.sizes.factor } }, { lines: [name, leads], wish }], `${opening.name} of ${room.name}`));
    }
  }
  // What stands in the table too gives way to the doors.
  inLayer(view, 'building', () => labelAdjoining(view, adjoining));
  labelRooms(view, content.rooms);
  inLayer(view, 'notes', () => settleLabels(view));
}

/** The cylinders of a network in one label: which is which stands on the nozzle and pipe plan. */
function labelBank(view: ViewDraft, { network, hasCylinders }: NetworkContent): void {
  const cylinders = Object.values(network.network.cylinders);
  const [first] = cylinders;
  if (!first || !hasCylinders) return;
  const words = cylinders.length === 1 ? 'cylinder' : `${cylinders.length} cylinders`;
  const wish = { x: view.frame.x(first.at.x), y: view.frame.y(first.at.y), clearance_mm: 2 * view.sizes.factor, owner: first.id, toward_rad: first.back_rad + Math.PI };
  addLabel(view, [{ text: words, font: 'bold' }], wish, `cylinders of ${network.network.name}`);
}

/** How each of the plans is drawn. */
export const DRAW_SURROUNDINGS: Readonly<Record<SurroundingsKind, NonNullable<PlanViewOptions['draw']>>> = { site: drawSite, ceiling: drawCeiling, electrical: drawElectrical };
