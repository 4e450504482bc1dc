import { paperCells } from './paper-cells.ts';
import { type PaperBox, type TurnedBox, boxAround, boxHolds, clipPiece, cornersOf, lengthInside_mm, reachAlong, turnedBoxesOverlap } from './text-box.ts';

/** What a label needs: its size, the thing it names, and where it would rather stand. */
export interface LabelRequest {
  readonly width_mm: number;
  readonly height_mm: number;
  /** Middle of the thing it names. */
  readonly x: number;
  readonly y: number;
  /** How far the thing reaches from its middle [mm]; the label keeps out of it. */
  readonly clearance_mm: number;
  /** Middle of the first text line below the label's top [mm]: where a leader arrives. */
  readonly leaderAt_mm: number;
  /** Blocked boxes of the same owner are the thing itself: a leader may touch them. */
  readonly owner?: string;
  /** Tried first: upon the thing itself, on these middles of its own paper, x and y in turn, the best liked first. */
  readonly spots?: readonly number[];
  /** Belongs to the surface around it: needs no leader. */
  readonly isLoose?: boolean;
  /** Tried first: beside a straight piece and turned with it. */
  readonly along?: { readonly ax: number; readonly ay: number; readonly bx: number; readonly by: number };
  /** Direction that is liked best [rad], counter-clockwise on paper from its right. */
  readonly toward_rad?: number;
  /** What it costs to stand with its middle at a place. */
  readonly priceAt?: (x: number, y: number) => number;
  /** Farthest way from the thing [mm]; the whole view when missing. */
  readonly farthest_mm?: number;
}

export interface PlacedLabel {
  readonly box: TurnedBox;
  /** From the thing to the label when it stands apart: x1, y1, x2, y2. */
  readonly leader: readonly [number, number, number, number] | undefined;
  /** How much it disturbs: way from its thing and lines under it. */
  readonly price: number;
}

/** Finds free places for texts: never upon another text or symbol, and off the lines where there is room. */
export interface LabelPlacer {
  /** Keeps every later label off a box. */
  block(box: TurnedBox, owner?: string): void;
  /** Makes a straight piece dear to cross. */
  avoid(ax: number, ay: number, bx: number, by: number, weight: number): void;
  /** Whether nothing blocked is under a box and it lies within the view. */
  isFree(box: TurnedBox, owner?: string): boolean;
  /** How many blocked boxes a straight piece crosses. */
  crossings(ax: number, ay: number, bx: number, by: number, owner?: string): number;
  /** Price of the lines under a box. */
  priceOf(box: TurnedBox): number;
  /**
   * The best free place, cheaper than `below`; undefined when the view has none. Nothing is blocked by asking.
   */
  find(request: LabelRequest, below?: number): PlacedLabel | undefined;
  /** Takes a place: it is blocked, and its leader dear to cross, until it is given back. */
  take(placed: PlacedLabel, owner?: string): void;
  giveBack(placed: PlacedLabel): void;
}

const DIRECTIONS = 16;
const PLACES_ALONG = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9];
/** A leader through another text or symbol. */
const CROSSED = 40;
/** A leader across another. */
const LEADERS_CROSS = 14;
/** A leader at all, so that a label rather stands close; and each millimetre away. */
const LEADER = 5;
const AWAY = 1.1;

interface Blocked {
  readonly box: TurnedBox;
  readonly owner: string | undefined;
}
interface Avoided {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly weight: number;
}

/** A turn at which a text along a piece can be read from the bottom or the right of the sheet [rad]. */
export const readable_rad = (angle_rad: number): number => {
  const upright = Math.atan2(Math.sin(angle_rad), Math.cos(angle_rad));
  if (upright > Math.PI / 2 + 1e-6) return upright - Math.PI;
  if (upright <= -Math.PI / 2 + 1e-6) return upright + Math.PI;
  return upright;
};

/** Begins with an empty view of the given size on paper. */
export function labelPlacer(view: PaperBox): LabelPlacer {
  const blocked = paperCells<Blocked>();
  const avoided = paperCells<Avoided>();
  const leaders: (readonly [number, number, number, number])[] = [];

  const around = (box: TurnedBox): PaperBox => boxAround(cornersOf(box));

  const placer: LabelPlacer = {
    block(box, owner) {
      const shown = cut(around(box), view);
      if (shown) blocked.add(shown, { box, owner });
    },
    avoid(ax, ay, bx, by, weight) {
      const shown = clipPiece(view, ax, ay, bx, by);
      if (shown) avoided.add(boxAround(shown), { ax, ay, bx, by, weight }, (cell) => lengthInside_mm(cell, ...shown) > 0);
    },
    isFree(box, owner) {
      const upright = around(box);
      return boxHolds(view, upright) && !blocked.some(upright, (other) => (owner === undefined || other.owner !== owner) && turnedBoxesOverlap(other.box, box));
    },
    crossings(ax, ay, bx, by, owner) {
      let count = 0;
      const shown = clipPiece(view, ax, ay, bx, by);
      if (!shown) return 0;
      blocked.some(boxAround(shown), (other) => {
        if ((owner === undefined || other.owner !== owner) && lengthInside_mm(other.box, ax, ay, bx, by) > 0.05) count += 1;
        return false;
      });
      return count;
    },
    priceOf(box) {
      let price = 0;
      avoided.some(around(box), ({ ax, ay, bx, by, weight }) => {
        const inside = lengthInside_mm(box, ax, ay, bx, by);
        if (inside > 0) price += weight * (1 + inside / 8);
        return false;
      });
      return price;
    },
    find(request, below = Infinity) {
      return bestPlace(request, below);
    },
    take(placed, owner) {
      placer.block(placed.box, owner);
      if (!placed.leader) return;
      placer.avoid(...placed.leader, 22);
      leaders.push(placed.leader);
    },
    giveBack({ box, leader }) {
      blocked.remove(around(box), (thing) => thing.box === box);
      if (!leader) return;
      const shown = clipPiece(view, ...leader);
      if (shown) avoided.remove(boxAround(shown), ({ ax, ay, bx, by }) => ax === leader[0] && ay === leader[1] && bx === leader[2] && by === leader[3]);
      leaders.splice(leaders.indexOf(leader), 1);
    },
  };

  const leaderTo = (request: LabelRequest, box: TurnedBox): PlacedLabel['leader'] => {
    const left = box.x - box.halfWidth;
    const right = box.x + box.halfWidth;
    const endX = request.x < left ? left - 0.5 : request.x > right ? right + 0.5 : box.x;
    const isBeside = endX !== box.x;
    const firstLine = box.y - box.halfHeight + request.leaderAt_mm;
    const endY = isBeside ? firstLine : request.y < box.y ? box.y - box.halfHeight - 0.3 : box.y + box.halfHeight + 0.3;
    const length = Math.hypot(endX - request.x, endY - request.y);
    if (length <= request.clearance_mm + 2) return undefined;
    const t = request.clearance_mm / length;
    return [request.x + (endX - request.x) * t, request.y + (endY - request.y) * t, endX, endY];
  };

  const bestPlace = (request: LabelRequest, below: number): PlacedLabel | undefined => {
    const halfWidth = request.width_mm / 2;
    const halfHeight = request.height_mm / 2;
    let best: PlacedLabel | undefined;
    let least = below;
    const consider = (box: TurnedBox, price: number, leader?: PlacedLabel['leader'], owner?: string): void => {
      if (price >= least || !placer.isFree(box, owner)) return;
      let whole = price + placer.priceOf(box) + (request.priceAt?.(box.x, box.y) ?? 0);
      if (leader && whole < least) {
        whole += CROSSED * placer.crossings(...leader, request.owner) + LEADERS_CROSS * leaders.filter((other) => piecesCross(leader, other)).length;
      }
      if (whole < least) {
        least = whole;
        best = { box, leader, price: whole };
      }
    };

    const spots = request.spots ?? [];
    for (let i = 0; i + 1 < spots.length; i += 2) {
      consider({ x: spots[i] ?? 0, y: spots[i + 1] ?? 0, halfWidth, halfHeight, rotation_rad: 0 }, i * 0.03, undefined, request.owner);
    }
    const { along } = request;
    if (along) {
      const length = Math.hypot(along.bx - along.ax, along.by - along.ay);
      const rotation_rad = readable_rad(Math.atan2(along.ay - along.by, along.bx - along.ax));
      const upX = -Math.sin(rotation_rad);
      const upY = -Math.cos(rotation_rad);
      const aside = request.clearance_mm + halfHeight;
      for (const t of length >= request.width_mm ? PLACES_ALONG : []) {
        const inset = Math.min(t, 1 - t) * length - halfWidth;
        for (const side of [1, -1]) {
          const box = {
            x: along.ax + (along.bx - along.ax) * t + upX * aside * side,
            y: along.ay + (along.by - along.ay) * t + upY * aside * side,
            halfWidth,
            halfHeight,
            rotation_rad,
          };
          consider(box, (inset < 0 ? 3 : 0) + Math.abs(t - 0.5) * 2 + (side === 1 ? 0 : 0.5));
        }
      }
    }

    const farthest = request.farthest_mm ?? Math.hypot(view.right - view.left, view.bottom - view.top);
    const toward = request.toward_rad ?? Math.PI / 4;
    for (let gap = 0.6, step = 1.4; gap <= farthest && gap * AWAY < least; gap += step, step *= 1.22) {
      const reach = request.clearance_mm + gap;
      for (let i = 0; i < DIRECTIONS; i += 1) {
        const turn = (((i + 1) >> 1) * (i % 2 === 0 ? -1 : 1) * 2 * Math.PI) / DIRECTIONS;
        const direction = toward + turn;
        const flat = { x: 0, y: 0, halfWidth, halfHeight, rotation_rad: 0 };
        // The box touches the circle of radius `reach`: beside it, its whole half width away; above it, its half height.
        const away = reach + Math.min(reachAlong(flat, direction), boxReach(halfWidth, halfHeight, direction));
        const box = { ...flat, x: request.x + Math.cos(direction) * away, y: request.y - Math.sin(direction) * away };
        const leader = request.isLoose ? undefined : leaderTo(request, box);
        consider(box, gap * AWAY + Math.abs(turn) * 0.4 + (leader ? LEADER : 0), leader);
      }
    }
    return best;
  };
  return placer;
}

/** The part of a box that lies in another; undefined when none does. */
function cut(box: PaperBox, by: PaperBox): PaperBox | undefined {
  const inside = { left: Math.max(box.left, by.left), top: Math.max(box.top, by.top), right: Math.min(box.right, by.right), bottom: Math.min(box.bottom, by.bottom) };
  return inside.left <= inside.right && inside.top <= inside.bottom ? inside : undefined;
}

type Piece = readonly [number, number, number, number];

/** Whether two straight pieces cross. */
function piecesCross([ax, ay, bx, by]: Piece, [cx, cy, dx, dy]: Piece): boolean {
  const side = (px: number, py: number, qx: number, qy: number, x: number, y: number): number => (qx - px) * (y - py) - (qy - py) * (x - px);
  return side(ax, ay, bx, by, cx, cy) * side(ax, ay, bx, by, dx, dy) < 0 && side(cx, cy, dx, dy, ax, ay) * side(cx, cy, dx, dy, bx, by) < 0;
}

/** Way from the middle of an upright box to its side in a direction [mm]. */
const boxReach = (halfWidth: number, halfHeight: number, direction_rad: number): number =>
  Math.min(halfWidth / Math.max(1e-9, Math.abs(Math.cos(direction_rad))), halfHeight / Math.max(1e-9, Math.abs(Math.sin(direction_rad))));
